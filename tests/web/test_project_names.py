"""Names of projects as people, and mischief, may type them."""

import httpx
import pytest

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize("name", ["a\tb", "a\nb", "\u202e", "\x00", "a\u2028b"])
async def test_a_name_that_does_not_print_is_refused_and_the_list_stays_open(
    visitor: httpx.AsyncClient, name: str
) -> None:
    answer = await visitor.post("/projects", data={"name": name, "unit": "in"})
    assert answer.status_code == 422
    assert (await visitor.get("/")).status_code == 200


async def test_thirty_wide_letters_are_a_name(visitor: httpx.AsyncClient) -> None:
    answer = await visitor.post("/projects", data={"name": "W" * 30, "unit": "mm"})
    assert answer.status_code == 303
    assert (await visitor.get(answer.headers["location"])).status_code == 200
