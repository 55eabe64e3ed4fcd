"""Every piece of a layout is in the drawing once, where it is."""

import gzip
import time

import numpy as np
import pytest
from drawings import NAMES, drawn, laid
from svg_paths import Ring, bounds, rings, rings_of

from app.brickwork.layout import whole_outlines
from app.drawing.marks import Areas, Boxes
from app.drawing.paths import areas_path, boxes_path
from app.drawing.styles import CUT_STYLES
from app.drawing.svg import svg_layers
from app.drawing.views.elevation import elevation

CLOSE = 1e-3
"""Inches: a sixteenth of the 1/64 in. that a tape shows."""


def sorted_boxes(found: list[Ring]) -> np.ndarray:
    boxes = np.array([bounds(ring) for ring in found]).reshape(-1, 4)
    return boxes[np.lexsort(np.round(boxes, 2).T)]


@pytest.mark.parametrize("name", NAMES)
def test_every_whole_unit_is_one_subpath_where_the_layout_has_it(name: str) -> None:
    layout = laid(name)
    units, height = layout.units, layout.panel.height
    whole = ~units.is_trimmed
    found = sorted_boxes(rings_of(svg_layers(drawn("elevation", name))["brick"], "whole"))
    left, foot, wide, high = (side[whole] for side in (units.x, units.y, units.width, units.height))
    wanted = np.column_stack([left, height - foot - high, wide, high])
    assert found.shape == wanted.shape
    assert np.abs(found - wanted[np.lexsort(np.round(wanted, 2).T)]).max(initial=0) < CLOSE


@pytest.mark.parametrize("name", NAMES)
def test_every_trim_is_one_subpath_of_its_cut_class_with_its_corners(name: str) -> None:
    """But the short leg of a corner unit, a half bat of 3 5/8 in. at a return edge: it is no cut."""
    layout = laid(name)
    markup = svg_layers(drawn("elevation", name))["cuts"]
    for cut, style in CUT_STYLES.items():
        rows = [(length, outline) for _, found_cut, length, *_, outline in layout.trim_rows() if found_cut == cut]
        wanted = [outline for length, outline in rows if not (cut == "length" and is_short_leg(name, length, outline))]
        found = rings_of(markup, style)
        assert len(found) == len(wanted)
        for ring, outline in zip(found, wanted, strict=True):
            corners = np.column_stack([outline[:, 0], layout.panel.height - outline[:, 1]])
            assert np.abs(np.array(ring) - corners).max() < CLOSE


def is_short_leg(name: str, length: float, outline: np.ndarray) -> bool:
    """The example "edges" has a return at its right edge, x = 60 in."""
    return name == "edges" and abs(length - 3.625) < CLOSE and abs(outline[:, 0].max() - 60) < CLOSE


@pytest.mark.parametrize("name", ["b3", "herringbone panel"])
def test_a_turned_brick_keeps_its_four_corners(name: str) -> None:
    layout = laid(name)
    found = rings_of(svg_layers(drawn("elevation", name))["brick"], "whole")
    corners = np.concatenate([whole_outlines(layout, zone) for zone in range(len(layout.regions))])
    corners[:, :, 1] = layout.panel.height - corners[:, :, 1]
    wanted = np.sort(corners.reshape(-1, 2).view(complex).ravel())
    drawn_corners = np.sort(np.array([x + 1j * y for ring in found for x, y in ring]))
    assert len(drawn_corners) == len(wanted)
    assert np.abs(np.sort(drawn_corners.real) - np.sort(wanted.real)).max() < CLOSE
    assert np.abs(np.sort(drawn_corners.imag) - np.sort(wanted.imag)).max() < CLOSE


def test_small_pieces_are_outlined_and_carry_a_triangle_each() -> None:
    markup = svg_layers(drawn("elevation", "b1"))["small"]
    assert len(rings_of(markup, "small")) == laid("b1").small == 177
    assert [len(ring) for ring in rings_of(markup, "small mark")] == [3] * 177


def test_steps_of_a_third_of_an_inch_do_not_add_up() -> None:
    x = np.arange(300) * (8 / 3)
    data = boxes_path(Boxes(x, np.zeros(300), np.full(300, 2.0), np.full(300, 1.0), "whole"), 1.0)
    assert np.abs(np.array([bounds(ring)[0] for ring in rings(data)]) - x).max() <= 0.5e-4 + 1e-9


def test_a_course_is_one_move_and_then_equal_steps() -> None:
    row = Boxes(np.array([0.0, 8, 16]), np.zeros(3), np.full(3, 7.625), np.full(3, 2.25), "whole")
    box = "h7.625v2.25h-7.625z"
    assert boxes_path(row, 10.0) == f"M0 7.75{box}m8 0{box}m8 0{box}"


def test_no_shapes_give_no_path() -> None:
    none, flat = np.zeros(0), np.zeros((0, 2))
    assert boxes_path(Boxes(none, none, none, none, "whole"), 1.0) == ""
    assert areas_path(Areas(flat, np.zeros(0, dtype=np.int64), "whole"), 1.0) == ""


@pytest.mark.quiet
def test_all_layers_of_the_reference_panel_are_small_on_the_wire_and_soon_made() -> None:
    layout = laid("b1")
    spent = []
    for _ in range(10):
        start = time.process_time()
        layers = svg_layers(elevation(layout))
        spent.append(time.process_time() - start)
    assert len(gzip.compress("".join(layers.values()).encode(), 5)) < 20_000
    assert min(spent) < 0.040


def test_bricks_are_one_element_a_region() -> None:
    assert svg_layers(drawn("elevation", "b1"))["brick"].count("<path") == 1
    assert svg_layers(drawn("elevation", "soldier band"))["brick"].count("<path") == 2
