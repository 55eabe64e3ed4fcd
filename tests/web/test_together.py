"""The hint that a panel has changed, what changed since, the history, and who is named in it."""

import asyncio
from collections.abc import Awaitable, Callable

import httpx
import pytest
from test_editor import project

from app.web.hints import Hints

pytestmark = pytest.mark.anyio

PART = {"hx-request": "true"}


async def move(visitor: httpx.AsyncClient, panel: str, base: int, **more: str) -> httpx.Response:
    form = {"edit": "move_opening", "opening": "W1", "dx": '8"', "base_revision": str(base)} | more
    return await visitor.post(f"/panels/{panel}/edits", data=form, headers=PART)


def revision(number: int) -> Callable[[], Awaitable[int]]:
    async def read() -> int:
        return number

    return read


async def test_what_is_saved_while_a_stream_begins_is_told() -> None:
    hints = Hints()

    async def read() -> int:
        await asyncio.to_thread(hints.tell, "p", 8)
        return 7

    stream = hints.stream("p", read)
    assert await anext(stream) == "retry: 1000\ndata: 7\n\n"
    assert await anext(stream) == "data: 8\n\n"


async def test_a_stream_says_the_revision_that_is_there_and_each_that_comes() -> None:
    hints = Hints()
    stream = hints.stream("p", revision(7))
    assert await anext(stream) == "retry: 1000\ndata: 7\n\n"
    assert hints.listening("p") == 1
    await asyncio.to_thread(hints.tell, "p", 8)
    await asyncio.to_thread(hints.tell, "q", 3)
    assert await anext(stream) == "data: 8\n\n"
    hints.close()
    assert [said async for said in stream] == []
    assert hints.listening("p") == 0


async def test_a_page_that_is_closed_is_forgotten() -> None:
    hints = Hints()
    stream = hints.stream("p", revision(1))
    await anext(stream)
    await stream.aclose()
    assert hints.listening("p") == 0


async def test_events_of_a_panel_that_is_not_there_are_not_found(visitor: httpx.AsyncClient) -> None:
    assert (await visitor.get("/panels/nothing/events")).status_code == 404


async def test_what_changed_since_is_sent_with_who_did_it(visitor: httpx.AsyncClient) -> None:
    panel, *_ = await project(visitor)
    assert (await visitor.get(f"/panels/{panel}/since?revision=1")).status_code == 204
    await visitor.post("/person", data={"name": "north desk"})
    assert (await move(visitor, panel, 1)).status_code == 200
    answer = await visitor.get(f"/panels/{panel}/since?revision=1")
    assert answer.status_code == 200
    assert "north desk: Move W1 8&#34; right, rev 2" in answer.text
    assert 'data-revision="2"' in answer.text
    assert 'id="layer-' in answer.text
    assert (await visitor.get(f"/panels/{panel}/since?revision=2")).status_code == 204


async def test_each_person_undoes_their_own(visitor: httpx.AsyncClient) -> None:
    panel, *_ = await project(visitor)
    assert (await move(visitor, panel, 1)).status_code == 200
    await visitor.post("/person", data={"name": "north desk"})
    page = (await visitor.get(f"/panels/{panel}")).text
    assert "Undo: Move W1" not in page
    await visitor.post("/person", data={"name": "office"})
    assert "Undo: Move W1" in (await visitor.get(f"/panels/{panel}")).text


@pytest.mark.parametrize("name", ["x" * 41, "a\x00b", "two\nlines"])
async def test_a_name_that_is_none_is_refused(visitor: httpx.AsyncClient, name: str) -> None:
    answer = await visitor.post("/person", data={"name": name})
    assert answer.status_code == 422
    assert "a name of 1 to 40 characters" in answer.text


@pytest.mark.parametrize("back", ["//elsewhere", "https://elsewhere", "/a?b", ""])
async def test_a_name_leads_nowhere_else(visitor: httpx.AsyncClient, back: str) -> None:
    answer = await visitor.post("/person", data={"name": "mason", "then": back})
    assert answer.headers["location"] == "/"


async def test_the_history_names_every_change_and_what_is_undone(visitor: httpx.AsyncClient) -> None:
    panel, *_ = await project(visitor)
    await move(visitor, panel, 1)
    await visitor.post(f"/panels/{panel}/undo", data={"base_revision": "2"}, headers=PART)
    listed = (await visitor.get(f"/panels/{panel}/history")).text
    assert "Undo: Move W1" in listed
    assert "(undone)" in listed
    assert "Move W1" not in (await visitor.get(f"/panels/{panel}/history?before=2")).text


async def test_two_revisions_are_compared_whichever_is_named_first(visitor: httpx.AsyncClient) -> None:
    panel, *_ = await project(visitor)
    await move(visitor, panel, 1)
    for asked in ("earlier=1&later=2", "earlier=2&later=1", "earlier=1&later=99"):
        page = await visitor.get(f"/panels/{panel}/compare?{asked}")
        assert page.status_code == 200
        assert "rev 1 and rev 2" in page.text
        assert "W1 moved" in page.text
        assert 'class="earlier"' in page.text
    same = (await visitor.get(f"/panels/{panel}/compare?earlier=2&later=2")).text
    assert 'class="earlier"' not in same
