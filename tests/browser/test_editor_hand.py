"""Drawing and dragging by hand in a real browser: what is drawn, typed or dragged is what the API has afterwards."""

from typing import Any

import pytest
from hand import Fingers, Mouse, near, panel_of, saved, screen, typed
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

GRID = 1 / 16
"""The tape's smallest mark: a place that meets nothing comes to lie on one."""
REACH = 6.0
"""More than a mouse reaches on the screen at this size of panel, in inches."""


def plain(openings: list[dict[str, Any]] | None = None, **more: Any) -> dict[str, Any]:
    """A project of one plain panel, 20 x 12 ft."""
    panel = {
        "mark": "P1",
        "thickness": 7.25,
        "outline": [[0, 0], [240, 0], [240, 144], [0, 144]],
        "openings": openings or [],
        "field": {"size": "modular", "bond": "running"},
    }
    size = {"name": "modular", "length": 7.625, "height": 2.25, "thickness": 0.625, "head_joint": 0.375}
    wall = {"mark": "A", "datum": 0, "joint": 0.75, "panels": [panel | more]}
    return {
        "format": "castcourse-project/1",
        "name": "By hand",
        "length_unit": "in",
        "temperature_unit": "F",
        "sizes": [size | {"courses": 3, "per": 8}],
        "walls": [wall],
    }


@pytest.fixture
def opened(page: Page, server):
    """Opens a fresh panel in the editor; its id."""

    def opened(openings: list[dict[str, Any]] | None = None, **more: Any) -> str:
        panel: str = server.create(plain(openings, **more))["walls"][0]["panels"][0]
        page.goto(f"/panels/{panel}")
        return panel

    return opened


@pytest.fixture
def read(server):
    return lambda panel: panel_of(server.address, panel)


def inches(values: list[Any]) -> list[float]:
    from app.lengths import parse

    return [value if isinstance(value, int | float) else parse(value, "in").inches for value in values]


def draw(page: Page, key: str) -> None:
    page.locator(f'[data-draw-key="{key}"]').click()
    expect(page.locator(f'[data-draw-key="{key}"]')).to_have_attribute("aria-pressed", "true")


def test_every_shape_is_drawn_by_mouse(page: Page, opened, read) -> None:
    panel, mouse = opened(), Mouse(page)
    draw(page, "o")
    mouse.drag(20, 20, 60, 80)
    saved(page, 2)
    expect(page.locator("#card h2")).to_have_text("W1, window")
    draw(page, "a")
    for x, y in ((80, 20), (120, 100), (100, 88)):
        mouse.press(x, y)
    saved(page, 3)
    draw(page, "c")
    mouse.drag(160, 100, 172, 100)
    saved(page, 4)
    draw(page, "p")
    for x, y in ((180, 20), (220, 20), (220, 60), (180, 20)):
        mouse.press(x, y)
    saved(page, 5)
    draw(page, "z")
    mouse.drag(140, 40, 170, 60)
    saved(page, 6)
    draw(page, "s")
    mouse.drag(0, 125, 240, 126)
    saved(page, 7)
    draw(page, "f")
    mouse.press(130, 10)
    mouse.press(131, 120)
    page.keyboard.press("Enter")
    saved(page, 8)
    draw(page, "e")
    mouse.drag(20, 90, 28, 100)
    saved(page, 9)
    expect(page.locator("#card h2")).to_have_text("Plate P1")
    found = read(panel)
    assert near(inches(found["plates"][0]["rect"]), [20, 90, 8, 10], REACH)
    shapes = [next(iter(one.keys() - {"mark", "use"})) for one in found["openings"]]
    assert shapes == ["rect", "arch", "circle", "polygon"]
    assert near(inches(found["openings"][0]["rect"]), [20, 20, 40, 60], REACH)
    assert near(inches(found["openings"][1]["arch"]), [80, 20, 40, 80, 12], REACH)
    assert near(inches(found["openings"][2]["circle"]), [160, 100, 12], REACH)
    assert len(found["openings"][3]["polygon"]) == 3
    assert near(inches(found["zones"][0]["rect"]), [140, 40, 30, 20], REACH)
    ends = [inches(point) for point in found["strips"][0]["line"]]
    assert ends[0][1] == ends[1][1], "a strip drawn nearly level is level"
    assert found["fixings"][0]["by"] == "glue"


def test_lengths_typed_while_drawing_are_kept_as_typed(page: Page, opened, read) -> None:
    panel, mouse = opened(), Mouse(page)
    draw(page, "o")
    typed(page, "3'", "2' 6 1/2\"")
    mouse.move(100, 100)
    expect(page.locator("#typing")).to_be_hidden()
    typed(page, "5'-0 1/2\"", "64")
    saved(page, 2)
    assert read(panel)["openings"][0]["rect"] == ["3'", "2' 6 1/2\"", "5'-0 1/2\"", "64"]
    draw(page, "s")
    typed(page, "0", "110")
    expect(page.locator("#typing")).to_be_hidden()
    mouse.move(200, 110)
    page.keyboard.type("20'")
    expect(page.locator("#typing small").first).to_have_text("= 20'-0\"")
    page.keyboard.press("Enter")
    expect(page.locator("#typing")).to_be_hidden()
    page.keyboard.press("Enter")
    saved(page, 3)
    assert [inches(point) for point in read(panel)["strips"][0]["line"]] == [[0, 110], [240, 110]]


def test_what_is_no_length_is_told_and_commits_nothing(page: Page, opened, read) -> None:
    panel, mouse = opened(), Mouse(page)
    draw(page, "o")
    mouse.press(40, 40)
    mouse.move(80, 90)
    typed(page, "5'-14\"")
    expect(page.locator("#typing small").first).to_contain_text("expected")
    expect(page.locator("#typing input").first).to_be_focused()
    assert read(panel)["openings"] == []
    for step in ("leave the text", "leave the box", "take the corner back", "stop drawing"):
        drawing = page.locator("#drawing.drawing-now")
        assert drawing.count() == 1, step
        page.keyboard.press("Escape")
    expect(page.locator("#drawing.drawing-now")).to_have_count(0)
    assert read(panel)["openings"] == []


def test_a_drag_takes_the_length_that_is_typed(page: Page, opened, read) -> None:
    panel, mouse = opened([{"mark": "W1", "use": "window", "rect": [40, 40, 40, 40]}]), Mouse(page)
    mouse.hold(60, 60, 75, 60)
    typed(page, '12 1/4"')
    saved(page, 2)
    page.mouse.up()
    assert inches(read(panel)["openings"][0]["rect"]) == [52.25, 40, 40, 40]
    expect(page.locator("#saved")).to_contain_text("rev 2")


def test_corners_edges_lines_and_rises_are_dragged(page: Page, opened, read) -> None:
    panel = opened(
        [
            {"mark": "L1", "use": "louver", "polygon": [[180, 20], [220, 20], [220, 60]]},
            {"mark": "A1", "use": "window", "arch": [40, 20, 40, 80, 12]},
            {"mark": "V1", "use": "vent", "circle": [140, 100, 12]},
        ],
        strips=[{"mark": "R1", "line": [[0, 125], [240, 125]], "width": 0.75}],
    )
    mouse = Mouse(page)
    page.keyboard.down("Alt")
    mouse.press(215, 30)
    mouse.drag(220, 60, 224, 70)
    saved(page, 2)
    mouse.drag(200, 20, 200, 26)
    saved(page, 3)
    mouse.press(60, 40)
    mouse.drag(40, 88, 40, 84)
    saved(page, 4)
    mouse.press(140, 100)
    mouse.drag(152, 100, 156, 100)
    saved(page, 5)
    mouse.press(120, 125)
    mouse.drag(100, 125, 100, 130)
    saved(page, 6)
    mouse.press(240, 72)
    mouse.drag(240, 72, 252, 72)
    saved(page, 7)
    page.keyboard.up("Alt")
    found = read(panel)
    off = 3 * GRID + 0.5
    assert near(inches(found["openings"][0]["polygon"][2]), [224, 70], off)
    assert near([inches(point)[1] for point in found["openings"][0]["polygon"][:2]], [26, 26], off)
    assert near(inches(found["openings"][1]["arch"]), [40, 20, 40, 80, 16], off)
    assert near(inches(found["openings"][2]["circle"]), [140, 100, 16], off)
    assert near([inches(point)[1] for point in found["strips"][0]["line"]], [130, 130], off)
    assert near([inches(point)[0] for point in found["outline"]], [0, 252, 252, 0], off)


def test_a_second_finger_takes_all_back_and_pinches(page: Page, opened, read) -> None:
    panel, fingers = opened([{"mark": "W1", "use": "window", "rect": [40, 40, 40, 40]}]), Fingers(page)
    first, second = screen(page, 60, 60), screen(page, 160, 60)
    fingers.touch("Start", [first])
    fingers.touch("Move", [(first[0] + 30, first[1])])
    expect(page.locator("#ghost > *")).to_have_count(1)
    fingers.touch("Start", [(first[0] + 30, first[1]), second])
    expect(page.locator("#ghost > *")).to_have_count(0)
    before = page.locator("#drawing").get_attribute("viewBox")
    assert before
    fingers.touch("Move", [(first[0] - 30, first[1]), (second[0] + 60, second[1])])
    fingers.touch("End", [])
    after = page.locator("#drawing").get_attribute("viewBox")
    assert after
    assert float(after.split()[2]) < float(before.split()[2])
    assert read(panel)["openings"][0]["rect"] == [40, 40, 40, 40]
    expect(page.locator("#saved")).to_contain_text("rev 1")


def test_wheel_space_and_keys_move_the_view_and_change_nothing(page: Page, opened, read) -> None:
    panel, mouse = opened(), Mouse(page)
    view = page.locator("#drawing")
    home = view.get_attribute("viewBox")
    assert home
    mouse.move(120, 72)
    page.mouse.wheel(0, -240)
    expect(view).not_to_have_attribute("viewBox", home)
    view.focus()
    page.keyboard.press("0")
    expect(view).to_have_attribute("viewBox", home)
    page.keyboard.down(" ")
    mouse.drag(120, 72, 150, 72)
    page.keyboard.up(" ")
    expect(view).not_to_have_attribute("viewBox", home)
    page.keyboard.press("0")
    expect(view).to_have_attribute("viewBox", home)
    assert read(panel)["openings"] == []
    expect(page.locator("#saved")).to_contain_text("rev 1")
