"""A panel copied, and its settings given to others: looked at first, then one step on each, undone there."""

from typing import Any

import httpx
import pytest
from test_editor import PART, project

pytestmark = pytest.mark.anyio

PLAIN = {
    "thickness": 7.25,
    "outline": [[0, 0], [120, 0], [120, 96], [0, 96]],
    "openings": [{"mark": "W1", "use": "window", "rect": [30, 24, 40, 40]}],
    "field": {"size": "modular", "bond": "running"},
}
PANELS = (
    PLAIN | {"mark": "N1", "margin": 0.5, "thickness": '8"', "field": {"size": "modular", "bond": "stack"}},
    PLAIN | {"mark": "N2", "margin": 1},
    PLAIN | {"mark": "N3", "openings": []},
)


async def document(visitor: httpx.AsyncClient, panel: str) -> dict[str, Any]:
    found: dict[str, Any] = (await visitor.get(f"/api/panels/{panel}")).json()["document"]
    return found


async def test_a_look_changes_nothing_and_says_what_would(visitor: httpx.AsyncClient) -> None:
    first, second, third = await project(visitor, *PANELS)
    asked = {"setting": ["margin", "brick"], "panel": [second, third], "act": "look"}
    page = await visitor.post(f"/panels/{first}/same", data=asked)
    assert page.status_code == 200
    assert "2 panels would change." in page.text
    assert "margin changed from 1 to 0.5" in page.text
    assert "cut, " in page.text
    assert (await document(visitor, second)) == PANELS[1]


async def test_settings_are_given_as_one_step_on_each_that_is_undone_there(visitor: httpx.AsyncClient) -> None:
    first, second, third = await project(visitor, *PANELS)
    asked = {"setting": ["margin", "thickness", "brick"], "panel": [second, third], "act": "give"}
    answer = await visitor.post(f"/panels/{first}/same", data=asked)
    assert answer.status_code == 303
    changed = await document(visitor, second)
    assert (changed["margin"], changed["thickness"], changed["field"]["bond"]) == (0.5, '8"', "stack")
    assert changed["openings"] == PLAIN["openings"]
    assert (await document(visitor, third))["margin"] == 0.5
    undone = await visitor.post(f"/panels/{second}/undo", data={"base_revision": "2"}, headers=PART)
    assert undone.status_code == 200
    assert (await document(visitor, second)) == PANELS[1]
    assert "As N1: margin, thickness, brick and bond" in (await visitor.get(f"/panels/{third}/history")).text


async def test_a_panel_where_it_cannot_be_is_named_and_left(visitor: httpx.AsyncClient) -> None:
    """A return of 5 in. does not go into a panel of 3 in."""
    returned = PLAIN | {"mark": "N2", "edges": [{"edge": 1, "treatment": "return", "depth": 5}]}
    first, second, third = await project(visitor, PLAIN | {"mark": "N1", "thickness": 3}, returned, PANELS[2])
    asked = {"setting": ["thickness"], "panel": [second, third], "act": "look"}
    page = (await visitor.post(f"/panels/{first}/same", data=asked)).text
    assert "1 panel would change." in page
    assert "edges[0].depth" in page
    await visitor.post(f"/panels/{first}/same", data=asked | {"act": "give"})
    assert (await document(visitor, second))["thickness"] == 7.25
    assert (await document(visitor, third))["thickness"] == 3


async def test_a_copy_has_everything_but_what_was_said_of_its_original(visitor: httpx.AsyncClient) -> None:
    first, *_ = await project(visitor, PANELS[0] | {"questions": [{"mark": "Q1", "text": "Higher?"}]}, PANELS[1])
    answer = await visitor.post(f"/panels/{first}/same/copy", data={"mark": "N9"})
    assert answer.status_code == 303
    copied = await document(visitor, answer.headers["location"].rpartition("/")[2])
    assert copied == PANELS[0] | {"mark": "N9"}


@pytest.mark.parametrize("mark", ["", "N2", "x" * 200])
async def test_a_copy_needs_a_mark_of_its_own(visitor: httpx.AsyncClient, mark: str) -> None:
    first, *_ = await project(visitor, *PANELS)
    answer = await visitor.post(f"/panels/{first}/same/copy", data={"mark": mark})
    assert answer.status_code == 422
    assert "mark" in answer.text
