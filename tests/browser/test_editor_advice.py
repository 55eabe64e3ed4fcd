"""Advice, findings, questions and pictures of bonds in a real browser."""

import json
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


def counts(server, panel: str) -> dict[str, int]:
    found: dict[str, int] = httpx.get(f"{server.address}/api/panels/{panel}/layout", timeout=30).json()["counts"]
    return found


def wait_for_revision(page: Page, revision: int) -> None:
    expect(page.locator("#revision")).to_have_attribute("data-revision", str(revision))


def open_fold(page: Page, words: str) -> None:
    page.locator("summary", has_text=words).click()


def view_width(page: Page) -> float:
    width: float = page.evaluate("document.getElementById('drawing').viewBox.baseVal.width")
    return width


def test_an_advice_is_shown_applied_and_undone(page: Page, server, door: str) -> None:
    before = counts(server, door)
    assert before["small"] > 0
    page.goto(f"/panels/{door}")
    open_fold(page, "Advice")
    first = page.locator("#advice li").first
    expect(first).to_be_visible()
    first.hover()
    expect(page.locator("#ring circle")).to_have_count(2)
    page.mouse.move(10, 300)
    expect(page.locator("#ring circle")).to_have_count(0)
    first.get_by_role("button", name="Apply").click()
    wait_for_revision(page, 2)
    assert counts(server, door)["small"] == 0
    expect(page.locator("#counts dd").nth(2)).to_have_text("0")
    expect(page.locator("#advice")).to_have_attribute("aria-busy", "false")
    page.locator("#undo").click()
    wait_for_revision(page, 3)
    assert counts(server, door) == before


def test_a_question_is_asked_and_removed_with_the_fold_kept_open(page: Page, server, door: str) -> None:
    page.goto(f"/panels/{door}")
    open_fold(page, "Advice")
    page.locator("#advice li").first.get_by_role("button", name="Ask").click()
    wait_for_revision(page, 2)
    expect(page.locator("#advice strong")).to_have_text("Q1")
    document = httpx.get(f"{server.address}/api/panels/{door}").json()["document"]
    assert [question["mark"] for question in document["questions"]] == ["Q1"]
    page.get_by_role("button", name="Remove Q1").click()
    wait_for_revision(page, 3)
    expect(page.locator("#advice strong")).to_have_count(0)


def test_a_finding_shows_its_place_and_is_accepted_with_name_and_reason(page: Page, server, door: str) -> None:
    page.goto(f"/panels/{door}")
    open_fold(page, "Findings")
    whole = view_width(page)
    finding = page.locator('#findings [data-about]:not([data-about=""])').first
    about, code = finding.get_attribute("data-about"), finding.get_attribute("data-code")
    finding.click()
    expect(finding).to_have_attribute("aria-pressed", "true")
    expect(page.locator("#ring circle")).to_have_count(2)
    assert view_width(page) <= min(whole, 120)
    page.get_by_label("Accepted by").fill("R. Amsel")
    page.get_by_label("Reason").fill("seen on the mock-up")
    page.get_by_role("button", name="Accept it as it is").click()
    wait_for_revision(page, 2)
    document = httpx.get(f"{server.address}/api/panels/{door}").json()["document"]
    assert document["accepted"] == [{"code": code, "about": about, "by": "R. Amsel", "reason": "seen on the mock-up"}]
    expect(page.locator("#findings")).to_contain_text("R. Amsel: seen on the mock-up")
    expect(page.locator("#ring circle")).to_have_count(0)
    page.get_by_role("button", name="Withdraw acceptance").click()
    wait_for_revision(page, 3)
    expect(page.locator("#findings")).not_to_contain_text("R. Amsel")


def test_a_press_again_or_escape_takes_the_ring_away(page: Page, door: str) -> None:
    page.goto(f"/panels/{door}")
    open_fold(page, "Findings")
    finding = page.locator("#findings [data-at]").first
    for leave in (lambda: finding.click(), lambda: page.keyboard.press("Escape")):
        finding.click()
        expect(page.locator("#ring circle")).to_have_count(2)
        leave()
        expect(page.locator("#ring circle")).to_have_count(0)
        expect(finding).to_have_attribute("aria-pressed", "false")


def test_all_findings_of_a_kind_are_shown_when_asked_for(page: Page, server) -> None:
    panel = server.create(CASES / "b1.json")["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    open_fold(page, "Findings")
    page.locator("#all-small-piece").click()
    expect(page.locator("#all-small-piece")).to_have_count(0)
    lines = page.locator('#findings [data-code="small-piece"]')
    places = [line.get_attribute("data-at").split() for line in lines.all()]
    assert sum(len(at) for at in places) == 2 * counts(server, panel)["small"]


def test_a_bond_is_chosen_from_its_picture_by_keyboard(page: Page, server, door: str) -> None:
    page.goto(f"/panels/{door}")
    fold = page.locator("#card .bonds").first
    expect(fold.locator("summary")).to_contain_text("Running bond")
    fold.locator("summary").press("Enter")
    chosen = fold.get_by_role("radio", name="Running bond, half lap")
    expect(chosen).to_be_checked()
    chosen.focus()
    page.keyboard.press("ArrowDown")
    expect(fold.get_by_role("radio", name="Sailors")).to_be_checked()
    expect(fold.locator("summary")).to_contain_text("Sailors")
    first = fold.locator("fieldset img").first
    first.scroll_into_view_if_needed()
    expect(first).to_have_js_property("naturalWidth", 96)
    page.keyboard.press("Enter")
    wait_for_revision(page, 2)
    field = httpx.get(f"{server.address}/api/panels/{door}").json()["document"]["field"]
    assert field["bond"] == "sailor"


def test_the_fit_is_set_and_the_panel_released_and_joined(page: Page, server) -> None:
    file = json.loads((CASES / "b1.json").read_text())
    del file["walls"][0]["panels"][0]["field"]["origin"]
    panel = server.create(file)["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    open_fold(page, "What may give")
    page.get_by_label("Bed joints give").check()
    page.get_by_label("Heads", exact=True).select_option("required")
    page.get_by_role("button", name="Set fit").click()
    wait_for_revision(page, 2)
    document = httpx.get(f"{server.address}/api/panels/{panel}").json()["document"]
    assert document["fit"]["courses"] is True
    assert document["fit"]["matter"]["heads"] == "required"
    page.reload()
    open_fold(page, "In wall")
    page.get_by_role("button", name="Release it from the wall").click()
    wait_for_revision(page, 3)
    expect(page.locator("#card")).to_contain_text("is released from wall")
    join = page.get_by_role("button", name="Join it to the wall")
    expect(join).to_be_focused()
    join.press("Enter")
    wait_for_revision(page, 4)
    expect(page.locator("#card")).to_contain_text("is joined to wall")


def test_an_upper_zone_is_lowered_and_the_words_follow(page: Page, server) -> None:
    file = json.loads((CASES / "b1.json").read_text())
    zones = [{"mark": mark, "rect": [4, 4, 24, 16], "size": "modular", "bond": "stack"} for mark in ("Z1", "Z2")]
    file["walls"][0]["panels"][0] |= {"openings": [], "zones": zones}
    panel = server.create(file)["walls"][0]["panels"][0]
    page.goto(f"/panels/{panel}")
    page.locator('[data-choose="zones/Z2"]').click()
    over = page.get_by_role("button", name="Lay over the next zone")
    expect(over).to_be_disabled()
    page.get_by_role("button", name="Lay under the zone before").click()
    wait_for_revision(page, 2)
    expect(over).to_be_enabled()
    document = httpx.get(f"{server.address}/api/panels/{panel}").json()["document"]
    assert [zone["mark"] for zone in document["zones"]] == ["Z2", "Z1"]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [(1440, 900), (900, 800), (390, 800)])
def test_the_open_folds_fit_and_axe_finds_nothing(page: Page, door: str, axe, size, scheme: str) -> None:
    page.emulate_media(color_scheme=scheme)
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.goto(f"/panels/{door}")
    open_fold(page, "Advice")
    expect(page.locator("#advice li").first).to_be_visible()
    open_fold(page, "Findings")
    page.locator("#findings [data-at]").first.click()
    page.locator("#card .bonds summary").first.click()
    open_fold(page, "What may give")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert axe(page) == []
