"""The casting day of a panel on the project page: typed, shown, kept beside what others changed, refused when met."""

import html
from typing import Any

import httpx
import pytest
from scenario import PROJECT

pytestmark = pytest.mark.anyio


async def made(visitor: httpx.AsyncClient) -> tuple[str, str]:
    ids = (await visitor.post("/api/projects", json=PROJECT)).json()
    return ids["id"], ids["walls"][0]["panels"][0]


async def cast(visitor: httpx.AsyncClient, project: str, panel: str, **form: Any) -> httpx.Response:
    return await visitor.post(f"/projects/{project}/panels/{panel}/casting", data=form)


async def document(visitor: httpx.AsyncClient, panel: str) -> dict[str, Any]:
    held: dict[str, Any] = (await visitor.get(f"/api/panels/{panel}")).json()["document"]
    return held


async def test_the_day_is_in_the_schedule_and_an_empty_one_is_taken_away(visitor: httpx.AsyncClient) -> None:
    project, panel = await made(visitor)
    answer = await cast(visitor, project, panel, revision="1", cast_on="2026-12-01", placed="yes")
    assert answer.status_code == 303
    page = (await visitor.get(answer.headers["location"])).text
    assert '<span class="whole">2026-12-01</span><br><span class="right">placed</span>' in page
    assert "1 of 2 with a casting day, 1 placed" in page
    await cast(visitor, project, panel, revision="2", cast_on="")
    assert await document(visitor, panel) == PROJECT["walls"][0]["panels"][0] | {"placed": False}


async def test_the_day_lies_on_top_of_what_somebody_else_changed(visitor: httpx.AsyncClient) -> None:
    project, panel = await made(visitor)
    await visitor.patch(f"/api/panels/{panel}", json={"margin": 1}, headers={"if-match": '"rev-1"'})
    assert (await cast(visitor, project, panel, revision="1", cast_on="2026-12-01")).status_code == 303
    held = await document(visitor, panel)
    assert (held["margin"], held["cast_on"]) == (1, "2026-12-01")


async def test_two_days_for_one_panel_are_told_and_the_first_stays(visitor: httpx.AsyncClient) -> None:
    project, panel = await made(visitor)
    await cast(visitor, project, panel, revision="1", cast_on="2026-12-01")
    late = await cast(visitor, project, panel, revision="1", cast_on="2026-12-02")
    assert late.status_code == 412
    assert "Somebody set the casting day of this panel since you opened the page" in late.text
    assert (await document(visitor, panel))["cast_on"] == "2026-12-01"


async def test_a_day_that_there_is_not_is_told_and_nothing_is_saved(visitor: httpx.AsyncClient) -> None:
    project, panel = await made(visitor)
    answer = await cast(visitor, project, panel, revision="1", cast_on="2026-02-30", placed="yes")
    assert answer.status_code == 422
    page = html.unescape(answer.text)
    assert "found '2026-02-30'" in page
    assert "such as 2026-12-01" in page
    assert "placed" not in await document(visitor, panel)


async def test_another_projects_panel_is_not_cast_from_here(visitor: httpx.AsyncClient) -> None:
    project, _ = await made(visitor)
    _, other = await made(visitor)
    assert (await cast(visitor, project, other, revision="1", cast_on="2026-12-01")).status_code == 404
