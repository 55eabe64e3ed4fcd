"""Share links: open without sign-in, closed for good, and telling nothing to those without."""

import html
import re

import httpx
import pytest
import segno
from scenario import stored

pytestmark = pytest.mark.anyio

ANY = {"rights": "view", "lasts": "ever"}


async def _link(visitor: httpx.AsyncClient, project_id: str, panel_id: str = "") -> str:
    answer = await visitor.post(
        f"/projects/{project_id}/shares", data={"panel": panel_id, "rights": "view", "lasts": "ever"}
    )
    assert answer.status_code == 201
    found = re.search(r'id="address">([^<]+)<', answer.text)
    assert found
    return html.unescape(found[1])


async def test_a_link_opens_to_a_clean_address_with_a_cookie(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    panel_id = ids["walls"][0]["panels"][0]
    answer = await visitor.get(await _link(visitor, ids["id"], panel_id), headers={"sec-fetch-site": "none"})
    assert answer.status_code == 303
    assert answer.headers["location"] == f"/bed/{panel_id}"
    cookie = answer.headers["set-cookie"]
    assert "HttpOnly" in cookie
    assert "SameSite=strict" in cookie
    assert "Path=/;" in cookie, "records go to another address than the bed pages"


async def test_over_https_the_cookie_is_bound_to_the_host(app: object) -> None:
    transport = httpx.ASGITransport(app)
    headers = {"sec-fetch-site": "same-origin"}
    async with httpx.AsyncClient(transport=transport, base_url="https://test", headers=headers) as visitor:
        ids = await stored(visitor)
        answer = await visitor.get(await _link(visitor, ids["id"]))
    cookie = answer.headers["set-cookie"]
    assert cookie.startswith("__Host-")
    assert "Secure" in cookie
    assert "Path=/;" in cookie


async def test_a_link_to_a_project_leads_to_the_list_of_its_panels(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    answer = await visitor.get(await _link(visitor, ids["id"]))
    assert answer.headers["location"] == "/bed"


async def test_from_another_sites_page_the_way_goes_over_a_page_of_our_own(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    link = await _link(visitor, ids["id"])
    answer = await visitor.get(link, headers={"sec-fetch-site": "cross-site"})
    assert answer.status_code == 200
    assert "set-cookie" in answer.headers
    assert 'content="0;url=/bed"' in answer.text
    assert link.rpartition("/")[2] not in answer.text


async def test_wrong_and_revoked_links_get_one_and_the_same_page(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    link = await _link(visitor, ids["id"])
    page = (await visitor.get(f"/projects/{ids['id']}")).text
    revoke = re.search(r'action="([^"]+/revoke)"', page)
    assert revoke
    assert (await visitor.post(revoke[1])).status_code == 303
    closed, wrong = await visitor.get(link), await visitor.get("/s/" + "A" * 32)
    assert closed.status_code == wrong.status_code == 404
    assert closed.text == wrong.text
    assert "Shed" not in closed.text
    assert "set-cookie" not in closed.headers


async def test_a_link_of_another_project_is_not_revoked_here(visitor: httpx.AsyncClient) -> None:
    first, second = await stored(visitor), await stored(visitor)
    link = await _link(visitor, first["id"])
    page = (await visitor.get(f"/projects/{first['id']}")).text
    share = re.search(r"shares/(\w+)/revoke", page)
    assert share
    answer = await visitor.post(f"/projects/{second['id']}/shares/{share[1]}/revoke")
    assert answer.status_code == 404
    assert (await visitor.get(link)).status_code == 303


async def test_a_panel_of_another_project_cannot_be_shared(visitor: httpx.AsyncClient) -> None:
    first, second = await stored(visitor), await stored(visitor)
    answer = await visitor.post(
        f"/projects/{first['id']}/shares", data=ANY | {"panel": second["walls"][0]["panels"][0]}
    )
    assert answer.status_code == 404


async def test_a_link_can_record_or_only_look_and_ends_by_itself(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    made = await visitor.post(f"/projects/{ids['id']}/shares", data={"rights": "record", "lasts": "week"})
    assert "to look and to record" in made.text
    page = (await visitor.get(f"/projects/{ids['id']}")).text
    assert "to look and record, made" in page
    assert ", ends " in page


@pytest.mark.parametrize("form", [{"rights": "all", "lasts": "day"}, {"rights": "view", "lasts": "a while"}, {}])
async def test_rights_and_time_that_are_none_are_refused(visitor: httpx.AsyncClient, form: dict[str, str]) -> None:
    ids = await stored(visitor)
    answer = await visitor.post(f"/projects/{ids['id']}/shares", data=form)
    assert answer.status_code == 422


async def test_the_qr_code_says_the_address(visitor: httpx.AsyncClient) -> None:
    """Read back by its modules: the code of the same text made once more, byte by byte (ISO/IEC 18004 by segno)."""
    ids = await stored(visitor)
    made = await visitor.post(f"/projects/{ids['id']}/shares", data=ANY)
    address = html.unescape(re.search(r'id="address">([^<]+)<', made.text)[1])  # type: ignore[index]
    drawn = html.unescape(re.search(r'<img src="(data:image/svg[^"]+)"', made.text)[1])  # type: ignore[index]
    assert drawn == segno.make(address, error="m", micro=False).svg_data_uri(scale=8, border=4, omitsize=False)
