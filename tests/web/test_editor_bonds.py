"""Pictures of bonds: sent once, kept for good, by day and by night."""

import re
from typing import Any

import httpx
import pytest
from scenario import project, stored

from app.brickwork.bonds import BONDS

pytestmark = pytest.mark.anyio

OWN: dict[str, Any] = {
    "name": "own/stack <2>",
    "cells": [{"kind": "stretcher", "at": ["0", "0"]}],
    "across": ["P", "0"],
    "up": ["0", "G"],
}


async def card(client: httpx.AsyncClient, file: dict[str, Any]) -> str:
    ids = await stored(client, file)
    return (await client.get(f"/panels/{ids['walls'][0]['panels'][0]}/card")).text


async def test_every_bond_has_a_picture_by_day_and_by_night(visitor: httpx.AsyncClient) -> None:
    found = await card(visitor, project())
    addresses = set(re.findall(r'(?:src|srcset)="([^"]+)"', found))
    assert len(addresses) == 2 * len(BONDS)
    for address in sorted(addresses):
        picture = await visitor.get(address)
        assert picture.status_code == 200, address
        assert picture.headers["content-type"] == "image/svg+xml"
        assert "immutable" in picture.headers["cache-control"]
        assert picture.text.startswith("<svg")
    assert found.count('type="radio"') == 3 * len(BONDS)
    assert found.count("checked") == 3


async def test_the_cards_of_other_panels_name_the_same_pictures(visitor: httpx.AsyncClient) -> None:
    pictures = [set(re.findall(r'src="([^"]+)"', await card(visitor, project()))) for _ in range(2)]
    assert pictures[0] == pictures[1]


async def test_a_picture_under_another_digest_is_404(visitor: httpx.AsyncClient) -> None:
    [address] = {one for one in re.findall(r'src="([^"]+)"', await card(visitor, project())) if "running" in one}
    _, _, digest, _, _ = address.split("/")
    for wrong in (address.replace(digest, "0" * 16), address.replace("paper", "bed"), address.replace("running", "no")):
        assert (await visitor.get(wrong)).status_code == 404, wrong


async def test_a_bond_of_the_projects_own_is_offered_with_its_picture(visitor: httpx.AsyncClient) -> None:
    found = await card(visitor, project() | {"bonds": [OWN]})
    assert 'value="own/stack &lt;2&gt;"' in found
    [address] = set(re.findall(r'src="(/projects/[^"]+)"', found))
    picture = await visitor.get(address)
    assert picture.status_code == 200
    assert "own/stack &lt;2&gt;" in picture.text
    stack = next(one for one in re.findall(r'src="([^"]+)"', found) if one.endswith("/stack.svg"))
    own_path, stack_path = (
        re.findall(r' d="([^"]+)"', text)[-1] for text in (picture.text, (await visitor.get(stack)).text)
    )
    assert own_path == stack_path
