"""How the editor looks: brick or lines, day or night, near or far, forced colours, little room.

Contrast is the ratio of WCAG 2.2 ("relative luminance"), computed here from what the browser says it paints; the least
numbers are WCAG's: 4.5 for text (1.4.3), 3 for what must be told apart in a drawing (1.4.11).
"""

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

pytestmark = pytest.mark.browser

B1 = Path(__file__).parents[1] / "cases" / "b1.json"

PAINT = """([selector, property]) => {
  const found = [...document.querySelectorAll(selector)].find((one) => getComputedStyle(one).display !== "none");
  return getComputedStyle(found)[property];
}"""
HATCH = """(name) => getComputedStyle(document.querySelector(`#hatch-${name} .hatch-ground`)).fill"""


@pytest.fixture(scope="module")
def b1(server: Any) -> str:
    ids = server.create(B1)
    return f"/panels/{ids['walls'][0]['panels'][0]}"


def opened(page: Page, address: str) -> Page:
    page.goto(address)
    expect(page.locator("#drawing")).to_have_attribute("data-bricks", re.compile("near|middle|far"))
    page.evaluate("document.fonts.ready")
    return page


def paint(page: Page, selector: str, name: str = "fill") -> str:
    found: str = page.evaluate(PAINT, [selector, name])
    return found


def luminance(colour: str) -> float:
    """Relative luminance of `rgb(…)` or `#…` (WCAG 2.2, definitions)."""
    numbers = re.findall(r"[\d.]+", colour)[:3]
    parts = [float(number) / 255 for number in numbers]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def press(page: Page, *keys: str) -> None:
    page.locator("#drawing").focus()
    for key in keys:
        page.keyboard.press(key)


def test_contrast_is_wcags_own_example() -> None:
    """Black on white is 21:1 and #767676 on white 4.54:1 (WCAG 2.2, technique G18; from memory)."""
    assert contrast("rgb(0, 0, 0)", "rgb(255, 255, 255)") == pytest.approx(21)
    assert contrast("rgb(118, 118, 118)", "rgb(255, 255, 255)") == pytest.approx(4.54, abs=0.01)


def test_brick_turns_to_lines_and_back_without_a_request(page: Page, b1: str) -> None:
    opened(page, b1)
    brick, paper = paint(page, "#layer-brick .whole"), paint(page, "body", "backgroundColor")
    assert brick != paper
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.get_by_role("button", name="Line drawing").click()
    expect(page.get_by_role("button", name="Line drawing")).to_have_attribute("aria-pressed", "true")
    inks = {paint(page, f"#drawing {one}") for one in (".text.strong", ".text.small", ".small.mark", ".letter")}
    grounds = {paint(page, f"#drawing {one}") for one in (".whole", ".trimmed", ".concrete")}
    assert inks == {paint(page, "body", "color")}
    assert grounds == {paper}
    press(page, "l")
    assert paint(page, "#layer-brick .whole") == brick
    assert [address for address in asked if not address.endswith("/snap")] == [], (
        "but for what a page asks at its start"
    )
    press(page, "l")
    page.reload()
    expect(page.get_by_role("button", name="Line drawing")).to_have_attribute("aria-pressed", "true")
    assert paint(page, "#layer-brick .whole") == paper


def test_night_is_chosen_for_every_page_or_left_to_the_machine(page: Page, b1: str) -> None:
    opened(page, b1)
    press(page, "n")
    night = paint(page, "body", "backgroundColor")
    assert luminance(night) < 0.02
    assert contrast(paint(page, "#drawing .text"), night) >= 7
    page.goto("/")
    assert paint(page, "body", "backgroundColor") == night
    page.get_by_role("button", name="Night").click()
    assert luminance(paint(page, "body", "backgroundColor")) > 0.9
    page.emulate_media(color_scheme="dark")
    assert paint(page, "body", "backgroundColor") == night
    page.get_by_role("button", name="Night").click()
    opened(page, b1)
    assert luminance(paint(page, "body", "backgroundColor")) > 0.9
    assert luminance(paint(page, "#layer-concrete .concrete")) > 0.8


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_bricks_cuts_and_words_are_told_apart(page: Page, b1: str, scheme: Any) -> None:
    page.emulate_media(color_scheme=scheme)
    opened(page, b1)
    ground, brick = paint(page, "body", "backgroundColor"), paint(page, "#layer-brick .whole")
    trimmed = page.evaluate(HATCH, "length")
    assert contrast(paint(page, "#drawing .text.strong"), ground) >= 14
    assert contrast(paint(page, "#drawing .text.quiet"), ground) >= 5.5
    assert contrast(paint(page, "#drawing .text.small"), ground) >= 4.5
    assert contrast(paint(page, "#layer-letters .letter"), paint(page, "#layer-letters .letter", "stroke")) >= 7
    assert contrast(paint(page, "#layer-small .small", "stroke"), brick) >= 3
    press(page, *["+"] * 7)
    assert contrast(paint(page, "#layer-cuts .trimmed", "stroke"), trimmed) >= 3
    assert contrast(paint(page, "#drawing .joint"), brick) >= 2.5


def test_what_is_too_small_to_read_is_left_out_step_by_step(page: Page, b1: str) -> None:
    opened(page, b1)
    drawing, letters = page.locator("#drawing"), page.locator("#layer-letters text").first
    assert paint(page, "#layer-brick .whole", "stroke") == "none"
    expect(letters).to_be_visible()
    press(page, *["+"] * 8)
    expect(drawing).to_have_attribute("data-bricks", "near")
    assert paint(page, "#layer-brick .whole", "stroke") != "none"
    near = drawn_height(page)
    press(page, *["+"] * 5)
    assert drawn_height(page) == pytest.approx(near, rel=0.25)
    press(page, "0", *["-"] * 6)
    expect(drawing).to_have_attribute("data-bricks", "far")
    expect(drawing).to_have_attribute("data-letters", "tiny")
    expect(letters).to_be_hidden()
    assert paint(page, "#drawing .joint") == paint(page, "#layer-brick .whole")
    expect(page.locator("#layer-openings .strong").first).to_be_visible()
    assert not overlapping(page, "#layer-dimensions text:not(.left-out)")


def drawn_height(page: Page) -> float:
    """Pixels of an opening's mark, whatever the zoom."""
    size: float = page.evaluate(
        "() => { const one = document.querySelector('#layer-openings .strong');"
        " return parseFloat(getComputedStyle(one).fontSize) * one.getScreenCTM().a; }"
    )
    return size


OVERLAPS = """(selector) => {
  const boxes = [...document.querySelectorAll(selector)].map((one) => one.getBoundingClientRect());
  return boxes.some((a, k) => boxes.slice(k + 1).some((b) =>
    a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1));
}"""


def overlapping(page: Page, selector: str) -> bool:
    found: bool = page.evaluate(OVERLAPS, selector)
    return found


@pytest.fixture(params=["light", "dark"])
def forced(browser: Browser, server: Any, request: pytest.FixtureRequest) -> Iterator[BrowserContext]:
    context = browser.new_context(
        base_url=server.address,
        viewport={"width": 1440, "height": 900},
        forced_colors="active",
        color_scheme=request.param,
        locale="en-US",
    )
    yield context
    context.close()


def test_forced_colours_show_drawing_choice_and_handles(
    forced: BrowserContext, b1: str, axe: Callable[..., list[str]]
) -> None:
    page = opened(forced.new_page(), b1)
    press(page, "ArrowRight", "ArrowRight")
    expect(page.locator("#drawing .thing.chosen")).to_have_count(1)
    names = ("Canvas", "CanvasText", "Highlight")
    canvas, ink, highlight = (page.evaluate(SYSTEM, name) for name in names)
    for one in (".text.strong", ".text.small", ".small.mark", ".letter", ".met"):
        assert paint(page, f"#drawing {one}") == ink, one
    for one in (".whole", ".trimmed", ".concrete", ".opening", ".missed"):
        assert paint(page, f"#drawing path{one}:not(.rim)") == canvas, one
    for one in (".outline", ".missed", ".opening.rim"):
        assert paint(page, f"#drawing path{one}", "stroke") == ink, one
    assert paint(page, "#drawing .opening.rim") == "none"
    assert paint(page, ".thing.chosen", "stroke") == highlight
    assert paint(page, "#handles .handle", "stroke") == highlight
    assert contrast(ink, canvas) >= 7
    assert contrast(highlight, canvas) >= 3
    assert axe(page) == []
    page.close()


SYSTEM = """(name) => {
  const probe = document.getElementById("ghost").appendChild(
    document.createElementNS("http://www.w3.org/2000/svg", "path"));
  probe.style.setProperty("fill", name);
  const found = getComputedStyle(probe).fill;
  probe.remove();
  return found;
}"""

OUT_OF_REACH = """() => [...document.querySelectorAll("button, summary, a[href], input:not([type=hidden]), select")]
  .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.matches(".skip"))
  .filter((one) => {
    one.scrollIntoView({ block: "nearest", inline: "nearest" });
    const { left, right, top, bottom } = one.getBoundingClientRect();
    return left < -1 || top < -1 || right > innerWidth + 1 || bottom > innerHeight + 1;
  })
  .map((one) => one.outerHTML)"""

ROOMS = {"200 percent of 1440x900": (720, 450), "1024x700": (1024, 700), "390x844": (390, 844)}


@pytest.mark.parametrize("room", ROOMS)
def test_little_room_keeps_drawing_values_and_bottom_line(page: Page, b1: str, room: str) -> None:
    width, height = ROOMS[room]
    page.set_viewport_size({"width": width, "height": height})
    opened(page, b1)
    assert page.evaluate("[document.documentElement.scrollWidth, document.documentElement.scrollHeight]") == [
        width,
        height,
    ]
    for inside in ("#drawing", "#saved", "#undo-last, #history", "#pointer"):
        expect(page.locator(inside).first).to_be_in_viewport(ratio=0.99)
    assert page.locator("#drawing").bounding_box()["height"] >= 180  # type: ignore[index]
    assert page.evaluate(OUT_OF_REACH) == []
    assert not overlapping(page, ".which, .draws, .line > *:not(:empty)")


def test_values_come_and_go_beside_the_drawing(page: Page, b1: str) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    opened(page, b1)
    tall = page.locator("#drawing").bounding_box()
    page.get_by_role("button", name="Values").click()
    expect(page.locator("#values")).to_be_hidden()
    taller = page.locator("#drawing").bounding_box()
    expect(page.locator("#saved")).to_be_in_viewport(ratio=0.99)
    assert page.evaluate("document.documentElement.scrollHeight") == 844
    assert tall
    assert taller
    assert taller["height"] > tall["height"] + 200
    press(page, "ArrowRight", "ArrowRight")
    expect(page.locator("#card h2")).to_have_text("W1, window")
    press(page, "Enter")
    expect(page.locator("#values")).to_be_visible()
    expect(page.locator("#card :focus")).to_have_count(1)


@pytest.mark.parametrize("turned", ["", "l", "n"])
def test_axe_finds_nothing(page: Page, b1: str, axe: Callable[..., list[str]], turned: str) -> None:
    opened(page, b1)
    if turned:
        press(page, turned)
    assert axe(page) == []


def test_brick_of_several_colours_is_drawn_in_them(page: Page, demo: dict[str, Any]) -> None:
    opened(page, f"/panels/{demo['walls'][0]['panels'][1]}")
    drawn, box = page.locator("#layer-blend path"), page.get_by_label("Colours", exact=True)
    expect(drawn.first).to_be_attached()
    fills = {paint(page, f"#layer-blend .blend.{colour}:not(.letter)") for colour in "abc"}
    assert len(fills) == 3
    box.uncheck()
    page.reload()
    page.wait_for_timeout(1000)
    expect(box).not_to_be_checked()
    expect(drawn).to_have_count(0)
