"""Corner units are ordered by hand, and nothing is counted twice or lost around a corner."""

from collections.abc import Iterable

import pytest
from shapes import SHAPES, example, rectangle
from works import saw_of, takeoff_of

from app.brickwork.layout import Layout, lay_out
from app.brickwork.returns import corner_units, returns
from app.order.values import Line

GAUGE = 8 / 3
"""Modular brick: three courses are 8 in. (BIA Technical Notes 10B, Table 1)."""


def lines(layouts: Iterable[Layout]) -> dict[str, Line]:
    return {line.item: line for line in takeoff_of(list(layouts)).lines}


def corner(width: float, courses: int, **depths: float) -> Layout:
    """A face with a return at its "left", its "right", or both."""
    edges = [
        {"edge": {"right": 1, "left": 3}[hand], "treatment": "return", "depth": depth} for hand, depth in depths.items()
    ]
    return lay_out(rectangle(width, courses * GAUGE, thickness=24, edges=edges))


def test_left_and_right_are_lines_of_their_own_one_unit_a_course() -> None:
    """30 courses: 5 % of 30 is 1.5, to the nearest piece 2."""
    found = lines([corner(239.625, 30, left=7.625, right=7.625)])
    for hand in ("left", "right"):
        line = found[f"Corner unit, {hand}, modular"]
        assert (line.net, line.overage, line.order, line.unit) == (30, 2, 32, "each")
        assert (line.kind, line.size, line.packs) == (f"corner {hand}", "modular", ())
        assert line.note == "30 whole, 0 trimmed; one piece turns the corner"


def test_corner_units_are_taken_off_the_stretchers_and_halves_they_are() -> None:
    """29 full modules and a half bat, less a joint, is 235.625 in.: every course has 29 whole and one half. With a
    right corner, 4 of 8 courses end in their half bat at the right and 4 in a whole stretcher."""
    plain = lines([lay_out(rectangle(235.625, 8 * GAUGE))])["Thin brick modular, stretcher"]
    turned = lines([corner(235.625, 8, right=3.625)])
    assert plain.note == "232 whole, 4 to cut into 8 trimmed pieces"
    assert turned["Thin brick modular, stretcher"].note == "228 whole, 2 to cut into 4 trimmed pieces"
    assert turned["Corner unit, right, modular"].net == 8


def test_a_return_only_as_deep_as_a_half_cuts_every_long_leg() -> None:
    note = lines([corner(239.625, 8, right=3.625)])["Corner unit, right, modular"].note
    assert note == ("4 whole, 4 trimmed; one piece turns the corner; 4 of the trimmed only at the return's depth")


def test_brick_behind_the_corner_units_is_ordered_as_stretchers() -> None:
    """Depth 16: behind a short leg 7-5/8 from 4 in. and 4 in. from 12; behind a long leg 7-5/8 from 8 in. So 8 courses
    have 8 whole and 4 trimmed; with the kerf two pieces of 4 in. are longer than a brick, two halves are not."""
    before = lines([corner(239.625, 8, right=3.625)])["Thin brick modular, stretcher"]
    after = lines([corner(239.625, 8, right=16)])["Thin brick modular, stretcher"]
    assert after.net - before.net == 12
    assert before.note == "232 whole, 2 to cut into 4 trimmed pieces"
    assert after.note == "240 whole, 6 to cut into 8 trimmed pieces"


def test_a_cut_corner_unit_is_counted_and_told() -> None:
    line = lines([corner(237.625, 8, right=7.625)])["Corner unit, right, modular"]
    assert (line.net, line.note) == (8, "0 whole, 8 trimmed; one piece turns the corner")


@pytest.mark.parametrize("bond", ["running", "flemish", "english", "stack"])
@pytest.mark.parametrize("shape", SHAPES)
def test_all_lines_together_are_the_units_of_the_face_and_the_pieces_of_the_returns(shape: str, bond: str) -> None:
    layout = lay_out(example(shape, bond=bond))
    found = returns(layout)
    pieces = sum(len(one.pieces) for one in found)
    legs = sum(len(one.legs) for one in found)
    bricks = [line for line in lines([layout]).values() if line.kind]
    saved = (saw := saw_of([layout])).flat_pieces - saw.bricks
    assert sum(line.net for line in bricks) + saved == len(layout.units) - len(corner_units(found)) + legs + pieces


def test_two_panels_take_their_overage_from_the_sum() -> None:
    """11 courses each: 5 % of 22 is 1.1, so 1; panel by panel it would be 2."""
    line = lines([corner(239.625, 11, left=3.625), corner(239.625, 11, left=3.625)])["Corner unit, left, modular"]
    assert (line.net, line.overage) == (22, 1)


def test_no_line_without_a_return() -> None:
    assert not [item for item in lines([lay_out(example("window"))]) if item.startswith("Corner")]
