"""At a return, corner units take long and short legs by turns, and the bond needs no cut there."""

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapes import BOX, example, rectangle

from app.brickwork.checks import findings
from app.brickwork.layout import Layout, lay_out
from app.brickwork.returns import Return, corner_units, returns
from app.documents.project_file import read_panel
from app.lengths import Length
from app.panel.values import Panel, Side

LONG, SHORT, JOINT = 7.625, 3.625, 0.375
GAUGE = 8 / 3
"""Modular brick: three courses are 8 in. (BIA Technical Notes 10B, Table 1)."""

RIGHT, LEFT = {"edge": 1, "treatment": "return", "depth": 7.25}, {"edge": 3, "treatment": "return", "depth": 3.625}


def laid(width: float, *edges: dict[str, Any], courses: int = 8, **more: Any) -> Layout:
    return lay_out(rectangle(width, courses * GAUGE, edges=list(edges), **more))


def codes(layout: Layout) -> list[tuple[str, str]]:
    return [(found.code, found.about) for found in findings(layout) if "return" in found.code]


#    face            | return          a course with its long leg on the face has its short leg on the return;
#   _____ _ _________|____ ___         the next course the other way round
#  |____| |_________.|.___|___
#  |__|_______| |___.|._______
@pytest.mark.parametrize("modules", [6, 6.5, 29, 29.5])
def test_a_right_corner_in_running_bond_needs_no_cut(modules: float) -> None:
    """The face is n half modules less a joint wide: 30 modules of 8 in. less 3/8 in. is 19'-11 5/8\"."""
    (found,) = returns(laid(modules * 8 - JOINT, RIGHT))
    assert (found.name, found.hand, found.edge_at) == ("edge 1", "right", modules * 8 - JOINT)
    assert len(found.legs) == 8
    assert found.cut == ()
    face = [leg.face_leg for leg in found.legs]
    assert face[0::2] == pytest.approx([LONG if modules == int(modules) else SHORT] * 4)
    assert face[1::2] == pytest.approx([SHORT if modules == int(modules) else LONG] * 4)


def test_a_left_corner_starts_with_the_cell_at_the_origin() -> None:
    (found,) = returns(laid(240, LEFT))
    assert (found.name, found.hand, found.edge_at) == ("edge 3", "left", 0)
    assert [leg.face_leg for leg in found.legs] == pytest.approx([LONG, SHORT] * 4)
    assert [leg.is_cut for leg in found.legs] == [False] * 8


def test_face_and_return_courses_meet_at_equal_heights() -> None:
    layout = laid(239.625, RIGHT, LEFT)
    bottoms = [course.bottom for course in layout.courses]
    for found in returns(layout):
        assert [leg.bottom for leg in found.legs] == pytest.approx(bottoms, abs=1e-6)
        assert {piece.bottom for piece in found.pieces} <= {leg.bottom for leg in found.legs}
        assert [leg.height for leg in found.legs] == pytest.approx([2.25] * 8)


def test_left_and_right_corner_units_are_as_many_as_the_courses() -> None:
    layout = laid(239.625, RIGHT, LEFT, courses=30)
    hands = {found.hand: len(found.legs) for found in returns(layout)}
    assert hands == {"left": 30, "right": 30}
    assert len(corner_units(returns(layout))) == 60
    assert codes(layout) == []


def test_both_legs_and_their_joints_take_twelve_inches_of_course() -> None:
    """Legs of 7-5/8 and 3-5/8 in. with 3/8 in. joints: 12 in., with 8 in. of height for three courses 1 sq ft of brick
    a foot of corner; arithmetic of the unit's own size."""
    (found,) = returns(laid(239.625, {**RIGHT, "depth": 7.625}, thickness=7.625, courses=9))
    taken = sum((leg.face_leg + JOINT + leg.return_leg + JOINT) * GAUGE for leg in found.legs)
    assert [leg.face_leg + leg.return_leg for leg in found.legs] == pytest.approx([LONG + SHORT] * 9)
    assert taken / (9 * GAUGE / 12) == pytest.approx(144)


def test_the_return_goes_on_with_whole_stretchers_and_ends_cut_at_its_depth() -> None:
    (found,) = returns(laid(239.625, {**RIGHT, "depth": 24}, thickness=24, courses=2))
    rows = [(round(piece.start, 6), round(piece.length, 6), piece.is_trimmed) for piece in found.pieces]
    behind_short = [(4, 7.625, False), (12, 7.625, False), (20, 4, True)]
    behind_long = [(8, 7.625, False), (16, 7.625, False)]
    assert rows == behind_short + behind_long
    assert not any(leg.is_shortened for leg in found.legs)


def test_a_shallow_return_shortens_long_legs_and_has_no_further_piece() -> None:
    (found,) = returns(laid(239.625, {**RIGHT, "depth": 3.625}))
    assert [leg.return_leg for leg in found.legs] == pytest.approx([SHORT] * 8)
    assert [leg.is_shortened for leg in found.legs] == [False, True] * 4
    assert (found.pieces, found.cut) == ((), ())


def test_a_leg_of_another_length_is_a_cut_corner_unit_and_told() -> None:
    layout = laid(237.625, RIGHT)
    (found,) = returns(layout)
    assert len(found.legs) == len(found.cut) == 8
    assert sorted({round(leg.face_leg, 6) for leg in found.legs}) == [1.625, 5.625]
    assert {(round(leg.face_leg, 3), leg.return_leg) for leg in found.legs} == {(1.625, 7.25), (5.625, 3.625)}
    assert codes(layout) == [("cut-at-return", "edge 1")]
    (text,) = [one.text for one in findings(layout) if one.code == "cut-at-return"]
    assert text.startswith('Cut corner units at edge 1: 8 of 8; the shortest shows 1 5/8" x 2 1/4" on the face')


@pytest.mark.parametrize(("off", "is_cut"), [(-1 / 64, False), (1 / 64, False), (-1 / 16, True)])
def test_a_face_within_a_thirty_second_of_the_bond_takes_the_units_own_legs(off: float, is_cut: bool) -> None:
    (found,) = returns(laid(239.625 + off, RIGHT))
    assert len(found.legs) == 8
    assert [leg.is_cut for leg in found.legs] == [is_cut] * 8
    assert found.bare == ()


def test_a_course_that_ends_in_a_joint_at_the_return_is_told() -> None:
    """20 ft even: whole modules end 3/8 in. short of the edge."""
    layout = laid(240, RIGHT)
    (found,) = returns(layout)
    assert found.bare == (0, 2, 4, 6)
    assert ("bare-at-return", "edge 1") in codes(layout)


def test_a_unit_ripped_at_the_top_is_a_cut_corner_unit() -> None:
    layout = lay_out(rectangle(239.625, 8 * GAUGE - 1, edges=[RIGHT]))
    (found,) = returns(layout)
    assert [leg.is_cut for leg in found.legs] == [False] * 7 + [True]
    assert found.legs[-1].height == pytest.approx(GAUGE - 1)
    assert all(piece.is_trimmed for piece in found.pieces if piece.unit == found.legs[-1].unit)


def test_the_ends_of_the_piers_beside_an_opening_have_the_hand_of_the_pier() -> None:
    """The opening's left side is the right end of the pier left of it. Opening widths n x 4 + 3/8 in. give no cut:
    Masonry Construction magazine, *Bricking around openings*."""
    sides = [{"side": side, "treatment": "return", "depth": 3.625} for side in ("left", "right")]
    layout = lay_out(_opened([{"mark": "W1", "rect": [23.625, 4 * GAUGE - 0.375, 24.375, 6 * GAUGE + 0.375]}], sides))
    left, right = returns(layout)
    assert (left.name, left.hand, left.edge_at) == ("W1 left", "right", 23.625)
    assert (right.name, right.hand, right.edge_at) == ("W1 right", "left", 48)
    for found in (left, right):
        assert [leg.course for leg in found.legs] == list(range(4, 10))
        assert found.cut == ()
    assert codes(layout) == []


def test_a_unit_notched_around_the_corner_of_a_return_is_cut() -> None:
    sides = [{"side": "left", "treatment": "return", "depth": 3.625}]
    (found,) = returns(lay_out(_opened([{"mark": "W1", "rect": [21, 12, 24, 14.5]}], sides)))
    assert found.legs[0].is_cut
    assert found.legs[0].bottom == 12


def _opened(openings: list[dict[str, Any]], sides: list[dict[str, Any]]) -> Panel:
    """Sides are put on the first opening as values, so that the test does not hang on how a file writes them."""
    panel = rectangle(71.625, 16 * GAUGE, openings=openings)
    made = tuple(Side(side["side"], side["treatment"], Length.from_inches(side["depth"])) for side in sides)
    return replace(panel, openings=(replace(panel.openings[0], sides=made),))


def test_a_pier_of_one_brick_between_two_returns_is_told() -> None:
    layout = laid(7.625, RIGHT, LEFT, courses=1)
    found = returns(layout)
    assert [len(one.legs) for one in found] == [1, 1]
    assert len(corner_units(found)) == 1
    assert ("two-returns", "edge 1 and edge 3") in codes(layout)


def test_a_clockwise_outline_has_the_same_hands() -> None:
    turned = [BOX[0], *reversed(BOX[1:])]
    edges = [{"edge": 0, "treatment": "return", "depth": 3}, {"edge": 2, "treatment": "return", "depth": 3}]
    document = {"mark": "T", "thickness": 7, "outline": turned, "edges": edges}
    found = returns(lay_out(read_panel({**document, "field": {"size": "modular", "bond": "running"}})))
    assert [(one.name, one.hand, one.edge_at) for one in found] == [("edge 0", "left", 0), ("edge 2", "right", 60)]


@pytest.mark.parametrize("shape", ["plain", "window", "flush"])
def test_no_return_where_none_is_asked_for(shape: str) -> None:
    found = returns(lay_out(example(shape)))
    assert found == ()
    assert len(corner_units(found)) == 0


@pytest.mark.parametrize("bond", ["running", "stack", "flemish", "english", "third-raked", "soldier", "herringbone-45"])
@given(width=st.integers(40, 400).map(lambda half: half / 4), depth=st.sampled_from([2, 3.625, 7.25]))
def test_every_leg_is_a_unit_at_the_edge_and_every_piece_lies_within_the_depth(
    bond: str, width: float, depth: float
) -> None:
    layout = laid(width, {**RIGHT, "depth": depth}, {**LEFT, "depth": depth}, bond=bond)
    for found in returns(layout):
        _reaches_its_edge(layout, found)
        for piece in found.pieces:
            assert piece.start + piece.length <= depth + 1e-9
            assert piece.length >= layout.smallest_cut - 1e-6
        starts = sorted((piece.unit, piece.start) for piece in found.pieces)
        assert starts == sorted(set(starts))


def _reaches_its_edge(layout: Layout, found: Return) -> None:
    units = layout.units
    ends = units.x + units.width if found.hand == "right" else units.x
    at_edge = set(np.flatnonzero(np.abs(ends - found.edge_at) < 1 / 32).tolist())
    assert {leg.unit for leg in found.legs} == at_edge
    assert all(0 < leg.return_leg <= found.depth for leg in found.legs)
