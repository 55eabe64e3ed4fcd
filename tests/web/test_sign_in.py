"""Signing in: no fixed session, no forged form, no endless tries, and no password or token in what is kept."""

import logging
import re
import shutil
import sqlite3
from collections.abc import AsyncIterator
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import httpx
import pytest
from scenario import stored

from app.main import create_app
from app.settings import AddressRefused, Settings
from app.storage import accounts, reading, writing
from app.web.gate import form_token
from app.web.sign_in import TRIES
from app.workflow.accounts import add

pytestmark = pytest.mark.anyio

PASSWORD = "a long enough word"
NOW = datetime.now(UTC)
OWN = {"sec-fetch-site": "same-origin", "origin": "http://test"}


@pytest.fixture
async def app(tmp_path: Path, empty_database: Path) -> AsyncIterator[object]:
    settings = Settings(tmp_path / "data", largest_body=1_000_000, sign_in=True)
    settings.data.mkdir()
    shutil.copy(empty_database, settings.database)
    made = create_app(settings)
    async with made.router.lifespan_context(made):
        with writing(made.state.engine) as session:
            add(session, "Olive Owner", "owner", PASSWORD, by="test", now=NOW)
            add(session, "Vic Viewer", "viewer", PASSWORD, by="test", now=NOW)
        yield made


@pytest.fixture
async def visitor(app: object) -> AsyncIterator[httpx.AsyncClient]:
    async with httpx.AsyncClient(transport=httpx.ASGITransport(app), base_url="http://test", headers=OWN) as opened:
        yield opened


async def entered(visitor: httpx.AsyncClient, name: str = "Olive Owner", password: str = PASSWORD) -> httpx.Response:
    return await visitor.post("/sign-in", data={"name": name, "password": password, "then": "/account"})


def brings(visitor: httpx.AsyncClient) -> dict[str, str]:
    return {"x-form-token": form_token(visitor.cookies["account"])}


async def test_who_has_not_signed_in_is_led_to_the_form_and_back(visitor: httpx.AsyncClient) -> None:
    led = await visitor.get("/projects/0123")
    assert (led.status_code, led.headers["location"]) == (303, "/sign-in?then=/projects/0123")
    assert 'value="/projects/0123"' in (await visitor.get(led.headers["location"])).text
    answer = await entered(visitor)
    assert (answer.status_code, answer.headers["location"]) == (303, "/account")
    page = (await visitor.get("/account")).text
    assert "Olive Owner" in page
    assert "(this one)" in page


@pytest.mark.parametrize("then", ["https://evil.example/", "//evil.example", "/\\evil.example", "javascript:x"])
async def test_the_way_back_is_a_page_of_our_own(visitor: httpx.AsyncClient, then: str) -> None:
    answer = await visitor.post("/sign-in", data={"name": "Olive Owner", "password": PASSWORD, "then": then})
    assert answer.headers["location"] == "/"


async def test_the_cookie_is_for_this_server_alone(visitor: httpx.AsyncClient) -> None:
    cookie = (await entered(visitor)).headers["set-cookie"]
    assert all(part in cookie for part in ("HttpOnly", "SameSite=strict", "Path=/"))


async def test_over_a_closed_line_the_cookie_is_bound_to_the_host(app: object) -> None:
    transport = httpx.ASGITransport(app)
    async with httpx.AsyncClient(transport=transport, base_url="https://test", headers=OWN) as visitor:
        cookie = (await entered(visitor)).headers["set-cookie"]
    assert cookie.startswith("__Host-account=")
    assert "Secure" in cookie


async def test_a_session_that_was_there_before_is_not_taken_on(visitor: httpx.AsyncClient) -> None:
    """Session fixation: a cookie planted before the sign-in opens nothing after it."""
    visitor.cookies.set("account", "planted-by-somebody-else", domain="test")
    await entered(visitor)
    tokens = [cookie.value for cookie in visitor.cookies.jar if cookie.name == "account"]
    assert "planted-by-somebody-else" not in tokens[-1:]
    first = tokens[-1]
    await entered(visitor)
    assert (await at_account(visitor, first)).status_code == 303


async def at_account(visitor: httpx.AsyncClient, token: str | None) -> httpx.Response:
    """The account page as a browser with this cookie alone gets it."""
    transport = visitor._transport
    async with httpx.AsyncClient(
        transport=transport, base_url="http://test", cookies={"account": token or ""}
    ) as other:
        return await other.get("/account")


@pytest.mark.parametrize(("name", "password"), [("Olive Owner", "a wrong long word"), ("Nobody", PASSWORD), ("", "")])
async def test_a_wrong_name_and_a_wrong_password_get_the_same_answer(
    visitor: httpx.AsyncClient, name: str, password: str
) -> None:
    answer = await entered(visitor, name, password)
    assert answer.status_code == 422
    assert "Name and password do not belong together." in answer.text
    assert "account" not in visitor.cookies


async def test_tries_are_limited_by_name_and_by_address(visitor: httpx.AsyncClient) -> None:
    for _ in range(TRIES):
        assert (await entered(visitor, password="a wrong long word")).status_code == 422
    answer = await entered(visitor)
    assert answer.status_code == 429
    assert int(answer.headers["retry-after"]) > 60
    assert (await entered(visitor, "Vic Viewer")).status_code == 429, "the same address"


FORGED = {
    "from another site": ({"sec-fetch-site": "cross-site"}, True),
    "from a sibling": ({"sec-fetch-site": "same-site"}, True),
    "without the form's token": ({"sec-fetch-site": "same-origin"}, False),
    "with another origin": ({"origin": "http://evil.example"}, True),
}


@pytest.mark.parametrize(("headers", "has_token"), FORGED.values(), ids=FORGED)
async def test_a_forged_form_changes_nothing(
    visitor: httpx.AsyncClient, headers: dict[str, str], has_token: bool
) -> None:
    await entered(visitor)
    token = brings(visitor) if has_token else {}
    transport = visitor._transport
    cookies = {"account": visitor.cookies["account"]}
    async with httpx.AsyncClient(transport=transport, base_url="http://test", cookies=cookies) as forger:
        answer = await forger.post("/projects", data={"name": "Forged", "unit": "in"}, headers=headers | token)
    assert answer.status_code == 403
    assert "Forged" not in (await visitor.get("/")).text


async def test_every_form_of_a_page_brings_its_token(visitor: httpx.AsyncClient) -> None:
    await entered(visitor)
    ids = await stored(visitor)
    token = form_token(visitor.cookies["account"])
    for address in ("/", f"/projects/{ids['id']}", f"/panels/{ids['walls'][0]['panels'][0]}/releases", "/account"):
        page = (await visitor.get(address)).text
        forms = re.findall(r'<form method="post" action="([^"]*)"', page)
        assert forms
        assert all(form.endswith(f"?form={token}") for form in forms), address


async def test_a_form_with_its_token_in_its_address_is_taken(visitor: httpx.AsyncClient) -> None:
    await entered(visitor)
    action = re.search(r'action="(/projects\?form=[0-9a-f]+)"', (await visitor.get("/")).text)
    assert action
    answer = await visitor.post(action[1], data={"name": "Shed by the weir", "unit": "in"})
    assert answer.status_code == 303


async def test_another_password_ends_all_other_sessions(visitor: httpx.AsyncClient) -> None:
    await entered(visitor)
    other = visitor.cookies["account"]
    visitor.cookies.clear()
    await entered(visitor)
    answer = await visitor.post(
        "/account/password", data={"old": PASSWORD, "new": "another long word"}, headers=brings(visitor)
    )
    assert "all other sessions have ended" in answer.text
    assert (await at_account(visitor, other)).status_code == 303
    assert (await visitor.get("/account")).status_code == 200
    assert (await entered(visitor, password=PASSWORD)).status_code == 422


@pytest.mark.parametrize(("old", "new"), [("wrong word here", "another long word"), (PASSWORD, "short")])
async def test_a_password_that_cannot_be_is_told(visitor: httpx.AsyncClient, old: str, new: str) -> None:
    await entered(visitor)
    answer = await visitor.post("/account/password", data={"old": old, "new": new}, headers=brings(visitor))
    assert answer.status_code == 422
    assert "The password was not changed" in answer.text


async def test_signing_out_and_ending_a_session_close_it(visitor: httpx.AsyncClient) -> None:
    await entered(visitor)
    other = visitor.cookies["account"]
    visitor.cookies.clear()
    await entered(visitor)
    page = (await visitor.get("/account")).text
    end = re.search(r'action="(/account/sessions/[0-9a-f]+/end\?form=[0-9a-f]+)"[^>]*><span>[^<]*</span> <button', page)
    assert end
    await visitor.post(end[1])
    assert (await at_account(visitor, other)).status_code == 303
    here = visitor.cookies["account"]
    await visitor.post("/sign-out", headers=brings(visitor))
    assert (await at_account(visitor, here)).status_code == 303


async def test_a_session_is_over_after_two_weeks(app: object) -> None:
    with writing(app.state.engine) as session:  # type: ignore[attr-defined]
        account = accounts.named(session, "olive owner")
        assert account
        token = accounts.begin_session(session, account.id, "a test", NOW)
    with reading(app.state.engine) as session:  # type: ignore[attr-defined]
        assert accounts.by_token(session, token, NOW + timedelta(days=13))
        assert accounts.by_token(session, token, NOW + timedelta(days=14)) is None


async def test_the_history_and_the_log_name_who_did_it(visitor: httpx.AsyncClient) -> None:
    await entered(visitor)
    ids = await stored(visitor)
    panel = ids["walls"][0]["panels"][0]
    await visitor.post(f"/panels/{panel}/releases", data={"why": "For casting"}, headers=brings(visitor))
    share = {"rights": "record", "lasts": "day"}
    await visitor.post(f"/projects/{ids['id']}/shares", data=share, headers=brings(visitor))
    log = (await visitor.get("/accounts")).text
    assert "<td>Olive Owner</td><td>released as rev A</td><td>E1</td>" in log
    assert "<td>link made, to look and to record</td>" in log
    assert "by Olive Owner" in (await visitor.get(f"/panels/{panel}/releases")).text


async def test_no_password_and_no_token_is_kept_or_logged(
    app: object, visitor: httpx.AsyncClient, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.DEBUG)
    await entered(visitor, password="a wrong but long word")
    await entered(visitor)
    ids = await stored(visitor)
    made = await visitor.post(
        f"/projects/{ids['id']}/shares", data={"rights": "record", "lasts": "day"}, headers=brings(visitor)
    )
    link = re.search(r"/s/([\w-]+)", made.text)
    assert link
    await visitor.get(f"/s/{link[1]}")
    secrets = [PASSWORD, "a wrong but long word", visitor.cookies["account"], link[1]]
    with closing(sqlite3.connect(app.state.settings.database)) as connection:  # type: ignore[attr-defined]
        dump = "\n".join(connection.iterdump())
    ours = "\n".join(line.getMessage() for line in caplog.records if not line.name.startswith(("httpx", "httpcore")))
    assert [secret for secret in secrets if secret in dump or secret in ours] == []


async def test_an_account_that_is_disabled_is_out_at_once(app: object, visitor: httpx.AsyncClient) -> None:
    await entered(visitor, "Vic Viewer")
    assert (await visitor.get("/account")).status_code == 200
    with writing(app.state.engine) as session:  # type: ignore[attr-defined]
        account = accounts.named(session, "Vic Viewer")
        assert account
        accounts.disable(session, account.id, datetime.now(UTC))
    assert (await visitor.get("/account")).status_code == 303
    assert (await entered(visitor, "Vic Viewer")).status_code == 422


def test_another_address_needs_a_name_and_asks_who_is_there() -> None:
    with pytest.raises(AddressRefused, match="--name"):
        Settings(Path(), host="0.0.0.0").checked()
    open_ = Settings(Path(), host="0.0.0.0", names=("Bed.Yard.Example",)).checked()
    assert open_.needs_sign_in
    assert open_.known_hosts == {"bed.yard.example", "0.0.0.0"}
    assert not Settings(Path()).checked().needs_sign_in
