"""A project of 120 panels: its page is there within a second, and each wall is laid out once it comes into view."""

import json
from copy import deepcopy
from pathlib import Path
from time import perf_counter
from typing import Any

import httpx
import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

DEMO = Path(__file__).parents[2] / "demo_data" / "casting_yard.json"

PAINTED = "() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)))"
BOXES = "() => [...document.querySelectorAll('figure.wall')].map((wall) => Math.round(wall.offsetTop))"


def many() -> dict[str, Any]:
    """Twelve panels of the demonstration ten times, under marks of their own."""
    file: dict[str, Any] = json.loads(DEMO.read_text())
    walls = [(copy, wall) for copy in range(10) for wall in deepcopy(file["walls"])]
    for copy, wall in walls:
        wall["mark"] += f" {copy}"
        for panel in wall["panels"]:
            panel["mark"] += f"-{copy}"
    return file | {"name": "A hundred and twenty panels", "walls": [wall for _, wall in walls]}


@pytest.fixture(scope="module")
def large(server: Any) -> dict[str, Any]:
    return server.create(many())


def test_walls_follow_without_moving_the_page(page: Page, server: Any, large: dict[str, Any]) -> None:
    page.goto(f"/projects/{large['id']}")
    before = page.evaluate(BOXES)
    first, last = page.locator("section:has(> figure.wall)").first, page.locator("section:has(> figure.wall)").last
    expect(first.locator("figure .whole").first).to_be_attached()
    expect(last.locator("figure .whole")).to_have_count(0)
    last.scroll_into_view_if_needed()
    expect(last.locator("figure .whole").first).to_be_attached(timeout=10_000)
    panel = large["walls"][-1]["panels"][-1]
    layout = httpx.get(f"{server.address}/api/panels/{panel}/layout", timeout=30).json()
    row = last.locator("tbody tr").last.locator("td.figure")
    counts = (layout["counts"][name] for name in ("whole", "trimmed", "small"))
    for cell, count in zip(row.all()[:3], counts, strict=True):
        expect(cell).to_have_text(f"{count:,}")
    assert page.evaluate(BOXES) == before
    expect(first.locator("svg.can-slide .pole-handle")).to_have_count(1)


@pytest.mark.quiet
def test_page_of_120_panels_is_painted_within_a_second(page: Page, empty_server: Any) -> None:
    """On a server that has laid out nothing yet, and again; with the first wall's brick. Then the list of projects."""
    large, address = empty_server.create(many()), empty_server.address
    page.goto(f"{address}/healthz")
    for _ in range(2):
        start = perf_counter()
        page.goto(f"{address}/projects/{large['id']}", wait_until="commit")
        page.wait_for_selector("figure.wall .whole", state="attached")
        page.evaluate(PAINTED)
        assert perf_counter() - start <= 1.0
    start = perf_counter()
    page.goto(address)
    page.evaluate(PAINTED)
    assert perf_counter() - start <= 1.0
