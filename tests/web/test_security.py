"""What every answer carries, and who is turned away."""

import httpx
import pytest

from app.web.security import host_name

pytestmark = pytest.mark.anyio

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
    "connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; "
    "frame-ancestors 'none'"
)


@pytest.mark.parametrize("address", ["/", "/healthz", "/nothing", "/api/nothing", "/openapi.json", "/problems", "/s/x"])
async def test_every_answer_carries_the_guards(client: httpx.AsyncClient, address: str) -> None:
    answer = await client.get(address)
    assert answer.headers["content-security-policy"] == POLICY
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["referrer-policy"] == "no-referrer"
    assert answer.headers["cross-origin-opener-policy"] == "same-origin"


async def test_a_failure_of_the_server_carries_them_too(app: object) -> None:
    @app.get("/api/broken")  # type: ignore[attr-defined, untyped-decorator]
    def broken() -> None:
        raise ZeroDivisionError("secret")

    transport = httpx.ASGITransport(app, raise_app_exceptions=False)
    async with httpx.AsyncClient(transport=transport, base_url="http://test") as client:
        answer = await client.get("/api/broken")
    assert answer.status_code == 500
    assert answer.headers["content-security-policy"] == POLICY
    assert answer.headers["content-type"] == "application/problem+json"
    assert "secret" not in answer.text


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1.evil.example", "localhost.evil.example:8350", ""])
async def test_a_foreign_name_is_turned_away(client: httpx.AsyncClient, host: str) -> None:
    answer = await client.get("/healthz", headers={"host": host})
    assert answer.status_code == 421
    assert answer.headers["content-security-policy"] == POLICY


@pytest.mark.parametrize("host", ["127.0.0.1:8350", "localhost", "LOCALHOST:1", "[::1]:8350", "[::1]"])
async def test_our_own_names_are_answered(client: httpx.AsyncClient, host: str) -> None:
    assert (await client.get("/healthz", headers={"host": host})).status_code == 200


def test_an_ipv6_host_keeps_its_brackets() -> None:
    assert host_name("[::1]:8350") == "[::1]"


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
async def test_a_form_of_another_site_changes_nothing(client: httpx.AsyncClient, site: str) -> None:
    answer = await client.post("/projects", data={"name": "Trap", "unit": "in"}, headers={"sec-fetch-site": site})
    assert answer.status_code == 403
    assert (await client.get("/api/projects")).json() == []


async def test_without_that_header_the_origin_decides(client: httpx.AsyncClient) -> None:
    form = {"name": "Yard", "unit": "in"}
    for origin in ("http://evil.example", "null", "http://test.evil.example"):
        assert (await client.post("/projects", data=form, headers={"origin": origin})).status_code == 403
    assert (await client.post("/projects", data=form, headers={"origin": "http://test"})).status_code == 303


async def test_a_script_sends_json_or_is_turned_away(client: httpx.AsyncClient) -> None:
    form = await client.post("/projects", data={"name": "Yard", "unit": "in"})
    plain = await client.post("/api/projects", content="{}", headers={"content-type": "text/plain"})
    json = await client.post("/api/projects", json={})
    assert (form.status_code, plain.status_code, json.status_code) == (403, 403, 422)


async def test_a_body_past_the_limit_is_cut_off_while_it_comes(client: httpx.AsyncClient) -> None:
    sent = 0

    async def endless():  # type: ignore[no-untyped-def]
        nonlocal sent
        for _ in range(100):
            sent += 100_000
            yield b" " * 100_000

    answer = await client.post("/api/projects", content=endless(), headers={"content-type": "application/json"})
    assert answer.status_code == 413
    assert answer.json()["type"] == "/problems#too-large"
    assert sent <= 1_200_000


async def test_text_that_is_not_json_says_where(client: httpx.AsyncClient) -> None:
    answer = await client.post("/api/projects", content=b'{"a": }', headers={"content-type": "application/json"})
    assert answer.status_code == 422
    assert "column 7" in answer.json()["faults"][0]["path"]
