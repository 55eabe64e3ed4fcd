"""Panels for scripts: every change names its revision, and none is lost or made twice."""

from typing import Any

import httpx
import pytest
from scenario import stored

pytestmark = pytest.mark.anyio

WIDER = {"openings": [{"mark": "W1", "use": "window", "rect": [48, 32, 40, 40]}]}


async def _panel(client: httpx.AsyncClient) -> str:
    ids = await stored(client)
    return f"/api/panels/{ids['walls'][0]['panels'][0]}"


async def _patched(
    client: httpx.AsyncClient, address: str, patch: Any, revision: int, **headers: str
) -> httpx.Response:
    return await client.patch(address, json=patch, headers={"if-match": f'"rev-{revision}"', **headers})


async def test_a_panel_is_read_with_the_tag_of_its_revision(client: httpx.AsyncClient) -> None:
    answer = await client.get(await _panel(client))
    assert answer.headers["etag"] == '"rev-1"'
    assert answer.json()["revision"] == 1
    assert answer.json()["document"]["mark"] == "E1"


async def test_nothing_is_sent_twice_to_who_has_it(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    assert (await client.get(address, headers={"if-none-match": '"rev-1"'})).status_code == 304


async def test_a_change_makes_the_next_revision_and_is_counted(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    before = (await client.get(f"{address}/layout")).json()["counts"]
    answer = await _patched(client, address, WIDER, 1)
    assert answer.status_code == 200, answer.text
    assert answer.headers["etag"] == '"rev-2"'
    assert answer.json()["document"]["openings"] == WIDER["openings"]
    assert answer.json()["counts"] == (await client.get(f"{address}/layout")).json()["counts"]
    assert answer.json()["counts"] != before


async def test_without_a_base_nothing_is_changed(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    assert (await client.patch(address, json=WIDER)).status_code == 428
    assert (await client.patch(address, json=WIDER, headers={"if-match": "*"})).status_code == 428
    assert (await client.get(address)).headers["etag"] == '"rev-1"'


async def test_a_stale_base_is_told_both_sides_and_the_choices(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    await _patched(client, address, {"thickness": 8}, 1)
    answer = await _patched(client, address, WIDER, 1)
    problem = answer.json()
    assert answer.status_code == 412
    assert problem["revision"] == 2
    assert any("thickness" in line for line in problem["theirs"])
    assert problem["mine"]
    assert problem["choices"] == ["on-top", "drop"]
    assert (await client.get(address)).json()["document"]["openings"] != WIDER["openings"]


async def test_where_nothing_overlaps_mine_goes_on_top(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    await _patched(client, address, {"thickness": 8}, 1)
    answer = await _patched(client, f"{address}?on_top=true", WIDER, 1)
    assert answer.status_code == 200
    assert answer.json()["document"]["thickness"] == 8
    assert answer.json()["document"]["openings"] == WIDER["openings"]


async def test_where_both_touched_one_thing_mine_does_not(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    await _patched(client, address, {"thickness": 8}, 1)
    answer = await _patched(client, f"{address}?on_top=true", {"thickness": 9}, 1)
    assert answer.status_code == 412
    assert answer.json()["choices"] == ["drop"]


async def test_the_same_command_again_gets_the_first_answer_again(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    first = await _patched(client, address, WIDER, 1, **{"idempotency-key": "one"})
    await _patched(client, address, {"thickness": 8}, 2)
    again = await _patched(client, address, WIDER, 1, **{"idempotency-key": "one"})
    assert again.status_code == 200
    assert (again.json()["revision"], again.json()["document"]) == (2, first.json()["document"])
    assert (await client.get(address)).json()["revision"] == 3


async def test_a_command_id_for_another_change_is_refused(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    await _patched(client, address, WIDER, 1, **{"idempotency-key": "one"})
    answer = await _patched(client, address, {"thickness": 8}, 2, **{"idempotency-key": "one"})
    assert answer.status_code == 422
    assert answer.json()["type"] == "/problems#reused"


BROKEN = [
    ({"thickness": None}, "thickness"),
    ({"thickness": -1}, "thickness"),
    ({"colour": "red"}, "colour"),
    ({"field": {"bond": "knotted"}}, "field.bond"),
    ({"outline": [[0, 0], [100, 100], [100, 0], [0, 100]]}, "outline"),
    ({"openings": [{"mark": "W9", "rect": [900, 900, 10, 10]}]}, "openings[0]"),
    ([], ""),
]


@pytest.mark.parametrize(("patch", "path"), BROKEN)
async def test_a_panel_that_cannot_be_built_is_not_saved(client: httpx.AsyncClient, patch: Any, path: str) -> None:
    address = await _panel(client)
    answer = await _patched(client, address, patch, 1)
    assert answer.status_code == 422, answer.text
    assert answer.json()["faults"][0]["path"].startswith(path)
    assert (await client.get(address)).headers["etag"] == '"rev-1"'


async def test_a_mark_that_another_panel_has_is_refused(client: httpx.AsyncClient) -> None:
    answer = await _patched(client, await _panel(client), {"mark": "E2"}, 1)
    assert answer.status_code == 422
    assert answer.json()["faults"][0]["path"] == "mark"


async def test_undo_and_redo_go_back_and_forth(client: httpx.AsyncClient) -> None:
    address = await _panel(client)
    original = (await client.get(address)).json()["document"]
    headers = {"content-type": "application/json"}
    await _patched(client, address, WIDER, 1)
    undone = await client.post(f"{address}/undo", headers=headers | {"if-match": '"rev-2"'})
    assert undone.json()["document"] == original
    assert undone.json()["redo"] == "Change openings"
    redone = await client.post(f"{address}/redo", headers=headers | {"if-match": '"rev-3"'})
    assert redone.json()["document"]["openings"] == WIDER["openings"]
    assert redone.json()["revision"] == 4


async def test_with_nothing_to_undo_it_says_so(client: httpx.AsyncClient) -> None:
    headers = {"content-type": "application/json", "if-match": '"rev-1"'}
    answer = await client.post(f"{await _panel(client)}/undo", headers=headers)
    assert answer.status_code == 409
    assert answer.json()["detail"] == "Nothing to undo."


async def test_a_removed_panel_is_gone_from_the_file(client: httpx.AsyncClient) -> None:
    ids = await stored(client)
    address = f"/api/panels/{ids['walls'][0]['panels'][0]}"
    assert (await client.delete(address)).status_code == 428
    assert (await client.delete(address, headers={"if-match": '"rev-1"'})).status_code == 204
    assert (await client.get(address)).status_code == 404
    file = (await client.get(f"/api/projects/{ids['id']}/file")).json()
    assert [panel["mark"] for panel in file["walls"][0]["panels"]] == ["E2"]


@pytest.mark.parametrize("path", ["", "/layout", "/bed.svg"])
async def test_a_panel_that_is_not_there_is_not_found(client: httpx.AsyncClient, path: str) -> None:
    answer = await client.get(f"/api/panels/0000000000000000{path}")
    assert answer.status_code == 404
    assert answer.headers["content-type"] == "application/problem+json"
