"""Cuts told as one: each is in just one line, teeth follow pockets, and an arc has the radius that was drawn."""

from collections import Counter
from math import cos, pi, sin

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from random_panels import Document, panels
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.liner.arcs import arcs
from app.liner.cut_lines import cut_lines
from app.liner.knife import knife_cuts
from app.liner.knife_lines import knife_lines
from app.liner.knife_words import line_words
from app.liner.mould import mould
from app.liner.offcuts import cutting_plan
from app.liner.pockets import Pockets, pockets
from app.liner.sheets import sheet_plan
from app.liner.stacks import cut_list
from app.liner.work_values import KnifeLine, Stack
from app.panel.project import Liner

RANDOM = settings(max_examples=20, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
LINER = Liner(columns=3, rows=5)
HEAD, GAUGE = 8.0, 8 / 3
"""Modular brick with 3/8 in. joints: 7-5/8 + 3/8, and three courses in 8 in. The second course is half a brick on."""


def stacks_of(layout: Layout, liner: Liner = LINER) -> tuple[Stack, ...]:
    plan = sheet_plan(layout, liner)
    return cut_list(layout, plan, cutting_plan(layout, plan, liner), liner).stacks


def running() -> Pockets:
    layout = lay_out(rectangle(48, 24, "running"))
    liner = Liner()
    assert mould(layout.bond, layout.size, liner.columns, liner.rows).size == pytest.approx((48, 24))
    return pockets(layout.bond, layout.size, liner.columns, liner.rows, (1, 1))


def toothed(courses: range, after: float) -> list[tuple[float, float]]:
    """A ring whose left edge is upright at 8 in. and whose right one follows the joints: `after` in the first course
    and those like it, half a brick less in the others."""
    right = [(after - HEAD / 2 * (k % 2), GAUGE * (k + step)) for k in courses for step in (0, 1)]
    return [(8.0, GAUGE * courses.stop), (8.0, GAUGE * courses.start), *right]


def lines_of(*pieces: list[tuple[float, float]]) -> tuple[KnifeLine, ...]:
    grid = running()
    return knife_lines(knife_cuts(cut_lines(grid.outline, [[np.array(piece)] for piece in pieces]), grid), grid)


def test_teeth_are_one_line_counted_in_pockets() -> None:
    """
    Four pockets of the first course and their joints end at 32 in.: a ruler's line there. In every second course the
    joint before is 4 in. nearer, past three pockets of the first: four of these, each with a level cut over and under.
    """
    _, cut, teeth = lines_of(toothed(range(9), 4 * HEAD))
    assert line_words(cut).startswith("4 pockets along at the joint line")
    assert line_words(teeth) == "along the teeth, after 3 pockets, courses 2 to 8"
    assert len(teeth.cuts) == 4 + 8


def test_teeth_over_some_courses_say_which() -> None:
    words = [line_words(line) for line in lines_of(toothed(range(2, 6), 3 * HEAD)) if line.kind == "teeth"]
    assert words == ["along the teeth, after 2 pockets, courses 4 to 6"]


def test_teeth_between_two_pieces_are_one_line() -> None:
    """Nine upright cuts and the eight level ones between them; the second piece takes the other side of each."""
    first = toothed(range(9), 4 * HEAD)
    second = [(44.0, 0.0), (44.0, 9 * GAUGE), *first[:1:-1]]
    teeth = [line for line in lines_of(first, second) if line.kind == "teeth"]
    assert [line_words(line) for line in teeth] == ["along the teeth, after 4 pockets, courses 1 to 9"]
    assert len(teeth[0].cuts) == 9 + 8


def test_a_hole_of_one_brick_and_cuts_that_miss_the_joints_are_no_teeth() -> None:
    assert {line.kind for line in lines_of([(16, GAUGE), (24, GAUGE), (24, 2 * GAUGE), (16, 2 * GAUGE)])} == {"cut"}
    off = [(x - 1.0, y) for x, y in toothed(range(9), 4 * HEAD)]
    assert {line.kind for line in lines_of(off)} == {"cut"}


@RANDOM
@given(panels(zones=1))
def test_every_cut_is_told_in_just_one_line(document: Document) -> None:
    for stack in stacks_of(lay_out(read_panel(document))):
        assert Counter(knife for line in stack.lines for knife in line.cuts) == Counter(stack.cuts)
        firsts = [min(stack.cuts.index(knife) for knife in line.cuts) for line in stack.lines]
        assert firsts == sorted(firsts), "lines are in the order of a knife"
        assert all(line_words(line) for line in stack.lines)


def chords(radius: float, start: float, stop: float, count: int) -> np.ndarray:
    points = [(40 + radius * cos(at), 20 + radius * sin(at)) for at in np.linspace(start, stop, count + 1)]
    return np.array([points[:-1], points[1:]]).swapaxes(0, 1)


@pytest.mark.parametrize("radius", [4.5, 21.375, 100.0])
def test_chords_of_one_circle_are_an_arc_in_any_order_and_direction(radius: float) -> None:
    ends = chords(radius, 0.2, 1.1, 25)
    mixed = np.random.default_rng(1).permutation(25)
    ends = ends[mixed]
    ends[::3] = ends[::3, ::-1]
    ((found, arc),) = arcs(ends)
    assert sorted(found) == list(range(25))
    assert arc.radius == pytest.approx(radius, abs=1e-3)
    expected = sorted((40 + radius * cos(at), 20 + radius * sin(at)) for at in (0.2, 1.1))
    assert np.allclose(arc.ends, expected)


def test_a_circle_is_told_by_its_middle() -> None:
    ((_, arc),) = arcs(chords(9.0, 0.0, 2 * pi, 60))
    assert arc.is_circle
    assert arc.ends[0] == pytest.approx((40, 20))


def test_a_straight_line_beside_an_arc_and_corners_are_none() -> None:
    arch = chords(12.0, 0.0, pi, 40)
    jamb = np.array([[(52.0, 0.0), (52.0, 20.0)], [(28.0, 20.0), (28.0, 0.0)]])
    ((found, arc),) = arcs(np.concatenate([jamb, arch]))
    assert sorted(found) == list(range(2, 42))
    assert arc.radius == pytest.approx(12)
    assert list(arcs(np.array([[(0, 0), (4, 3)], [(4, 3), (8, 0)], [(8, 0), (0, 0)]], dtype=float))) == []


@pytest.mark.parametrize("radius", [7.0, 14.0])
def test_a_round_vent_is_told_by_its_radius(radius: float) -> None:
    """In every sheet that it cuts, one line, and no chord by itself."""
    opening = {"mark": "V1", "use": "vent", "circle": [60, 30, radius]}
    stacks = stacks_of(lay_out(rectangle(120, 64, "running", openings=[opening])), Liner())
    lines = [line for stack in stacks for line in stack.lines if line.arc]
    assert lines
    assert all(line.arc and line.arc.radius == pytest.approx(radius, abs=1 / 32) for line in lines)
    assert all("radius " in line_words(line) and "follow the line" in line_words(line) for line in lines)
    assert not [
        line for stack in stacks for line in stack.lines if line.kind == "cut" and line.cuts[0].cut.axis == "skew"
    ]
