"""The Liner screen: counts and trims of the plan that the results have too, the laying changed, told and undone."""

import html
import re
from typing import Any

import httpx
import pytest
from scenario import PROJECT

from app.liner.stack_words import run_words

pytestmark = pytest.mark.anyio

UP = {"corner": "bed upper right", "direction": "up"}


async def made(visitor: httpx.AsyncClient, file: dict[str, Any] = PROJECT) -> str:
    ids = (await visitor.post("/api/projects", json=file)).json()
    return str(ids["walls"][0]["panels"][0])


async def laid(visitor: httpx.AsyncClient, panel: str, revision: str = "1", **form: str) -> httpx.Response:
    return await visitor.post(f"/panels/{panel}/liner", data={"base_revision": revision, **form})


def figures(page: str) -> list[int]:
    return [int(figure.replace(",", "")) for figure in re.findall(r'<span class="big">([0-9,]+)</span>', page)]


async def test_the_counts_are_those_of_the_results(visitor: httpx.AsyncClient) -> None:
    panel = await made(visitor)
    page = (await visitor.get(f"/panels/{panel}/liner")).text
    sheets = (await visitor.get(f"/api/panels/{panel}/layout")).json()["sheets"]
    placed, used, bound, naive = figures(page)
    assert (placed, used, naive) == (sheets["placed"], sheets["used"], sheets["naive"])
    assert sheets["area_bound"] <= bound <= used <= naive


async def test_sheets_to_cut_and_whole_ones_are_all_to_unpack(visitor: httpx.AsyncClient) -> None:
    """By the counts in words, by the list, and by the numbers of laid sheets in both."""
    panel = await made(visitor)
    page = html.unescape((await visitor.get(f"/panels/{panel}/liner")).text)
    sheets = (await visitor.get(f"/api/panels/{panel}/layout")).json()["sheets"]
    words = re.search(r"(\d+) sheets to unpack: (\d+) to cut, in (\d+) ways?, and (\d+) whole", page)
    assert words is not None
    used, cut, ways, whole = map(int, words.groups())
    assert used == cut + whole == sheets["used"]
    trims = page[page.index('<table class="trims">') :].partition("</table>")[0]
    rows = re.findall(r'<tr><th scope="row">[A-Z]+</th><td>(one|\d+) sheets?.*?</td><td>(.*?)</td>', trims)
    assert len(rows) == ways
    assert sum(1 if count == "one" else int(count) for count, _ in rows) == cut
    told = [number for _, pieces in rows for number in numbers_in(re.sub("<br>|and", ",", pieces))]
    assert sorted(told) == [int(sheet["mark"]) for sheet in sheets["list"] if sheet["trimmed"]]
    named = re.search(r"Whole: (.*?)\.<", page)
    assert named is not None
    assert numbers_in(named.group(1)) == [int(sheet["mark"]) for sheet in sheets["list"] if not sheet["trimmed"]]


def numbers_in(words: str) -> list[int]:
    """Every number of a list with runs."""
    runs = re.findall(r"(\d+)(?:\u2013(\d+))?", words)
    return [number for first, last in runs for number in range(int(first), int(last or first) + 1)]


def test_numbers_that_follow_one_another_are_a_run() -> None:
    assert run_words([15, 7, 108, 102, 103, 104, 105, 106, 107]) == "7, 15, 102\u2013108"
    assert run_words([1, 2]) == "1, 2"
    assert run_words([]) == ""


async def test_sheets_to_fix_and_flanges_to_cut_off_are_told_once(visitor: httpx.AsyncClient) -> None:
    page = html.unescape((await visitor.get(f"/panels/{await made(visitor)}/liner")).text)
    assert page.count("Fix when windy: ") == 1
    assert page.count("Cut a flange off where no later sheet lies on it") == 1


async def test_another_corner_is_laid_told_and_undone(visitor: httpx.AsyncClient) -> None:
    panel = await made(visitor)
    answer = await laid(visitor, panel, **UP)
    assert answer.status_code == 303
    assert (await visitor.get(f"/api/panels/{panel}")).json()["document"]["laying"] == UP
    page = (await visitor.get(answer.headers["location"])).text
    assert "Laid from upper right of the bed in columns; before from lower left of the bed in rows across." in page
    assert '<option value="bed upper right" selected>' in page
    notice = page[page.index('class="once"') :]
    undo = dict(re.findall(r'name="(\w+)" value="([^"]*)"', notice)[:4])
    assert (await visitor.post(f"/panels/{panel}/liner", data=undo)).status_code == 303
    assert (await visitor.get(f"/panels/{panel}/liner")).text.count('<option value="bed lower left" selected>') == 1


async def test_a_script_gets_the_part_that_changed_and_the_new_revision(visitor: httpx.AsyncClient) -> None:
    panel = await made(visitor)
    visitor.headers["hx-request"] = "true"
    answer = await laid(visitor, panel, **UP)
    assert answer.status_code == 200
    assert answer.text.lstrip().startswith('<div id="liner-results"')
    assert 'id="liner-revision" name="base_revision" value="2" hx-swap-oob="true"' in answer.text
    assert "<select" not in answer.text
    assert "<select" in (await laid(visitor, panel, "2", undo="yes", corner="bed lower left", direction="across")).text


async def test_what_others_changed_stays_and_the_same_thing_is_not_overwritten(visitor: httpx.AsyncClient) -> None:
    panel = await made(visitor)
    await visitor.patch(f"/api/panels/{panel}", json={"margin": 1}, headers={"if-match": '"rev-1"'})
    assert (await laid(visitor, panel, **UP)).status_code == 303
    assert (await visitor.get(f"/api/panels/{panel}")).json()["document"]["margin"] == 1
    visitor.headers["hx-request"] = "true"
    late = await laid(visitor, panel, corner="bed lower right", direction="up")
    assert late.status_code == 412
    assert "Somebody changed how the sheets are laid" in late.text


async def test_an_unknown_corner_is_refused_with_what_there_is(visitor: httpx.AsyncClient) -> None:
    panel = await made(visitor)
    for headers in ({}, {"hx-request": "true"}):
        visitor.headers.update(headers)
        answer = await laid(visitor, panel, corner="north", direction="up")
        assert answer.status_code == 422
        assert "one of bed lower left, bed lower right" in html.unescape(answer.text)


async def test_cautions_of_the_bed_and_the_knife_are_there(visitor: httpx.AsyncClient) -> None:
    page = (await visitor.get(f"/panels/{await made(visitor)}/liner")).text
    assert "Liner is slippery" in page
    assert "away from the body" in page
    assert "safety officer" in page


async def test_a_panel_without_brick_says_that_there_is_nothing_to_cut(visitor: httpx.AsyncClient) -> None:
    bare = PROJECT["walls"][0]["panels"][1] | {"plates": [{"mark": "P1", "rect": [0, 0, 96, 96]}]}
    panel = await made(visitor, PROJECT | {"walls": [PROJECT["walls"][0] | {"panels": [bare]}]})
    page = (await visitor.get(f"/panels/{panel}/liner")).text
    assert figures(page) == [0, 0, 0, 0]
    assert "No sheet is cut." in page
