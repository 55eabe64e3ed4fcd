"""A panel built on a touch screen, with fingers alone."""

import pytest
from hand import Fingers, near, panel_of, saved
from playwright.sync_api import Browser, Page, expect
from test_editor_hand import inches, plain

pytestmark = pytest.mark.browser

OPENINGS = [
    ("o", [(20, 20, 50, 70)]),
    ("o", [(70, 20, 100, 100)]),
    ("c", [(130, 100, 142, 100)]),
    ("a", [(160, 20, 190, 80), (175, 70)]),
    ("p", [(200, 20), (230, 20), (230, 60), (200, 60), (200, 20)]),
]
TWO_PIXELS = 9.0
"""A finger's reach at this size of panel, in inches: what it meets may lie as far off."""


@pytest.fixture
def tablet(browser: Browser, server, troubles):
    """A page on a tablet of 1180 x 820."""
    context = browser.new_context(
        base_url=server.address, viewport={"width": 1180, "height": 820}, has_touch=True, locale="en-US"
    )
    page = context.new_page()
    troubles.watch(page)
    yield page
    context.close()


def test_a_panel_of_five_openings_is_built_by_touch_alone(tablet: Page, server) -> None:
    panel: str = server.create(plain())["walls"][0]["panels"][0]
    tablet.goto(f"/panels/{panel}")
    fingers = Fingers(tablet)
    for revision, (key, strokes) in enumerate(OPENINGS, 2):
        tablet.locator(f'[data-draw-key="{key}"]').tap()
        for stroke in strokes:
            (fingers.drag if len(stroke) == 4 else fingers.tap)(*stroke)
        saved(tablet, revision)
    found = panel_of(server.address, panel)["openings"]
    assert [one["mark"] for one in found] == ["W1", "W2", "V1", "W3", "L1"]
    assert near(inches(found[0]["rect"]), [20, 20, 30, 50], TWO_PIXELS)
    assert near(inches(found[1]["rect"]), [70, 20, 30, 80], TWO_PIXELS)
    assert near(inches(found[2]["circle"]), [130, 100, 12], TWO_PIXELS)
    assert near(inches(found[3]["arch"]), [160, 20, 30, 60, 10], TWO_PIXELS)
    assert len(found[4]["polygon"]) == 4
    fingers.tap(35, 45)
    expect(tablet.locator("#card h2")).to_have_text("W1, window")
    fingers.drag(35, 45, 35, 60)
    saved(tablet, 7)
    after = panel_of(server.address, panel)["openings"][0]
    assert near(inches(after["rect"]), [20, 35, 30, 50], 2 * TWO_PIXELS)
    assert inches(after["rect"])[2:] == inches(found[0]["rect"])[2:]
    tablet.locator("#undo").tap()
    saved(tablet, 8)
    assert panel_of(server.address, panel)["openings"] == found
