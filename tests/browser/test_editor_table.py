"""The table below the drawing: sorted, typed into, pasted into in one step, and in step with what is chosen."""

import pytest
from hand import Mouse, panel_of, saved, screen
from playwright.sync_api import BrowserContext, Page, expect
from test_editor_hand import inches, plain

OPENINGS = [
    {"mark": "W1", "use": "window", "rect": [90, 30, 30, 40]},
    {"mark": "W2", "use": "window", "rect": [20, 30, 30, 40]},
    {"mark": "W10", "use": "window", "rect": [150, 60, 30, 40]},
]


pytestmark = [pytest.mark.browser, pytest.mark.usefixtures("panel")]


@pytest.fixture
def panel(page: Page, server) -> str:
    made: str = server.create(plain(OPENINGS))["walls"][0]["panels"][0]
    page.goto(f"/panels/{made}")
    page.locator("#drawing").focus()
    page.keyboard.press("t")
    expect(page.locator("#table tr[data-key]")).to_have_count(3)
    return made


def marks(page: Page) -> list[str]:
    found: list[str] = page.locator('#table input[name="mark"]').evaluate_all("all => all.map(one => one.value)")
    return found


def cell(page: Page, key: str, name: str):
    return page.get_by_label(f"{name} of {key}", exact=True)


def test_rows_are_sorted_by_length_and_by_mark(page: Page) -> None:
    head = page.get_by_role("columnheader", name="Left")
    head.get_by_role("button").click()
    assert marks(page) == ["W2", "W1", "W10"]
    expect(head).to_have_attribute("aria-sort", "ascending")
    head.get_by_role("button").click()
    assert marks(page) == ["W10", "W1", "W2"]
    page.get_by_role("columnheader", name="Mark").get_by_role("button").click()
    assert marks(page) == ["W1", "W2", "W10"]


def test_a_cell_is_typed_into_and_the_row_below_is_next(page: Page, server, panel: str) -> None:
    width = cell(page, "openings/W1", "width")
    width.focus()
    width.fill("2'-7 1/2\"")
    page.keyboard.press("Enter")
    expect(cell(page, "openings/W2", "width")).to_be_focused()
    saved(page, 2)
    assert panel_of(server.address, panel)["openings"][0]["rect"] == [90, 30, "2'-7 1/2\"", 40]
    page.wait_for_timeout(600)
    expect(cell(page, "openings/W1", "width")).to_have_value("2'-7 1/2\"")
    expect(cell(page, "openings/W2", "width")).to_be_focused()
    page.keyboard.press("ArrowUp")
    expect(cell(page, "openings/W1", "width")).to_be_focused()
    expect(page.locator("#undo")).to_contain_text("Undo: Set W1")


def test_a_cell_that_cannot_be_is_marked_and_keeps_what_was_typed(page: Page, troubles, server, panel: str) -> None:
    troubles.expect("422")
    width = cell(page, "openings/W1", "width")
    width.fill("2'-14")
    width.press("Enter")
    expect(width).to_have_attribute("aria-invalid", "true")
    expect(width).to_be_focused()
    expect(width).to_have_value("2'-14")
    expect(page.locator("#notice")).to_contain_text("width: found")
    page.wait_for_timeout(600)
    expect(width).to_have_value("2'-14")
    page.keyboard.press("Escape")
    expect(width).to_have_value("2'-6\"")
    assert panel_of(server.address, panel)["openings"][0]["rect"] == [90, 30, 30, 40]


def test_what_is_chosen_in_one_is_chosen_in_the_other(page: Page) -> None:
    cell(page, "openings/W10", "mark").focus()
    expect(page.locator('[data-thing="openings/W10"]')).to_have_class("thing is-opening chosen")
    expect(page.locator("#card h2")).to_have_text("W10, window")
    expect(page.locator("#live")).to_have_text("W10, window, 2'-6\" x 3'-4\", 3 of 3")
    page.mouse.click(*screen(page, 35, 50))
    expect(page.locator('tr[data-key="openings/W2"]')).to_have_attribute("aria-selected", "true")
    expect(page.locator('tr[aria-selected="true"]')).to_have_count(1)
    Mouse(page).press(230, 140)
    expect(page.locator('tr[aria-selected="true"]')).to_have_count(0)


HEADS = "Mark\tUse\tShape\tLeft\tFoot\tWidth\tHeight\tRadius"
PASTED = f"{HEADS}\nW1\twindow\trect\t92\t30\t30\t40\t\nV1\tvent\tcircle\t220\t20\t\t\t6\n"


def test_rows_are_pasted_looked_at_and_put_in_as_one_step(
    page: Page, context: BrowserContext, server, panel: str
) -> None:
    context.grant_permissions(["clipboard-read", "clipboard-write"])
    before = panel_of(server.address, panel)
    page.evaluate("text => navigator.clipboard.writeText(text)", PASTED)
    cell(page, "openings/W1", "mark").focus()
    page.keyboard.press("Control+v")
    look = page.locator("#pasted-look")
    expect(look).to_contain_text("Changes W1; adds V1.")
    expect(look).to_contain_text("cut")
    assert panel_of(server.address, panel) == before
    page.get_by_role("button", name="Put them in").click()
    saved(page, 2)
    after = panel_of(server.address, panel)["openings"]
    assert inches(after[0]["rect"]) == [92, 30, 30, 40]
    assert after[3] == {"mark": "V1", "use": "vent", "circle": ["220", "20", "6"]}
    page.locator("#undo").click()
    saved(page, 3)
    assert panel_of(server.address, panel) == before


def test_pasted_rows_with_faults_say_where(page: Page) -> None:
    page.get_by_role("button", name="Paste rows").click()
    page.get_by_label("Rows with tabs").fill("opening\tW1\twindow\trect\t1\t2\tx\t4\nroof\tA")
    look = page.locator("#pasted-look")
    expect(look).to_contain_text("Not possible yet: 2 faults.")
    expect(look).to_contain_text("row 1, width: 'x'")
    expect(look).to_contain_text("row 2, kind: 'roof'")


def test_all_rows_copied_come_back_unchanged(page: Page, context: BrowserContext) -> None:
    context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.get_by_role("button", name="Copy all rows").click()
    expect(page.locator("#live")).to_have_text("3 rows copied")
    text = page.evaluate("() => navigator.clipboard.readText()")
    page.get_by_role("button", name="Paste rows").click()
    page.get_by_label("Rows with tabs").fill(text)
    expect(page.locator("#pasted-look")).to_contain_text("Changes nothing.")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_open_table_fits_and_axe_finds_nothing(page: Page, axe, scheme: str) -> None:
    page.emulate_media(color_scheme=scheme)
    page.get_by_role("button", name="Paste rows").click()
    assert axe(page) == []
    page.set_viewport_size({"width": 1024, "height": 700})
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    box = page.locator("#drawing").bounding_box()
    assert box
    assert box["height"] > 200


def test_a_row_that_another_has_changed_is_not_set_back(page: Page, browser, troubles, server, panel: str) -> None:
    """Typed in a row while somebody else moves its opening: told, and what they did stays."""
    troubles.expect("412")
    width = cell(page, "openings/W1", "width")
    width.fill("31")
    context = browser.new_context(base_url=server.address, viewport={"width": 1440, "height": 900})
    other = context.new_page()
    other.goto(f"/panels/{panel}")
    other.keyboard.down("Alt")
    Mouse(other).drag(105, 50, 117, 50)
    other.keyboard.up("Alt")
    saved(other, 2)
    saved(page, 2)
    theirs = panel_of(server.address, panel)
    expect(width).to_have_value("31")
    width.press("Enter")
    expect(page.locator("#notice")).to_contain_text("W1 moved")
    assert panel_of(server.address, panel) == theirs
    context.close()


def test_quick_changes_of_one_row_and_of_the_next_are_all_kept(page: Page, server, panel: str) -> None:
    width = cell(page, "openings/W1", "width")
    width.fill("31")
    width.press("Enter")
    cell(page, "openings/W2", "width").fill("32")
    page.keyboard.press("Enter")
    saved(page, 3)
    width.fill("33")
    width.press("Enter")
    saved(page, 4)
    openings = panel_of(server.address, panel)["openings"]
    assert [inches(one["rect"])[2] for one in openings[:2]] == [33, 32]
