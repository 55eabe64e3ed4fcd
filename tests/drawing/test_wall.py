"""Panels of a wall stand side by side, a joint between, each on its base."""

from dataclasses import replace

import pytest
import shapely
from drawings import laid
from shapes import example
from svg_paths import bounds, rings_of

from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.brickwork.wall import place_in
from app.drawing.controls import off_course, up
from app.drawing.lettering import lettered
from app.drawing.marks import Lines, Text
from app.drawing.svg import svg_document, svg_layers
from app.drawing.wall import panel_places, wall_elevation
from app.drawing.wall_lines import course_feet, meetings
from app.lengths import Length
from app.panel.project import Wall
from app.panel.shapes import Rect
from app.panel.values import Opening, Panel


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
    # The door's panel has an origin of its own: the lines are those of the plain one, a 3/8 in. margin up.
    numbers = {mark.text: mark.y for mark in layers["pole"].marks if isinstance(mark, Text)}
    assert [0.375 + int(number) * 8 / 3 for number in numbers] == pytest.approx(list(numbers.values()))
    assert len(numbers) > 2


def _standing(*panels: Panel, datum: float = 0.0) -> tuple[list[Layout], Wall]:
    """Panels laid out in their wall, as a project's are."""
    wall = Wall("North", panels, datum=Length.from_inches(datum))
    return [lay_out(panel, place=place_in(wall, panel, CATALOGUE)) for panel in panels], wall


def _named(mark: str, **more: object) -> Panel:
    return replace(example("plain"), mark=mark, **more)  # type: ignore[arg-type]


def _numbers(layouts: list[Layout], wall: Wall) -> dict[str, float]:
    layers = {layer.name: layer for layer in wall_elevation(layouts, wall).layers}
    return {mark.text: mark.y for mark in layers["pole"].marks if isinstance(mark, Text)}


def test_the_pole_shows_the_walls_lines_when_the_first_panel_is_released_and_stands_lower() -> None:
    low = _named("A", released=True, base=Length.from_inches(-10))
    layouts, wall = _standing(low, _named("B"), _named("C", base=Length.from_inches(5)), datum=1.5)
    # Over the lowest base: 10 in. up to elevation 0, the datum 1-1/2, the margin 3/8; then 8/3 in. a course.
    for number, y in _numbers(layouts, wall).items():
        assert y == pytest.approx(10 + 1.5 + 0.375 + int(number) * 8 / 3)
    for layout, (_, base) in zip(layouts[1:], panel_places(layouts, wall)[1:], strict=True):
        feet = course_feet(layout, base, 60)
        assert feet == pytest.approx(course_feet(layouts[1], 10, 60))
        assert all(feet[course.course] == pytest.approx(course.bottom + base) for course in layout.courses)


def test_the_datum_moves_the_pole() -> None:
    panels = _named("A"), _named("B")
    low, high = (_numbers(*_standing(*panels, datum=datum)) for datum in (0.0, 1.0))
    shared = low.keys() & high.keys()
    assert shared
    assert {number: high[number] - low[number] for number in shared} == pytest.approx(dict.fromkeys(shared, 1.0))


def test_what_sets_a_panel_apart_stands_under_it() -> None:
    origin = (Length.from_inches(1), Length.from_inches(1))
    own = replace(example("plain").field, origin=origin)
    layouts, wall = _standing(
        _named("A"), _named("B", released=True, base=Length.from_inches(13.5)), _named("C", field=own)
    )
    words = {layer.name: layer for layer in wall_elevation(layouts, wall).layers}["words"]
    assert [mark.text for mark in words.marks if isinstance(mark, Text)] == [
        "A", "B", "released", f"base {lettered(13.5)}", "C", "own origin",
    ]  # fmt: skip


def test_moving_the_datum_by_a_meeting_brings_a_course_to_the_head_or_sill_it_names() -> None:
    windows = (Opening("W1", Rect(*(Length.from_inches(at) for at in (12, 9.3, 20, 17.9)))),)
    panels = _named("A", openings=windows), _named("B", released=True, openings=windows)
    found = meetings(_standing(*panels)[0])
    assert {words for one in found for words in one.words} == {"head W1 of A", "sill W1 of A"}
    for one in found:
        assert 0 <= one.by < one.gauge
        layouts, _ = _standing(*panels, datum=one.by)
        offs = {f"{line.words} of A": off_course(layouts[0], line) for line in up(panels[0])}
        assert [offs[words] for words in one.words] == [0.0] * len(one.words)


def test_numbered_courses_alone_stop_at_openings_and_edges() -> None:
    windows = (Opening("W1", Rect(*(Length.from_inches(at) for at in (12, 8, 20, 16)))),)
    layouts, wall = _standing(_named("A", openings=windows))
    (lines,) = wall_elevation(layouts, wall, layers=("course_lines",), with_strips=False).layers[0].marks
    assert isinstance(lines, Lines)
    drawn = shapely.union_all([shapely.LineString(ends) for ends in lines.points.reshape(-1, 2, 2)])
    assert drawn.length > 0
    assert drawn.difference(layouts[0].field.buffer(1e-6)).is_empty
    through = sum(layouts[0].field.intersection(shapely.LineString([(0, y), (60, y)])).length
                  for y in {float(y) for y in lines.points[:, 1]})  # fmt: skip
    assert drawn.length == pytest.approx(through)


def test_without_strips_there_is_neither() -> None:
    layouts, north = wall("door")
    names = [layer.name for layer in wall_elevation(layouts, north, with_strips=False).layers]
    assert "pole" not in names
    assert "tape" not in names
