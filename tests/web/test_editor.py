"""The panel editor asked over HTTP: as plain forms, and as its script asks."""

from html import unescape
from typing import Any

import httpx
import pytest
from scenario import PROJECT, stored

from app.panel.edits import EDITS

pytestmark = pytest.mark.anyio

PART = {"hx-request": "true"}

DOCUMENT_WITH_ALL: dict[str, Any] = {
    "mark": "All",
    "thickness": 7.25,
    "outline": [[0, 0], [240, 0], [240, 120], [0, 120]],
    "openings": [
        {"mark": "W1", "use": "window", "rect": [40, 40, 40, 40]},
        {"mark": "A1", "use": "door", "arch": [100, 0, 40, 84, 20]},
        {"mark": "V1", "use": "vent", "circle": [180, 90, 9]},
        {"mark": "L/1 <b>", "use": "louver", "polygon": [[200, 20], [230, 20], [225, 60]]},
    ],
    "strips": [{"mark": "R1", "line": [[0, 96], [240, 96]], "width": 0.75}],
    "zones": [
        {"mark": "S1", "rect": [30, 84, 60, 8], "size": "modular", "bond": "soldier"},
        {"mark": "B1", "band": {"course": 2, "courses": 3}, "size": "modular", "bond": "stack"},
    ],
    "plates": [{"mark": "P1", "rect": [10, 10, 8, 8]}],
    "fixings": [{"line": [[120, 0], [120, 120]], "by": "glue"}],
    "field": {"size": "modular", "bond": "running"},
}
KEYS = (
    "outline",
    "openings/W1",
    "openings/A1",
    "openings/V1",
    "openings/L/1 <b>",
    "strips/R1",
    "zones/S1",
    "zones/B1",
    "fixings/0",
    "plates/P1",
)


async def project(client: httpx.AsyncClient, *panels: dict[str, Any]) -> list[str]:
    """The ids of the panels of a fresh project."""
    file = PROJECT | {"walls": [PROJECT["walls"][0] | {"panels": list(panels) or PROJECT["walls"][0]["panels"]}]}
    answer = await client.post("/api/projects", json=file)
    assert answer.status_code == 201, answer.text
    ids: list[str] = answer.json()["walls"][0]["panels"]
    return ids


async def moved(
    client: httpx.AsyncClient, panel: str, base: int, headers: dict[str, str], **more: str
) -> httpx.Response:
    form = {"edit": "move_opening", "opening": "W1", "dx": '8"', "base_revision": str(base)} | more
    return await client.post(f"/panels/{panel}/edits", data=form, headers=headers)


async def test_the_page_and_every_things_card_open(visitor: httpx.AsyncClient) -> None:
    [panel] = await project(visitor, DOCUMENT_WITH_ALL)
    page = await visitor.get(f"/panels/{panel}")
    assert page.status_code == 200
    assert "<b>" not in page.text
    for key in KEYS:
        card = await visitor.get(f"/panels/{panel}/card", params={"thing": key})
        assert card.status_code == 200
        assert "<form" in card.text
        assert "Panel All" not in card.text, f"{key} has no card of its own"


async def test_every_edit_has_a_form(visitor: httpx.AsyncClient) -> None:
    [panel] = await project(visitor, DOCUMENT_WITH_ALL)
    pages = [(await visitor.get(f"/panels/{panel}/card", params={"thing": key})).text for key in ("", *KEYS)]
    page = (await visitor.get(f"/panels/{panel}")).text
    asked = {"edit": "ask_question", "text": "Is V1 a vent?", "base_revision": "1"}
    assert (await visitor.post(f"/panels/{panel}/edits", data=asked, headers=PART)).status_code == 200
    pages += [page, *[(await visitor.get(f"/panels/{panel}/{name}")).text for name in ("advice", "drift", "table")]]
    several = [("thing", key) for key in KEYS if key.startswith("openings/")]
    pages.append((await visitor.get(f"/panels/{panel}/card", params=several)).text)
    by_gesture = {"move_opening", "move_point", "reshape_opening", "set_rise"}
    by_gesture |= {"move_corner", "move_edge", "move_line", "move_zone", "move_plate", "set_dimension"}
    by_advice = {"move_openings", "resize_openings", "ask_question"}
    where_it_can_be = {"join_wall", "withdraw_acceptance"}
    offered = {name for name in EDITS if any(f'value="{name}"' in card for card in pages)}
    assert offered | by_gesture | by_advice | where_it_can_be == set(EDITS)
    assert 'data-moves="move_opening"' in page


async def test_a_plain_form_leads_back_to_the_page(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    answer = await moved(visitor, panel, 1, {})
    assert (answer.status_code, answer.headers["location"]) == (303, f"/panels/{panel}")
    document = (await visitor.get(f"/api/panels/{panel}")).json()
    assert document["revision"] == 2
    assert document["document"]["openings"][0]["rect"] == [56, 32, 32, 40]


async def test_a_script_gets_the_groups_that_changed_and_no_others(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    answer = await moved(visitor, panel, 1, PART, hidden="sheets checkpoints")
    assert answer.status_code == 200
    assert answer.text.count("<template><svg>") == 1
    assert 'id="layer-things" data-home' in answer.text
    assert 'id="layer-cuts-' in answer.text
    assert 'id="layer-orientation"' not in answer.text
    assert 'id="layer-sheets' not in answer.text
    assert "style=" not in answer.text
    assert 'data-revision="2"' in answer.text


async def test_a_shown_layer_is_sent_whole(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    layout = (await visitor.get(f"/api/panels/{panel}/layout")).json()
    answer = await visitor.get(f"/panels/{panel}/layers", params={"choice": "sheets"})
    for sheet in layout["sheets"]["list"]:
        assert f">{sheet['mark']}</text>" in answer.text
    nothing = await visitor.get(f"/panels/{panel}/layers", params={"choice": "no such"})
    assert "<g " not in nothing.text


async def test_a_stale_edit_is_412_with_both_sides_and_goes_on_top_when_asked(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    await moved(visitor, panel, 1, PART)
    mine = {"edit": "set_margin", "margin": "1/2", "base_revision": "1"}
    stale = await visitor.post(f"/panels/{panel}/edits", data=mine, headers=PART)
    assert stale.status_code == 412
    assert "W1" in stale.text
    assert "margin" in stale.text
    assert "Put mine on top" in stale.text
    assert (await visitor.get(f"/api/panels/{panel}")).json()["revision"] == 2
    on_top = await visitor.post(f"/panels/{panel}/edits", data=mine | {"on_top": "yes"}, headers=PART)
    assert on_top.status_code == 200
    document = (await visitor.get(f"/api/panels/{panel}")).json()
    assert (document["revision"], document["document"]["margin"]) == (3, "1/2")
    assert document["document"]["openings"][0]["rect"][0] == 56


async def test_a_stale_edit_of_the_same_thing_can_only_be_dropped(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    await moved(visitor, panel, 1, PART)
    stale = await moved(visitor, panel, 1, PART, dx='4"')
    assert stale.status_code == 412
    assert "Put mine on top" not in stale.text
    assert "Drop mine" in stale.text
    assert (await moved(visitor, panel, 1, {}, dx='4"')).status_code == 412


async def test_the_same_command_again_is_made_once(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    for _ in range(3):
        answer = await moved(visitor, panel, 1, PART, command_id="one-and-the-same")
        assert answer.status_code == 200
    assert (await visitor.get(f"/api/panels/{panel}")).json()["revision"] == 2


@pytest.mark.parametrize(
    ("form", "words"),
    [
        ({"edit": "no_such"}, "edit: found"),
        ({"edit": "move_opening", "opening": "W9", "dx": "1"}, "opening: found"),
        ({"edit": "move_opening", "opening": "W1", "dx": "12'14\""}, "expected inches below 12"),
        (
            {"edit": "move_opening", "opening": "W1", "dx": "500'"},
            "expected a shape at least partly inside the outline",
        ),
        ({"edit": "set_brickwork", "part": "field", "size": "modular", "bond": "no"}, "bond: found"),
        ({"edit": "add_opening", "shape": "rect", "x": "50", "y": "40", "width": "8", "height": "8"}, "overlap"),
        ({"edit": "set_outline", "width": "-1", "height": "8"}, "outline"),
    ],
)
async def test_what_cannot_be_is_422_in_words_and_changes_nothing(
    visitor: httpx.AsyncClient, form: dict[str, str], words: str
) -> None:
    panel, _ = await project(visitor)
    answer = await visitor.post(f"/panels/{panel}/edits", data=form | {"base_revision": "1"}, headers=PART)
    assert answer.status_code == 422
    assert words in answer.text.replace("&#39;", "'").replace("&#34;", '"')
    assert (await visitor.get(f"/api/panels/{panel}")).json()["revision"] == 1


@pytest.mark.parametrize("base", ["", "x", "-1", "0", "99", "²"])
async def test_a_base_that_never_was_is_refused(visitor: httpx.AsyncClient, base: str) -> None:
    panel, _ = await project(visitor)
    form = {"edit": "set_margin", "margin": "1", "base_revision": base}
    answer = await visitor.post(f"/panels/{panel}/edits", data=form, headers=PART)
    assert answer.status_code in (412, 422)


@pytest.mark.parametrize("name", ["base_revision", "command_id", "temperature"])
@pytest.mark.parametrize("value", ["9" * 5000, "²", "\x00", "\u202e", " ", "1e3"])
async def test_odd_values_of_the_pages_own_fields_are_no_fault_of_the_server(
    visitor: httpx.AsyncClient, name: str, value: str
) -> None:
    panel, _ = await project(visitor)
    form = {"edit": "set_margin", "margin": "1/2", "base_revision": "1", name: value}
    for path in ("edits", "undo", "redo"):
        assert (await visitor.post(f"/panels/{panel}/{path}", data=form, headers=PART)).status_code < 500


async def test_a_panel_without_any_brick_opens_with_its_band_and_is_undone(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    band = {"edit": "add_zone", "shape": "band", "course": "2", "courses": "3", "size": "modular", "bond": "soldier"}
    margin = {"edit": "set_margin", "margin": "48"}
    for k, form in enumerate((band, margin)):
        answer = await visitor.post(f"/panels/{panel}/edits", data=form | {"base_revision": str(k + 1)}, headers=PART)
        assert answer.status_code == 200, answer.text
    assert (await visitor.get(f"/api/panels/{panel}/layout")).json()["counts"]["whole"] == 0
    for address in (f"/panels/{panel}", f"/bed/{panel}", "/", f"/api/panels/{panel}/elevation.svg"):
        assert (await visitor.get(address)).status_code == 200, address
    undone = await visitor.post(f"/panels/{panel}/undo", data={"base_revision": "3"}, headers=PART)
    assert undone.status_code == 200
    assert (await visitor.get(f"/api/panels/{panel}/layout")).json()["counts"]["whole"] > 0


async def test_a_panel_of_another_size_gets_its_hatches_to_scale(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    form = {"edit": "set_outline", "width": "40'", "height": "20'", "base_revision": "1"}
    answer = await visitor.post(f"/panels/{panel}/edits", data=form, headers=PART)
    assert 'id="patterns"' in answer.text


async def test_undo_says_why_not(visitor: httpx.AsyncClient) -> None:
    panel, _ = await project(visitor)
    answer = await visitor.post(f"/panels/{panel}/undo", data={"base_revision": "1"}, headers=PART)
    assert answer.status_code == 409
    assert "Nothing to undo" in answer.text


async def test_readings_follow_the_temperature(visitor: httpx.AsyncClient) -> None:
    [panel] = await project(visitor, DOCUMENT_WITH_ALL)
    cold = await visitor.get(f"/panels/{panel}/checkpoints", params={"temperature": "40"})
    hot = await visitor.get(f"/panels/{panel}/checkpoints", params={"temperature": "120"})
    assert "120 °F" in hot.text
    assert cold.text.count("<tr>") == hot.text.count("<tr>") > 1
    assert cold.text != hot.text


@pytest.mark.parametrize("unit", ["F", "C"])
async def test_readings_at_a_temperature_that_cannot_be_are_refused_in_the_projects_unit(
    visitor: httpx.AsyncClient, unit: str
) -> None:
    """On a page of its own, and as the part that takes the readings' place."""
    usual = {"F": (70, 4.5e-5, 55, 105), "C": (21, 8.1e-5, 13, 40)}[unit]
    liner = {"reference_temperature": usual[0], "expansion_per_degree": usual[1]}
    day = {"bed_low": usual[2], "bed_high": usual[3]}
    ids = await stored(visitor, PROJECT | {"temperature_unit": unit, "liner": liner, "day": day})
    panel = ids["walls"][0]["panels"][0]
    ends = {"F": "-60 to 250 °F", "C": "-51 to 121 °C"}[unit]
    asked = {f"={number}": f"{number} °{unit}" for number in ("900", "-900")}
    asked |= {f"={text}": f"'{text}'" for text in ("nan", "inf", "warm")} | {"=": "nothing", "s=1": "nothing"}
    for typed, found in asked.items():
        for headers in ({}, PART):
            answer = await visitor.get(f"/panels/{panel}/checkpoints?temperature{typed}", headers=headers)
            assert answer.status_code == 422
            assert f"found {found}<br>expected a bed temperature from {ends}" in unescape(answer.text)
            assert ("<html" in answer.text) == (headers == {})


async def test_an_edit_answers_at_the_temperature_shown_and_at_the_days_highest_for_one_that_cannot_be(
    visitor: httpx.AsyncClient,
) -> None:
    [panel] = await project(visitor, DOCUMENT_WITH_ALL)
    for k, (typed, told) in enumerate({"87.5": "87.5 °F", "900": "105 °F", "": "105 °F"}.items(), start=1):
        form = {"edit": "set_margin", "margin": str(k), "base_revision": str(k), "temperature": typed}
        answer = await visitor.post(f"/panels/{panel}/edits", data=form, headers=PART)
        assert f"<strong>{told}</strong>" in answer.text


async def test_nobodys_panel_is_404(visitor: httpx.AsyncClient) -> None:
    for path in ("", "/card", "/layers?choice=sheets", "/checkpoints?temperature=60"):
        assert (await visitor.get(f"/panels/0123456789abcdef{path}")).status_code == 404
    for path in ("edits", "undo", "redo"):
        answer = await visitor.post(
            f"/panels/0123456789abcdef/{path}", data={"base_revision": "1", "edit": "set_margin"}
        )
        assert answer.status_code == 404


async def test_the_editor_says_what_the_colours_of_a_blend_look_like(client: httpx.AsyncClient) -> None:
    """By letter, name and hatching, as colour alone tells nothing to many."""
    colours = [{"name": "iron red", "percent": 60}, {"name": "slate", "percent": 40}]
    ids = await stored(client, PROJECT | {"blend": {"colours": colours, "cluster": 6}})
    page = (await client.get(f"/panels/{ids['walls'][0]['panels'][0]}")).text
    assert "Colours: A iron red (plain), B slate (slanted lines)." in page
