"""A wall's form on the project page: works without script, says what changed, undoes it, refuses what is stale."""

import html
import re
from typing import Any

import httpx
import pytest
from scenario import PROJECT

pytestmark = pytest.mark.anyio


async def _made(visitor: httpx.AsyncClient) -> tuple[str, str, list[str]]:
    ids = (await visitor.post("/api/projects", json=PROJECT)).json()
    return ids["id"], ids["walls"][0]["id"], ids["walls"][0]["panels"]


async def _set(visitor: httpx.AsyncClient, project: str, wall: str, **form: Any) -> httpx.Response:
    return await visitor.post(f"/projects/{project}/walls/{wall}/settings", data=form)


async def _feet(visitor: httpx.AsyncClient, panels: list[str]) -> list[float]:
    layouts = [(await visitor.get(f"/api/panels/{panel}/layout")).json() for panel in panels]
    return [layout["courses"][1]["bottom"] for layout in layouts]


async def test_the_datum_is_typed_said_and_undone(visitor: httpx.AsyncClient) -> None:
    project, wall, panels = await _made(visitor)
    file = (await visitor.get(f"/api/projects/{project}/file")).json()
    before = await _feet(visitor, panels)
    answer = await _set(visitor, project, wall, revision="1", datum='3/8"', joint="0.75")
    assert answer.status_code == 303
    assert await _feet(visitor, panels) == pytest.approx([foot + 0.375 for foot in before])
    page = html.unescape((await visitor.get(answer.headers["location"])).text)
    assert 'Datum moved 3/8" up, from 0" to 3/8"; the courses of 2 panels moved with it.' in page
    notice = page[page.index('class="notice"') :]
    fields = dict(re.findall(r'name="(\w+)" value="([^"]*)"', notice)[:3])
    back = await _set(visitor, project, wall, **fields)
    assert back.status_code == 303
    assert await _feet(visitor, panels) == pytest.approx(before)
    assert (await visitor.get(f"/api/projects/{project}/file")).json() == file


async def test_what_changed_is_said_only_until_something_else_changes(visitor: httpx.AsyncClient) -> None:
    project, wall, _ = await _made(visitor)
    first = await _set(visitor, project, wall, revision="1", datum="2", joint="0.75")
    await _set(visitor, project, wall, revision="2", datum="3", joint="0.75")
    assert "Undo" not in (await visitor.get(first.headers["location"])).text


async def test_a_stale_page_moves_nothing_and_is_told_so(visitor: httpx.AsyncClient) -> None:
    project, wall, panels = await _made(visitor)
    await _set(visitor, project, wall, revision="1", datum="2", joint="0.75")
    there = await _feet(visitor, panels)
    late = await _set(visitor, project, wall, revision="1", datum="5", joint="0.75")
    assert late.status_code == 412
    assert "Somebody changed this project since you opened the page" in late.text
    assert await _feet(visitor, panels) == there


@pytest.mark.parametrize(("datum", "joint"), [("wide", "0.75"), ("0", "-1"), ("0", "NaN")])
async def test_what_is_no_length_is_told_with_its_place(visitor: httpx.AsyncClient, datum: str, joint: str) -> None:
    project, wall, _ = await _made(visitor)
    answer = await _set(visitor, project, wall, revision="1", datum=datum, joint=joint)
    assert answer.status_code == 422
    assert "Nothing was saved" in answer.text
    assert (await visitor.get(f"/api/projects/{project}")).json()["revision"] == 1


async def test_an_empty_field_is_the_usual_value(visitor: httpx.AsyncClient) -> None:
    project, wall, _ = await _made(visitor)
    await _set(visitor, project, wall, revision="1", datum="", joint="")
    held = (await visitor.get(f"/api/projects/{project}/file")).json()["walls"][0]
    assert "datum" not in held
    assert "joint" not in held


async def test_another_projects_wall_is_not_set_from_here(visitor: httpx.AsyncClient) -> None:
    project, _, _ = await _made(visitor)
    _, other, _ = await _made(visitor)
    assert (await _set(visitor, project, other, revision="1", datum="1", joint="1")).status_code == 404


async def test_released_panels_are_told_in_drawing_schedule_and_facts(visitor: httpx.AsyncClient) -> None:
    released = [panel | {"released": True} for panel in PROJECT["walls"][0]["panels"][1:]]
    wall = PROJECT["walls"][0] | {"panels": [PROJECT["walls"][0]["panels"][0], *released]}
    ids = (await visitor.post("/api/projects", json=PROJECT | {"walls": [wall]})).json()
    page = (await visitor.get(f"/projects/{ids['id']}")).text
    assert "released: E2" in page
    assert "<td>released</td>" in page
    assert ">released</text>" in page
