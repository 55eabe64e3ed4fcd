"""The bed page in sun, gloves and a dead spot: contrast and sizes as rendered, start with no signal, its weight."""

import json
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import httpx
import numpy as np
import pytest
from bedside import FILE, PANEL, Bedside, bedside, task
from PIL import Image
from playwright.sync_api import Browser, BrowserContext, Page, expect

pytestmark = pytest.mark.browser

TASKS = ("set-out", "sheets", "brick", "check", "before", "concrete", "strip")
SIZES = ((1180, 820), (820, 1180))
KILOBYTES = 300
DOTS = 4
B1 = Path(__file__).parents[1] / "cases" / "b1.json"


@pytest.fixture
def bed(server) -> Iterator[Bedside]:
    with bedside(server) as made:
        yield made


@pytest.fixture
def tablet(browser: Browser, troubles) -> Iterator[BrowserContext]:
    for words in ("ERR_", "Failed to load resource"):
        troubles.expect(words)
    opened = browser.new_context(viewport={"width": 1180, "height": 820}, has_touch=True, locale="en-US")
    opened.on("page", troubles.watch)
    yield opened
    opened.close()


@pytest.fixture
def page(tablet: BrowserContext, bed: Bedside) -> Page:
    return bed.open(tablet.new_page())


# WCAG 2.2: contrast from relative luminance; 7:1 is level AAA (SC 1.4.6). Targets of 64 px and numbers of 28 px are the
# project's own, above SC 2.5.5 (44 px).
MEASURE = """() => {
  const isThere = (element) => element.checkVisibility({ visibilityProperty: true });
  const seen = (element) => isThere(element) && element.getBoundingClientRect().width > 0;
  const channel = (value) => ((value /= 255) <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
  const luminance = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
  const numbers = (colour) => (colour.match(/[\\d.]+/g) ?? []).map(Number);
  const ground = (element) => {
    for (let at = element; at; at = at.parentElement) {
      const found = numbers(getComputedStyle(at).backgroundColor);
      if (found.length === 3 || found[3] > 0) return found;
    }
    return [255, 255, 255];
  };
  const faults = [];
  for (const element of document.querySelectorAll("main *")) {
    if (element.closest("svg") || !seen(element)) continue;
    if (![...element.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim())) continue;
    const [one, other] = [luminance(numbers(getComputedStyle(element).color)), luminance(ground(element))];
    const contrast = (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
    if (contrast < 7) faults.push(`contrast ${contrast.toFixed(1)}: ${element.textContent.trim().slice(0, 40)}`);
  }
  for (const element of document.querySelectorAll("main button, main input, main a, main summary")) {
    if (!seen(element) || element.closest("svg")) continue;
    const { width, height } = element.getBoundingClientRect();
    const size = `${width.toFixed(0)} x ${height.toFixed(0)}`;
    if (height < 63.5 || width < 63.5) faults.push(`target ${size}: ${element.outerHTML.slice(0, 80)}`);
  }
  for (const element of document.querySelectorAll("main .key, main .big, .keypad-box span")) {
    const size = parseFloat(getComputedStyle(element).fontSize);
    if (seen(element) && size < 28) faults.push(`number ${size}: ${element.textContent}`);
  }
  const drawn = "#bed-svg .layer:not(.brick):not(.cuts):not(.pole) path, #bed-svg .layer circle";
  for (const line of document.querySelectorAll(drawn)) {
    const { stroke, strokeWidth, display } = getComputedStyle(line);
    if (!line.checkVisibility() || display === "none" || stroke === "none" || line.closest("pattern")) continue;
    if (parseFloat(strokeWidth) < 2) faults.push(`line ${strokeWidth}: ${line.getAttribute("class")}`);
  }
  const wide = document.documentElement.scrollWidth;
  if (wide > innerWidth + 1) faults.push(`wider than the screen: ${wide}`);
  return faults;
}"""


@pytest.mark.parametrize("size", SIZES, ids=["lying", "standing"])
@pytest.mark.parametrize("ways", ["ink on white", "white on black"])
def test_contrast_targets_and_numbers_as_rendered(page: Page, size: tuple[int, int], ways: str) -> None:
    page.set_viewport_size({"width": size[0], "height": size[1]})
    if ways == "white on black":
        page.get_by_role("button", name="White on black").click()
    for name in TASKS:
        task(page, name)
        assert page.evaluate(MEASURE) == [], name
    task(page, "check")
    page.locator(".point-row").first.click()
    page.locator("#keypad-keys").get_by_role("button", name="3", exact=True).click()
    assert page.evaluate(MEASURE) == []


def test_axe_finds_nothing(page: Page, axe) -> None:
    for name in TASKS:
        task(page, name)
        assert axe(page, strict=True) == [], name


def take(page: Page) -> None:
    page.get_by_role("button", name="Take to the bed").click()
    expect(page.locator("#take-words")).to_contain_text("is on this tablet: it opens with no signal.")


def test_a_cold_start_with_no_signal_opens_what_was_taken_and_no_other(tablet: BrowserContext, bed: Bedside) -> None:
    take(bed.open(tablet.new_page()))
    bed.proxy.is_offline = True
    page = tablet.new_page()
    page.goto(bed.address)
    expect(page.locator("h1")).to_contain_text("N1 REV A")
    expect(page.locator("#count-sheets")).to_contain_text("0 of")
    page.goto(f"{bed.proxy.address}/bed/0000")
    expect(page.locator("body")).to_contain_text("This panel was not taken to the bed, and there is no signal.")


PAINTED = """() => new Promise((done) => {
  const found = performance.getEntriesByName("first-contentful-paint")[0];
  if (found) return done(found.startTime);
  const told = (list) => list.getEntriesByName("first-contentful-paint").forEach((entry) => done(entry.startTime));
  new PerformanceObserver(told).observe({ type: "paint", buffered: true });
})"""


@pytest.mark.quiet
def test_reopened_with_no_signal_it_is_painted_within_a_second_at_a_quarter_of_the_processor(
    tablet: BrowserContext, server
) -> None:
    """The largest of the reference panels: 5,929 pieces; the median of five."""
    file = json.loads(B1.read_text())
    with bedside(server, file) as bed:
        take(bed.open(tablet.new_page()))
        bed.proxy.is_offline = True
        times = []
        for _ in range(5):
            page = tablet.new_page()
            tablet.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": 4})
            page.goto(bed.address)
            times.append(page.evaluate(PAINTED))
            page.close()
    print([f"{time:.0f} ms" for time in sorted(times)])
    assert sorted(times)[2] <= 1000


def test_the_first_load_is_light(tablet: BrowserContext, server) -> None:
    """Bytes on the wire of everything that the largest reference panel's page asks for, compressed."""
    file = json.loads(B1.read_text())
    with bedside(server, file) as bed:
        page = tablet.new_page()
        devtools = tablet.new_cdp_session(page)
        devtools.send("Network.enable")
        names: dict[str, str] = {}
        loaded: dict[str, float] = {}
        devtools.on(
            "Network.responseReceived", lambda event: names.update({event["requestId"]: event["response"]["url"]})
        )
        devtools.on(
            "Network.loadingFinished",
            lambda event: loaded.update({names.get(event["requestId"], "?"): event["encodedDataLength"]}),
        )
        page.goto(f"{server.address}/bed/{bed.panel}")
        page.wait_for_timeout(1000)
        print({name.rpartition("/")[2]: f"{size / 1000:.1f} kB" for name, size in loaded.items()})
        assert sum(loaded.values()) <= KILOBYTES * 1000


def test_the_bed_drawing_prints_in_one_bit(browser: Browser, server) -> None:
    """At 384 dots to the inch, black or white: cut bricks of two classes, and a zone; no two look alike."""
    panel = PANEL | {
        "zones": [{"mark": "S1", "rect": [0, 88, 240, 8], "size": "modular", "bond": "soldier"}],
        "openings": [{"mark": "W1", "use": "window", "rect": [97, 41, 47, 46]}],
    }
    walls = [FILE["walls"][0] | {"panels": [panel]}]
    with bedside(server, FILE | {"walls": walls}) as made:
        row = httpx.get(f"{server.address}/api/panels/{made.panel}/releases").json()["releases"][0]
        svg = httpx.get(f"{server.address}/panels/{made.panel}/releases/{row['id']}/bed.svg").text
        printer = browser.new_context(viewport={"width": 900, "height": 700}, device_scale_factor=DOTS)
        page = printer.new_page()
        page.set_content(f"<body style='margin:0;background:white'>{svg}</body>")
        shown = Image.open(BytesIO(page.screenshot())).convert("1", dither=Image.Dither.NONE)
        boxes = page.evaluate(HATCHED)
        outline = page.evaluate(OUTLINE)
        printer.close()
    looks = {name: dots(shown, box) for name, box in boxes.items()}
    assert len(looks) >= 2
    field, zone = (strip(shown, outline, low) for low in (8, 89))
    assert abs(field - zone) > 0.02, "upright soldiers and level stretchers cross as many joints"
    for name, (share, turns) in looks.items():
        assert 0.02 < share < 0.98, f"{name} is one flat tone"
        for other, (their_share, their_turns) in looks.items():
            if other != name:
                is_other = abs(share - their_share) > 0.02 or np.hypot(*np.subtract(turns, their_turns)) > 0.02
                assert is_other, (name, other)


HATCHED = """() => {
  const found = {};
  for (const path of document.querySelectorAll("[fill^='url(#hatch']")) {
    const name = path.getAttribute("fill");
    const first = path.cloneNode();
    first.setAttribute("d", path.getAttribute("d").match(/^ *[Mm][^Mm]+/)[0]);
    path.parentNode.append(first);
    const box = first.getBoundingClientRect();
    first.remove();
    if (!(name in found) && box.width > 3 && box.height > 3) found[name] = [box.x, box.y, box.width, box.height];
  }
  return found;
}"""


OUTLINE = """() => {
  const paths = [...document.querySelectorAll("path")].map((path) => path.getBoundingClientRect());
  const large = paths.sort((one, other) => other.width * other.height - one.width * one.height)[0];
  return [large.x, large.y, large.width, large.height];
}"""


def strip(shown: Image.Image, outline: list[float], low: float) -> float:
    """How often black and white change along a strip of 5 in. of the panel, `low` inches up; 240 x 120 in. in all."""
    x, y, width, height = (side * DOTS for side in outline)
    top, bottom = y + height * (120 - low - 5) / 120, y + height * (120 - low) / 120
    part = np.asarray(shown.crop((int(x + 4), int(top), int(x + width * 90 / 240), int(bottom)))).astype(bool)
    return float(np.diff(part, axis=1).mean())


def dots(shown: Image.Image, box: list[float]) -> tuple[float, tuple[float, float]]:
    """Share of black, and how often black and white change across and up, of what is within a box."""
    x, y, width, height = (side * DOTS for side in box)
    part = np.asarray(shown.crop((int(x + 1), int(y + 1), int(x + width - 1), int(y + height - 1)))).astype(bool)
    return 1 - part.mean(), (float(np.diff(part, axis=1).mean()), float(np.diff(part, axis=0).mean()))
