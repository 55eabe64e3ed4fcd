"""The Submittal screen: contents chosen, progress told, the PDF there in the end; other parts by the API."""

import asyncio
import io
import re

import httpx
import pypdf
import pytest
from scenario import project, stored

pytestmark = pytest.mark.anyio

PATIENCE = 300
"""Times that one looks again, a tenth of a second apart."""


def _text(pdf: bytes) -> str:
    return " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages)


async def _made(visitor: httpx.AsyncClient, project_id: str, **form: str) -> httpx.Response:
    """The page of a submittal that is over."""
    answer = await visitor.post(f"/projects/{project_id}/submittal", data=form)
    assert answer.status_code == 303, answer.text
    for _ in range(PATIENCE):
        page = await visitor.get(answer.headers["location"])
        if "hx-get" not in page.text:
            return page
        assert (await visitor.get(f"{answer.headers['location']}/now")).status_code == 200
        await asyncio.sleep(0.1)
    raise AssertionError("not made in time")


async def test_what_goes_to_an_architect_is_chosen_at_first(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    text = (await visitor.get(f"/projects/{ids['id']}/submittal")).text
    boxes = dict(re.findall(r'type="checkbox" name="([a-z-]+)" value="yes"( checked)?', text))
    assert {name for name, is_chosen in boxes.items() if is_chosen} == {"drawings", "schedules", "order"}
    assert {"cut-sheets", "growth", "tape", "saw"} < boxes.keys()
    assert "<option selected>ANSI B</option>" in text


async def test_the_parts_that_were_chosen_are_in_the_pdf(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    page = await _made(visitor, ids["id"], **{"cut-sheets": "yes"}, tape="yes", sheet="A3")
    assert "Ready" in page.text
    found = re.search(r'href="([^"]+file\.pdf)"', page.text)
    assert found
    answer = await visitor.get(found[1])
    assert answer.headers["content-type"] == "application/pdf"
    text = _text(answer.content)
    assert "sheets to cut" in text
    assert "Head joints and checkpoints along the panel" in text
    assert "elevation" not in text
    assert "Saw station" not in text


async def test_a_panel_too_large_for_the_sheet_is_told_on_the_page(visitor: httpx.AsyncClient) -> None:
    large = project()
    for panel in large["walls"][0]["panels"]:
        panel["outline"] = [[0, 0], [1200, 0], [1200, 1200], [0, 1200]]
    ids = await stored(visitor, large)
    page = await _made(visitor, ids["id"], drawings="yes", sheet="A4")
    assert "choose a larger sheet" in page.text
    assert "file.pdf" not in page.text


@pytest.mark.parametrize("form", [{"sheet": "A3"}, {"drawings": "yes", "sheet": "napkin"}])
async def test_a_form_without_parts_or_on_no_sheet_is_refused(visitor: httpx.AsyncClient, form: dict[str, str]) -> None:
    ids = await stored(visitor)
    assert (await visitor.post(f"/projects/{ids['id']}/submittal", data=form)).status_code == 422


async def test_a_submittal_of_another_project_is_not_found(visitor: httpx.AsyncClient) -> None:
    ids, other = await stored(visitor), await stored(visitor, project() | {"walls": []})
    answer = await visitor.post(f"/projects/{other['id']}/submittal", data={"order": "yes", "sheet": "A4"})
    job = answer.headers["location"].rsplit("/", 1)[1]
    assert (await visitor.get(f"/projects/{ids['id']}/submittal/{job}")).status_code == 404
    assert (await visitor.get(f"/projects/{ids['id']}/submittal/{job}/file.pdf")).status_code == 404


async def test_parts_can_be_named_to_the_api(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    address = f"/api/projects/{ids['id']}/submittal.pdf"
    text = _text((await visitor.get(f"{address}?parts=saw,order")).content)
    assert "Saw station" in text
    assert "elevation" not in text
    refused = await visitor.get(f"{address}?parts=poems")
    assert refused.status_code == 422
    assert "approval, shop" in refused.text
