"""The bed page: what a link opens, and nothing beside it."""

import html
import re

import httpx
import pytest
from scenario import project, stored

from app.documents.project_file import read_project
from app.drawing.lettering import lettered
from app.liner.drift import expected_at
from app.workflow.compute import compute

pytestmark = pytest.mark.anyio


async def _opened(visitor: httpx.AsyncClient, project_id: str, panel_id: str = "") -> httpx.Response:
    made = await visitor.post(
        f"/projects/{project_id}/shares", data={"panel": panel_id, "rights": "view", "lasts": "ever"}
    )
    found = re.search(r'id="address">([^<]+)<', made.text)
    assert found
    return await visitor.get(html.unescape(found[1]), follow_redirects=True)


async def test_the_office_sees_it_without_a_link(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    page = await visitor.get(f"/bed/{ids['walls'][0]['panels'][0]}")
    assert page.status_code == 200
    assert "BED VIEW" in page.text
    assert "(mirrored)" in page.text


async def test_a_link_to_one_panel_opens_no_other(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    first, second = ids["walls"][0]["panels"]
    assert (await _opened(visitor, ids["id"], first)).status_code == 200
    other, missing = await visitor.get(f"/bed/{second}"), await visitor.get("/bed/0000")
    assert other.status_code == missing.status_code == 404
    assert other.text == missing.text
    assert (await visitor.get(f"/bed/{second}/readings")).status_code == 404
    assert (await visitor.get("/bed")).headers["location"] == f"/bed/{first}"


async def test_a_link_to_a_project_opens_its_panels_and_no_others(visitor: httpx.AsyncClient) -> None:
    ids, others = await stored(visitor), await stored(visitor)
    page = await _opened(visitor, ids["id"])
    assert page.url.path == "/bed"
    for panel_id in ids["walls"][0]["panels"]:
        assert f"/bed/{panel_id}" in page.text
        assert (await visitor.get(f"/bed/{panel_id}")).status_code == 200
    assert (await visitor.get(f"/bed/{others['walls'][0]['panels'][0]}")).status_code == 404


async def test_a_guest_is_shown_no_way_into_the_office(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    page = await _opened(visitor, ids["id"], ids["walls"][0]["panels"][0])
    assert "/projects/" not in page.text
    assert "/panels/" not in page.text


async def test_a_link_that_is_revoked_closes_at_once(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    panel_id = ids["walls"][0]["panels"][0]
    await _opened(visitor, ids["id"], panel_id)
    office = (await visitor.get(f"/projects/{ids['id']}")).text
    revoke = re.search(r'action="([^"]+/revoke)"', office)
    assert revoke
    await visitor.post(revoke[1])
    assert (await visitor.get(f"/bed/{panel_id}")).status_code == 404


async def test_a_device_forgets_its_link(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    await _opened(visitor, ids["id"], ids["walls"][0]["panels"][0])
    assert "bed" in visitor.cookies
    await visitor.post("/bed/leave")
    assert "bed" not in visitor.cookies


@pytest.mark.parametrize("temperature", [40, 70, 105])
async def test_readings_are_those_of_the_drift(visitor: httpx.AsyncClient, temperature: int) -> None:
    ids = await stored(visitor)
    value = read_project(project())
    points = compute(value, value.walls[0], value.walls[0].panels[0]).drift.checkpoints
    part = await visitor.get(f"/bed/{ids['walls'][0]['panels'][0]}/readings", params={"temperature": temperature})
    shown = [html.unescape(cell) for cell in re.findall(r'class="figure key">([^<]+)<', part.text)]
    expected = [
        lettered(inches).removeprefix("≈ ")
        for axis in "xy"
        for point in points
        if point.axis == axis
        for inches in (point.nominal, expected_at(point, temperature))
    ]
    assert shown == expected


@pytest.mark.parametrize("show", ["set-out", "sheets", "brick", "checkpoints"])
async def test_every_choice_is_a_plain_address(visitor: httpx.AsyncClient, show: str) -> None:
    ids = await stored(visitor)
    page = await visitor.get(f"/bed/{ids['walls'][0]['panels'][0]}", params={"show": show, "temperature": 90})
    assert page.status_code == 200
    assert f'value="{show}" aria-pressed="true"' in page.text
    assert "Cautions" in page.text
    assert "style=" not in page.text


@pytest.mark.parametrize("query", ["show=all", "show="])
async def test_anything_else_is_refused(visitor: httpx.AsyncClient, query: str) -> None:
    ids = await stored(visitor)
    assert (await visitor.get(f"/bed/{ids['walls'][0]['panels'][0]}?{query}")).status_code == 422


@pytest.mark.parametrize(
    ("typed", "found"), [("900", "900 °F"), ("-61", "-61 °F"), ("hot", "'hot'"), ("", "nothing"), ("1e2", "'1e2'")]
)
async def test_a_temperature_that_cannot_be_gets_words_and_no_readings(
    visitor: httpx.AsyncClient, typed: str, found: str
) -> None:
    ids = await stored(visitor)
    panel = f"/bed/{ids['walls'][0]['panels'][0]}"
    for address in (panel, f"{panel}/readings"):
        answer = await visitor.get(address, params={"temperature": typed})
        assert answer.status_code == 422
        assert f"found {found}<br>expected a bed temperature from -60 to 250 °F" in html.unescape(answer.text)
        assert "Tape reads" not in answer.text
    assert "BED VIEW" in (await visitor.get(panel, params={"temperature": typed})).text


async def test_readings_are_at_the_temperature_asked_for_even_beyond_the_slider(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    page = await visitor.get(f"/bed/{ids['walls'][0]['panels'][0]}", params={"temperature": "200.5"})
    assert "At 200.5 °F" in page.text
    assert 'step="any" value="200.5"' in page.text
    assert 'max="122" step="1" value="122"' in page.text
