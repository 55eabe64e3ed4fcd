"""What is computed, for scripts: one layout feeds every answer."""

import csv
import io
import re
from typing import Any

import httpx
import openpyxl
import pypdf
import pytest
from scenario import project, stored
from works import saw_of

from app.documents.project_file import read_project
from app.documents.results import layout_result
from app.workflow.compute import compute

pytestmark = pytest.mark.anyio


async def _ids(client: httpx.AsyncClient) -> tuple[str, str]:
    ids = await stored(client)
    return f"/api/projects/{ids['id']}", f"/api/panels/{ids['walls'][0]['panels'][0]}"


async def test_the_layout_is_what_the_library_computes(client: httpx.AsyncClient) -> None:
    _, panel = await _ids(client)
    value = read_project(project())
    wall = value.walls[0]
    found = compute(value, wall, wall.panels[0])
    computed = found.layout, found.plan, found.cutting, found.drift, found.takeoff, found.saw
    expected = layout_result(value, wall, wall.panels[0], *computed)
    assert (await client.get(f"{panel}/layout")).json() == expected


@pytest.mark.parametrize("view", ["elevation", "bed", "sheets", "story-pole"])
async def test_drawings_are_sized_in_millimetres_of_paper(client: httpx.AsyncClient, view: str) -> None:
    _, panel = await _ids(client)
    answer = await client.get(f"{panel}/{view}.svg")
    assert answer.headers["content-type"] == "image/svg+xml"
    assert re.search(r'<svg[^>]* height="[\d.]+mm"', answer.text)
    assert "style=" not in answer.text


async def test_a_drawing_is_at_the_scale_asked_for(client: httpx.AsyncClient) -> None:
    """The panel is 12 ft wide: 3 in. at 1/4 in. to the foot, 144 in. / 50 at 1:50 (ISO 5455)."""
    _, panel = await _ids(client)
    widths = {}
    for ratio in (48, 50):
        text = (await client.get(f"{panel}/elevation.svg?scale={ratio}")).text
        found = re.search(r'<svg[^>]* width="([\d.]+)mm"', text)
        assert found
        widths[ratio] = float(found[1])
    assert widths[48] - widths[50] == pytest.approx(144 * 25.4 * (1 / 48 - 1 / 50), abs=1e-3)


async def test_a_scale_of_no_standard_is_refused(client: httpx.AsyncClient) -> None:
    _, panel = await _ids(client)
    answer = await client.get(f"{panel}/bed.svg?scale=47")
    assert answer.status_code == 422
    assert answer.json()["faults"][0]["path"] == "scale"


async def test_every_form_of_the_takeoff_says_the_same(client: httpx.AsyncClient) -> None:
    address, _ = await _ids(client)
    lines = (await client.get(f"{address}/takeoff.json")).json()["lines"]
    assert lines
    rows = list(csv.DictReader(io.StringIO((await client.get(f"{address}/takeoff.csv")).text)))
    book = openpyxl.load_workbook(io.BytesIO((await client.get(f"{address}/takeoff.xlsx")).content))
    sheet = [[cell.value for cell in row] for row in book.active.iter_rows(min_row=2)]
    assert [(row["Item"], float(row["Order"])) for row in rows] == [(line["item"], line["order"]) for line in lines]
    assert [row[0] for row in sheet] == [line["item"] for line in lines]
    assert [row[4] for row in sheet] == pytest.approx([line["order"] for line in lines])


async def test_a_scope_has_its_own_takeoff_in_every_form(client: httpx.AsyncClient) -> None:
    """The panels' bricks add up to the wall's but for shared cut ones; no scope is the whole project."""
    ids = await stored(client)
    address = f"/api/projects/{ids['id']}/takeoff"
    wall = ids["walls"][0]
    nets = {}
    for of in (f"wall:{wall['id']}", *(f"panel:{panel}" for panel in wall["panels"])):
        lines = (await client.get(f"{address}.json", params={"of": of})).json()["lines"]
        text = (await client.get(f"{address}.csv", params={"of": of})).text
        book = openpyxl.load_workbook(io.BytesIO((await client.get(f"{address}.xlsx", params={"of": of})).content))
        rows = list(csv.DictReader(io.StringIO(text)))
        assert [(row["Item"], float(row["Net"])) for row in rows] == [(line["item"], line["net"]) for line in lines]
        assert [row[0].value for row in book["Order"].iter_rows(min_row=2)] == [line["item"] for line in lines]
        nets[of] = next(line["net"] for line in lines if line["item"] == "Face of panels")
    first, *rest = nets.values()
    assert first == pytest.approx(sum(rest), abs=0.02)
    whole = (await client.get(address)).json()
    assert whole == (await client.get(f"{address}.json", params={"of": "project"})).json()


@pytest.mark.parametrize("of", ["wall:none", "panel:", "day:soon", "everything", "wall"])
async def test_a_scope_that_the_project_has_not_is_not_found(client: httpx.AsyncClient, of: str) -> None:
    ids = await stored(client)
    for form in ("json", "csv", "xlsx"):
        answer = await client.get(f"/api/projects/{ids['id']}/takeoff.{form}", params={"of": of})
        assert answer.status_code == 404
        assert "expected project, wall:id" in answer.text


async def test_a_day_on_which_nothing_is_cast_orders_nothing(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    assert (await client.get(f"/api/projects/{ids['id']}/takeoff?of=day:2026-12-01")).json() == {"lines": []}


async def test_every_brick_of_every_panel_is_in_the_takeoff(client: httpx.AsyncClient) -> None:
    """Each whole one, and of the trimmed ones as many as the saw list takes."""
    ids = await stored(client)
    value = read_project(project())
    saw = saw_of([compute(value, wall, panel).layout for wall in value.walls for panel in wall.panels], value.order)
    bricks = saw.bricks - saw.flat_pieces
    for panel_id in ids["walls"][0]["panels"]:
        counts: dict[str, Any] = (await client.get(f"/api/panels/{panel_id}/layout")).json()["counts"]
        bricks += counts["whole"] + counts["trimmed"]
    lines = (await client.get(f"/api/projects/{ids['id']}/takeoff")).json()["lines"]
    assert sum(line["net"] for line in lines if line["kind"] and line["unit"] == "each") == bricks


async def test_the_submittal_names_every_panel(client: httpx.AsyncClient) -> None:
    address, _ = await _ids(client)
    answer = await client.get(f"{address}/submittal.pdf")
    assert answer.headers["content-type"] == "application/pdf"
    pages = pypdf.PdfReader(io.BytesIO(answer.content)).pages
    text = "\n".join(page.extract_text() for page in pages)
    assert "E1" in text
    assert "E2" in text


async def test_a_sheet_size_of_no_standard_is_refused(client: httpx.AsyncClient) -> None:
    address, _ = await _ids(client)
    answer = await client.get(f"{address}/submittal.pdf?sheet=napkin")
    assert answer.status_code == 422


async def test_a_project_without_panels_orders_nothing(client: httpx.AsyncClient) -> None:
    ids = await stored(client, project() | {"walls": []})
    assert (await client.get(f"/api/projects/{ids['id']}/takeoff")).json() == {"lines": []}
