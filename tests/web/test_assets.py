"""Files that may be kept forever, because their address changes with them."""

import re

import httpx
import pytest

from app.drawing.styles import STYLES
from app.web.assets import assets

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize(
    "name", ["base.css", "drawing.css", "banner.js", "htmx.js", "source-sans-regular.ttf", "mark.svg"]
)
async def test_a_file_is_served_to_be_kept(client: httpx.AsyncClient, name: str) -> None:
    answer = await client.get(assets().url(name))
    assert answer.status_code == 200
    assert "immutable" in answer.headers["cache-control"]


@pytest.mark.parametrize("address", ["/static/0000000000000000/base.css", "/static/{digest}/../app/main.py"])
async def test_any_other_address_holds_nothing(client: httpx.AsyncClient, address: str) -> None:
    answer = await client.get(address.format(digest=assets().digest))
    assert answer.status_code == 404


def test_a_name_that_is_not_there_is_an_error() -> None:
    with pytest.raises(KeyError):
        assets().url("missing.css")


def test_every_font_that_the_style_sheet_names_is_there() -> None:
    style = assets().contents["base.css"].decode()
    for name in re.findall(r'url\("([^"]+)"\)', style):
        assert name in assets().contents


def test_htmx_is_version_2() -> None:
    assert 'version:"2.' in assets().contents["htmx.js"].decode()


def test_every_mark_of_a_drawing_has_its_rule() -> None:
    styles = assets().contents["drawing.css"].decode()
    for style in STYLES:
        assert f".{style.replace(' ', '.')}{{" in styles
