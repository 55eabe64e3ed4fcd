"""Panels of a wall stand side by side, a joint between, each on its base."""

from dataclasses import replace

import pytest
from drawings import laid
from svg_paths import bounds, rings_of

from app.brickwork.layout import Layout, lay_out
from app.drawing.lettering import lettered
from app.drawing.marks import Text
from app.drawing.svg import svg_document, svg_layers
from app.drawing.wall import panel_places, wall_elevation
from app.lengths import Length
from app.panel.project import Wall


def wall(*names: str) -> tuple[list[Layout], Wall]:
    layouts = [laid(name) for name in names]
    return layouts, Wall("North", tuple(layout.panel for layout in layouts))


def test_panels_stand_one_joint_apart() -> None:
    layouts, north = wall("door", "plain", "gable")
    assert panel_places(layouts, north) == [(0.0, 0.0), (132.75, 0.0), (132.75 + 60.75, 0.0)]
    drawing = wall_elevation(layouts, north)
    grounds = rings_of(svg_layers(drawing)["concrete"], "concrete")
    assert [round(bounds(ring)[0], 4) for ring in grounds] == [0, 132.75, 193.5]
    assert drawing.width == pytest.approx(253.5)
    assert drawing.height == 96


def test_every_brick_of_every_panel_is_there() -> None:
    layouts, north = wall("door", "b1")
    found = rings_of(svg_layers(wall_elevation(layouts, north))["brick"], "whole")
    assert len(found) == layouts[0].whole + layouts[1].whole


def test_a_panel_stands_on_its_own_base() -> None:

    raised = lay_out(replace(laid("plain").panel, base=Length.from_inches(24)))
    layouts = [laid("plain"), raised]
    north = Wall("North", tuple(layout.panel for layout in layouts))
    assert [y for _, y in panel_places(layouts, north)] == [0.0, 24.0]
    assert wall_elevation(layouts, north).height == 68


def test_a_wall_without_panels_is_an_empty_drawing() -> None:
    drawing = wall_elevation([], Wall("North", ()))
    assert (drawing.width, drawing.height) == (0.0, 0.0)
    assert "Wall North" in svg_document(drawing)


def test_the_tape_runs_from_the_first_panel_and_the_pole_counts_its_courses() -> None:
    layouts, north = wall("door", "plain", "gable")
    layers = {layer.name: layer for layer in wall_elevation(layouts, north).layers}
    figures = [mark.text for mark in layers["tape"].marks if isinstance(mark, Text)]
    assert figures[0] == '0"'
    assert figures[-1] == lettered(132 + 0.75 + 60 + 0.75 + 60, "in")
    numbers = {mark.text: mark.y for mark in layers["pole"].marks if isinstance(mark, Text)}
    assert [int(number) * 8 / 3 for number in numbers] == pytest.approx(list(numbers.values()))
    assert len(numbers) > 2


def test_without_strips_there_is_neither() -> None:
    layouts, north = wall("door")
    names = [layer.name for layer in wall_elevation(layouts, north, with_strips=False).layers]
    assert "pole" not in names
    assert "tape" not in names
