"""Every route and every role: what may come in where people sign in; the routes are taken from the server itself."""

import re
import shutil
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path

import httpx
import pytest
from scenario import stored

from app.main import ROUTERS, create_app
from app.settings import Settings
from app.storage import accounts, writing
from app.storage.accounts import ROLES
from app.web.gate import cookie_name, form_token
from app.web.roles import BY_LINK, OPEN, RIGHTS
from app.workflow.accounts import add

pytestmark = pytest.mark.anyio

PASSWORD = "a long enough word"
NOW = datetime.now(UTC)

ROUTES = [f"{method} {route.path}" for router in ROUTERS for route in router.routes for method in route.methods]
WHO = (*ROLES, "guest", "no one")
GONE = "0123456789abcdef"


@pytest.fixture(scope="module")
async def app(tmp_path_factory: pytest.TempPathFactory, empty_database: Path) -> AsyncIterator[object]:
    """One server for the whole matrix; a route that got through changes nothing, as what it names is not there."""
    settings = Settings(tmp_path_factory.mktemp("roles"), largest_body=1_000_000, sign_in=True)
    shutil.copy(empty_database, settings.database)
    made = create_app(settings)
    async with made.router.lifespan_context(made):
        yield made


@pytest.fixture(scope="module")
async def tokens(app: object) -> dict[str, str]:
    """A session of each role."""
    found = {}
    with writing(app.state.engine) as session:  # type: ignore[attr-defined]
        for role in ROLES:
            add(session, f"The {role}", role, PASSWORD, by="test", now=NOW)
            account = accounts.named(session, f"The {role}")
            assert account
            found[role] = accounts.begin_session(session, account.id, "a test", NOW)
    return found


def visitor(app: object, cookies: dict[str, str], **headers: str) -> httpx.AsyncClient:
    transport = httpx.ASGITransport(app, raise_app_exceptions=False)
    own = {"sec-fetch-site": "same-origin", "origin": "http://test", **headers}
    return httpx.AsyncClient(transport=transport, base_url="http://test", headers=own, cookies=cookies)


def as_who(app: object, tokens: dict[str, str], who: str) -> httpx.AsyncClient:
    if who == "no one":
        return visitor(app, {})
    if who == "guest":
        return visitor(app, {"bed": "no such link"})
    return visitor(app, {"account": tokens[who]}, **{"x-form-token": form_token(tokens[who])})


@pytest.mark.parametrize("who", WHO)
@pytest.mark.parametrize("route", ROUTES)
async def test_a_route_answers_whom_the_table_names_and_nobody_else(
    app: object, tokens: dict[str, str], route: str, who: str
) -> None:
    method, path = route.split(" ")
    address = re.sub(r"\{[^}]*\}", GONE, path)
    is_file = path.endswith((".svg", ".pdf", ".json", ".csv", ".xlsx"))
    async with as_who(app, tokens, who) as client:
        if path == "/sign-out":
            return
        answer = await client.request(method, address, json={} if path.startswith("/api/") else None)
    turned_away = answer.status_code in (401, 403) or answer.headers.get("location", "").startswith("/sign-in?")
    if route in OPEN or (who == "guest" and route in BY_LINK):
        assert not turned_away
    elif who in ROLES:
        assert turned_away == (who not in RIGHTS.get(route.replace("HEAD", "GET"), ())), answer.text[:300]
    else:
        assert turned_away
    assert answer.status_code != 500 or not is_file


def test_every_route_is_in_the_table_once() -> None:
    """Denied by default: a route that nobody has named is for nobody."""
    assert [route for route in ROUTES if route not in OPEN and route not in RIGHTS] == []
    assert [route for route in RIGHTS if route not in {*ROUTES, "GET /openapi.json"}] == []
    assert [route for route in OPEN if route not in ROUTES] == []
    assert not OPEN & set(RIGHTS)


async def test_a_route_that_is_not_in_the_table_is_for_nobody(app: object, tokens: dict[str, str]) -> None:
    async with as_who(app, tokens, "owner") as client:
        assert (await client.get("/nothing/here")).status_code == 404
        assert (await client.post("/person", data={"name": "Another"})).status_code == 403


async def test_a_foreign_project_is_not_there(app: object, tokens: dict[str, str]) -> None:
    """Ids of one project under the address of another: 404 for who may do everything."""
    async with as_who(app, tokens, "owner") as client:
        one, other = await stored(client), await stored(client)
        panel, wall = other["walls"][0]["panels"][0], other["walls"][0]["id"]
        at = f"/projects/{one['id']}"
        for path in (f"{at}/panels/{panel}/mark", f"{at}/panels/{panel}/casting", f"{at}/walls/{wall}/panels"):
            data = {"mark": "Q9", "revision": "1", "width": "120", "height": "96", "size": "modular", "bond": "running"}
            assert (await client.post(path, data=data)).status_code == 404, path
        assert (await client.get(f"{at}/walls/{wall}")).status_code == 404
        share = {"panel": panel, "rights": "view", "lasts": "day"}
        assert (await client.post(f"{at}/shares", data=share)).status_code == 404


def test_the_cookie_is_bound_to_the_host_where_the_line_is_closed() -> None:
    assert (cookie_name("https"), cookie_name("http")) == ("__Host-account", "account")
