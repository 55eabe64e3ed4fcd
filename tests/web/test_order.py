"""The Order screen: the takeoff's own figures by topic and scope, what is short, files, cautions, empty states."""

import html
import re
from typing import Any

import httpx
import pytest
from scenario import PROJECT

pytestmark = pytest.mark.anyio

WALL = PROJECT["walls"][0]
BLEND = {"colours": [{"name": "red", "percent": 60}, {"name": "buff", "percent": 40}]}


async def made(visitor: httpx.AsyncClient, **more: Any) -> dict[str, Any]:
    answer = await visitor.post("/api/projects", json=PROJECT | more)
    assert answer.status_code == 201, answer.text
    ids: dict[str, Any] = answer.json()
    return ids


async def page_of(visitor: httpx.AsyncClient, project: str, of: str = "project") -> str:
    answer = await visitor.get(f"/projects/{project}/order", params={"of": of})
    assert answer.status_code == 200
    return html.unescape(answer.text)


def ordered(page: str) -> dict[str, float]:
    """What stands under To order or Amount, by item."""
    rows = re.findall(r'<tr><th scope="row">([^<]*)<.*?<strong>([0-9,.]+)</strong>', page, re.DOTALL)
    return {item: float(figure.replace(",", "")) for item, figure in rows}


def shorts(page: str) -> dict[str, list[str]]:
    """Delivered, placed, on hand and needed, and short, by item."""
    table = page[page.index('aria-label="What is short"') :]
    rows = re.findall(r'<tr><th scope="row">([^<]*)</th>(.*?)</tr>', table)
    return {item: re.findall(r">([0-9,.]+)<", cells) for item, cells in rows}


async def test_every_line_of_the_takeoff_is_on_the_page_with_its_reason(visitor: httpx.AsyncClient) -> None:
    project = (await made(visitor, blend=BLEND))["id"]
    lines = (await visitor.get(f"/api/projects/{project}/takeoff")).json()["lines"]
    page = await page_of(visitor, project)
    assert ordered(page) == {line["item"]: pytest.approx(line["order"], abs=0.051) for line in lines}
    assert "Thin brick modular, stretcher, red" in ordered(page)
    assert "Blend of red 60, buff 40 percent" in page
    assert len(re.findall("5 percent of", page)) == sum(line["overage"] > 0 for line in lines)


async def test_cartons_and_pallets_are_two_ways_to_order_the_same(visitor: httpx.AsyncClient) -> None:
    page = await page_of(visitor, (await made(visitor))["id"])
    assert re.search(r"\d+ cartons? of \d+ or \d+ pallets? of", page)


async def test_the_panels_of_a_wall_and_a_day_are_counted_alone(visitor: httpx.AsyncClient) -> None:
    first, second = WALL["panels"]
    walls = [WALL | {"panels": [first | {"cast_on": "2026-12-01"}, second]}]
    ids = await made(visitor, walls=walls)
    alone = await made(visitor, walls=[WALL | {"panels": [first]}])
    expected = ordered(await page_of(visitor, alone["id"]))
    panel = ids["walls"][0]["panels"][0]
    assert ordered(await page_of(visitor, ids["id"], f"panel:{panel}")) == expected
    assert ordered(await page_of(visitor, ids["id"], "day:2026-12-01")) == expected
    whole = ordered(await page_of(visitor, ids["id"]))
    assert ordered(await page_of(visitor, ids["id"], f"wall:{ids['walls'][0]['id']}")) == whole != expected


async def test_what_is_short_follows_deliveries_and_placed_panels(visitor: httpx.AsyncClient) -> None:
    first, second = WALL["panels"]
    item = "Thin brick modular, stretcher"
    walls = [WALL | {"panels": [first | {"cast_on": "2026-12-01", "placed": True}, second | {"cast_on": "2026-12-02"}]}]
    came = [{"day": "2020-11-30", "item": item, "count": 900}, {"day": "2020-11-30", "item": "Straw", "count": 1}]
    came += [{"day": "2999-01-01", "item": item, "count": 70}]
    project = (await made(visitor, walls=walls, deliveries=came))["id"]
    nets = []
    for panels in ([first], [first, second]):
        other = (await made(visitor, walls=[WALL | {"panels": panels}]))["id"]
        lines = (await visitor.get(f"/api/projects/{other}/takeoff")).json()["lines"]
        nets.append(next(line for line in lines if line["item"] == item))
    page = await page_of(visitor, project)
    assert "For the casting day 2026-12-02" in page
    assert "1 panel still to place: E2." in page
    delivered, used, on_hand, needed, short = (float(cell.replace(",", "")) for cell in shorts(page)[item])
    assert (delivered, used, on_hand) == (900, nets[0]["net"], 900 - nets[0]["net"])
    assert needed == nets[1]["order"] - used
    assert short == max(needed - on_hand, 0)
    assert f"70 of {item} on 2999-01-01" in page
    assert "Straw was delivered but is no line of the order." in page


async def test_a_project_where_all_is_placed_needs_nothing(visitor: httpx.AsyncClient) -> None:
    placed = [panel | {"placed": True} for panel in WALL["panels"]]
    project = (await made(visitor, walls=[WALL | {"panels": placed}]))["id"]
    assert "Every panel is placed: nothing is needed any more." in await page_of(visitor, project)


async def test_files_are_those_of_the_scope(visitor: httpx.AsyncClient) -> None:
    ids = await made(visitor)
    of = f"panel:{ids['walls'][0]['panels'][1]}"
    page = await page_of(visitor, ids["id"], of)
    for ending in ("xlsx", "csv"):
        address = f"/api/projects/{ids['id']}/takeoff.{ending}?of={of}"
        assert f'href="{address}"' in page
        assert (await visitor.get(address)).status_code == 200


async def test_cautions_and_who_decides_stand_under_the_order(visitor: httpx.AsyncClient) -> None:
    page = await page_of(visitor, (await made(visitor))["id"])
    assert "Plastic or stainless first" in page
    assert "a wax wash is hotter still" in page
    assert "the licensed engineer of record" in page


async def test_without_panels_or_on_a_day_without_casting_it_says_so(visitor: httpx.AsyncClient) -> None:
    project = (await made(visitor))["id"]
    assert "nothing to order" in await page_of(visitor, project, "day:2026-12-24")
    empty = (await made(visitor, walls=[]))["id"]
    assert "No panels yet, so there is nothing to order." in await page_of(visitor, empty)


async def test_what_is_no_part_of_the_project_is_not_found(visitor: httpx.AsyncClient) -> None:
    project = (await made(visitor))["id"]
    for of in ("wall:none", "panel:", "day:Monday", "everything", ""):
        assert (await visitor.get(f"/projects/{project}/order", params={"of": of})).status_code == 404
