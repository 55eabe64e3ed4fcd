"""The demonstration projects are test data too: sound, laid out as intended, and equal to the plain loop."""

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from laws import assert_laws
from loop import assert_equal_to_loop
from shapes import case, project

from app.brickwork.layout import Layout, lay_out
from app.brickwork.own_bonds import known_bonds
from app.brickwork.returns import returns
from app.documents.project_file import sizes_of
from app.lengths import Length
from app.panel.project import Project
from app.panel.values import Panel
from app.workflow.compute import Computed, compute

DEMO = Path(__file__).parents[1] / "demo_data"
FILES = ("casting_yard.json", "metric_hall.json", "weir_works.json")

PROJECTS = {name: project(DEMO / name) for name in FILES}
WORKS = PROJECTS["weir_works.json"]
PANELS = {panel.mark: panel for file in PROJECTS.values() for wall in file.walls for panel in wall.panels}

NO_SMALL_PIECE = ("N1", "N2", "N5", "E1", "E3", "S1", "S2", "C1")
"""Panels drawn on the module."""


@pytest.mark.parametrize("mark", [mark for mark in PANELS if mark not in ("B1", "L4", "L5")])
def test_a_demo_panel_equals_the_loop_and_keeps_the_laws(mark: str) -> None:
    layout = assert_equal_to_loop(PANELS[mark])
    assert_laws(layout)
    assert layout.whole > 1500


def test_the_bench_panel_is_in_the_demo_as_it_is() -> None:
    assert PANELS["B1"] == case("b1")
    layout = lay_out(PANELS["B1"])
    assert (layout.whole, len(layout.trims), layout.small) == (5144, 785, 177)


@pytest.mark.parametrize("name", FILES)
def test_every_panel_uses_a_size_of_its_project(name: str) -> None:
    sizes = sizes_of(PROJECTS[name])
    assert all(panel.field.size in sizes for wall in PROJECTS[name].walls for panel in wall.panels)


@pytest.mark.parametrize("mark", NO_SMALL_PIECE)
def test_a_panel_drawn_on_the_module_has_no_small_piece(mark: str) -> None:
    layout = lay_out(PANELS[mark])
    assert layout.small == 0
    assert len(layout.left_out.unit) == 0


def test_windows_off_the_module_make_small_pieces() -> None:
    assert lay_out(PANELS["N3"]).small > 50


@pytest.mark.parametrize("name", FILES[:2])
def test_courses_run_through_from_panel_to_panel_of_a_wall(name: str) -> None:
    """Panels of one wall have their first course at one height above its datum."""
    for wall in PROJECTS[name].walls:
        feet = [panel.base.inches + lay_out(panel).courses[0].bottom for panel in wall.panels]
        assert feet == pytest.approx([feet[0]] * len(feet))


def test_the_yard_has_12_panels_on_several_walls_and_every_condition() -> None:
    yard = PROJECTS["casting_yard.json"]
    panels = [panel for wall in yard.walls for panel in wall.panels]
    assert (len(panels), len(yard.walls)) == (12, 3)
    bonds = {panel.field.bond for panel in panels} | {zone.work.bond for panel in panels for zone in panel.zones}
    assert bonds >= {"running", "stack", "soldier", "flemish", "common-6"}
    assert _shapes(panels) >= {"Rect", "Circle", "Polygon", "Arch"}
    assert any(panel.strips for panel in panels)
    assert any(panel.plates for panel in panels)
    assert any(len(panel.outline) == 5 for panel in panels)
    assert any(len(panel.outline) == 6 for panel in panels)


def _shapes(panels: list[Panel]) -> set[str]:
    return {type(opening.shape).__name__ for panel in panels for opening in panel.openings}


def test_a_good_share_of_the_lengths_is_kept_as_typed() -> None:
    typed = [length.typed for length in _outline_lengths(PROJECTS["casting_yard.json"])]
    assert sum(isinstance(text, str) for text in typed) > len(typed) / 3


def _outline_lengths(file: Project) -> list:
    return [length for wall in file.walls for panel in wall.panels for point in panel.outline for length in point]


def test_the_second_project_is_metric() -> None:
    hall = PROJECTS["metric_hall.json"]
    assert (hall.length_unit, hall.temperature_unit) == ("mm", "C")
    assert {panel.field.size for wall in hall.walls for panel in wall.panels} == {"uk 215x65"}


def _computed(mark: str) -> Computed:
    """A panel of the works as it stands in its wall."""
    return next(compute(WORKS, wall, panel) for wall in WORKS.walls for panel in wall.panels if panel.mark == mark)


def _codes(mark: str) -> set[str]:
    return {finding.code for finding in _computed(mark).findings}


def test_there_are_at_least_20_panels_each_with_a_mark_of_its_own() -> None:
    count = sum(len(wall.panels) for file in PROJECTS.values() for wall in file.walls)
    assert len(PANELS) == count >= 20


def test_a_panel_with_closers_and_one_in_the_projects_own_bond_keep_the_laws() -> None:
    """The loop knows neither."""
    for mark in ("L4", "L5"):
        assert_laws(lay_out(PANELS[mark], bonds=known_bonds(WORKS)))


def test_the_works_show_every_pattern_edge_and_corner() -> None:
    panels = [panel for wall in WORKS.walls for panel in wall.panels]
    zones = {zone.work.bond for panel in panels for zone in panel.zones}
    assert zones == {"soldier", "stack", "basket-weave-3", "sailor", "herringbone-45"}
    assert {panel.field.bond for panel in panels} == {"running", "paired courses"}
    assert {side.treatment for panel in panels for opening in panel.openings for side in opening.sides} == {
        *("flush", "return")
    }
    assert [panel.mark for panel in panels if panel.released] == ["L3"]
    assert [panel.mark for panel in panels if panel.fit.closers] == ["L4"]
    assert {panel.base.inches for panel in panels} == {0.0, 8.0, 24.0}


@pytest.mark.parametrize(("mark", "hands"), [("R1", ["left"]), ("R5", ["right"]), ("L1", ["right", "left"])])
def test_long_and_short_legs_take_turns_at_every_return_and_no_corner_unit_is_cut(mark: str, hands: list[str]) -> None:
    found = returns(_computed(mark).layout)
    assert [one.hand for one in found] == hands
    for one in found:
        legs = [leg.face_leg for leg in one.legs]
        assert not one.cut
        assert not one.bare
        assert {round(leg, 6) for leg in legs} == {7.625, 3.625}
        assert all(low != pytest.approx(high) for low, high in pairwise(legs))


def test_course_lines_of_the_river_wall_are_one_line_from_panel_to_panel() -> None:
    """Also of the panel whose foot stands 2 ft higher."""
    feet = [{_course(elevation) for elevation in _elevations(_computed(panel.mark).layout)} for panel in _river()]
    assert feet[3] < feet[0]
    assert feet[0] == feet[1] == feet[2] == feet[4]


def _river() -> tuple[Panel, ...]:
    return WORKS.walls[0].panels


def _elevations(layout: Layout) -> list[float]:
    return [layout.panel.base.inches + course.bottom for course in layout.courses]


def _course(elevation: float) -> float:
    return round(elevation, 5)


@pytest.mark.parametrize("panel", _river(), ids=lambda panel: panel.mark)
def test_heads_of_the_river_wall_course_out(panel: Panel) -> None:
    """Brick starts a margin of 3/8 in. over a head; nothing is ripped along it."""
    layout = _computed(panel.mark).layout
    for opening in panel.openings:
        head = opening.shape.y.inches + opening.shape.height.inches
        assert min(abs(course.bottom - head - 0.375) for course in layout.courses) < 1e-6


def test_the_works_read_like_a_job_that_was_looked_at() -> None:
    """Few findings: most panels have none open, and what is accepted is found."""
    for panel in (panel for wall in WORKS.walls for panel in wall.panels):
        found = _computed(panel.mark).findings
        assert len(found) <= 3
        assert {(one.code, one.about) for one in panel.accepted} <= {(one.code, one.about) for one in found}
        assert not any(one.severity == "error" for one in found)
    assert [mark for mark in ("R1", "L1", "L2", "L5") if _codes(mark)] == []
    assert _codes("L3") == {"off-neighbour"}
    assert _codes("L4") == {"lap", "unsymmetrical-pier"}


def test_the_door_asked_about_meets_whole_and_half_brick() -> None:
    """L4, 11 ft door: with the jambs that the question names no piece is small and no closer is laid."""
    (question,) = PANELS["L4"].questions
    assert "11'-3 5/8\"" in question.text
    door = PANELS["L4"].openings[0]
    x, width = Length.from_number(64, "in"), Length.from_number(135.625, "in")
    asked = replace(PANELS["L4"], openings=(replace(door, shape=replace(door.shape, x=x, width=width)),))
    plain = replace(asked, fit=replace(asked.fit, closers=False))
    for panel in (asked, plain):
        assert lay_out(panel).small == 0
    assert lay_out(asked).by_kind() == lay_out(plain).by_kind()
    assert lay_out(replace(PANELS["L4"], fit=plain.fit)).small > 0
