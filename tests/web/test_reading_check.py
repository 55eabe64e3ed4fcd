"""Checking a reading: verdict or clear refusal, with and without script, and nothing is stored."""

import json
import re
from html import unescape
from pathlib import Path

import httpx
import pytest
from scenario import stored

pytestmark = pytest.mark.anyio

CASES = Path(__file__).parents[1] / "cases"
PART = {"hx-request": "true"}


async def panel(client: httpx.AsyncClient, name: str = "b1") -> str:
    ids = await stored(client, json.loads((CASES / f"{name}.json").read_text()))
    return f"/panels/{ids['walls'][0]['panels'][0]}"


def plain(page: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", page)).split())


async def check(client: httpx.AsyncClient, address: str, **typed: object) -> httpx.Response:
    return await client.get(f"{address}/drift/reading", params=typed, headers=PART)


async def test_a_reading_gets_a_verdict_with_its_instruction_and_says_it_is_not_recorded(
    visitor: httpx.AsyncClient,
) -> None:
    """X3 of B1 is the jamb at 6'-11 1/2"; seven joints of 1/32 in. lead to the next one."""
    told = await check(visitor, await panel(visitor), checkpoint="X3", reading="6'-11 11/16\"", bed="70")
    words = plain(told.text)
    assert told.status_code == 200
    assert "<html" not in told.text
    assert 'X3 reads 6\'-11 11/16": 3/16" long.' in words
    assert 'Adjust: spread 3/16" over the next 7 joints: squeeze 5 joints by 1/32" and 2 by 1/64"' in words
    assert "Not recorded." in words


async def test_without_script_the_same_is_a_page_that_keeps_what_was_typed(visitor: httpx.AsyncClient) -> None:
    address = await panel(visitor)
    empty = await visitor.get(f"{address}/drift/reading")
    assert "Check a reading" in plain(empty.text)
    assert 'class="drawing' not in empty.text
    told = await visitor.get(
        f"{address}/drift/reading", params={"checkpoint": "X3", "reading": "6'-11 1/2\"", "bed": "70"}
    )
    assert told.status_code == 200
    assert '<option value="X3" selected>' in told.text
    assert 'value="6&#39;-11 1/2&#34;"' in told.text
    assert "Hold: lay on as it is" in plain(told.text)


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        (
            {"checkpoint": "X3", "reading": "58'"},
            "found 58'-0\" along the panel expected 0 to 40'-0\", the panel's width",
        ),
        ({"checkpoint": "X3", "reading": "7'", "bed": "900"}, "bed temperature found 900 °F expected -60 to 250 °F"),
        ({"checkpoint": "X3", "reading": "7'", "bed": "hot"}, "bed temperature found hot expected a temperature in °F"),
        ({"checkpoint": "X99", "reading": "7'"}, "found X99 expected one of X1 to X11 or Y1 to Y9; nearest is X11"),
        ({"checkpoint": "X3", "reading": ""}, "reading found nothing expected a number, for example"),
        ({"checkpoint": "X3", "reading": "7 ft or so"}, "reading found 7 ft or so expected"),
        ({"checkpoint": "X3", "reading": "20'-4\""}, "did you read X6? It is at 20'-4\""),
    ],
)
async def test_what_cannot_be_is_refused_in_words(
    visitor: httpx.AsyncClient, typed: dict[str, str], words: str
) -> None:
    address = await panel(visitor)
    refused = await check(visitor, address, **typed)
    assert refused.status_code == 422
    assert words in plain(refused.text)
    whole = await visitor.get(f"{address}/drift/reading", params=typed)
    assert whole.status_code == 422
    assert words in plain(whole.text)


async def test_readings_tried_before_stand_in_the_plot_in_order(visitor: httpx.AsyncClient) -> None:
    address = await panel(visitor)
    first = await check(visitor, address, checkpoint="X3", reading="6'-11 11/16\"", bed="70")
    tried = [unescape(text) for text in re.findall(r'name="before" form="reading-check" value="([^"]*)"', first.text)]
    assert tried == ["X3|6'-11 11/16\"|70|"]
    second = await check(
        visitor, address, checkpoint="X3", reading="6'-11 1/2\"", bed="70", before=[*tried, "no|sense", "Q|1|2|3"]
    )
    letters = re.findall(r">([HAR]\d?)</text>", second.text)
    assert letters[:2] == ["A1", "H2"]
    assert second.text.count('name="before"') == 2


async def test_nothing_is_stored(visitor: httpx.AsyncClient) -> None:
    address = await panel(visitor)
    before = (await visitor.get(f"/api{address}")).headers["etag"]
    await check(visitor, address, checkpoint="X3", reading="7'", bed="70")
    assert (await visitor.get(f"/api{address}")).headers["etag"] == before
    assert (await visitor.post(f"{address}/drift/reading")).status_code == 405


async def test_an_unknown_panel_is_not_there(visitor: httpx.AsyncClient) -> None:
    assert (await check(visitor, "/panels/none", checkpoint="X3", reading="7'")).status_code == 404
