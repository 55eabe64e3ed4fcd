"""A panel's pages lead to each other by one name each, and the bed page names the hook where laying starts."""

import re

import httpx
import pytest
from scenario import project, stored

from app.web.page_links import PAGES

pytestmark = pytest.mark.anyio

OWN = ("Liner", "Drift")
"""Pages with links to the others under their title."""


async def test_a_page_of_a_panel_leads_to_every_other_by_its_name(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    panel = ids["walls"][0]["panels"][0]
    addresses = {name: address.format(id=panel) for name, address in PAGES}
    for own in OWN:
        page = (await visitor.get(addresses[own])).text
        (head,) = re.findall(r'<p class="go">(.*?)</p>', page)
        links = re.findall(r'<a href="([^"]*)" aria-label="([^"]*)">([^<]*)</a>', head)
        expected = [(address, f"{name} of E1", name) for name, address in addresses.items() if name != own]
        assert links == expected
        assert all([(await visitor.get(address)).status_code == 200 for address, _, _ in links])
    schedule = (await visitor.get(f"/projects/{ids['id']}")).text
    for name, address in list(addresses.items())[1:]:
        assert f'<a href="{address}" aria-label="{name} of E1">{name}</a>' in schedule


async def test_the_order_and_the_saw_list_lead_to_each_other_in_the_same_scope(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    of = f"panel:{ids['walls'][0]['panels'][1]}"
    for here, there in (("order", "saw"), ("saw", "order")):
        page = (await visitor.get(f"/projects/{ids['id']}/{here}?of={of}")).text
        assert f'href="/projects/{ids["id"]}/{there}?of={of}"' in page


async def test_the_path_over_each_page_names_wall_and_panel(visitor: httpx.AsyncClient) -> None:
    ids = await stored(visitor)
    panel = ids["walls"][0]["panels"][0]
    for _, address in PAGES:
        page = (await visitor.get(address.format(id=panel))).text
        assert "East / E1" in re.findall(r"<ol>(.*?)</ol>", page, re.DOTALL)[0]


@pytest.mark.parametrize(
    ("corner", "across", "up"),
    [
        ("bed lower left", "left, running to the right", "foot, running up"),
        ("bed upper right", "right, running to the left", "top, running down to the foot"),
    ],
)
async def test_the_bed_page_names_the_hook_of_its_readings(
    visitor: httpx.AsyncClient, corner: str, across: str, up: str
) -> None:
    file = project()
    file["walls"][0]["panels"][0]["laying"] = {"corner": corner}
    panel = (await stored(visitor, file))["walls"][0]["panels"][0]
    page = (await visitor.get(f"/bed/{panel}?show=checkpoints")).text
    captions = re.findall(r"<caption>(.*?)</caption>", page)
    assert captions == [
        f"Across, hook at the bed&#39;s {across} as you stand at the panel&#39;s foot",
        f"Up, hook at the {up}",
    ]
