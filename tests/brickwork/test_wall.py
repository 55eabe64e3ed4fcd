"""Courses and bond run on from panel to panel along a wall."""

import json
from pathlib import Path

import numpy as np
import pytest

from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.brickwork.wall import panels_along, place_in
from app.documents.project_file import read_project
from app.panel.project import Wall

NEAR = 1e-6
WIDTHS = (241.0, 187.375, 300.0, 123.4375, 240.25, 200.0)
BASES = (0.0, 0.0, 13.5, 0.0, -7.25, 40.0)


def _panel(k: int, width: float, base: float, **more: object) -> dict[str, object]:
    outline = [[0, 0], [width, 0], [width, 160], [0, 160]]
    field = {"size": "modular", "bond": "running"}
    return {"mark": f"P{k}", "thickness": 7.25, "base": base, "outline": outline, "field": field} | more


def _wall(bond: str = "running", **more: object) -> Wall:
    panels = [_panel(k, width, base, **more) for k, (width, base) in enumerate(zip(WIDTHS, BASES, strict=True))]
    for panel in panels:
        panel["field"] = {"size": "modular", "bond": bond}
    wall = {"mark": "W", "datum": 1.5, "joint": 0.75, "panels": panels}
    document = {"format": "castcourse-project/1", "name": "x", "length_unit": "in", "temperature_unit": "F"}
    return read_project(document | {"walls": [wall]}).walls[0]


def _laid(wall: Wall) -> list[tuple[Layout, float]]:
    return [
        (lay_out(panel, place=place_in(wall, panel, CATALOGUE)), left)  # one line a panel
        for panel, left in panels_along(wall)
    ]


def _off_grid(values: np.ndarray, step: float) -> float:
    part = np.mod(values - values[0], step)
    return float(np.minimum(part, step - part).max())


@pytest.mark.parametrize("bond", ["running", "flemish", "english", "common-6", "third-alternating"])
def test_course_lines_and_head_joints_run_on_through_six_panels_with_three_quarter_inch_joints(bond: str) -> None:
    laid = _laid(_wall(bond))
    whole = [~layout.units.is_trimmed for layout, _ in laid]
    bottoms = [layout.units.y[w] + layout.panel.base.inches for (layout, _), w in zip(laid, whole, strict=True)]
    assert _off_grid(np.concatenate(bottoms), 8 / 3) < NEAR
    first = laid[0][0]
    for cell in range(len(first.bond.cells)):
        starts = []
        for (layout, left), w in zip(laid, whole, strict=True):
            same = w & (layout.units.cell == cell) & (layout.units.j == layout.units.j)
            up = layout.units.j[same] * layout.regions[0].bond.up[0].inches(layout.size)
            starts.append(layout.units.x[same] + left - up)
        assert _off_grid(np.concatenate(starts), first.bond.across[0].inches(first.size)) < NEAR


def test_the_first_panel_keeps_the_corner_of_its_own_field_when_it_stands_on_the_datum() -> None:
    wall = _wall()
    on_datum = wall.datum.inches
    first = wall.panels[0]
    assert place_in(wall, first, CATALOGUE).origin == pytest.approx((0.375, 0.375 + on_datum))


def test_a_released_panel_and_one_with_its_own_origin_stand_alone() -> None:
    released = _wall(released=True)
    assert place_in(released, released.panels[2], CATALOGUE).origin is None


def test_moving_the_datum_moves_every_course_alike() -> None:
    from dataclasses import replace

    from app.lengths import Length

    wall = _wall()
    moved = replace(wall, datum=Length(wall.datum.nm + 25_400_000))
    for one, other in zip(_laid(wall), _laid(moved), strict=True):
        shift = other[0].origin[1] - one[0].origin[1]
        assert shift == pytest.approx(1.0)


def test_the_demonstration_walls_run_on_too() -> None:
    text = Path(__file__).parents[2].joinpath("demo_data", "casting_yard.json").read_text("utf-8")
    project = read_project(json.loads(text))
    for wall in project.walls:
        heights = [
            place.origin[1] + panel.base.inches
            for panel in wall.panels
            if (place := place_in(wall, panel, CATALOGUE)).origin is not None
        ]
        assert not heights or max(heights) - min(heights) < NEAR


def test_a_soldier_panel_of_a_wall_whose_bed_joints_give_keeps_its_own_joints() -> None:
    """A soldier's joint is not one of the courses' joints, so it must not take up what three of them give."""
    opening = {"mark": "W1", "rect": [36, 37, 60.5, 50.3]}
    panels = [
        _panel(0, 200.0, 0.0, fit={"courses": True}, openings=[opening]),
        _panel(1, 120.0, 0.0) | {"field": {"size": "modular", "bond": "soldier"}},
        _panel(2, 120.0, 0.0),
    ]
    document = {"format": "castcourse-project/1", "name": "x", "length_unit": "in", "temperature_unit": "F"}
    wall = read_project(document | {"walls": [{"mark": "W", "panels": panels}]}).walls[0]
    fitted, soldiers, plain = (layout for layout, _ in _laid(wall))
    assert not fitted.lines.up.is_identity
    assert soldiers.lines.up.is_identity
    assert plain.lines.up == fitted.lines.up
