"""The Saw list page shows one scope of a project: totals with their proof, pieces, bricks drawn, cautions."""

import re
from typing import Any

import httpx
import pytest
from scenario import project, stored

pytestmark = pytest.mark.anyio


async def page(client: httpx.AsyncClient, address: str) -> str:
    answer = await client.get(address)
    assert answer.status_code == 200, answer.text
    return answer.text


def total(text: str, name: str) -> int:
    found = re.search(rf'<dt>{name}</dt><dd><span class="big">([\d,]+)</span>', text)
    assert found, name
    return int(found.group(1).replace(",", ""))


async def saw_of(client: httpx.AsyncClient, panel: str) -> dict[str, Any]:
    saw: dict[str, Any] = (await client.get(f"/api/panels/{panel}/layout")).json()["saw"]
    return saw


async def test_a_panel_s_page_has_the_figures_of_its_results(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    panel = ids["walls"][0]["panels"][0]
    saw, text = await saw_of(client, panel), await page(client, f"/projects/{ids['id']}/saw?of=panel:{panel}")
    assert saw["proven"] is True
    assert "<h1>Saw list: Panel E1</h1>" in text
    assert total(text, "Bricks to cut up") == saw["bricks"] > 0
    assert total(text, "Fewest there can be") == saw["bound"]
    assert total(text, "Longest piece first") == saw["first_fit"]
    drawn = len(saw["patterns"]) + len(saw["rips"]) + len(saw["notches"]) + len(saw["skews"])
    assert text.count('<svg class="drawing" role="img"') == drawn


async def test_panels_of_a_project_share_bricks(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    alone = [await saw_of(client, panel) for panel in ids["walls"][0]["panels"]]
    for scope in ("project", f"wall:{ids['walls'][0]['id']}"):
        text = await page(client, f"/projects/{ids['id']}/saw?of={scope}")
        assert total(text, "Bricks to cut up") <= sum(saw["bricks"] for saw in alone)
        assert total(text, "A brick a piece") == sum(saw["flat_pieces"] for saw in alone)


async def test_bricks_of_a_blend_are_cut_colour_by_colour_as_the_order_has_them(client: httpx.AsyncClient) -> None:
    """Bricks drawn, by colour, are and pieces that take one each, are those that the order's lines have to cut."""
    blend = {"colours": [{"name": "ember", "percent": 60}, {"name": "smoke", "percent": 40}]}
    ids = await stored(client, project() | {"blend": blend})
    text = await page(client, f"/projects/{ids['id']}/saw")
    drawn = re.findall(r'aria-label="([\d,]+) bricks?, modular stretcher, (\w+), cut into', text)
    bricks = {name: sum(int(count) for count, of in drawn if of == name) for name in ("ember", "smoke")}
    rips = re.findall(r'aria-label="([\d,]+) pieces?, modular stretcher, (\w+),', text)
    for count, name in rips:
        bricks[name] += int(count)
    lines = (await client.get(f"/api/projects/{ids['id']}/takeoff")).json()["lines"]
    noted = {line["colour"]: re.search(r"(\d+) to cut", line["note"]) for line in lines if line["topic"] == "brick"}
    assert bricks == {name: int(found.group(1)) for name, found in noted.items() if found}
    assert total(text, "Bricks to cut up") == sum(bricks.values())


async def test_the_cautions_come_before_the_pieces_and_defer(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    text = await page(client, f"/projects/{ids['id']}/saw")
    assert text.index("29 CFR 1926.1153") < text.index('id="pieces"')
    assert "Eyes and ears" in text
    assert "Local codes" in text


async def test_a_casting_day_has_the_panels_cast_on_it_and_one_without_says_so(client: httpx.AsyncClient) -> None:
    file = project()
    file["walls"][0]["panels"][1]["cast_on"] = "2026-12-01"
    ids = await stored(client, file)
    panel = ids["walls"][0]["panels"][1]
    address = f"/projects/{ids['id']}/saw?of="
    cast, alone = await page(client, f"{address}day:2026-12-01"), await page(client, f"{address}panel:{panel}")
    assert total(cast, "A brick a piece") == total(alone, "A brick a piece")
    assert "Casting days" in cast
    empty = await page(client, f"{address}day:2026-12-02")
    assert "no panel is cast on it" in empty
    assert "<table" not in empty


@pytest.mark.parametrize("of", ["wall:none", "panel:none", "day:2026-13-01", "day:soon", "", "project:x", "<script>"])
async def test_an_unknown_scope_is_not_found(client: httpx.AsyncClient, of: str) -> None:
    ids = await stored(client)
    answer = await client.get(f"/projects/{ids['id']}/saw", params={"of": of})
    assert answer.status_code == 404
    assert "<script>" not in answer.text


async def test_a_panel_of_another_project_is_not_found(client: httpx.AsyncClient) -> None:
    one, other = await stored(client), await stored(client)
    panel = other["walls"][0]["panels"][0]
    assert (await client.get(f"/projects/{one['id']}/saw", params={"of": f"panel:{panel}"})).status_code == 404


async def test_a_project_without_panels_says_so(client: httpx.AsyncClient) -> None:
    file = project()
    file["walls"][0]["panels"] = []
    ids = await stored(client, file)
    assert "there are no panels in it yet" in await page(client, f"/projects/{ids['id']}/saw")


async def test_sheets_are_files_as_many_as_the_page_links(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    address = f"/projects/{ids['id']}/saw"
    links = re.findall(r'href="([^"]+sheet-\d+\.svg[^"]*)"', await page(client, address))
    assert links
    for link in links:
        answer = await client.get(link)
        assert answer.headers["content-type"] == "image/svg+xml"
        assert "Saw station: Shed by the canal, whole project" in answer.text
    assert (await client.get(f"{address}/sheet-{len(links) + 1}.svg")).status_code == 404
    assert (await client.get(f"{address}/sheet-0.svg")).status_code == 422
