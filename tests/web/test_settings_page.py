"""The page of a project's settings: as typed, units told, faults beside their fields, undone, refused when stale."""

import html
import re
from typing import Any

import httpx
import pytest
from scenario import PROJECT

pytestmark = pytest.mark.anyio

ORDER = {"kerf": "1/8", "overage_percent": 5.0}
BLEND = {"colours": [{"name": "red", "percent": 60}, {"percent": 40.0, "name": "buff"}]}
FILE = PROJECT | {"order": ORDER, "blend": BLEND}


async def made(visitor: httpx.AsyncClient, file: dict[str, Any] = FILE) -> str:
    answer = await visitor.post("/api/projects", json=file)
    assert answer.status_code == 201, answer.text
    return str(answer.json()["id"])


async def file_of(visitor: httpx.AsyncClient, project: str) -> dict[str, Any]:
    held: dict[str, Any] = (await visitor.get(f"/api/projects/{project}/file")).json()
    return held


def fields(page: str, address: str) -> dict[str, str]:
    """What a browser would send from the form that posts to an address."""
    form = page[page.index(f'action="{address}"') :].partition("</form>")[0]
    found = {}
    for tag in re.findall(r"<input [^>]*>", form):
        name, value = re.search(r'name="([^"]*)"', tag), re.search(r'value="([^"]*)"', tag)
        if name:
            found[html.unescape(name[1])] = html.unescape(value[1]) if value else ""
    return found


async def form_of(visitor: httpx.AsyncClient, project: str, group: str) -> dict[str, str]:
    page = (await visitor.get(f"/projects/{project}/settings")).text
    return fields(page, f"/projects/{project}/settings/{group}")


async def sent(visitor: httpx.AsyncClient, project: str, group: str, **typed: str) -> httpx.Response:
    form = await form_of(visitor, project, group) | typed
    return await visitor.post(f"/projects/{project}/settings/{group}", data=form)


async def test_a_form_sent_as_it_stands_changes_nothing(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    for group in ("liner", "day", "order", "blend"):
        answer = await sent(visitor, project, group)
        assert answer.status_code == 303
        assert await file_of(visitor, project) == FILE
    assert (await visitor.get(f"/api/projects/{project}")).json()["revision"] == 1


TYPED: list[tuple[str, dict[str, str], dict[str, Any], str]] = [
    (
        "liner",
        {"columns": "8", "thickness": "0.5 mm"},
        {"columns": 8, "thickness": "0.5 mm"},
        "from 6 to 8 columns",
    ),
    ("day", {"bed_high": "110"}, {"bed_high": 110}, "hottest bed while laying from 105 to 110 degrees F"),
    ("order", {"kerf": "3/32"}, {"kerf": "3/32", "overage_percent": 5.0}, 'kerf of the saw from 1/8" to 3/32"'),
    ("order", {"kerf": "", "per_carton": "60"}, {"overage_percent": 5.0, "per_carton": 60}, "from 50 to 60 bricks"),
    ("order", {"kerf": '0.125"'}, {"kerf": '0.125"', "overage_percent": 5.0}, "means the same as before"),
    (
        "blend",
        {"percent0": "50", "percent1": "30", "name2": "plum", "percent2": "20"},
        {"colours": [{"name": n, "percent": p} for n, p in (("red", 50), ("buff", 30), ("plum", 20))]},
        "from red 60, buff 40 percent (at most 4 bricks of one colour together) to red 50, buff 30, plum 20",
    ),
    ("blend", {"cluster": "3"}, BLEND | {"cluster": 3}, "at most 3 bricks of one colour together"),
]


async def test_what_is_typed_is_kept_as_typed_told_and_undone(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    for group, typed, kept, told in TYPED:
        answer = await sent(visitor, project, group, **typed)
        assert answer.status_code == 303, typed
        assert (await file_of(visitor, project))[group] == kept
        page = (await visitor.get(answer.headers["location"])).text
        assert told in html.unescape(page)
        undo = fields(page, f"/projects/{project}/settings/{group}")
        assert "whole" in undo
        assert (await visitor.post(f"/projects/{project}/settings/{group}", data=undo)).status_code == 303
        assert await file_of(visitor, project) == FILE


WRONG: list[tuple[str, dict[str, str], str, str, str]] = [
    ("liner", {"columns": "0"}, "Columns in a sheet", "0", "1 or more"),
    ("liner", {"rows": "400"}, "Rows in a sheet", "400 rows: a sheet of", "the largest panel, E1, 12'-0\" x 8'-0\""),
    ("liner", {"thickness": "thin"}, "Thickness", "thin", "for example"),
    (
        "liner",
        {"reference_temperature": "900"},
        "True to size at",
        "900 degrees F",
        "-60 to 250 degrees F",
    ),
    ("day", {"bed_low": "NaN"}, "Coldest bed while laying", "the text 'NaN'", "degrees F"),
    ("order", {"kerf": "3"}, "Kerf of the saw", 'a kerf of 3"', "height of brick 'modular', 2 1/4\""),
    ("order", {"overage_percent": "5%"}, "Overage", "'5%'", "as a number, 0 or more"),
    ("order", {"per_carton": "9" * 400}, "Bricks in a carton", "text", "whole number"),
    ("blend", {"percent0": "50"}, "Colours", "shares of 90 percent together", "100 percent"),
    ("blend", {"name1": ""}, "Colour 2", "an empty text", "a colour's name"),
    ("blend", {"name4": "sand"}, "Share of colour 3", "nothing", "no default"),
]


async def test_a_fault_stands_beside_its_field_and_nothing_is_saved(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    for group, typed, label, found, expected in WRONG:
        answer = await sent(visitor, project, group, **typed)
        assert answer.status_code == 422, typed
        page = html.unescape(answer.text)
        (wrong,) = re.findall(r'<p class="wrong"><span class="attention">([^<]*)</span>([^<]*)</p>', page)
        assert wrong[0] == label
        assert found in wrong[1]
        assert expected in wrong[1]
        assert "Nothing was saved" in page
        assert all(f'value="{text}"' in answer.text for text in typed.values() if text)
    assert await file_of(visitor, project) == FILE


async def test_a_stale_form_sets_nothing_and_is_told_so(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    late = await form_of(visitor, project, "order")
    await sent(visitor, project, "day", bed_high="99")
    answer = await visitor.post(f"/projects/{project}/settings/order", data=late | {"kerf": "1/16"})
    assert answer.status_code == 412
    assert "Somebody changed this project since you opened the page" in answer.text
    assert (await file_of(visitor, project))["order"] == ORDER


async def test_undo_is_offered_only_until_something_else_changes(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    first = await sent(visitor, project, "day", bed_high="99")
    await sent(visitor, project, "day", bed_high="98")
    assert "Undo" not in (await visitor.get(first.headers["location"])).text


async def test_deliveries_are_noted_in_a_line_taken_back_and_put_back_in_their_place(
    visitor: httpx.AsyncClient,
) -> None:
    project = await made(visitor)
    page = (await visitor.get(f"/projects/{project}/settings")).text
    items = [html.unescape(item) for item in re.findall(r"<option[^>]*>([^<]*)</option>", page)]
    assert items[0].startswith("Thin brick modular, stretcher")
    assert "Face of panels" not in items
    for day, count in (("2026-11-30", "900"), ("2026-11-28", "1200")):
        answer = await sent(visitor, project, "deliveries", day=day, item=items[0], count=count)
        assert answer.status_code == 303
    came = [
        {"day": day, "item": items[0], "count": count} for day, count in (("2026-11-30", 900), ("2026-11-28", 1200))
    ]
    assert (await file_of(visitor, project))["deliveries"] == came
    page = html.unescape((await visitor.get(answer.headers["location"])).text)
    assert f"Noted: 1,200 of {items[0]} on 2026-11-28." in page
    first = f"/projects/{project}/settings/deliveries/0/take-back"
    taken = await visitor.post(first, data=fields(page, first))
    assert (await file_of(visitor, project))["deliveries"] == came[1:]
    page = (await visitor.get(taken.headers["location"])).text
    assert f"Taken back: 900 of {items[0]} on 2026-11-30." in html.unescape(page)
    undo = f"/projects/{project}/settings/deliveries"
    await visitor.post(undo, data=fields(page, undo))
    assert (await file_of(visitor, project))["deliveries"] == came


async def test_a_delivery_of_half_a_brick_is_refused(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    answer = await sent(visitor, project, "deliveries", day="2026-02-30", item="Brick", count="1.5")
    assert answer.status_code == 422
    page = html.unescape(answer.text)
    assert "found the text '2026-02-30', expected a day" in page
    assert "found 1.5, expected pieces as a whole number" in page
    assert "deliveries" not in await file_of(visitor, project)


async def test_a_delivery_that_is_not_there_cannot_be_taken_back(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    answer = await visitor.post(f"/projects/{project}/settings/deliveries/3/take-back", data={"revision": "1"})
    assert answer.status_code == 404


async def test_a_project_without_panels_says_that_there_is_nothing_to_order(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor, PROJECT | {"walls": []})
    page = (await visitor.get(f"/projects/{project}/settings")).text
    assert "No panels yet, so there is nothing to order" in page


async def test_an_address_that_was_tampered_with_tells_nothing_wrong(visitor: httpx.AsyncClient) -> None:
    project = await made(visitor)
    for before in ("{", "[]", "null", '{"kerf": 5000}', '{"brick": 1}', ""):
        query = {"changed": "order", "revision": 1, "before": before}
        assert (await visitor.get(f"/projects/{project}/settings", params=query)).status_code == 200
