"""Liner, settings and the project page in a real browser: nothing cut off, the plan repaints and the page stays put."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

Axe = Callable[..., list[str]]

DEMO = json.loads(Path(__file__).parents[2].joinpath("demo_data", "casting_yard.json").read_text("utf-8"))
SIZES = ((1440, 900), (1000, 800), (390, 800))
SLIDING = "[...document.querySelectorAll('.scroll')].filter(one => one.scrollWidth > one.clientWidth + 1).length"


@pytest.fixture
def yard(server: Any) -> dict[str, Any]:
    """Two panels of the demonstration with names as long as people make them."""
    file = json.loads(json.dumps(DEMO))
    file["walls"] = file["walls"][:1]
    file["walls"][0]["panels"] = file["walls"][0]["panels"][:2]
    for panel in file["walls"][0]["panels"]:
        panel["mark"] = f"{panel['mark']} a mark of many letters more"[:30]
        panel["cast_on"] = "2026-12-01"
    ids: dict[str, Any] = server.create(file)
    return ids


def looked_at(page: Page, axe: Axe) -> None:
    """Nothing off the side at any size, nothing cut off from 1000 px on, and axe finds nothing on either ground."""
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        for width, height in SIZES:
            page.set_viewport_size({"width": width, "height": height})
            too_wide = page.evaluate("document.documentElement.scrollWidth - innerWidth")
            assert too_wide <= 0, f"{too_wide} px run off the side at {width} x {height}"
            if width >= 1000:
                assert page.evaluate(SLIDING) == 0, f"something is cut off at {width} px"
        assert axe(page) == []


@pytest.mark.parametrize("address", ["", "/settings"])
def test_a_project_and_its_settings_are_whole_at_1000_px(
    page: Page, yard: dict[str, Any], axe: Axe, address: str
) -> None:
    page.goto(f"/projects/{yard['id']}{address}")
    looked_at(page, axe)


def test_another_corner_repaints_the_plan_where_one_stands_and_undo_brings_it_back(
    page: Page, yard: dict[str, Any], axe: Axe
) -> None:
    page.set_viewport_size({"width": 1440, "height": 700})
    page.goto(f"/panels/{yard['walls'][0]['panels'][0]}/liner")
    first = page.locator(".plan svg").inner_html()
    page.evaluate("scrollTo(0, 40)")
    page.get_by_label("Lay the first sheet at the").focus()
    page.get_by_label("Lay the first sheet at the").select_option("bed upper right")
    expect(page.locator("#liner-results")).to_contain_text("before from lower left of the bed in rows across")
    assert page.evaluate("scrollY") == 40
    assert page.evaluate("document.activeElement.id") == "corner"
    assert page.locator(".plan svg").evaluate("svg => svg.namespaceURI") == "http://www.w3.org/2000/svg"
    assert page.locator(".plan svg").inner_html() != first
    page.get_by_label("and go on").select_option("up")
    expect(page.locator("#liner-results")).to_contain_text("rev 3")
    expect(page.locator("#liner-results")).to_contain_text("in columns; before from upper right of the bed in rows")
    looked_at(page, axe)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#liner-results")).to_contain_text("rev 4")
    expect(page.get_by_label("and go on")).to_have_value("across")
    expect(page.get_by_label("Lay the first sheet at the")).to_have_value("bed upper right")


def test_a_refused_setting_is_whole_with_its_fault_beside_it(
    page: Page, yard: dict[str, Any], axe: Axe, troubles: Any
) -> None:
    troubles.expect("422")
    page.goto(f"/projects/{yard['id']}/settings")
    page.get_by_label("Kerf of the saw").fill("300 mm")
    with page.expect_navigation():
        page.get_by_role("button", name="Set order").click()
    field = page.get_by_label("Kerf of the saw")
    expect(field).to_have_value("300 mm")
    expect(field).to_have_attribute("aria-invalid", "true")
    described = page.locator(f"#{field.get_attribute('aria-describedby')}")
    expect(described).to_contain_text("expected less than the face height of brick 'modular', 2 1/4\"")
    looked_at(page, axe)
