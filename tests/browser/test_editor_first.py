"""The first minutes: from nothing to a panel with its brick laid out, and help on what a word means."""

from pathlib import Path

import httpx
import pytest
from hand import Fingers, Mouse, panel_of, saved
from playwright.sync_api import Browser, Page, expect
from test_editor_hand import inches, plain

pytestmark = pytest.mark.browser

DEMO = Path(__file__).parents[2] / "demo_data" / "casting_yard.json"


@pytest.fixture
def first(browser: Browser, empty_server, troubles):
    """The first page of a server that has nothing yet."""
    context = browser.new_context(
        base_url=empty_server.address, viewport={"width": 1280, "height": 800}, locale="en-US"
    )
    page = context.new_page()
    troubles.watch(page)
    page.goto("/")
    yield page
    context.close()


def test_from_a_size_in_three_fields_and_one_press(first: Page, empty_server) -> None:
    first.get_by_label("Name").fill("Quay shed")
    first.get_by_label("Width").fill("24'-0\"")
    first.get_by_label("Height").fill("20'")
    first.get_by_role("button", name="Begin project").click()
    expect(first.locator("h1")).to_have_text("Panel P1")
    expect(first.locator("#counts dd").first).not_to_have_text("0")
    panel = first.url.rpartition("/")[2]
    assert inches(panel_of(empty_server.address, panel)["outline"][2]) == [288, 240]
    counts = httpx.get(f"{empty_server.address}/api/panels/{panel}/layout").json()["counts"]
    assert first.locator("#counts dd").first.inner_text() == f"{counts['whole']:,}"


def test_from_a_size_by_keyboard_alone(first: Page) -> None:
    for _ in range(30):
        first.keyboard.press("Tab")
        if first.evaluate("document.activeElement.name") == "name":
            break
    first.keyboard.type("Quay shed")
    for text in ("", "24'", "20'"):
        first.keyboard.press("Tab")
        first.keyboard.type(text)
    first.keyboard.press("Enter")
    expect(first.locator("h1")).to_have_text("Panel P1")


def test_a_size_that_is_none_is_told_and_nothing_is_stored(first: Page, troubles, empty_server) -> None:
    troubles.expect("422")
    first.get_by_label("Name").fill("Quay shed")
    first.get_by_label("Width").fill("24'-14\"")
    first.get_by_role("button", name="Begin project").click()
    expect(first.get_by_role("alert").first).to_contain_text("width")
    expect(first.get_by_label("Width")).to_have_value("24'-14\"")
    assert "No projects yet" in httpx.get(empty_server.address).text


def test_from_a_file_and_from_the_demonstration(first: Page) -> None:
    first.get_by_label("Project file").set_input_files(DEMO)
    first.get_by_role("button", name="Bring in").click()
    expect(first.get_by_role("link", name="N1", exact=True).first).to_be_visible()
    first.goto("/")
    first.get_by_role("button", name="Open the demonstration").click()
    expect(first.locator("h1")).to_be_visible()


def test_what_comes_next_leads_to_a_first_opening_and_goes(page: Page, server) -> None:
    panel: str = server.create(plain())["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    page.get_by_role("button", name="Draw an opening").click()
    Mouse(page).drag(40, 40, 80, 90)
    saved(page, 2)
    expect(page.locator("#next")).to_be_hidden()
    page.locator("#undo").click()
    saved(page, 3)
    page.get_by_role("button", name="No more of this").click()
    expect(page.locator("#next")).to_be_hidden()
    page.reload()
    expect(page.locator("#next")).to_be_hidden()


def test_help_on_a_term_by_pointer_and_by_key(page: Page, server) -> None:
    panel: str = server.create(plain())["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    help_ = page.locator("#term-help")
    page.locator("#counts .term", has_text="trimmed").hover()
    expect(help_).to_be_visible()
    expect(help_).to_contain_text("A brick that is cut to its place")
    assert help_.locator("img").evaluate("image => image.decode().then(() => image.naturalWidth)") > 0
    help_.hover()
    expect(help_).to_be_visible()
    page.keyboard.press("Escape")
    expect(help_).to_be_hidden()
    page.locator("#card select").first.focus()
    page.keyboard.press("F1")
    expect(help_).to_contain_text("Thin brick")
    page.keyboard.press("Escape")
    expect(page.locator("#card select").first).to_be_focused()


def test_help_by_a_long_press_presses_nothing(browser: Browser, server, troubles) -> None:
    context = browser.new_context(base_url=server.address, viewport={"width": 390, "height": 844}, has_touch=True)
    page = context.new_page()
    troubles.watch(page)
    panel: str = server.create(plain())["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    term = page.locator("#counts .term", has_text="trimmed")
    term.scroll_into_view_if_needed()
    box = term.bounding_box()
    assert box is not None
    fingers = Fingers(page)
    fingers.touch("Start", [(box["x"] + 8, box["y"] + 8)])
    expect(page.locator("#term-help")).to_be_visible()
    fingers.touch("End", [])
    shown = page.locator("#term-help").bounding_box()
    assert shown is not None
    assert shown["x"] >= 0
    assert shown["x"] + shown["width"] <= 390
    context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_list_of_keys_opens_by_a_key_and_axe_finds_nothing(page: Page, server, axe, scheme: str) -> None:
    page.emulate_media(color_scheme=scheme)
    panel: str = server.create(plain())["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    page.locator("#drawing").focus()
    page.keyboard.press("?")
    expect(page.get_by_text("choose the next of its kind as well")).to_be_visible()
    page.locator("#counts .term").first.hover()
    expect(page.locator("#term-help")).to_be_visible()
    assert axe(page) == []
