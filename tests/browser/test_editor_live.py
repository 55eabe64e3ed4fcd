"""The panel as it would be, while the hand rests: laid out by the server, saved nowhere, not in the way of the hand."""

import json
from collections.abc import Iterator
from pathlib import Path

import httpx
import numpy as np
import pytest
from chromium import FLAGS, executable
from hand import Mouse, saved
from picture import boxes, shown, trims_of
from playwright.sync_api import Browser, Page, expect
from troubles import Troubles

pytestmark = pytest.mark.browser

B1 = Path(__file__).parents[1] / "cases" / "b1.json"

FRAMES = """() => {
  const seen = window.frames_seen = [];
  let last = performance.now();
  const next = () => seen === window.frames_seen && requestAnimationFrame(count);
  const count = (now) => { seen.push(now - last); last = now; next(); };
  requestAnimationFrame((now) => { last = now; requestAnimationFrame(count); });
}"""

FIVE_HUNDRED = """async (count) => {
  const move = (dx) => new Promise((done) => {
    const answered = (event) => {
      if (event.detail.requestConfig.verb !== "post") return;
      document.removeEventListener("htmx:afterRequest", answered);
      requestAnimationFrame(done);
    };
    document.addEventListener("htmx:afterRequest", answered);
    const key = dx > 0 ? "ArrowRight" : "ArrowLeft";
    const svg = document.getElementById("drawing");
    svg.dispatchEvent(new KeyboardEvent("keydown", { key, shiftKey: true, bubbles: true }));
  });
  for (let k = 0; k < count; k += 1) await move(k % 2 ? -1 : 1);
}"""


@pytest.fixture
def b1(server) -> str:
    panel: str = server.create(B1)["walls"][0]["panels"][0]
    return panel


def layout_of(address: str, panel: str) -> dict:
    found: dict = httpx.get(f"{address}/api/panels/{panel}/layout", timeout=30).json()
    return found


def test_a_resting_hand_sees_what_the_edit_makes_and_nothing_is_saved(page: Page, server, b1: str) -> None:
    """Seen while it rests = what the API has once the hand lets go there; before that, all is as it was."""
    page.goto(f"/panels/{b1}")
    before, mouse = layout_of(server.address, b1), Mouse(page)
    as_it_was = shown(page)["trims"]
    mouse.hold(70, 70, 75, 80)
    # On a busy machine the way there rests too.
    page.wait_for_timeout(500)
    expect(page.locator("#cost")).to_be_visible()
    resting = shown(page)
    said = page.locator("#cost p").all_inner_texts()
    assert layout_of(server.address, b1)["counts"] == before["counts"]
    expect(page.locator("#revision")).to_have_attribute("data-revision", "1")
    page.keyboard.press("Escape")
    assert shown(page)["trims"] == as_it_was
    expect(page.locator("#cost")).to_be_hidden()
    page.mouse.up()
    mouse.hold(70, 70, 75, 80)
    expect(page.locator("#cost")).to_be_visible()
    page.mouse.up()
    saved(page, 2)
    after = layout_of(server.address, b1)
    assert np.abs(boxes(resting["trims"], resting["height"]) - trims_of(after)).max() < 2e-3
    assert shown(page)["trims"] == resting["trims"]
    cut, small = after["counts"]["trimmed"], after["counts"]["small"]
    assert said[0].startswith(f"{cut} cut, ")
    assert said[1].startswith(f"{small} small, ")
    more = cut - before["counts"]["trimmed"]
    assert f"{abs(more)} {'more' if more > 0 else 'fewer'}" in said[0]


def test_a_place_where_it_cannot_be_says_why(page: Page, b1: str) -> None:
    page.goto(f"/panels/{b1}")
    Mouse(page).hold(70, 70, 130, 72)
    expect(page.locator("#cost")).to_contain_text("W2 overlapping W1")
    page.keyboard.press("Escape")
    page.mouse.up()
    expect(page.locator("#cost")).to_be_hidden()


def test_an_answer_that_comes_too_late_is_dropped(page: Page, b1: str) -> None:
    held = []
    page.route("**/preview", lambda route: held.append(route))
    page.goto(f"/panels/{b1}")
    before, mouse = shown(page)["trims"], Mouse(page)
    mouse.hold(70, 70, 75, 80)
    while not held:
        page.wait_for_timeout(20)
    mouse.move(70, 74)
    page.wait_for_timeout(150)
    assert len(held) == 1, "one question at a time"
    held[0].continue_()
    page.wait_for_timeout(150)
    assert shown(page)["trims"] == before
    page.keyboard.press("Escape")
    page.mouse.up()
    for route in held[1:]:
        route.abort()


def test_previews_are_not_in_the_log(server, b1: str) -> None:
    values = {"edit": "move_opening", "opening": "W1", "dx": "4", "base_revision": "1"}
    address = f"{server.address}/panels/{b1}"
    own = {"origin": server.address}
    for _ in range(3):
        assert "more" in httpx.post(f"{address}/preview", data=values, headers=own, timeout=30).text
    assert httpx.get(f"{server.address}/api/panels/{b1}").json()["revision"] == 1
    stale = httpx.post(f"{address}/preview", data=values | {"base_revision": "7"}, headers=own, timeout=30)
    assert "<p" not in stale.text


@pytest.mark.quiet
def test_the_ghost_keeps_fifty_frames_a_second_at_a_quarter_of_the_processor(page: Page, b1: str) -> None:
    """Any ten frames take at most 200 ms, those that show a preview too; B1, Chromium's processor slowed four times.

    A busy moment of the machine may spoil a round, three in a row are our own.
    """
    page.goto(f"/panels/{b1}")
    for _ in range(3):
        frames = frames_of_a_drag(page)
        slowest = max(sum(frames[k : k + 10]) for k in range(len(frames) - 10))
        print(f"{len(frames)} frames, slowest ten {slowest:.0f} ms, longest {max(frames):.0f} ms")
        if slowest <= 200:
            break
    assert len(frames) > 60
    assert slowest <= 200


def frames_of_a_drag(page: Page) -> list[float]:
    """Milliseconds from frame to frame while W1 is dragged about, with three rests; the drag is dropped."""
    Mouse(page).hold(70, 70, 72, 72)
    devtools = page.context.new_cdp_session(page)
    devtools.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    page.evaluate(FRAMES)
    for k in range(120):
        page.mouse.move(500 + (k % 40) * 2, 500 - (k % 30))
        page.wait_for_timeout(300 if k % 40 == 39 else 10)
    frames: list[float] = page.evaluate("window.frames_seen")
    devtools.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    page.keyboard.press("Escape")
    page.mouse.up()
    return frames


def heap(page: Page) -> dict[str, float]:
    devtools = page.context.new_cdp_session(page)
    devtools.send("HeapProfiler.enable")
    devtools.send("HeapProfiler.collectGarbage")
    devtools.send("Performance.enable")
    metrics = {one["name"]: one["value"] for one in devtools.send("Performance.getMetrics")["metrics"]}
    devtools.detach()
    return {name: metrics[name] for name in ("JSHeapUsedSize", "Nodes", "JSEventListeners")}


@pytest.fixture
def interpreted(browser: Browser, server, troubles: Troubles) -> Iterator[Page]:
    """A page whose scripts are run, never compiled: what is compiled lies in the heap too, and comes and goes."""
    path = executable(browser.browser_type.executable_path)
    compilers = "--js-flags=--no-sparkplug --no-maglev --no-opt --no-flush-bytecode --no-lazy-feedback-allocation"
    apart = browser.browser_type.launch(executable_path=path, args=[*FLAGS, compilers])
    opened = apart.new_page(base_url=server.address, viewport={"width": 1440, "height": 900}, locale="en-US")
    troubles.watch(opened)
    yield opened
    apart.close()


@pytest.mark.quiet
def test_memory_stays_flat_over_five_hundred_edits(interpreted: Page, server) -> None:
    """B1's wall a third as wide: between edit 100 and 500 heap, nodes and listeners grow by less than 1 of 100."""
    page = interpreted
    file = json.loads(B1.read_text())
    panel = file["walls"][0]["panels"][0]
    panel["outline"] = [[0, 0], [200, 0], [200, 120], [0, 120]]
    panel["openings"] = panel["openings"][:1]
    page.goto(f"/panels/{server.create(file)['walls'][0]['panels'][0]}")
    page.locator('[data-choose="openings/W1"]').click()
    expect(page.locator("#card h2")).to_have_text("W1, window")
    page.evaluate(FIVE_HUNDRED, 100)
    page.wait_for_timeout(700)
    before = heap(page)
    page.evaluate(FIVE_HUNDRED, 400)
    page.wait_for_timeout(700)
    after = heap(page)
    print({name: f"{before[name]:.0f} -> {after[name]:.0f}" for name in before})
    expect(page.locator("#revision")).to_have_attribute("data-revision", "501")
    for name, value in before.items():
        assert after[name] <= value * 1.01, name


def test_letting_go_while_a_preview_is_under_way_leaves_the_edit_and_nothing_else(page: Page, server, b1: str) -> None:
    page.route("**/preview", lambda route: (page.wait_for_timeout(300), route.continue_())[1])
    page.goto(f"/panels/{b1}")
    Mouse(page).hold(70, 70, 75, 80)
    with page.expect_request("**/preview"):
        page.wait_for_timeout(120)
    page.mouse.up()
    saved(page, 2)
    page.wait_for_timeout(500)
    found = shown(page)
    expected = trims_of(layout_of(server.address, b1))
    assert np.abs(boxes(found["trims"], found["height"]) - expected).max() < 2e-3
    expect(page.locator("#cost")).to_be_hidden()
