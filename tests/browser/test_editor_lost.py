"""Ways in which something drawn or typed could be lost, found by people who tried the editor; none may be again."""

import httpx
import pytest
from hand import Mouse, panel_of, saved, screen
from playwright.sync_api import BrowserContext, Page, Route, expect
from test_editor_hand import draw, inches, plain
from test_editor_ledger import deaf

pytestmark = [pytest.mark.browser, pytest.mark.usefixtures("panel")]

OPENINGS = [
    {"mark": "W1", "use": "window", "rect": [20, 30, 30, 40]},
    {"mark": "W2", "use": "window", "rect": [90, 30, 30, 40]},
]
AWAY = ("ERR_", "htmx:sendError", "htmx:afterRequest", "Failed to fetch")


@pytest.fixture
def panel(page: Page, server) -> str:
    made: str = server.create(plain(OPENINGS))["walls"][0]["panels"][0]
    deaf(page)
    page.goto(f"/panels/{made}")
    return made


@pytest.fixture
def away(context: BrowserContext, troubles):
    """The line to the server, cut and joined again."""
    for trouble in AWAY:
        troubles.expect(trouble)
    return context.set_offline


def rects(server, panel: str) -> dict[str, list[float]]:
    return {one["mark"]: inches(one["rect"]) for one in panel_of(server.address, panel)["openings"]}


def card_of(page: Page, mark: str) -> None:
    page.locator(f'[data-choose="openings/{mark}"]').click()
    expect(page.locator("#card h2")).to_have_text(f"{mark}, window")


def test_a_drag_that_begins_over_chosen_letters_is_a_drag(page: Page, server, panel: str) -> None:
    page.evaluate("getSelection().selectAllChildren(document.getElementById('layer-letters'))")
    for revision, (x, y) in enumerate(((140, 40), (180, 40), (140, 100), (180, 100)), 2):
        draw(page, "o")
        Mouse(page).drag(x, y, x + 25, y + 30)
        saved(page, revision)
    assert page.evaluate("getSelection().toString()").strip() == ""
    assert len(rects(server, panel)) == 6


def test_eight_pages_of_one_browser_do_not_hold_each_other_up(context: BrowserContext, server, troubles) -> None:
    panel: str = server.create(plain(OPENINGS))["walls"][0]["panels"][0]
    pages = [context.new_page() for _ in range(8)]
    for one in pages:
        troubles.watch(one)
        one.goto(f"/panels/{panel}")
    pages[0].locator("#drawing").focus()
    for key in ("ArrowRight", "ArrowRight", "Shift+ArrowRight"):
        pages[0].keyboard.press(key)
    saved(pages[0], 2)
    for one in pages:
        expect(one.locator("#revision")).to_have_attribute("data-revision", "2", timeout=3000)


def test_what_could_not_be_looked_at_holds_up_no_edit(page: Page, away, server, panel: str) -> None:
    away(True)
    page.get_by_label("Liner sheets").click()
    expect(page.get_by_label("Liner sheets")).not_to_be_checked()
    away(False)
    page.keyboard.down("Alt")
    Mouse(page).drag(35, 50, 47, 50)
    page.keyboard.up("Alt")
    saved(page, 2)
    assert abs(rects(server, panel)["W1"][0] - 32) < 0.5


def test_delete_removes_the_thing_that_is_chosen_now(page: Page, server, panel: str) -> None:
    page.locator("#drawing").focus()
    for key in ("ArrowRight", "ArrowRight"):
        page.keyboard.press(key)
    expect(page.locator("#card h2")).to_have_text("W1, window")
    unanswered: list[Route] = []
    page.route("**/card?*", lambda route: unanswered.append(route), times=1)
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Delete")
    saved(page, 2)
    assert unanswered
    assert list(rects(server, panel)) == ["W1"]


def test_dimensions_typed_while_the_server_is_away_keep_their_own(page: Page, away, server, panel: str) -> None:
    card_of(page, "W1")
    away(True)
    page.locator("#drawing").focus()
    page.keyboard.press("Shift+ArrowUp")
    expect(page.locator("#held")).to_contain_text("1 change")
    for name, text in (("width", "23"), ("left", "25")):
        page.locator(f'#own-dimensions [data-dimension="{name}"] text').click()
        page.keyboard.type(text)
        page.keyboard.press("Enter")
        page.keyboard.press("Escape")
    away(False)
    saved(page, 4)
    assert rects(server, panel)["W1"] == [25, 30.0625, 23, 40]


def test_a_value_typed_and_not_set_outlives_a_look_elsewhere(page: Page, server, panel: str) -> None:
    card_of(page, "W1")
    page.get_by_label("Width", exact=True).fill("31")
    page.get_by_label("Dimensions").uncheck()
    page.locator("#drawing").focus()
    page.keyboard.press("Shift+ArrowUp")
    saved(page, 2)
    page.wait_for_timeout(500)
    expect(page.get_by_label("Width", exact=True)).to_have_value("31")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#card h2")).to_have_text("W2, window")
    page.keyboard.press("ArrowLeft")
    expect(page.locator("#card h2")).to_have_text("W1, window")
    expect(page.get_by_label("Width", exact=True)).to_have_value("31")
    page.get_by_label("Width", exact=True).press("Enter")
    saved(page, 3)
    assert rects(server, panel)["W1"] == [20, 30.0625, 31, 40]
    page.wait_for_timeout(400)
    page.keyboard.press("Escape")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#card h2")).to_have_text("W2, window")
    page.keyboard.press("ArrowLeft")
    expect(page.get_by_label("Width", exact=True)).to_have_value("31")
    expect(page.locator("#card small").filter(has_text="= 2'-7\"")).to_have_count(1)


def test_what_waits_behind_a_refused_change_outlives_a_reload(page: Page, troubles, server, panel: str) -> None:
    troubles.expect("422")
    unanswered: list[Route] = []
    page.route("**/edits", lambda route: unanswered.append(route), times=1)
    page.keyboard.down("Alt")
    Mouse(page).drag(35, 50, 95, 50)
    Mouse(page).drag(105, 50, 125, 50)
    page.keyboard.up("Alt")
    unanswered[0].continue_()
    expect(page.locator("#held")).to_contain_text("1 change behind this one")
    page.reload()
    saved(page, 2)
    assert abs(rects(server, panel)["W2"][0] - 110) < 0.5


def test_what_waits_while_saving_outlives_a_reload(page: Page, server, panel: str) -> None:
    unanswered: list[Route] = []
    page.route("**/edits", lambda route: unanswered.append(route), times=1)
    page.keyboard.down("Alt")
    Mouse(page).drag(35, 50, 47, 50)
    Mouse(page).drag(105, 50, 125, 50)
    page.keyboard.up("Alt")
    assert unanswered
    page.reload()
    saved(page, 3)
    found = rects(server, panel)
    assert abs(found["W1"][0] - 32) < 0.5
    assert abs(found["W2"][0] - 110) < 0.5


def open_table(page: Page) -> None:
    page.locator("#drawing").focus()
    page.keyboard.press("t")
    expect(page.locator("#table tr[data-key]").first).to_be_visible()


def cell(page: Page, key: str, name: str):
    return page.get_by_label(f"{name} of {key}", exact=True)


def test_a_cell_typed_while_its_row_is_under_way_stays_to_be_set(page: Page, away, server, panel: str) -> None:
    open_table(page)
    away(True)
    cell(page, "openings/W1", "width").fill("31")
    cell(page, "openings/W1", "width").press("Enter")
    cell(page, "openings/W1", "height").fill("33")
    cell(page, "openings/W2", "mark").focus()
    away(False)
    saved(page, 2)
    page.wait_for_timeout(700)
    expect(cell(page, "openings/W1", "height")).to_have_value("33")
    cell(page, "openings/W1", "height").press("Enter")
    saved(page, 3)
    assert rects(server, panel)["W1"] == [20, 30, 31, 33]


def test_a_fixing_does_not_take_the_place_of_another(page: Page, troubles, server) -> None:
    troubles.expect("422")
    fixings = [{"line": [[x, 0], [x, 144]], "by": "glue"} for x in (60, 120)]
    panel: str = server.create(plain(OPENINGS, fixings=fixings))["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    open_table(page)
    cell(page, "fixings/0", "mark").fill("2")
    cell(page, "fixings/0", "mark").press("Enter")
    expect(page.locator("#notice")).to_contain_text("mark: found")
    assert panel_of(server.address, panel)["fixings"] == fixings
    cell(page, "fixings/0", "mark").fill("")
    cell(page, "fixings/0", "use").fill("tape")
    cell(page, "fixings/0", "use").press("Enter")
    saved(page, 2)
    assert [one["by"] for one in panel_of(server.address, panel)["fixings"]] == ["tape", "glue"]


def test_a_drawing_that_is_refused_can_be_mended(page: Page, troubles, server, panel: str) -> None:
    troubles.expect("422")
    mouse = Mouse(page)
    page.get_by_label("Meet lines when drawing and dragging").uncheck()
    draw(page, "p")
    for x, y in ((140, 40), (180, 80), (180, 40), (140, 80), (140, 40)):
        mouse.press(x, y)
    expect(page.locator("#notice")).to_contain_text("Not changed.")
    expect(page.locator("#drawing.drawing-now")).to_have_count(1)
    page.locator("#drawing").focus()
    for _ in range(3):
        page.keyboard.press("Backspace")
    for x, y in ((180, 40), (180, 80), (140, 40)):
        mouse.press(x, y)
    saved(page, 2)
    assert len(panel_of(server.address, panel)["openings"][2]["polygon"]) == 3


def test_rows_put_in_are_not_put_in_twice(page: Page, server, panel: str) -> None:
    open_table(page)
    page.get_by_role("button", name="Paste rows").click()
    page.get_by_label("Rows with tabs").fill("opening\t\twindow\trect\t140\t30\t20\t20")
    expect(page.locator("#pasted-look")).to_contain_text("Adds W3.")
    page.get_by_role("button", name="Put them in").click()
    saved(page, 2)
    expect(page.locator("#pasting")).to_be_hidden()
    assert page.locator("#pasted").input_value() == ""
    assert len(rects(server, panel)) == 3


def test_rows_looked_at_are_looked_at_again_when_the_panel_changes(page: Page, server, panel: str) -> None:
    page.unroute("**/events")
    page.reload()
    open_table(page)
    page.get_by_role("button", name="Paste rows").click()
    page.get_by_label("Rows with tabs").fill("opening\tW1\twindow\trect\t24\t30\t30\t40")
    expect(page.locator("#pasted-look")).to_contain_text("Changes W1.")
    patch = {"openings": [OPENINGS[1]]}
    headers = {"if-match": '"rev-1"', "content-type": "application/merge-patch+json"}
    answer = httpx.patch(f"{server.address}/api/panels/{panel}", json=patch, headers=headers)
    assert answer.status_code == 200, answer.text
    expect(page.locator("#pasted-look")).to_contain_text("Adds W1.")


def test_a_digit_that_zooms_at_rest_types_while_drawing(page: Page) -> None:
    home = page.locator("#drawing").get_attribute("viewBox")
    page.locator("#drawing").focus()
    page.keyboard.press("+")
    nearer = page.locator("#drawing").get_attribute("viewBox")
    assert nearer != home
    draw(page, "o")
    page.keyboard.type("0")
    expect(page.locator("#typing input").first).to_have_value("0")
    assert page.locator("#drawing").get_attribute("viewBox") == nearer


def test_a_shape_chosen_in_the_table_waits_for_its_sizes(page: Page, server, panel: str) -> None:
    open_table(page)
    cell(page, "openings/W1", "shape").select_option("circle")
    page.wait_for_timeout(700)
    expect(cell(page, "openings/W1", "shape")).to_have_value("circle")
    cell(page, "openings/W1", "more").fill("12")
    cell(page, "openings/W1", "x").fill("40")
    cell(page, "openings/W1", "y").fill("50")
    cell(page, "openings/W1", "y").press("Enter")
    saved(page, 2)
    assert inches(panel_of(server.address, panel)["openings"][0]["circle"]) == [40, 50, 12]


def test_a_polygon_is_closed_by_a_finger_that_meets_no_lines(page: Page, server, panel: str) -> None:
    page.get_by_label("Meet lines when drawing and dragging").uncheck()
    draw(page, "p")
    for x, y in ((140, 40), (180, 40), (180, 80)):
        Mouse(page).press(x, y)
    page.mouse.click(*[at + 4 for at in screen(page, 140, 40)])
    saved(page, 2)
    assert len(panel_of(server.address, panel)["openings"][2]["polygon"]) == 3


def test_the_narrow_page_keeps_a_drawing_beside_the_table(page: Page) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    open_table(page)
    box = page.locator("#drawing").bounding_box()
    assert box is not None
    assert box["height"] >= 150


def test_help_on_a_count_is_reached_by_keyboard(page: Page) -> None:
    page.locator("#counts .term", has_text="trimmed").focus()
    page.keyboard.press("F1")
    expect(page.locator("#term-help")).to_contain_text("A brick that is cut to its place")


def test_the_card_that_is_shown_is_of_the_thing_chosen_last(page: Page) -> None:
    unanswered: list[Route] = []
    page.route("**/card?*", lambda route: unanswered.append(route), times=1)
    page.locator('[data-choose="openings/W1"]').click()
    page.locator('[data-choose="openings/W2"]').click()
    page.locator("summary", has_text="Advice").first.click()
    unanswered[0].continue_()
    expect(page.locator("#card h2")).to_have_text("W2, window")
