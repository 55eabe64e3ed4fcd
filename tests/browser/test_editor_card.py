"""The card of how the brick ends, and what stands under the counts, in a real browser."""

from pathlib import Path

import httpx
import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

CASES = Path(__file__).parents[1] / "cases"


@pytest.fixture
def door(server) -> str:
    """A fresh wall of 11 ft with its door; its panel's id."""
    panel: str = server.create(CASES / "door.json")["walls"][0]["panels"][0]
    return panel


def wait_for_revision(page: Page, revision: int) -> None:
    expect(page.locator("#revision")).to_have_attribute("data-revision", str(revision))


def open_fold(page: Page, words: str) -> None:
    page.locator("summary", has_text=words).click()


def test_nothing_is_left_under_the_counts_after_an_edit(page: Page, door: str) -> None:
    page.goto(f"/panels/{door}")
    top = page.locator("#card h2").bounding_box()["y"]
    open_fold(page, "Margin")
    page.get_by_label("Plain concrete at edges").fill('1/2"')
    page.get_by_role("button", name="Set", exact=True).locator("visible=true").click()
    wait_for_revision(page, 2)
    assert page.locator("#notice").bounding_box()["height"] == 0
    page.locator(".side").evaluate("side => { side.scrollTop = 0; }")
    assert page.locator("#card h2").bounding_box()["y"] == top
    assert page.locator("#notice").evaluate("notice => notice.childNodes.length") == 0


def test_the_card_of_sides_says_what_was_set_and_fills_in_what_there_is(page: Page, server, door: str) -> None:
    document = httpx.get(f"{server.address}/api/panels/{door}").json()["document"]
    mark = document["openings"][0]["mark"]
    page.goto(f"/panels/{door}")
    page.locator(f'[data-choose="openings/{mark}"]').click()
    open_fold(page, "How the brick ends at its sides")
    side, ends = page.get_by_label("Side", exact=True), page.get_by_label("Brick ends", exact=True)
    side.select_option("right")
    ends.select_option("margin")
    page.get_by_label("Margin", exact=True).fill('1 1/2"')
    page.get_by_label("Margin", exact=True).press("Enter")
    wait_for_revision(page, 2)
    expect(page.locator("#card")).to_contain_text("Right: margin of")
    expect(side).to_have_value("right")
    side.select_option("left")
    expect(page.get_by_label("Margin", exact=True)).to_have_value("")
    ends.select_option("flush")
    ends.locator("xpath=ancestor::form").get_by_role("button", name="Set side").click()
    wait_for_revision(page, 3)
    expect(page.locator("#card")).to_contain_text("flush")
    side.select_option("right")
    expect(ends).to_have_value("margin")
    expect(page.get_by_label("Margin", exact=True)).to_have_value('1 1/2"')


def test_what_is_typed_in_another_form_is_kept_when_the_card_could_follow(page: Page, door: str) -> None:
    page.goto(f"/panels/{door}")
    open_fold(page, "Margin")
    page.get_by_label("Plain concrete at edges").fill('1/2"')
    page.get_by_label("Plain concrete at edges").press("Enter")
    page.get_by_label("Plain concrete at edges").fill('5/8"')
    wait_for_revision(page, 2)
    page.wait_for_timeout(700)
    expect(page.get_by_label("Plain concrete at edges")).to_have_value('5/8"')


def test_a_changed_count_says_so_for_a_while_and_nothing_moves(page: Page, door: str) -> None:
    page.goto(f"/panels/{door}")
    height = page.locator("#counts").bounding_box()["height"]
    open_fold(page, "Margin")
    page.get_by_label("Plain concrete at edges").fill('1 1/2"')
    page.get_by_label("Plain concrete at edges").press("Enter")
    wait_for_revision(page, 2)
    told = page.locator("#counts dd[data-change]")
    assert told.count() > 0
    expect(page.locator("#live")).to_contain_text("trimmed")
    assert "change-told" in told.first.evaluate("cell => getComputedStyle(cell, '::after').animationName")
    assert page.locator("#counts").bounding_box()["height"] == height


def test_a_long_undo_label_keeps_the_bottom_line_one_line(page: Page, door: str) -> None:
    page.set_viewport_size({"width": 1000, "height": 700})
    page.goto(f"/panels/{door}")
    before = page.locator("#drawing").bounding_box()
    page.locator('[data-choose="openings/D1"]').click()
    mark = page.locator("#f2-mark")
    mark.fill("Door of the north stair, second landing, by the lift")
    mark.press("Enter")
    wait_for_revision(page, 2)
    assert page.locator("#drawing").bounding_box() == before
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    expect(page.locator("#saved")).to_be_in_viewport(ratio=1)
