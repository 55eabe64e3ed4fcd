"""Finishing edge pieces: by hand on plain faces, and found again by shapely on random ones."""

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from laws import brick_outlines
from random_panels import Document, panels
from shapes import case, example, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.liner.edge_pieces import edge_pieces
from app.panel.geometry import openings_polygon, outline_polygon, shape_polygon

RANDOM = settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
HAIR = 1e-3


def margined(width: float, height: float, bond: str = "stack", **more: object) -> Layout:
    """A face with a margin of 3/8 in. around a field that starts a cell in its corner."""
    return lay_out(
        rectangle(
            width + 0.75,
            height + 0.75,
            bond,
            margin=0.375,
            **{"field": {"size": "modular", "bond": bond, "origin": [0.375, 0.375]}, **more},
        )
    )


def test_a_field_that_ends_in_brick_has_edge_pieces_all_round() -> None:
    """
    Stack bond, 6 bricks and 5 joints of 48 in. less a joint: 47-5/8 by 23-7/12 in., brick at all four sides.
    """
    found = edge_pieces(margined(47.625, 24 - 5 / 12))
    assert found.by_kind == {
        "upright": pytest.approx(2 * (24 - 5 / 12), abs=1e-5),
        "level": pytest.approx(2 * 47.625, abs=1e-5),
        "skew": 0,
    }
    assert len(found.runs) == 4
    assert found.length == pytest.approx(2 * (24 - 5 / 12 + 47.625), abs=1e-5)


def test_where_the_field_ends_in_a_joint_there_is_none() -> None:
    """A field of whole cells ends in a joint at its right and top: brick only at its left and foot."""
    found = edge_pieces(margined(48, 24))
    assert found.by_kind == {
        "upright": pytest.approx(24 - 5 / 12, abs=1e-5),
        "level": pytest.approx(47.625, abs=1e-5),
        "skew": 0,
    }
    assert [run.start[0] for run in found.runs if run.kind == "upright"] == pytest.approx([0.375])


def test_in_running_bond_every_other_course_ends_in_a_joint() -> None:
    """
    At 48 in. courses 0, 2 … end in a joint and courses 1, 3 … in half a brick: the right side has one piece a course.
    """
    found = edge_pieces(margined(48, 24, "running"))
    right = [run for run in found.runs if run.kind == "upright" and run.start[0] > 24]
    assert [run.length for run in right] == pytest.approx([2.25] * 4, abs=1e-5)


@pytest.mark.parametrize("name", ["flush", "b1"])
def test_a_flush_face_has_a_form_and_no_edge_piece(name: str) -> None:
    layout = lay_out(case(name) if name == "b1" else example(name))
    assert edge_pieces(layout).runs == ()


def test_a_strip_and_a_plate_end_the_course_themselves() -> None:
    with_strip = edge_pieces(
        lay_out(rectangle(48, 24, strips=[{"mark": "R", "line": [[0, 12], [48, 12]], "width": 1}]))
    )
    with_plate = edge_pieces(lay_out(rectangle(48, 24, plates=[{"mark": "P", "rect": [10, 8, 8, 8]}])))
    assert with_strip.length == with_plate.length == 0


def test_an_opening_with_a_margin_has_them_round_it() -> None:
    """
    A flush face; an opening of 12 x 8 in. with 1 in. of concrete kept around it: 14 x 10 in. cut through the brick.
    """
    sides = [{"side": side, "treatment": "margin", "margin": 1} for side in ("left", "right", "sill", "head")]
    found = edge_pieces(lay_out(rectangle(48, 24, openings=[{"mark": "W", "rect": [18, 8, 12, 8], "sides": sides}])))
    assert found.by_kind["level"] == pytest.approx(28, abs=0.8), "but for a joint where a side meets one"
    assert 0 < found.by_kind["upright"] <= 20


def test_a_slope_has_skew_ones() -> None:
    found = edge_pieces(lay_out(example("gable")))
    assert found.by_kind["skew"] > 40
    for run in found.runs:
        if run.kind == "skew":
            assert run.length == pytest.approx(np.hypot(*np.subtract(run.end, run.start)))


@RANDOM
@given(panels())
def test_they_are_where_brick_meets_the_boundary_and_concrete_is_beyond(document: Document) -> None:
    """
    The boundary within a hair of brick and of plain concrete, without the joints that runs go across: never longer than
    the runs, and the runs never leave the boundary or the joints beside it.
    """
    layout = lay_out(read_panel(document))
    found = edge_pieces(layout)
    runs = shapely.MultiLineString([(run.start, run.end) for run in found.runs])
    assert runs.difference(shapely.buffer(layout.field.boundary, HAIR)).length < HAIR
    if not len(layout.units):
        assert found.runs == ()
        return
    brick = shapely.union_all(brick_outlines(layout)).buffer(HAIR)
    margin = margin_of(layout).buffer(2 * HAIR)
    expected = layout.field.boundary.intersection(brick).intersection(margin)
    missed = expected.difference(runs.buffer(4 * HAIR))
    assert missed.length < 0.05, "brick ends in the open without an edge piece"
    beyond = runs.difference(margin)
    assert beyond.length < 0.05, "an edge piece where no plain concrete follows"
    bare = runs.difference(brick)
    widest = max(max(r.size.head_joint.inches, r.size.gauge - r.size.height.inches) for r in layout.regions)
    assert shapely.length(shapely.get_parts(bare)).max(initial=0) < widest + 4 * HAIR


def margin_of(layout: Layout) -> shapely.Geometry:
    panel = layout.panel
    taken = [openings_polygon(panel), layout.field]
    taken += [shape_polygon(plate.shape) for plate in panel.plates]
    taken += [
        shapely.LineString([(x.inches, y.inches) for x, y in s.line]).buffer(s.width.inches / 2, cap_style="flat")
        for s in panel.strips
    ]
    return outline_polygon(panel).difference(shapely.union_all(taken)).buffer(-HAIR)


def test_no_brick_no_edge_pieces() -> None:
    assert edge_pieces(lay_out(rectangle(20, 10, margin=5))).length == 0
