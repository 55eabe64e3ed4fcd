"""The demonstration projects are test data too: sound, laid out as intended, and equal to the plain loop."""

from pathlib import Path

import pytest
from laws import assert_laws
from loop import assert_equal_to_loop
from shapes import case, project

from app.brickwork.layout import lay_out
from app.documents.project_file import sizes_of
from app.panel.project import Project
from app.panel.values import Panel

DEMO = Path(__file__).parents[1] / "demo_data"
FILES = ("casting_yard.json", "metric_hall.json")

PROJECTS = {name: project(DEMO / name) for name in FILES}
PANELS = {panel.mark: panel for file in PROJECTS.values() for wall in file.walls for panel in wall.panels}

NO_SMALL_PIECE = ("N1", "N2", "N5", "E1", "E3", "S1", "S2", "C1")
"""Panels drawn on the module."""


@pytest.mark.parametrize("mark", [mark for mark in PANELS if mark != "B1"])
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


@pytest.mark.parametrize("name", FILES)
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
