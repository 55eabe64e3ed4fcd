"""What the editor says of an edit that is refused, and by how much one that is made changes the counts."""

import re
from dataclasses import replace
from typing import Any

import httpx
import pytest
from scenario import PROJECT
from shapes import rectangle

from app.lengths import Length
from app.web.editor_edges import edge_words

pytestmark = pytest.mark.anyio

PART = {"hx-request": "true"}
PLAIN: dict[str, Any] = {
    "mark": "P",
    "thickness": 7.25,
    "outline": [[0, 0], [240, 0], [240, 120], [0, 120]],
    "edges": [{"edge": 1, "treatment": "flush"}],
    "openings": [{"mark": "W1", "use": "window", "rect": [40, 40, 40, 40]}],
    "field": {"size": "modular", "bond": "running"},
}


@pytest.fixture
async def panel(visitor: httpx.AsyncClient) -> str:
    file = PROJECT | {"walls": [PROJECT["walls"][0] | {"panels": [PLAIN]}]}
    answer = await visitor.post("/api/projects", json=file)
    assert answer.status_code == 201, answer.text
    made: str = answer.json()["walls"][0]["panels"][0]
    return made


async def posted(client: httpx.AsyncClient, panel: str, base: int, **values: str) -> httpx.Response:
    form = values | {"base_revision": str(base)}
    return await client.post(f"/panels/{panel}/edits", data=form, headers=PART)


async def test_faults_name_the_edge_and_the_side(visitor: httpx.AsyncClient, panel: str) -> None:
    edge = await posted(visitor, panel, 1, edit="set_edge", edge="3", treatment="return", depth="9")
    assert edge.status_code == 422
    assert "<li>Edge 3, depth: found " in edge.text
    side = await posted(visitor, panel, 1, edit="set_side", opening="W1", side="right", treatment="return", depth="9")
    assert side.status_code == 422
    assert "<li>Opening W1, right, depth: found " in side.text


async def test_other_paths_stay_as_they_are(visitor: httpx.AsyncClient, panel: str) -> None:
    refused = await posted(visitor, panel, 1, edit="set_margin", margin="soon")
    assert "<li>margin: found " in refused.text


async def test_counts_say_by_how_much_an_edit_changed_them(visitor: httpx.AsyncClient, panel: str) -> None:
    async def trimmed() -> int:
        counts = (await visitor.get(f"/api/panels/{panel}/layout")).json()["counts"]
        return int(counts["trimmed"])

    before = await trimmed()
    answer = await posted(visitor, panel, 1, edit="remove_opening", opening="W1")
    fewer = before - await trimmed()
    assert fewer > 0
    assert f'data-change="\u2212{fewer}"' in answer.text
    assert f"{fewer} trimmed fewer" in answer.text
    back = await visitor.post(f"/panels/{panel}/undo", data={"base_revision": "2"}, headers=PART)
    assert f'data-change="+{fewer}"' in back.text
    assert f"{fewer} trimmed more" in back.text
    assert "data-change" not in (await visitor.get(f"/panels/{panel}")).text


async def test_an_answer_leaves_no_text_between_its_parts(visitor: httpx.AsyncClient, panel: str) -> None:
    answer = await posted(visitor, panel, 1, edit="remove_opening", opening="W1")
    assert answer.text == answer.text.strip()
    parts = answer.text.partition("</svg></template>")[2]
    assert parts.count("hx-swap-oob") == 7
    assert not re.search(r"\s<\w+ [^>]*hx-swap-oob", parts)


@pytest.mark.parametrize("is_reversed", [False, True])
def test_edges_are_called_by_where_they_lie_whichever_way_the_outline_runs(is_reversed: bool) -> None:
    corners = [(0, 0), (10, 0), (10, 6), (8, 8), (0, 8)]
    words = ["lower", "right", "slanted", "top", "left"]
    if is_reversed:
        corners, words = corners[::-1], [*words[:-1][::-1], words[-1]]
    outline = tuple((Length.from_inches(x), Length.from_inches(y)) for x, y in corners)
    panel = replace(rectangle(10, 8), outline=outline)
    assert [edge_words(panel, k) for k in range(5)] == [f"edge {k}, {where}" for k, where in enumerate(words)]
