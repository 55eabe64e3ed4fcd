"""The panel editor in a real browser: what is shown after each edit is what the API gives."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import httpx
import pytest
from picture import assert_shows, shown
from playwright.sync_api import BrowserContext, Page, expect

from app.lengths import parse

pytestmark = pytest.mark.browser

CASES = Path(__file__).parents[1] / "cases"

# A message posted just before a frame is painted arrives right after it.
# A message posted in the frame's callback arrives as soon as that frame is painted.
TIMES = """
window.paints = [];
addEventListener("pointerup", () => { window.released = performance.now(); }, true);
addEventListener("keydown", (event) => { if (event.key === "Enter") window.released = performance.now(); }, true);
addEventListener("htmx:afterRequest", (event) => {
  if (event.detail.requestConfig.verb !== "post") return;
  const from = window.released;
  const painted = new MessageChannel();
  painted.port1.onmessage = () => window.paints.push(performance.now() - from);
  requestAnimationFrame(() => painted.port2.postMessage(""));
});
"""


@pytest.fixture
def b1(server) -> str:
    """A fresh B1; its panel's id."""
    ids = server.create(CASES / "b1.json")
    panel: str = ids["walls"][0]["panels"][0]
    return panel


@pytest.fixture
def layout(server) -> Callable[[str], dict[str, Any]]:
    def read(panel: str) -> dict[str, Any]:
        found: dict[str, Any] = httpx.get(f"{server.address}/api/panels/{panel}/layout", timeout=30).json()
        return found

    return read


def middle(page: Page, thing: str) -> tuple[float, float]:
    box = page.locator(f'[data-thing="{thing}"]').bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def drag(page: Page, thing: str, dx: float, dy: float) -> None:
    x, y = middle(page, thing)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + dx / 2, y + dy / 2)
    page.mouse.move(x + dx, y + dy)
    page.mouse.up()


def wait_for_revision(page: Page, revision: int) -> None:
    expect(page.locator("#revision")).to_have_attribute("data-revision", str(revision))


def wait_until(page: Page, condition: str) -> None:
    """Asks from outside, as the page lets nothing evaluate text inside it; seldom, so that asking costs little."""
    for _ in range(60):
        page.wait_for_timeout(100)
        if page.evaluate(condition):
            return
    raise AssertionError(f"never true: {condition}")


def test_the_page_shows_the_layout(page: Page, b1: str, layout) -> None:
    page.goto(f"/panels/{b1}")
    assert_shows(page, layout(b1))
    assert shown(page)["counts"][:3] == [5144, 785, 177]


@pytest.mark.quiet
def test_thirty_drags_on_b1_show_the_apis_layout_within_a_tenth_of_a_second(page: Page, b1: str, layout) -> None:
    """The 95th of 100 is held; a busy moment of the machine may spoil a round, three in a row are our own."""
    page.add_init_script(TIMES)
    sizes = []
    page.on("response", lambda answer: sizes.append(answer) if answer.url.endswith("/edits") else None)
    for turn in range(3):
        page.goto(f"/panels/{b1}")
        paints = thirty_drags(page, b1, layout, -1 if turn % 2 else 1)
        print(f"pointer-up to painted: median {paints[15]:.0f} ms, p95 {paints[28]:.0f} ms")
        if paints[28] <= 100:
            break
    assert paints[28] <= 100
    assert len(sizes) == 30 * (turn + 1)
    assert max(answer.request.sizes()["responseBodySize"] for answer in sizes) <= 40_000


def thirty_drags(page: Page, panel: str, layout, way: int) -> list[float]:
    """Milliseconds from pointer-up to painted, in order of size; every picture compared with the API."""
    for k in range(30):
        thing, step = f"openings/W{k % 12 + 1}", (14 if k % 2 else -11) * (-1) ** (k // 12) * way
        drag(page, thing, step if k % 3 else 0, step if k % 3 != 1 else 0)
        wait_until(page, f"window.paints.length === {k + 1}")
        assert_shows(page, layout(panel))
    return sorted(page.evaluate("window.paints"))


@pytest.mark.quiet
def test_thirty_sizes_typed_on_b1_show_the_apis_layout_with_its_sheets(page: Page, b1: str, layout) -> None:
    page.add_init_script(TIMES)
    page.goto(f"/panels/{b1}")
    page.get_by_label("Liner sheets").check()
    expect(page.locator("#layer-sheet_numbers text")).to_have_count(len(layout(b1)["sheets"]["list"]))
    page.locator('[data-choose="openings/W5"]').click()
    expect(page.locator("#card h2")).to_have_text("W5, window")
    width = page.get_by_label("Width", exact=True)
    for k in range(30):
        width.fill(f"5'-{k % 9} {2 * (k % 8) + 1}/16\"")
        width.press("Enter")
        wait_for_revision(page, k + 2)
        expect(width).to_be_focused()
        assert_shows(page, layout(b1))
    paints = sorted(page.evaluate("window.paints"))
    print(f"typed, sheets shown, Enter to painted: median {paints[15]:.0f} ms, p95 {paints[28]:.0f} ms")
    assert len(paints) == 30


def test_undo_lasts_over_a_reload(page: Page, b1: str, layout) -> None:
    page.goto(f"/panels/{b1}")
    drag(page, "openings/W1", 9, 5)
    wait_for_revision(page, 2)
    page.reload()
    expect(page.locator("#undo")).to_contain_text("Undo: Move W1")
    page.locator("#undo").click()
    wait_for_revision(page, 3)
    assert shown(page)["counts"][:3] == [5144, 785, 177]
    assert_shows(page, layout(b1))
    page.locator("#redo").click()
    wait_for_revision(page, 4)
    expect(page.locator("#undo")).to_contain_text("Undo: Move W1")


def deaf(page: Page) -> None:
    """Hears nothing of what others save."""
    page.route("**/events", lambda route: route.fulfill(status=204))


def test_a_stale_tab_is_told_and_loses_nothing(context: BrowserContext, page: Page, troubles, b1: str, layout) -> None:
    troubles.expect("412")
    page.goto(f"/panels/{b1}")
    other = context.new_page()
    troubles.watch(other)
    deaf(other)
    other.goto(f"/panels/{b1}")
    drag(page, "openings/W1", 9, 0)
    wait_for_revision(page, 2)
    drag(other, "openings/W2", 0, 9)
    notice = other.locator("#notice")
    expect(notice).to_contain_text("someone saved this panel first")
    expect(notice).to_contain_text("W1")
    notice.get_by_role("button", name="Put mine on top").click()
    wait_for_revision(other, 3)
    assert_shows(other, layout(b1))
    document = layout(b1)
    assert document["counts"]["trimmed"] == shown(other)["counts"][1]


def test_a_stale_tab_that_touched_the_same_thing_can_only_drop(
    context: BrowserContext, page: Page, troubles, b1: str
) -> None:
    troubles.expect("412")
    page.goto(f"/panels/{b1}")
    other = context.new_page()
    troubles.watch(other)
    deaf(other)
    other.goto(f"/panels/{b1}")
    drag(page, "openings/W1", 9, 0)
    wait_for_revision(page, 2)
    drag(other, "openings/W1", 0, 9)
    notice = other.locator("#notice")
    expect(notice.get_by_role("button", name="Put mine on top")).to_have_count(0)
    notice.get_by_role("button", name="Drop mine, show theirs").click()
    wait_for_revision(other, 2)


def test_a_value_that_cannot_be_is_refused_where_it_was_typed(page: Page, troubles, b1: str) -> None:
    troubles.expect("422")
    page.goto(f"/panels/{b1}")
    page.locator('[data-choose="openings/W1"]').click()
    expect(page.locator("#card h2")).to_have_text("W1, window")
    width = page.get_by_label("Width", exact=True)
    width.fill("12'14\"")
    width.press("Enter")
    expect(page.locator("#notice")).to_contain_text("expected inches below 12")
    expect(width).to_have_value("12'14\"")
    wait_for_revision(page, 1)


def test_an_opening_is_drawn_sized_moved_and_removed(page: Page, server, layout) -> None:
    file = json.loads((CASES / "b1.json").read_text())
    file["walls"][0]["panels"][0] |= {"openings": [], "mark": "Plain"}
    panel = server.create(file)["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    page.get_by_text("Add an opening", exact=True).click()
    page.get_by_role("button", name="Draw it").first.click()
    x, y = middle(page, "outline")
    page.mouse.move(x - 60, y + 50)
    page.mouse.down()
    page.mouse.move(x, y)
    page.mouse.move(x + 60, y - 50)
    page.mouse.up()
    wait_for_revision(page, 2)
    assert_shows(page, layout(panel))
    expect(page.locator("#card h2")).to_have_text("W1, window")
    expect(page.locator("#handles .handle")).to_have_count(8)
    handle = page.locator('#handles [data-sides="right top"]').bounding_box()
    assert handle is not None
    page.mouse.move(handle["x"] + handle["width"] / 2, handle["y"] + handle["height"] / 2)
    page.mouse.down()
    page.mouse.move(handle["x"] + 30, handle["y"] - 30)
    page.mouse.up()
    wait_for_revision(page, 3)
    assert_shows(page, layout(panel))
    page.locator("#drawing").focus()
    page.keyboard.press("Delete")
    wait_for_revision(page, 4)
    assert layout(panel)["counts"]["trimmed"] == shown(page)["counts"][1]


def test_a_panel_is_edited_by_keyboard_alone(page: Page, b1: str, layout) -> None:
    page.goto(f"/panels/{b1}")
    page.locator("#drawing").focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#card h2")).to_have_text("W1, window")
    page.keyboard.press("Shift+ArrowUp")
    wait_for_revision(page, 2)
    page.keyboard.press("Enter")
    page.keyboard.press("Control+a")
    page.keyboard.type("4'-0")
    page.keyboard.press("Enter")
    wait_for_revision(page, 3)
    page.keyboard.press("Escape")
    page.keyboard.press("Control+z")
    wait_for_revision(page, 4)
    assert_shows(page, layout(b1))


def test_the_slider_changes_the_readings(page: Page, b1: str) -> None:
    page.goto(f"/panels/{b1}")
    page.get_by_text("Checkpoints", exact=True).last.click()
    first = page.locator("#checkpoints").inner_text()
    page.locator("#temperature").fill("60")
    expect(page.locator("#checkpoints strong")).to_have_text("60 °F")
    assert page.locator("#checkpoints").inner_text() != first


def test_layers_go_on_and_off(page: Page, b1: str) -> None:
    page.goto(f"/panels/{b1}")
    expect(page.locator("#layer-sheets")).to_be_hidden()
    page.get_by_label("Liner sheets").check()
    expect(page.locator("#layer-sheets")).to_be_visible()
    page.get_by_label("Brick", exact=True).last.uncheck()
    expect(page.locator("#layer-brick")).to_be_hidden()


@pytest.mark.parametrize("size", [(1440, 900), (1024, 700), (820, 1180), (390, 800)])
def test_the_editor_fits_and_axe_finds_nothing(page: Page, b1: str, axe, size) -> None:
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.goto(f"/panels/{b1}")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert axe(page) == []
    page.locator('[data-choose="openings/W1"]').click()
    expect(page.locator("#card h2")).to_have_text("W1, window")
    assert axe(page) == []


def test_a_lost_write_waits_for_a_decision_and_those_behind_it_wait_too(page: Page, troubles, b1: str, layout) -> None:
    troubles.expect("ERR_FAILED")
    troubles.expect("htmx:sendError")
    troubles.expect("htmx:afterRequest")
    page.goto(f"/panels/{b1}")
    page.route("**/edits", lambda route: route.abort())
    drag(page, "openings/W1", 9, 0)
    expect(page.locator("#saved")).to_contain_text("Not saved: no answer from the server")
    page.unroute("**/edits")
    drag(page, "openings/W2", 9, 0)
    page.wait_for_timeout(300)
    wait_for_revision(page, 1)
    page.locator("#held").get_by_role("button", name="Send again").click()
    wait_for_revision(page, 3)
    expect(page.locator("#held")).to_be_empty()
    expect(page.locator("#saved")).to_contain_text("rev 3")
    assert_shows(page, layout(b1))
    labels = page.locator("#undo")
    expect(labels).to_contain_text("Move W2")


def test_an_answer_lost_after_the_commit_is_not_made_twice(page: Page, troubles, b1: str) -> None:
    troubles.expect("ERR_FAILED")
    troubles.expect("htmx:sendError")
    troubles.expect("htmx:afterRequest")
    page.goto(f"/panels/{b1}")

    def commit_and_cut(route) -> None:
        route.fetch()
        route.abort()

    page.route("**/edits", commit_and_cut)
    drag(page, "openings/W1", 9, 0)
    expect(page.locator("#saved")).to_contain_text("Not saved: no answer from the server")
    page.unroute("**/edits")
    page.locator("#held").get_by_role("button", name="Send again").click()
    wait_for_revision(page, 2)
    page.wait_for_timeout(200)
    wait_for_revision(page, 2)


def test_saving_is_not_said_for_ever_after_a_slow_refusal(page: Page, troubles, b1: str) -> None:
    troubles.expect("422")
    page.goto(f"/panels/{b1}")

    def late(route) -> None:
        page.wait_for_timeout(500)
        route.continue_()

    page.route("**/edits", late)
    page.locator('[data-choose="openings/W1"]').click()
    expect(page.locator("#card h2")).to_have_text("W1, window")
    page.get_by_label("Width", exact=True).fill("x")
    page.get_by_label("Width", exact=True).press("Enter")
    expect(page.locator("#notice")).to_contain_text("Not changed")
    expect(page.locator("#saved")).to_contain_text("rev 1")
    page.unroute("**/edits")


def test_quick_steps_of_a_zone_add_up(page: Page, server) -> None:
    file = json.loads((CASES / "b1.json").read_text())
    zone = {"mark": "Z1", "rect": [4, 4, 24, 16], "size": "modular", "bond": "stack"}
    file["walls"][0]["panels"][0] |= {"openings": [], "zones": [zone]}
    panel = server.create(file)["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    page.locator('[data-choose="zones/Z1"]').click()
    page.locator("#drawing").focus()
    for _ in range(4):
        page.keyboard.press("Shift+ArrowRight")
    wait_for_revision(page, 5)
    document = httpx.get(f"{server.address}/api/panels/{panel}").json()["document"]
    assert document["zones"][0]["rect"] == [4.25, 4, 24, 16]


def test_pole_and_tape_move_courses_and_bond(page: Page, server, b1: str, layout) -> None:
    page.goto(f"/panels/{b1}")
    for slides, (dx, dy) in {"y": (0, -12), "x": (15, 0)}.items():
        box = page.locator(f'[data-slides="{slides}"]').bounding_box()
        assert box is not None
        x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
        page.mouse.move(x, y)
        page.mouse.down()
        page.mouse.move(x + dx, y + dy)
        page.mouse.up()
        wait_for_revision(page, 2 if slides == "y" else 3)
    origin = httpx.get(f"{server.address}/api/panels/{b1}").json()["document"]["field"]["origin"]
    assert all(parse(length).nm > 0 for length in origin)
    assert_shows(page, layout(b1))


def test_a_metric_panel_moves_by_millimetres_and_its_form_takes_what_it_shows(page: Page, server) -> None:
    ids = server.create(Path(__file__).parents[2] / "demo_data" / "metric_hall.json")
    panel = ids["walls"][0]["panels"][1]
    page.goto(f"/panels/{panel}")
    page.locator('[data-choose="openings/D1"]').click()
    page.locator("#drawing").focus()
    page.keyboard.press("Shift+ArrowRight")
    wait_for_revision(page, 2)
    drag(page, "openings/D1", 40, 0)
    wait_for_revision(page, 3)
    page.wait_for_timeout(500)
    page.get_by_role("button", name="Set", exact=True).first.click()
    page.wait_for_timeout(300)
    expect(page.locator("#notice")).to_be_empty()
    x = httpx.get(f"{server.address}/api/panels/{panel}").json()["document"]["openings"][0]["rect"][0]
    assert parse(str(x), "mm").nm % 1_000 == 0
