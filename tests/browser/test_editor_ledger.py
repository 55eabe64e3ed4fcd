"""Two people at one panel, lost connections, the history: nothing is overwritten unseen, and nothing is lost."""

from itertools import product

import httpx
import pytest
from hand import Mouse, panel_of, saved
from playwright.sync_api import BrowserContext, Page, expect
from test_editor_hand import inches, plain

pytestmark = pytest.mark.browser

OPENINGS = [
    {"mark": "W1", "use": "window", "rect": [20, 30, 30, 40]},
    {"mark": "W2", "use": "window", "rect": [90, 30, 30, 40]},
]
ACTS = ("move", "dimension", "delete")


@pytest.fixture
def panel(server) -> str:
    made: str = server.create(plain(OPENINGS))["walls"][0]["panels"][0]
    return made


@pytest.fixture
def other(browser, server, troubles):
    """A second person, with a name and a browser of their own."""
    context = browser.new_context(base_url=server.address, viewport={"width": 1440, "height": 900}, locale="en-US")
    page = context.new_page()
    troubles.watch(page)
    yield page
    context.close()


def named(page: Page, panel: str, name: str) -> None:
    page.goto(f"/panels/{panel}")
    page.get_by_text("History", exact=True).click()
    page.get_by_label("Your name in the history").fill(name)
    with page.expect_navigation():
        page.get_by_role("button", name="Use this name").click()


def deaf(page: Page) -> None:
    """Hears no hints, so that it acts on what it shows."""
    page.route("**/events", lambda route: route.fulfill(status=204))


def choose(page: Page) -> None:
    page.locator('[data-choose="openings/W1"]').click()
    expect(page.locator("#card h2")).to_have_text("W1, window")


def act(page: Page, kind: str, dx: float = 12) -> None:
    """One of the three changes of W1."""
    if kind == "move":
        page.keyboard.down("Alt")
        Mouse(page).drag(35, 50, 35 + dx, 50)
        page.keyboard.up("Alt")
        return
    if kind == "dimension":
        page.get_by_label("Width", exact=True).fill(f"{30 + dx / 4} in")
        page.get_by_label("Width", exact=True).press("Enter")
    else:
        page.get_by_role("button", name="Remove W1").click()


SAID = {"move": "W1 moved", "dimension": "W1", "delete": "W1 removed"}


@pytest.mark.parametrize(("first", "second"), list(product(ACTS, ACTS)))
def test_the_second_of_two_changes_of_one_opening_is_told_and_overwrites_nothing(
    page: Page, other: Page, troubles, server, panel: str, first: str, second: str
) -> None:
    troubles.expect("412")
    for one in (page, other):
        deaf(one)
        one.goto(f"/panels/{panel}")
        choose(one)
    act(page, first)
    saved(page, 2)
    theirs = panel_of(server.address, panel)
    act(other, second, 20)
    notice = other.locator("#notice")
    expect(notice).to_contain_text("Not saved: someone saved this panel first.")
    expect(notice).to_contain_text(
        f"Changed in the meantime: opening {SAID[first]}" if first == "delete" else SAID[first]
    )
    expect(notice).to_contain_text("Yours: ")
    expect(notice.get_by_role("button", name="Put mine on top")).to_have_count(0)
    assert panel_of(server.address, panel) == theirs
    notice.get_by_role("button", name="Drop mine, show theirs").click()
    saved(other, 2)
    expect(other.locator('[data-thing="openings/W1"]')).to_have_count(0 if first == "delete" else 1)


@pytest.mark.parametrize("first", ACTS)
def test_changes_of_two_openings_are_both_kept(
    page: Page, other: Page, troubles, server, panel: str, first: str
) -> None:
    troubles.expect("412")
    for one in (page, other):
        deaf(one)
        one.goto(f"/panels/{panel}")
        choose(one)
    act(page, first)
    saved(page, 2)
    other.keyboard.down("Alt")
    Mouse(other).drag(105, 50, 125, 50)
    other.keyboard.up("Alt")
    other.locator("#notice").get_by_role("button", name="Put mine on top").click()
    saved(other, 3)
    rects = {one["mark"]: inches(one["rect"]) for one in panel_of(server.address, panel)["openings"]}
    assert abs(rects["W2"][0] - 110) < 0.5
    assert ("W1" in rects) == (first != "delete")


def test_a_change_of_another_is_seen_within_two_seconds_and_what_is_typed_stays(
    page: Page, other: Page, troubles, server, panel: str
) -> None:
    troubles.expect("412")
    named(page, panel, "north desk")
    other.goto(f"/panels/{panel}")
    other.locator('[data-choose="openings/W2"]').click()
    expect(other.locator("#card h2")).to_have_text("W2, window")
    width = other.get_by_label("Width", exact=True)
    width.fill("31")
    act(page, "move")
    saved(page, 2)
    expect(other.locator("#revision")).to_have_attribute("data-revision", "2", timeout=2000)
    expect(other.locator("#others")).to_contain_text("north desk: Move W1 1'-0\" right, rev 2")
    shapes = [one.locator('[data-thing="openings/W1"]').get_attribute("d") for one in (page, other)]
    assert shapes[0] == shapes[1]
    expect(width).to_have_value("31")
    expect(width).to_be_focused()
    other.keyboard.press("End")
    other.keyboard.type(" 1/2")
    other.keyboard.press("Enter")
    other.locator("#notice").get_by_role("button", name="Put mine on top").click()
    saved(other, 3)
    saved(page, 3)
    assert inches(panel_of(server.address, panel)["openings"][1]["rect"])[2] == 31.5


def test_a_change_of_another_waits_while_the_hand_is_at_it(page: Page, other: Page, panel: str) -> None:
    page.goto(f"/panels/{panel}")
    other.goto(f"/panels/{panel}")
    mouse = Mouse(other)
    mouse.hold(105, 50, 112, 50)
    act(page, "move")
    saved(page, 2)
    other.wait_for_timeout(400)
    saved(other, 1)
    other.keyboard.press("Escape")
    saved(other, 2)
    other.mouse.up()


def test_undo_takes_nothing_that_another_has_touched_since(
    page: Page, other: Page, troubles, server, panel: str
) -> None:
    troubles.expect("409")
    named(page, panel, "north desk")
    named(other, panel, "south desk")
    act(page, "move")
    saved(other, 2)
    choose(other)
    act(other, "dimension")
    saved(page, 3)
    theirs = panel_of(server.address, panel)
    page.locator("#undo").click()
    expect(page.locator("#notice")).to_contain_text("Cannot undo “Move W1")
    expect(page.locator("#notice")).to_contain_text("touched since")
    assert panel_of(server.address, panel) == theirs
    other.locator("#undo").click()
    saved(other, 4)
    saved(page, 4)
    page.locator("#undo").click()
    saved(page, 5)
    assert inches(panel_of(server.address, panel)["openings"][0]["rect"]) == [20, 30, 30, 40]


def test_changes_are_held_while_the_server_is_away_and_sent_once_in_order(
    context: BrowserContext, page: Page, troubles, panel: str
) -> None:
    for trouble in ("ERR_", "htmx:sendError", "htmx:afterRequest"):
        troubles.expect(trouble)
    deaf(page)
    page.goto(f"/panels/{panel}")
    context.set_offline(True)
    Mouse(page).drag(35, 50, 47, 50)
    expect(page.locator("#saved")).to_contain_text("Not saved: no answer from the server")
    Mouse(page).drag(105, 50, 125, 50)
    expect(page.locator("#held")).to_contain_text("2 changes held here, also over a reload of this page")
    saved(page, 1)
    context.set_offline(False)
    saved(page, 3)
    expect(page.locator("#held")).to_be_empty()
    expect(page.locator("#saved")).to_contain_text("rev 3")
    labels = [row.split()[1] for row in labels_of(page, panel)]
    assert labels == ["W2", "W1"], "newest first"


def labels_of(page: Page, panel: str) -> list[str]:
    page.goto(f"/panels/{panel}")
    page.get_by_text("History", exact=True).click()
    rows = page.locator("#log tbody tr td:last-child")
    expect(rows.first).to_be_visible()
    return [text for text in rows.all_inner_texts() if not text.startswith("As it began")]


def test_what_is_held_is_sent_after_a_reload(page: Page, troubles, server, panel: str) -> None:
    for trouble in ("ERR_", "htmx:sendError", "htmx:afterRequest"):
        troubles.expect(trouble)
    page.route("**/edits", lambda route: route.abort())
    page.goto(f"/panels/{panel}")
    act(page, "move")
    expect(page.locator("#held")).to_contain_text("1 change held here")
    page.unroute("**/edits")
    page.route("**/edits", lambda route: (route.fetch(), route.abort())[1])
    page.wait_for_timeout(1500)
    page.unroute("**/edits")
    page.reload()
    saved(page, 2)
    page.wait_for_timeout(300)
    assert httpx.get(f"{server.address}/api/panels/{panel}").json()["revision"] == 2
    rect = panel_of(server.address, panel)["openings"][0]["rect"]
    assert abs(inches(rect)[0] - 32) < 0.5


def test_a_refused_change_holds_up_those_behind_it_until_it_is_read(page: Page, troubles, panel: str) -> None:
    troubles.expect("422")
    page.goto(f"/panels/{panel}")

    def late(route) -> None:
        page.wait_for_timeout(500)
        route.continue_()

    page.route("**/edits", late, times=1)
    page.keyboard.down("Alt")
    Mouse(page).drag(35, 50, 95, 50)
    Mouse(page).drag(105, 50, 125, 50)
    page.keyboard.up("Alt")
    expect(page.locator("#notice")).to_contain_text("Not changed.")
    expect(page.locator("#held")).to_contain_text("1 change behind this one, not sent yet.")
    saved(page, 1)
    page.locator("#held").get_by_role("button", name="Go on").click()
    saved(page, 2)


def test_two_points_of_the_history_are_laid_over_each_other(page: Page, panel: str, axe) -> None:
    named(page, panel, "north desk")
    act(page, "move")
    saved(page, 2)
    expect(page.locator("#card h2")).to_have_text("W1, window")
    act(page, "delete")
    saved(page, 3)
    page.get_by_text("History", exact=True).click()
    expect(page.locator("#log tbody tr")).to_have_count(3)
    expect(page.locator("#log")).to_contain_text("Remove W1")
    page.get_by_label("From rev 1").check()
    page.get_by_label("To rev 2").check()
    assert axe(page) == []
    page.get_by_role("button", name="Compare").click()
    expect(page.locator("h1")).to_have_text("P1, rev 1 and rev 2")
    expect(page.locator("main")).to_contain_text("W1 moved")
    assert page.locator("svg .earlier").count() == 1
    assert page.locator("svg .changed").count() == 1
    assert axe(page) == []
