"""Dimensions pressed and typed; openings chosen together, lined up, spaced, copied, mirrored and repeated."""

from typing import Any

import pytest
from hand import Mouse, panel_of, saved, screen
from playwright.sync_api import Page, expect
from test_editor_hand import inches, plain

pytestmark = pytest.mark.browser

OPENINGS = [
    {"mark": "W1", "use": "window", "rect": [20, 30, 30, 40]},
    {"mark": "W2", "use": "window", "rect": [75, 36, 30, 40]},
    {"mark": "W3", "use": "window", "rect": [190, 41, 30, 40]},
]


@pytest.fixture
def panel(page: Page, server) -> str:
    made: str = server.create(plain(OPENINGS))["walls"][0]["panels"][0]
    page.goto(f"/panels/{made}")
    return made


def rects(server, panel: str) -> dict[str, list[float]]:
    return {one["mark"]: inches(one["rect"]) for one in panel_of(server.address, panel)["openings"]}


def choose(page: Page, *places: tuple[float, float]) -> None:
    for k, (x, y) in enumerate(places):
        page.mouse.move(*screen(page, x, y))
        if k:
            page.keyboard.down("Shift")
        page.mouse.down()
        page.mouse.up()
    page.keyboard.up("Shift")


def dimension(page: Page, name: str) -> Any:
    return page.locator(f'#own-dimensions [data-dimension="{name}"]')


def test_a_dimension_is_pressed_and_typed(page: Page, troubles, server, panel: str) -> None:
    troubles.expect("422")
    choose(page, (35, 50))
    expect(dimension(page, "width")).to_contain_text("2'-6\"")
    dimension(page, "width").locator("text").click()
    page.keyboard.type("2'-7 1/2\"")
    page.keyboard.press("Enter")
    saved(page, 2)
    assert panel_of(server.address, panel)["openings"][0]["rect"] == [20, 30, "2'-7 1/2\"", 40]
    dimension(page, "left").locator("text").click()
    page.keyboard.type("500")
    page.keyboard.press("Enter")
    box = page.locator("#dimension")
    expect(box.locator("small")).to_contain_text("expected")
    expect(box.locator("input")).to_have_value("500")
    page.keyboard.press("Escape")
    expect(box).to_be_hidden()
    saved(page, 2)


def test_a_dimension_is_reached_and_typed_by_keyboard(page: Page, server, panel: str) -> None:
    page.locator("#drawing").focus()
    for key in ("ArrowRight", "ArrowRight", "d", "ArrowRight", "ArrowRight", "Enter"):
        page.keyboard.press(key)
    page.keyboard.type("2'")
    page.keyboard.press("Enter")
    saved(page, 2)
    assert panel_of(server.address, panel)["openings"][0]["rect"] == ["2'", 30, 30, 40]
    expect(page.locator("#drawing")).to_be_focused()


def test_the_panels_own_width_is_typed(page: Page, server, panel: str) -> None:
    page.locator("#drawing").focus()
    for key in ("ArrowRight", "d", "Enter"):
        page.keyboard.press(key)
    page.keyboard.type("21'")
    page.keyboard.press("Enter")
    saved(page, 2)
    assert [inches(point) for point in panel_of(server.address, panel)["outline"]] == [
        [0, 0],
        [252, 0],
        [252, 144],
        [0, 144],
    ]


def test_three_are_lined_up_spaced_and_moved_together(page: Page, server, panel: str) -> None:
    choose(page, (35, 50), (90, 50), (205, 60))
    expect(page.locator("#card h2")).to_have_text("3 openings")
    expect(page.locator("#live")).to_contain_text("3 chosen")
    page.get_by_role("button", name="Line up").click()
    saved(page, 2)
    assert [rect[1] for rect in rects(server, panel).values()] == [30, 30, 30]
    expect(page.locator("#card h2")).to_have_text("3 openings")
    page.get_by_role("button", name="Space evenly").click()
    saved(page, 3)
    assert [rect[0] for rect in rects(server, panel).values()] == [20, 105, 190]
    page.keyboard.down("Alt")
    Mouse(page).drag(35, 50, 35, 62)
    page.keyboard.up("Alt")
    saved(page, 4)
    feet = {rect[1] for rect in rects(server, panel).values()}
    assert len(feet) == 1
    assert abs(feet.pop() - 42) < 0.5
    expect(page.locator("#undo")).to_contain_text("Move W1, W2, W3")


def test_several_are_chosen_by_keyboard(page: Page, panel: str) -> None:
    page.goto(f"/panels/{panel}")
    page.locator("#drawing").focus()
    for key in ("ArrowRight", "ArrowRight", "m", "m"):
        page.keyboard.press(key)
    expect(page.locator("#card h2")).to_have_text("3 openings")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#card h2")).to_have_text("W2, window")


def test_one_is_repeated_in_a_grid_and_mirrored(page: Page, server) -> None:
    panel: str = server.create(plain(OPENINGS[:1]))["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    choose(page, (35, 50))
    page.get_by_text("Repeat in a grid", exact=True).click()
    for label, text in (("Columns", "3"), ("Rows", "2"), ("Clear gap across", "20"), ("Clear gap up", "1'")):
        page.get_by_label(label, exact=True).fill(text)
    page.get_by_role("button", name="Repeat", exact=True).click()
    saved(page, 2)
    found = rects(server, panel)
    assert [found[f"W{k}"][:2] for k in range(1, 7)] == [[20, 30], [70, 30], [120, 30], [20, 82], [70, 82], [120, 82]]
    page.locator("#undo").click()
    saved(page, 3)
    page.get_by_text("Mirror", exact=True).first.click()
    page.get_by_role("button", name="Mirror", exact=True).click()
    saved(page, 4)
    assert rects(server, panel) == {"W1": [190, 30, 30, 40]}
