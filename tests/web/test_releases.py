"""Releases as pages and for scripts: made, listed, compared, held, taken part by part."""

import asyncio
import json
import re

import httpx
import pytest
from test_editor import project

pytestmark = pytest.mark.anyio

PLAIN = {
    "mark": "N1",
    "thickness": 7.25,
    "outline": [[0, 0], [120, 0], [120, 96], [0, 96]],
    "openings": [{"mark": "W1", "use": "window", "rect": [30, 24, 40, 40]}],
    "field": {"size": "modular", "bond": "running"},
}
MUST = PLAIN | {"mark": "N2", "fit": {"courses": False, "heads": False, "matter": {"sills": "required"}}}
MUST |= {"openings": [{"mark": "W1", "use": "window", "rect": [30, 25, 40, 40]}]}


async def released(client: httpx.AsyncClient, panel: str, why: str = "For casting") -> dict:
    answer = await client.post(f"/api/panels/{panel}/releases", json={"why": why})
    assert answer.status_code == 201, answer.text
    return answer.json()


async def change(client: httpx.AsyncClient, panel: str, patch: dict) -> None:
    tag = (await client.get(f"/api/panels/{panel}")).headers["etag"]
    headers = {"if-match": tag, "content-type": "application/merge-patch+json"}
    answer = await client.patch(f"/api/panels/{panel}", content=json.dumps(patch), headers=headers)
    assert answer.status_code == 200, answer.text


async def test_a_panel_is_released_from_its_page_and_shown_whole(visitor: httpx.AsyncClient) -> None:
    (panel,) = await project(visitor, PLAIN)
    assert "Not released yet" in (await visitor.get(f"/panels/{panel}/releases")).text
    answer = await visitor.post(f"/panels/{panel}/releases", data={"why": "For casting"}, follow_redirects=True)
    assert "N1, rev A" in answer.text
    assert "Whole: every byte is as it was released." in answer.text
    assert "The first release of this panel." in answer.text
    listed = (await visitor.get(f"/panels/{panel}/releases")).text
    assert "Rev A, as drawn" in listed
    assert "Release as rev" not in listed


async def test_the_second_says_what_changed_in_words_and_in_the_drawing(visitor: httpx.AsyncClient) -> None:
    (panel,) = await project(visitor, PLAIN)
    await released(visitor, panel)
    await change(visitor, panel, {"openings": [{"mark": "W1", "use": "window", "rect": [34, 24, 40, 40]}]})
    assert "Changed since rev A" in (await visitor.get(f"/panels/{panel}/releases")).text
    second = await released(visitor, panel, "W1 moved")
    page = (await visitor.get(f"/panels/{panel}/releases/{second['id']}")).text
    assert "W1 moved from 30, 24 to 34, 24" in page
    assert page.count('class="cloud"') == 1
    assert page.count('class="delta"') == 1


async def test_a_part_comes_back_byte_by_byte(visitor: httpx.AsyncClient) -> None:
    (panel,) = await project(visitor, PLAIN)
    row = await released(visitor, panel)
    address = f"/panels/{panel}/releases/{row['id']}"
    before = {name: (await visitor.get(f"{address}/{name}")).content for name in row["parts"]}
    await change(visitor, panel, {"margin": 0.5})
    assert {name: (await visitor.get(f"{address}/{name}")).content for name in row["parts"]} == before
    assert (await visitor.get(f"{address}/bed.svg")).headers["content-type"].startswith("image/svg+xml")
    assert (await visitor.get(f"{address}/nothing.svg")).status_code == 404


async def test_an_open_error_blocks_and_is_named(visitor: httpx.AsyncClient) -> None:
    (panel,) = await project(visitor, MUST)
    answer = await visitor.post(f"/api/panels/{panel}/releases", json={"why": "For casting"})
    assert answer.status_code == 422
    assert "Sill W1 must be met" in answer.json()["faults"][0]["found"]
    page = (await visitor.get(f"/panels/{panel}/releases")).text
    assert "Open errors stand in the way" in page
    assert "Release as rev" not in page


async def test_many_are_released_one_by_one_and_each_outcome_is_told(visitor: httpx.AsyncClient) -> None:
    panels = await project(visitor, PLAIN, MUST, PLAIN | {"mark": "N3"})
    held = (await visitor.get(f"/api/panels/{panels[0]}")).json()["project"]
    page = (await visitor.get(f"/projects/{held}/releases")).text
    assert page.count("checked") == 2
    assert page.count("disabled") == 1
    answer = await visitor.post(f"/projects/{held}/releases", data={"why": "First set", "panel": panels})
    assert answer.status_code == 303
    for _ in range(100):
        making = (await visitor.get(answer.headers["location"])).text
        if "Done." in making:
            break
        await asyncio.sleep(0.1)
    assert making.count("rev A released") == 2
    assert "not released: found Sill W1 must be met" in making
    assert re.search("N3</a>: rev A released", making)


async def test_nothing_chosen_and_no_reason_are_told_and_keep_what_was_typed(visitor: httpx.AsyncClient) -> None:
    (panel,) = await project(visitor, PLAIN)
    held = (await visitor.get(f"/api/panels/{panel}")).json()["project"]
    answer = await visitor.post(f"/projects/{held}/releases", data={"why": "First <set>"})
    assert answer.status_code == 422
    assert "none chosen" in answer.text
    assert "First &lt;set&gt;" in answer.text
    assert (await visitor.post(f"/panels/{panel}/releases", data={"why": ""})).status_code == 422


async def test_hold_and_go_on(visitor: httpx.AsyncClient) -> None:
    (panel,) = await project(visitor, PLAIN)
    row = await released(visitor, panel)
    address = f"/panels/{panel}/releases/{row['id']}/notice"
    await visitor.post(address, data={"kind": "hold", "why": "wrong liner came"})
    assert "on hold: wrong liner came" in (await visitor.get(f"/panels/{panel}/releases")).text
    assert (await visitor.post(address, data={"kind": "hold", "why": "again"})).status_code == 422
    await visitor.post(address, data={"kind": "go on", "why": "right one is here"})
    listed = (await visitor.get(f"/api/panels/{panel}/releases")).json()["releases"]
    assert (listed[0]["state"], listed[0]["faults"], listed[0]["digest"]) == ("in force", [], row["digest"])


async def test_a_release_of_another_panel_is_not_there(visitor: httpx.AsyncClient) -> None:
    one, other = await project(visitor, PLAIN, PLAIN | {"mark": "N3"})
    row = await released(visitor, one)
    assert (await visitor.get(f"/panels/{other}/releases/{row['id']}")).status_code == 404
    notice = {"kind": "hold", "why": "x"}
    assert (await visitor.post(f"/panels/{other}/releases/{row['id']}/notice", data=notice)).status_code == 404


@pytest.mark.parametrize("body", [{}, {"why": 5}, {"why": "x", "more": 1}, []])
async def test_a_body_that_is_none_is_refused(visitor: httpx.AsyncClient, body: object) -> None:
    (panel,) = await project(visitor, PLAIN)
    assert (await visitor.post(f"/api/panels/{panel}/releases", json=body)).status_code == 400
