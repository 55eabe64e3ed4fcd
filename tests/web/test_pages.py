"""Pages and their forms, as a browser without script uses them."""

from typing import Any

import httpx
import pytest
from scenario import project, stored

pytestmark = pytest.mark.anyio


async def _project(visitor: httpx.AsyncClient) -> tuple[str, dict[str, Any]]:
    ids = await stored(visitor)
    return f"/projects/{ids['id']}", ids


async def test_an_empty_list_leads_on(visitor: httpx.AsyncClient) -> None:
    page = await visitor.get("/")
    assert page.status_code == 200
    assert "No projects yet." in page.text
    assert page.headers["cache-control"] == "no-store"


async def test_small_pictures_follow_a_change(visitor: httpx.AsyncClient) -> None:
    _, ids = await _project(visitor)
    before = (await visitor.get("/")).text
    assert (await visitor.get("/")).text == before
    patch = {"outline": [[0, 0], [200, 0], [200, 96], [0, 96]]}
    address = f"/api/panels/{ids['walls'][0]['panels'][0]}"
    assert (await visitor.patch(address, json=patch, headers={"if-match": '"rev-1"'})).status_code == 200
    pictures = [page.split('class="pictures"')[1].split("</ul>")[0] for page in (before, (await visitor.get("/")).text)]
    assert pictures[0] != pictures[1]


@pytest.mark.parametrize(("unit", "temperature"), [("in", "F"), ("mm", "C")])
async def test_a_project_begins_with_its_name_and_unit(visitor: httpx.AsyncClient, unit: str, temperature: str) -> None:
    answer = await visitor.post("/projects", data={"name": " Mill by the weir ", "unit": unit})
    assert answer.status_code == 303
    page = await visitor.get(answer.headers["location"])
    assert "Mill by the weir" in page.text
    assert "No panels in this wall yet." in page.text
    file = (await visitor.get(f"/api{answer.headers['location']}/file")).json()
    assert (file["length_unit"], file["temperature_unit"]) == (unit, temperature)


@pytest.mark.parametrize("form", [{}, {"name": "", "unit": "in"}, {"name": "x" * 121, "unit": "in"}, {"name": "x"}])
async def test_a_form_that_says_too_little_or_too_much_is_answered(
    visitor: httpx.AsyncClient, form: dict[str, str]
) -> None:
    answer = await visitor.post("/projects", data=form)
    assert answer.status_code == 422
    assert "expected" in answer.text
    assert (await visitor.get("/api/projects")).json() == []


async def test_a_name_is_text_and_nothing_else(visitor: httpx.AsyncClient) -> None:
    name = "<script>alert(1)</script> & Söhne"
    answer = await visitor.post("/projects", data={"name": name, "unit": "in"})
    page = (await visitor.get(answer.headers["location"])).text
    assert "<script>alert" not in page
    assert "&lt;script&gt;" in page


async def test_a_file_is_brought_in(visitor: httpx.AsyncClient) -> None:
    held = httpx.Response(200, json=project()).content
    answer = await visitor.post("/projects/file", files={"file": ("shed.json", held, "application/json")})
    assert answer.status_code == 303
    assert (await visitor.get(f"/api{answer.headers['location']}/file")).json() == project()


@pytest.mark.parametrize("held", [b"", b"{", b"\xff\xfe", b'{"format": "other/1"}'])
async def test_a_broken_file_is_told_where_and_nothing_is_stored(visitor: httpx.AsyncClient, held: bytes) -> None:
    answer = await visitor.post("/projects/file", files={"file": ("shed.json", held, "application/json")})
    assert answer.status_code == 422
    assert "Nothing was stored" in answer.text
    assert (await visitor.get("/api/projects")).json() == []


async def test_the_demonstration_is_brought_in_once(visitor: httpx.AsyncClient) -> None:
    first, second = await visitor.post("/projects/demo"), await visitor.post("/projects/demo")
    assert first.headers["location"] == second.headers["location"]
    assert (await visitor.get(first.headers["location"])).status_code == 200


async def test_the_schedule_shows_what_is_computed(visitor: httpx.AsyncClient) -> None:
    address, ids = await _project(visitor)
    page = (await visitor.get(address)).text
    for panel_id in ids["walls"][0]["panels"]:
        counts = (await visitor.get(f"/api/panels/{panel_id}/layout")).json()["counts"]
        row = page.split(f'<a href="/panels/{panel_id}">', 2)[-1].split("</tr>")[0]
        for name in ("whole", "trimmed", "small"):
            assert f'<td class="figure">{counts[name]:,}</td>' in row


async def test_a_panel_is_typed_and_its_editor_opens(visitor: httpx.AsyncClient) -> None:
    address, ids = await _project(visitor)
    form = {"mark": "E3", "width": "12'-6 3/8\"", "height": "2400 mm", "size": "modular", "bond": "running"}
    answer = await visitor.post(f"{address}/walls/{ids['walls'][0]['id']}/panels", data=form)
    assert answer.status_code == 303
    panel = (await visitor.get(f"/api{answer.headers['location']}")).json()["document"]
    assert panel["outline"] == [[0, 0], ["12'-6 3/8\"", 0], ["12'-6 3/8\"", "2400 mm"], [0, "2400 mm"]]


@pytest.mark.parametrize(
    ("field", "typed", "told"),
    [
        ("width", "12'14\"", "12&#39;14"),
        ("width", "", "nothing"),
        ("height", "-5", "more than 0"),
        ("height", "200'", "100"),
        ("mark", "E1", "a mark that no other panel of this project has"),
        ("bond", "knotted", "one of"),
        ("size", "huge", "one of"),
    ],
)
async def test_a_panel_that_cannot_be_made_keeps_what_was_typed(
    visitor: httpx.AsyncClient, field: str, typed: str, told: str
) -> None:
    address, ids = await _project(visitor)
    form = {"mark": "E3", "width": "144", "height": "96", "size": "modular", "bond": "running"} | {field: typed}
    answer = await visitor.post(f"{address}/walls/{ids['walls'][0]['id']}/panels", data=form)
    assert answer.status_code == 422
    assert told in answer.text
    assert "Nothing was saved" in answer.text
    if field != "width":
        assert 'value="144"' in answer.text


async def test_lengths_are_echoed_while_they_are_typed(visitor: httpx.AsyncClient) -> None:
    address, _ = await _project(visitor)
    part = await visitor.get(f"{address}/reading", params={"width": "12-6 3/8", "height": "1'2'3"})
    assert "Width 12&#39;-6 3/8&#34; (≈ 3820 mm)" in part.text
    assert "height cannot be read" in part.text


async def test_a_panel_is_renamed(visitor: httpx.AsyncClient) -> None:
    address, ids = await _project(visitor)
    panel_id = ids["walls"][0]["panels"][0]
    answer = await visitor.post(f"{address}/panels/{panel_id}/mark", data={"mark": "E9", "revision": "1"})
    assert answer.status_code == 303
    assert (await visitor.get(f"/api/panels/{panel_id}")).json()["document"]["mark"] == "E9"
    taken = await visitor.post(f"{address}/panels/{panel_id}/mark", data={"mark": "E2", "revision": "2"})
    assert taken.status_code == 422


async def test_a_stale_page_overwrites_nothing(visitor: httpx.AsyncClient) -> None:
    address, ids = await _project(visitor)
    panel_id = ids["walls"][0]["panels"][0]
    for mark in ("E8", "E9"):
        answer = await visitor.post(f"{address}/panels/{panel_id}/mark", data={"mark": mark, "revision": "1"})
    assert answer.status_code == 412
    assert "Someone saved this in the meantime" in answer.text
    gone = await visitor.post(f"{address}/panels/{panel_id}/remove", data={"revision": "1"})
    assert gone.status_code == 412
    assert (await visitor.get(f"/api/panels/{panel_id}")).json()["document"]["mark"] == "E8"


async def test_a_panel_is_removed(visitor: httpx.AsyncClient) -> None:
    address, ids = await _project(visitor)
    panel_id = ids["walls"][0]["panels"][0]
    answer = await visitor.post(f"{address}/panels/{panel_id}/remove", data={"revision": "1"})
    assert answer.status_code == 303
    assert (await visitor.get(f"/api/panels/{panel_id}")).status_code == 404
    assert (await visitor.get(address)).status_code == 200


async def test_another_projects_panel_is_not_changed_from_here(visitor: httpx.AsyncClient) -> None:
    address, _ = await _project(visitor)
    _, others = await _project(visitor)
    panel_id = others["walls"][0]["panels"][0]
    for path in ("mark", "remove"):
        form = {"mark": "E9", "revision": "1"}
        assert (await visitor.post(f"{address}/panels/{panel_id}/{path}", data=form)).status_code == 404


async def test_a_wall_is_added(visitor: httpx.AsyncClient) -> None:
    address, _ = await _project(visitor)
    assert (await visitor.post(f"{address}/walls", data={"mark": "North"})).status_code == 303
    assert "Wall North" in (await visitor.get(address)).text
    assert (await visitor.post(f"{address}/walls", data={"mark": "North"})).status_code == 422


@pytest.mark.parametrize("address", ["/nothing", "/projects/0000", "/panels/0000", "/bed/0000", "/s/0000"])
async def test_what_is_not_there_gets_a_page(visitor: httpx.AsyncClient, address: str) -> None:
    answer = await visitor.get(address)
    assert answer.status_code == 404
    assert "<h1>There is nothing at this address</h1>" in answer.text


async def test_a_script_of_a_page_gets_a_part(visitor: httpx.AsyncClient) -> None:
    answer = await visitor.get("/projects/0000", headers={"hx-request": "true"})
    assert answer.status_code == 404
    assert "<html" not in answer.text


async def test_every_problem_has_its_line_in_the_list(visitor: httpx.AsyncClient) -> None:
    page = (await visitor.get("/problems")).text
    answer = (await visitor.get("/api/nothing")).json()
    assert f'id="{answer["type"].partition("#")[2]}"' in page


async def test_a_removed_panel_is_put_back_as_it_was(visitor: httpx.AsyncClient) -> None:
    address, ids = await _project(visitor)
    panel_id = ids["walls"][0]["panels"][0]
    before = (await visitor.get(f"/api/panels/{panel_id}")).json()
    await visitor.post(f"{address}/panels/{panel_id}/remove", data={"revision": "1"})
    page = await visitor.get(address)
    assert "Put E1 back" in page.text
    answer = await visitor.post(f"{address}/panels/{panel_id}/put-back")
    assert answer.status_code == 303
    assert (await visitor.get(f"/api/panels/{panel_id}")).json() == before
    assert "Put E1 back" not in (await visitor.get(address)).text


async def test_another_projects_panel_cannot_be_put_back(visitor: httpx.AsyncClient) -> None:
    address, ids = await _project(visitor)
    other, _ = await _project(visitor)
    panel_id = ids["walls"][0]["panels"][0]
    assert (await visitor.post(f"{address}/panels/{panel_id}/put-back")).status_code == 404
    await visitor.post(f"{address}/panels/{panel_id}/remove", data={"revision": "1"})
    assert (await visitor.post(f"{other}/panels/{panel_id}/put-back")).status_code == 404
