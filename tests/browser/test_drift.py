"""The Drift screen in a real browser: the slider repaints without a reload, and nothing jumps under the hand."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from troubles import Troubles

pytestmark = pytest.mark.browser

B1 = Path(__file__).parents[1] / "cases" / "b1.json"
SMALL = {
    "format": "castcourse-project/1",
    "name": "Drift",
    "length_unit": "in",
    "temperature_unit": "F",
    "walls": [
        {
            "mark": "A",
            "panels": [
                {
                    "mark": "A1",
                    "thickness": 7.25,
                    "outline": [[0, 0], [120, 0], [120, 32], [0, 32]],
                    "field": {"size": "modular", "bond": "running"},
                }
            ],
        }
    ],
}
SIZES = ((1440, 900), (1000, 800), (390, 800))

Axe = Callable[..., list[str]]


@pytest.fixture(scope="module")
def b1(server: Any) -> str:
    """One for all tests: those that change it take it back."""
    panel: str = server.create(B1)["walls"][0]["panels"][0]
    return panel


@pytest.fixture
def drift_page(page: Page, b1: str) -> Page:
    page.goto(f"/panels/{b1}/drift")
    return page


def _slide(page: Page, degrees: int) -> None:
    page.locator("#slide").fill(str(degrees))
    expect(page.locator(".at .big")).to_have_text(f"{degrees} °F")


def _stands(page: Page) -> list[float]:
    """Where the plots stand on the page, and how long it is."""
    places: list[float] = page.evaluate(
        "[...[...document.querySelectorAll('.plot')].map(plot => plot.getBoundingClientRect().top + scrollY),"
        " document.documentElement.scrollHeight]"
    )
    return places


def test_the_slider_repaints_the_plot_without_a_reload_or_a_jump(drift_page: Page) -> None:
    drift_page.evaluate("window.sameDocument = true")
    before, curve = _stands(drift_page), drift_page.locator(".plot.along .size-wide .growth").get_attribute("d")
    for degrees in (90, 71):
        _slide(drift_page, degrees)
        assert drift_page.locator("#degrees").input_value() == str(degrees)
        assert _stands(drift_page) == before
    assert drift_page.locator(".plot.along .size-wide .growth").get_attribute("d") != curve
    expect(drift_page.locator("#drift-tape h2").first).to_contain_text("71 °F")
    assert drift_page.evaluate("window.sameDocument") is True
    assert drift_page.url.endswith("?temperature=71")


def test_a_refused_temperature_leaves_the_plot_and_goes_when_it_is_mended(drift_page: Page, troubles: Troubles) -> None:
    troubles.expect("422")
    drift_page.locator("#degrees").fill("900")
    expect(drift_page.locator("#drift-refused")).to_contain_text("found 900 °F")
    expect(drift_page.locator(".at .big")).to_have_text("105 °F")
    drift_page.locator("#degrees").fill("87")
    expect(drift_page.locator(".at .big")).to_have_text("87 °F")
    expect(drift_page.locator("#drift-refused")).to_be_empty()


def test_a_fixing_line_is_applied_and_taken_back_at_the_same_temperature(drift_page: Page) -> None:
    _slide(drift_page, 87)
    drift_page.locator(".advice li").first.get_by_role("button", name="Apply").click()
    expect(drift_page.locator("#fixing")).to_contain_text("Last: Add fixing line")
    expect(drift_page.locator(".at .big")).to_have_text("87 °F")
    expect(drift_page.locator(".windows")).to_contain_text("fixing 1")
    drift_page.get_by_role("button", name="Undo").click()
    expect(drift_page.locator(".windows")).not_to_contain_text("fixing 1")


def test_all_joint_lines_stand_once_unfolded_stay_so_as_the_slider_moves_and_are_printed(drift_page: Page) -> None:
    table, other = drift_page.locator("section.tape").all()
    expect(table.locator(".between").first).to_be_hidden()
    height = _stands(drift_page)[-1]
    table.get_by_text("Show all joint lines").click()
    expect(table.locator(".between").first).to_be_visible()
    assert _stands(drift_page)[-1] > height + 500
    _slide(drift_page, 90)
    expect(table.locator("h2")).to_contain_text("90 °F")
    expect(table.locator(".between").first).to_be_visible()
    expect(other.locator(".between").first).to_be_hidden()
    drift_page.emulate_media(media="print")
    expect(other.locator(".between").first).to_be_visible()


def test_all_lines_of_an_axis_are_applied_and_taken_back_as_one(drift_page: Page) -> None:
    drift_page.get_by_role("button", name="Apply all 4").click()
    expect(drift_page.locator("#fixing")).to_contain_text("Last: Add 4 fixing lines")
    expect(drift_page.get_by_role("button", name="Apply all 4")).to_have_count(0)
    expect(drift_page.get_by_role("button", name="Apply all 6")).to_be_visible()
    drift_page.get_by_role("button", name="Undo").click()
    expect(drift_page.get_by_role("button", name="Apply all 4")).to_be_visible()


def test_nothing_runs_off_the_side_one_plot_shows_at_every_size_and_axe_finds_nothing(
    page: Page, server: Any, axe: Axe
) -> None:
    ids = server.create(SMALL)
    page.goto(f"/panels/{ids['walls'][0]['panels'][0]}/drift?temperature=110&tape=90")
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        for width, height in SIZES:
            page.set_viewport_size({"width": width, "height": height})
            assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
            for plot in page.locator(".plot").all():
                assert sum(svg.is_visible() for svg in plot.locator("svg").all()) == 1
        assert axe(page) == []
