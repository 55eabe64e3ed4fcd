"""Settings for scripts: a merge patch from a known revision, all of it or nothing."""

from typing import Any

import httpx
import pytest
from scenario import project, stored

pytestmark = pytest.mark.anyio


async def test_a_patch_changes_what_it_names_and_null_takes_back(client: httpx.AsyncClient) -> None:
    ids = await stored(client, project() | {"order": {"kerf": "1/8", "per_carton": 40}})
    address = f"/api/projects/{ids['id']}/settings"
    first = await client.get(address)
    assert first.headers["etag"] == '"rev-1"'
    assert first.json()["settings"] == {"order": {"kerf": "1/8", "per_carton": 40}}
    patch = {"order": {"kerf": "2 mm", "per_carton": None}, "blend": {"cluster": 3}}
    answer = await client.patch(address, json=patch, headers={"if-match": '"rev-1"'})
    assert answer.status_code == 200
    assert answer.headers["etag"] == '"rev-2"'
    assert answer.json()["settings"] == {"order": {"kerf": "2 mm"}, "blend": {"cluster": 3}}
    assert (await client.get(address, headers={"if-none-match": '"rev-2"'})).status_code == 304


async def test_without_a_base_or_on_an_old_one_nothing_is_changed(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    address = f"/api/projects/{ids['id']}/settings"
    patch = {"day": {"bed_high": 99}}
    assert (await client.patch(address, json=patch)).status_code == 428
    assert (await client.patch(address, json=patch, headers={"if-match": '"rev-1"'})).status_code == 200
    late = await client.patch(address, json={"day": {"bed_high": 90}}, headers={"if-match": '"rev-1"'})
    assert late.status_code == 412
    assert late.headers["content-type"] == "application/problem+json"
    assert (await client.get(address)).json()["settings"] == {"day": {"bed_high": 99}}


WRONG: list[tuple[Any, str]] = [
    ({"order": {"kerf": "1/16", "krf": 1}}, "order.krf"),
    ({"order": {"kerf": "1/16"}, "day": {"bed_high": 900}}, "day.bed_high"),
    ({"liner": {"rows": 400}}, "liner.rows"),
    ({"liner": {"rows": 8}, "name": "Other"}, "name"),
    ([], ""),
]


async def test_one_fault_refuses_the_whole_patch_with_its_path(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    address = f"/api/projects/{ids['id']}/settings"
    for patch, path in WRONG:
        answer = await client.patch(address, json=patch, headers={"if-match": '"rev-1"'})
        assert answer.status_code == 422
        assert [fault["path"] for fault in answer.json()["faults"]] == [path]
    assert (await client.get(address)).json() == {"id": ids["id"], "revision": 1, "settings": {}}


async def test_the_description_tells_of_both_and_of_their_failures(client: httpx.AsyncClient) -> None:
    paths = (await client.get("/openapi.json")).json()["paths"]
    told = paths["/api/projects/{project_id}/settings"]
    assert {"200", "412", "422", "428"} <= set(told["patch"]["responses"])
    assert "application/merge-patch+json" in told["patch"]["requestBody"]["content"]
    assert "get" in told


async def test_a_project_that_is_not_there_has_no_settings(client: httpx.AsyncClient) -> None:
    assert (await client.get("/api/projects/none/settings")).status_code == 404
