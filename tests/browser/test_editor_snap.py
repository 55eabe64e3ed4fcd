"""What the hand meets: the mark is seen, the sentence says it, and the very place that was shown is committed."""

import re

import pytest
from hand import Fingers, Mouse, panel_of, saved, screen
from playwright.sync_api import Page, expect
from test_editor_hand import draw, inches, plain

pytestmark = pytest.mark.browser

W1 = {"mark": "W1", "use": "window", "rect": [20, 30, 30, 40]}
LOADED = re.compile(r"\d+")
EXACT = 1e-6
"""Inches: places come to the script rounded to a millionth."""


@pytest.fixture
def opened(page: Page, server):
    def opened(*openings, **more) -> str:
        panel: str = server.create(plain(list(openings), **more))["walls"][0]["panels"][0]
        page.goto(f"/panels/{panel}")
        expect(page.locator("#drawing")).to_have_attribute("data-meets", LOADED)
        return panel

    return opened


def rects(server, panel: str) -> dict[str, list[float]]:
    return {one["mark"]: inches(one["rect"]) for one in panel_of(server.address, panel)["openings"]}


def kinds(page: Page) -> list[str]:
    return page.locator("#snap-marks .snap-mark").evaluate_all("marks => marks.map(mark => mark.dataset.kind)")


def shown_again(page: Page, revision: int) -> None:
    saved(page, revision)
    expect(page.locator("#snap-marks > *")).to_have_count(0)


def test_a_sill_meets_a_course_and_the_line_says_which_and_where(page: Page, server, opened) -> None:
    """Sill on course 14: course n of modular brick (ASTM C216, 3 to 8 in.) tops out at 3/8 + 14 x 8/3 + 2 1/4 = 39.958;
    the sill stands a margin of 3/8 above it."""
    panel, mouse = opened(W1), Mouse(page)
    mouse.hold(30, 50, 30, 50 + (40.3333 - 30) + 0.4)
    expect(page.locator("#pointer")).to_contain_text("sill on course 14 = 3'-4 5/16\"")
    assert "course" in kinds(page)
    page.mouse.up()
    shown_again(page, 2)
    assert abs(rects(server, panel)["W1"][1] - (0.375 + 14 * 8 / 3 + 2.25 + 0.375)) < EXACT


def test_an_opening_stands_as_far_off_as_two_others(page: Page, server, opened) -> None:
    second = {"mark": "W2", "use": "window", "rect": [70, 30, 30, 40]}
    panel, mouse = opened(W1, second, {"mark": "W3", "use": "window", "rect": [140, 30, 30, 40]}), Mouse(page)
    mouse.hold(155, 50, 135.4, 50)
    expect(page.locator("#pointer")).to_contain_text("gap as W1 to W2 = 1'-8\"")
    assert kinds(page) == ["gap"]
    page.mouse.up()
    shown_again(page, 2)
    assert rects(server, panel)["W3"] == [120, 30, 30, 40]


def test_an_opening_stands_in_the_middle_between_two(page: Page, server, opened) -> None:
    others = [{"mark": m, "rect": [x, 30, 30, 40]} for m, x in (("W2", 70), ("W3", 190))]
    panel, mouse = opened(W1, *others, {"mark": "W4", "rect": [120, 90, 30, 40]}), Mouse(page)
    mouse.hold(135, 110, 145.4, 49)
    expect(page.locator("#pointer")).to_contain_text("middle between W2 and W3")
    page.mouse.up()
    shown_again(page, 2)
    assert rects(server, panel)["W4"][0] == 130


def test_a_jamb_lines_up_with_the_jamb_of_an_opening_over_it(page: Page, server, opened) -> None:
    panel, mouse = opened(W1, {"mark": "W2", "rect": [90, 85, 30, 40]}), Mouse(page)
    mouse.hold(105, 100, 35.5, 100)
    expect(page.locator("#pointer")).to_contain_text("left jamb of W1 = 1'-8\"")
    page.mouse.up()
    shown_again(page, 2)
    assert rects(server, panel)["W2"][0] == 20


def test_a_corner_goes_before_lines(page: Page, server, opened) -> None:
    panel, mouse = opened(W1), Mouse(page)
    draw(page, "z")
    mouse.move(49, 71)
    expect(page.locator("#pointer")).to_contain_text("upper right corner of W1 = 4'-2\", 5'-10\"")
    assert kinds(page) == ["corner"]
    page.mouse.down()
    mouse.move(90, 100)
    page.mouse.up()
    saved(page, 2)
    zone = inches(panel_of(server.address, panel)["zones"][0]["rect"])
    assert zone[:2] == [50, 70]


def test_a_strip_meets_head_joints_half_bats_and_a_zone_the_strip(page: Page, opened) -> None:
    opened(strips=[{"mark": "R1", "line": [[0, 100], [240, 100]], "width": 0.75}])
    mouse, line = Mouse(page), page.locator("#pointer")
    draw(page, "z")
    mouse.move(30, 100.2)
    expect(line).to_contain_text("R1 = 8'-")
    assert "strip" in kinds(page)
    page.keyboard.press("Escape")
    draw(page, "f")
    for _ in range(8):
        page.locator("#drawing").press("+")
    seen = set()
    for k in range(24):
        mouse.move(122 + k / 6, 72)
        seen |= set(kinds(page))
    assert {"head joint", "half bat"} <= seen


def test_a_neighbours_head_is_met(page: Page, server) -> None:
    file = plain([W1])
    beside = dict(file["walls"][0]["panels"][0], mark="P2", openings=[dict(W1, mark="D1", rect=[20, 20.3, 30, 80.1])])
    file["walls"][0]["panels"].append(beside)
    panel = server.create(file)["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    expect(page.locator("#drawing")).to_have_attribute("data-meets", LOADED)
    Mouse(page).hold(30, 50, 30, 50 + 30.9)
    expect(page.locator("#pointer")).to_contain_text("head of D1 in P2 = 8'-4 3/8\"")
    page.mouse.up()
    saved(page, 2)
    assert abs(rects(server, panel)["W1"][1] + 40 - 100.4) < EXACT


def test_alt_and_the_switch_let_go(page: Page, server, opened) -> None:
    panel, mouse = opened(W1), Mouse(page)
    page.keyboard.down("Alt")
    mouse.hold(30, 50, 41, 50)
    assert kinds(page) == []
    page.mouse.up()
    page.keyboard.up("Alt")
    saved(page, 2)
    x = rects(server, panel)["W1"][0]
    assert abs(x * 16 - round(x * 16)) < 1e-6
    page.get_by_label("Meet lines when drawing and dragging").uncheck()
    mouse.hold(x + 10, 50, x + 14, 50)
    assert kinds(page) == []
    page.keyboard.press("Escape")
    page.mouse.up()


def test_a_finger_reaches_farther_than_a_mouse(page: Page, opened) -> None:
    """A corner 20 px off: within 26 of a finger, beyond 12 of a mouse."""
    opened(W1)
    x, y = screen(page, 50, 70)
    draw(page, "z")
    page.mouse.move(x + 14, y - 14)
    assert "corner" not in kinds(page)
    fingers = Fingers(page)
    fingers.touch("Start", [(x + 14, y - 14)])
    assert kinds(page) == ["corner"]
    fingers.touch("Cancel", [])


def test_alt_and_an_arrow_go_to_the_next_line_that_is_met(page: Page, server, opened) -> None:
    panel = opened(W1)
    page.locator('[data-choose="openings/W1"]').click()
    page.locator("#drawing").focus()
    page.keyboard.press("Alt+ArrowUp")
    saved(page, 2)
    expect(page.locator("#live")).to_contain_text("course")
    foot = rects(server, panel)["W1"][1]
    courses = [0.375 + n * 8 / 3 + 2.25 + 0.375 for n in range(40)]
    heads = [0.375 + n * 8 / 3 - 0.375 - 40 for n in range(60)]
    expected = min(at for at in courses + heads if at > 30 + 1 / 64)
    assert abs(foot - expected) < EXACT


def test_a_metric_hand_comes_to_lie_on_millimetres(page: Page, server) -> None:
    file = plain([{"mark": "W1", "use": "window", "rect": ["500 mm", "700 mm", "900 mm", "1000 mm"]}])
    file["length_unit"] = "mm"
    panel_file = file["walls"][0]["panels"][0]
    panel_file |= {"outline": [[0, 0], [6000, 0], [6000, 3600], [0, 3600]], "thickness": 180}
    file["walls"][0]["joint"] = 20
    for size in file["sizes"]:
        size |= {"length": 193.675, "height": 57.15, "thickness": 15.875, "head_joint": 9.525, "per": 203.2}
    panel = server.create(file)["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    page.keyboard.down("Alt")
    Mouse(page).hold(30, 40, 33.01, 40)
    page.mouse.up()
    page.keyboard.up("Alt")
    saved(page, 2)
    x = panel_of(server.address, panel)["openings"][0]["rect"][0]
    assert abs(float(x) - round(float(x))) < 1e-6
