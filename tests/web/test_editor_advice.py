"""Advice over HTTP: each idea's form makes the face better by what it said, and can be undone."""

import json
import re
from html import unescape
from pathlib import Path
from typing import Any

import httpx
import pytest
from scenario import project, stored

pytestmark = pytest.mark.anyio

DOOR = Path(__file__).parents[1] / "cases" / "door.json"
PART = {"hx-request": "true"}
FORM = re.compile(r"<form.*?</form>", re.DOTALL)
INPUT = re.compile(r'<input type="hidden" name="([^"]+)" value="([^"]*)">')


async def door(client: httpx.AsyncClient) -> str:
    ids = await stored(client, json.loads(DOOR.read_text()))
    panel: str = ids["walls"][0]["panels"][0]
    return panel


def forms(page: str) -> list[dict[str, str]]:
    return [{name: unescape(value) for name, value in INPUT.findall(form)} for form in FORM.findall(page)]


async def small(client: httpx.AsyncClient, panel: str) -> int:
    count: int = (await client.get(f"/api/panels/{panel}/layout")).json()["counts"]["small"]
    return count


async def test_each_advice_is_applied_by_its_own_form_and_undone(visitor: httpx.AsyncClient) -> None:
    panel = await door(visitor)
    before = await small(visitor, panel)
    offered = [
        form for form in forms((await visitor.get(f"/panels/{panel}/advice")).text) if form["edit"] != "ask_question"
    ]
    assert offered
    for k, form in enumerate(offered):
        form |= {"base_revision": str(2 * k + 1)}
        applied = await visitor.post(f"/panels/{panel}/edits", data=form, headers=PART)
        assert applied.status_code == 200, applied.text
        assert await small(visitor, panel) <= before
        undone = await visitor.post(f"/panels/{panel}/undo", data={"base_revision": str(2 * k + 2)}, headers=PART)
        assert undone.status_code == 200
        assert await small(visitor, panel) == before


async def test_the_best_advice_leaves_no_small_piece_beside_the_door(visitor: httpx.AsyncClient) -> None:
    panel = await door(visitor)
    assert await small(visitor, panel) > 0
    best = forms((await visitor.get(f"/panels/{panel}/advice")).text)[0]
    await visitor.post(f"/panels/{panel}/edits", data=best, headers=PART)
    assert await small(visitor, panel) == 0


async def test_a_question_is_listed_told_as_asked_and_removed(visitor: httpx.AsyncClient) -> None:
    panel = await door(visitor)
    page = (await visitor.get(f"/panels/{panel}/advice")).text
    ask = next(form for form in forms(page) if form["edit"] == "ask_question")
    assert (await visitor.post(f"/panels/{panel}/edits", data=ask, headers=PART)).status_code == 200
    page = (await visitor.get(f"/panels/{panel}/advice")).text
    assert "<strong>Q1</strong>" in page
    assert ">Asked<" in page
    remove = forms(page)[-1]
    assert (remove["edit"], remove["question"]) == ("remove_question", "Q1")
    assert (await visitor.post(f"/panels/{panel}/edits", data=remove, headers=PART)).status_code == 200
    assert "Questions for the architect" not in (await visitor.get(f"/panels/{panel}/advice")).text


async def test_a_face_without_cuts_says_that_nothing_is_to_better(visitor: httpx.AsyncClient) -> None:
    file: dict[str, Any] = project()
    file["walls"][0]["panels"][0] |= {"openings": [], "outline": [[0, 0], [80, 0], [80, 80], [0, 80]], "margin": 0}
    file["walls"][0]["panels"][0]["field"] = {"size": "modular", "bond": "stack"}
    ids = await stored(visitor, file)
    page = await visitor.get(f"/panels/{ids['walls'][0]['panels'][0]}/advice")
    assert "Nothing to better" in page.text


async def test_a_face_without_brick_says_so(visitor: httpx.AsyncClient) -> None:
    file: dict[str, Any] = project()
    file["walls"][0]["panels"][0]["margin"] = 48
    ids = await stored(visitor, file)
    page = await visitor.get(f"/panels/{ids['walls'][0]['panels'][0]}/advice")
    assert "No brick is laid" in page.text


async def test_an_edits_answer_holds_no_advice_and_no_pictures(visitor: httpx.AsyncClient) -> None:
    panel = await door(visitor)
    form = {"edit": "set_margin", "margin": "1/2", "base_revision": "1"}
    answer = await visitor.post(f"/panels/{panel}/edits", data=form, headers=PART)
    assert "/bonds/" not in answer.text
    assert "ask_question" not in answer.text


async def test_advice_in_a_wall_whose_bed_joints_give_says_that_the_neighbours_follow(
    visitor: httpx.AsyncClient,
) -> None:
    window = {"mark": "W1", "rect": [16, 9 * 8 / 3 - 5 / 12, 79.625, 9 * 8 / 3 + 1 / 6]}
    plain = {"thickness": 7.25, "margin": 0, "outline": [[0, 0], [112, 0], [112, 96], [0, 96]]}
    plain |= {"field": {"size": "modular", "bond": "running"}}
    asking = plain | {"mark": "P1", "openings": [window], "fit": {"courses": True}, "smallest_cut": 0.125}
    for neighbours, follows in (([plain | {"mark": "P2"}], True), ([], False)):
        file: dict[str, Any] = project()
        file["walls"] = [{"mark": "A", "joint": 0.75, "panels": [asking, *neighbours]}]
        ids = await stored(visitor, file)
        page = unescape((await visitor.get(f"/panels/{ids['walls'][0]['panels'][0]}/advice")).text)
        assert "W1 up ≈ 2 5/8 in." in page
        assert ("2 cuts fewer; the wall's courses follow" in page) is follows
