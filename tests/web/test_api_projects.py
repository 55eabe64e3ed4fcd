"""Projects for scripts: what goes in comes out, and with anything wrong nothing is stored."""

from typing import Any

import httpx
import pytest
from scenario import project, stored

pytestmark = pytest.mark.anyio


async def test_a_file_comes_back_as_it_was_typed(client: httpx.AsyncClient) -> None:
    answer = await client.post("/api/projects", json=project())
    assert answer.status_code == 201
    file = await client.get(answer.headers["location"])
    assert file.json() == project()
    assert list(file.json()) == list(project())


async def test_the_ids_of_every_part_are_answered(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    one = (await client.get(f"/api/projects/{ids['id']}")).json()
    assert [panel["mark"] for panel in one["walls"][0]["panels"]] == ["E1", "E2"]
    assert [panel["id"] for panel in one["walls"][0]["panels"]] == ids["walls"][0]["panels"]


async def test_the_list_has_the_project_changed_last_first(client: httpx.AsyncClient) -> None:
    await stored(client)
    await stored(client, project() | {"name": "Second"})
    names = [line["name"] for line in (await client.get("/api/projects")).json()]
    assert names == ["Second", "Shed by the canal"]


def _broken(path: str) -> dict[str, Any]:
    file = project()
    panel = file["walls"][0]["panels"][0]
    match path:
        case "walls[0].panels[0].thickness":
            panel["thickness"] = "thick"
        case "walls[0].panels[0].colour":
            panel["colour"] = "red"
        case "walls[0].panels[0].field.bond":
            panel["field"]["bond"] = "knotted"
        case "name":
            del file["name"]
        case "walls[0].panels[1].mark":
            file["walls"][0]["panels"][1]["mark"] = "E1"
    return file


PATHS = [
    "walls[0].panels[0].thickness",
    "walls[0].panels[0].colour",
    "walls[0].panels[0].field.bond",
    "name",
    "walls[0].panels[1].mark",
]


@pytest.mark.parametrize("path", PATHS)
async def test_a_broken_file_is_refused_with_its_place_and_stores_nothing(client: httpx.AsyncClient, path: str) -> None:
    answer = await client.post("/api/projects", json=_broken(path))
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    fault = answer.json()["faults"][0]
    assert fault["path"] == path
    assert fault["found"]
    assert fault["expected"]
    assert (await client.get("/api/projects")).json() == []


@pytest.mark.parametrize("body", [b"[]", b"null", b"3", b'"x"', b"[" * 100_000, b"{}"])
async def test_what_is_no_project_at_all_is_refused(client: httpx.AsyncClient, body: bytes) -> None:
    answer = await client.post("/api/projects", content=body, headers={"content-type": "application/json"})
    assert answer.status_code == 422
    assert answer.json()["faults"]


async def test_another_projects_wall_is_not_found(client: httpx.AsyncClient) -> None:
    first, second = await stored(client), await stored(client)
    address = f"/api/projects/{first['id']}/walls/{second['walls'][0]['id']}/panels"
    answer = await client.post(address, json=project()["walls"][0]["panels"][0] | {"mark": "E9"})
    assert answer.status_code == 404


async def test_a_panel_is_added_behind_the_others(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    address = f"/api/projects/{ids['id']}/walls/{ids['walls'][0]['id']}/panels"
    panel = project()["walls"][0]["panels"][1] | {"mark": "E3"}
    answer = await client.post(address, json=panel)
    assert answer.status_code == 201
    assert answer.headers["etag"] == '"rev-1"'
    assert (await client.get(answer.headers["location"])).json()["document"] == panel
    file = (await client.get(f"/api/projects/{ids['id']}/file")).json()
    assert [held["mark"] for held in file["walls"][0]["panels"]] == ["E1", "E2", "E3"]


async def test_a_mark_that_is_taken_is_refused(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    address = f"/api/projects/{ids['id']}/walls/{ids['walls'][0]['id']}/panels"
    answer = await client.post(address, json=project()["walls"][0]["panels"][1])
    assert answer.status_code == 422
    assert answer.json()["faults"][0]["path"] == "mark"


async def test_a_wall_is_added_with_its_panels(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    panel = project()["walls"][0]["panels"][1] | {"mark": "N1"}
    answer = await client.post(f"/api/projects/{ids['id']}/walls", json={"mark": "North", "panels": [panel]})
    assert answer.status_code == 201
    assert len(answer.json()["panels"]) == 1


async def test_the_description_names_every_address(client: httpx.AsyncClient) -> None:
    paths = (await client.get("/openapi.json")).json()["paths"]
    assert {"/api/projects", "/api/projects/{project_id}/file", "/healthz"} <= set(paths)
    assert all(path.startswith("/api/") or path == "/healthz" for path in paths)
