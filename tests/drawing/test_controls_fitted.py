"""The pole and the fit agree on which heads and sills are met, with joints that give."""

import json
from pathlib import Path

import pytest

from app.brickwork.layout import lay_out
from app.brickwork.own_bonds import known_bonds
from app.brickwork.wall import place_in
from app.documents.project_file import read_project, sizes_of
from app.drawing.controls import off_course, up

WORKS = read_project(
    json.loads((Path(__file__).parents[2] / "demo_data" / "weir_works.json").read_text(encoding="utf-8"))
)
RIVER = next(wall for wall in WORKS.walls if any(panel.fit.courses for panel in wall.panels))


@pytest.mark.parametrize("panel", RIVER.panels, ids=lambda panel: panel.mark)
def test_a_head_or_sill_that_the_fit_meets_is_no_miss_on_the_pole(panel) -> None:
    sizes, bonds = sizes_of(WORKS), known_bonds(WORKS)
    layout = lay_out(panel, sizes, bonds, place_in(RIVER, panel, sizes, 1 / 32, bonds))
    met = {outcome.control.edge for outcome in layout.states.vertical if outcome.is_met}
    lines = [line for line in up(panel) if line.what in ("head", "sill") and line.at in met]
    assert [off_course(layout, line) for line in lines] == [0.0] * len(lines)
