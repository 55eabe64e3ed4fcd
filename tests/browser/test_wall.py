"""A wall's pole is dragged in a real browser: the datum is told, all panels' courses follow, undo brings them back."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import httpx
import pytest
from playwright.sync_api import Locator, Page, expect

Axe = Callable[..., list[str]]

DEMO = json.loads(Path(__file__).parents[2].joinpath("demo_data", "casting_yard.json").read_text("utf-8"))


@pytest.fixture
def yard(server: Any) -> dict[str, Any]:
    """A wall of four panels of the demonstration, the third released."""
    file = json.loads(json.dumps(DEMO))
    file["walls"] = file["walls"][:1]
    file["walls"][0]["panels"] = file["walls"][0]["panels"][:4]
    file["walls"][0]["panels"][2]["released"] = True
    ids: dict[str, Any] = server.create(file)
    return ids


def _courses(server: Any, yard: dict[str, Any]) -> list[dict[int, float]]:
    """Foot of each course by its number, panel by panel."""
    asked = (f"{server.address}/api/panels/{panel}/layout" for panel in yard["walls"][0]["panels"])
    answers = [httpx.get(address, timeout=60).json()["courses"] for address in asked]
    return [{course["course"]: course["bottom"] for course in courses} for courses in answers]


def _pole(page: Page) -> tuple[Locator, float, float]:
    pole = page.locator(".pole-handle").first
    box = pole.bounding_box()
    assert box is not None
    return pole, box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def _shifts(before: list[dict[int, float]], after: list[dict[int, float]]) -> list[float]:
    return [
        next(high[course] - low[course] for course in low.keys() & high.keys())
        for low, high in zip(before, after, strict=True)
    ]


def test_dragging_the_pole_moves_the_courses_of_all_panels_and_undo_brings_them_back(
    page: Page, server: Any, yard: dict[str, Any], axe: Axe
) -> None:
    before = _courses(server, yard)
    page.goto(f"/projects/{yard['id']}")
    _, x, y = _pole(page)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y - 12, steps=4)
    expect(page.locator(".moved").first).to_be_visible()
    words = page.locator(".pole-words").first
    expect(words).to_contain_text("Datum ")
    expect(words).to_contain_text(" up")
    page.mouse.up()
    said = page.locator(".notice")
    expect(said).to_contain_text("Datum moved")
    expect(said).to_contain_text(f"{DEMO['walls'][0]['panels'][2]['mark']} stayed.")
    shifts = _shifts(before, _courses(server, yard))
    moved = [shift for k, shift in enumerate(shifts) if k != 2]
    assert shifts[2] == 0
    assert moved[0] > 1
    assert moved == pytest.approx([moved[0]] * len(moved), abs=1e-6)
    assert not axe(page)
    said.get_by_role("button", name="Undo").click()
    expect(said).to_contain_text("down")
    for low, high in zip(before, _courses(server, yard), strict=True):
        assert high == pytest.approx(low, abs=1e-9)


def test_a_drag_beside_a_head_or_sill_snaps_to_it_and_names_it(page: Page, yard: dict[str, Any]) -> None:
    page.goto(f"/projects/{yard['id']}")
    pole, x, y = _pole(page)
    ways = json.loads(pole.get_attribute("data-pole") or "")["ways"]
    assert ways
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y - 9, steps=3)
    words = page.locator(".pole-words").first
    expect(words).to_contain_text("a course meets ")
    assert words.inner_text().split("a course meets ")[1] in [way[2] for way in ways]
    page.keyboard.down("Alt")
    page.mouse.move(x, y - 10)
    expect(words).not_to_contain_text("a course meets ")
    page.keyboard.up("Alt")
    page.keyboard.press("Escape")
    page.mouse.up()


def test_escape_reverts_a_drag(page: Page, server: Any, yard: dict[str, Any]) -> None:
    before = _courses(server, yard)
    page.goto(f"/projects/{yard['id']}")
    _, x, y = _pole(page)
    rest = page.locator(".pole-words").first.inner_text()
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y - 20, steps=3)
    page.keyboard.press("Escape")
    expect(page.locator(".moved").first).to_be_hidden()
    expect(page.locator(".pole-words").first).to_have_text(rest)
    page.mouse.up()
    assert page.url.endswith(yard["id"])
    assert _courses(server, yard) == before


def test_the_datum_is_set_by_keyboard_alone(page: Page, server: Any, yard: dict[str, Any]) -> None:
    before = _courses(server, yard)
    page.goto(f"/projects/{yard['id']}")
    field = page.get_by_label("Datum of wall").first
    field.focus()
    page.keyboard.press("Control+A")
    page.keyboard.type('1"')
    page.keyboard.press("Enter")
    expect(page.locator(".notice")).to_contain_text("Datum moved")
    moved = [shift for k, shift in enumerate(_shifts(before, _courses(server, yard))) if k != 2]
    assert moved == pytest.approx([moved[0]] * len(moved))
    assert moved[0] != 0
