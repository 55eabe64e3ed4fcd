"""A panel built with the keyboard alone: no pointer, and nothing chosen, filled in or pressed for it."""

import pytest
from hand import panel_of, saved
from playwright.sync_api import Page, expect
from test_editor_hand import inches, plain

pytestmark = pytest.mark.browser


class Keyboard:
    """What a person types, waiting where a person would look."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def press(self, *keys: str) -> None:
        for key in keys:
            self.page.keyboard.press(key)

    def lengths(self, *texts: str) -> None:
        """Lengths typed into the box beside what is drawn, then Enter."""
        for k, text in enumerate(texts):
            if k:
                self.press("Tab")
            self.page.keyboard.type(text)
        self.press("Enter")
        expect(self.page.locator("#typing")).to_be_hidden()

    def to_drawing(self) -> None:
        for _ in range(40):
            if self.page.evaluate("document.activeElement.id") == "drawing":
                return
            self.press("Tab")
        raise AssertionError("the drawing is not reached by Tab")


def test_a_panel_of_five_openings_is_built_by_keyboard_alone(page: Page, server) -> None:
    panel: str = server.create(plain())["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    hand = Keyboard(page)
    hand.to_drawing()
    for revision, (x, y) in enumerate((("20", "30"), ("70", "30")), 2):
        hand.press("o")
        hand.lengths(x, y)
        hand.lengths("2'-6\"", "3'-4\"")
        saved(page, revision)
        expect(page.locator("#card h2")).to_have_text(f"W{revision - 1}, window")
    hand.press("a")
    for lengths in (("110", "20"), ("30", "60"), ("10",)):
        hand.lengths(*lengths)
    saved(page, 4)
    hand.press("c")
    hand.lengths("170", "100")
    hand.lengths("12 1/2")
    saved(page, 5)
    hand.press("p")
    hand.lengths("180", "20")
    for across, up in (("40", "0"), ("0", "30"), ("-20", "10")):
        hand.page.keyboard.type("0")
        hand.press("Backspace", "Tab")
        hand.page.keyboard.type(across)
        hand.press("Tab")
        hand.page.keyboard.type(up)
        hand.press("Enter")
        expect(page.locator("#typing")).to_be_hidden()
    hand.press("Enter")
    saved(page, 6)
    hand.press("z")
    hand.lengths("20", "80")
    hand.lengths("40", "16")
    saved(page, 7)
    hand.press("s")
    hand.lengths("0", "125")
    hand.lengths("240")
    hand.press("Enter")
    saved(page, 8)
    found = panel_of(server.address, panel)
    shapes = [next(iter(one.keys() - {"mark", "use"})) for one in found["openings"]]
    assert shapes == ["rect", "rect", "arch", "circle", "polygon"]
    assert [one["mark"] for one in found["openings"]] == ["W1", "W2", "W3", "V1", "L1"]
    assert found["openings"][0]["rect"] == ["20", "30", "2'-6\"", "3'-4\""]
    assert inches(found["openings"][2]["arch"]) == [110, 20, 30, 60, 10]
    assert inches(found["openings"][3]["circle"]) == [170, 100, 12.5]
    assert [inches(point) for point in found["openings"][4]["polygon"]] == [[180, 20], [220, 20], [220, 50], [200, 60]]
    assert inches(found["zones"][0]["rect"]) == [20, 80, 40, 16]
    assert [inches(point) for point in found["strips"][0]["line"]] == [[0, 125], [240, 125]]


def test_things_are_gone_through_moved_set_removed_and_taken_back(page: Page, server) -> None:
    openings = [{"mark": f"W{k}", "use": "window", "rect": [20 + 60 * k, 30, 30, 40]} for k in range(3)]
    panel: str = server.create(plain(openings))["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    hand = Keyboard(page)
    hand.to_drawing()
    hand.press("ArrowRight", "ArrowRight", "ArrowRight")
    expect(page.locator("#live")).to_have_text("W1, window, 2'-6\" x 3'-4\", 2 of 3")
    expect(page.locator("#card h2")).to_have_text("W1, window")
    hand.press("Shift+ArrowUp")
    saved(page, 2)
    hand.press("Enter")
    expect(page.locator("#card input:not([type=hidden])").first).to_be_focused()
    hand.press("Control+a")
    page.keyboard.type("7'")
    hand.press("Enter")
    saved(page, 3)
    hand.press("Escape")
    expect(page.locator("#drawing")).to_be_focused()
    hand.press("Delete")
    saved(page, 4)
    expect(page.locator("#drawing")).to_be_focused()
    hand.press("Control+z")
    saved(page, 5)
    found = panel_of(server.address, panel)["openings"]
    assert [one["mark"] for one in found] == ["W0", "W1", "W2"]
    assert inches(found[1]["rect"]) == [84, 30.0625, 30, 40]
    hand.press("t")
    expect(page.locator('#table input[name="mark"]').first).to_be_focused()
    hand.press("Escape")
    expect(page.locator("#drawing")).to_be_focused()
