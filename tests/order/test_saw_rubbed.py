"""A corner smaller than the kerf is no cut: the brick is rubbed off by hand and stays one brick of the order."""

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from works import saw_of, takeoff_of

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.lengths import Length
from app.order.saw_rubbed import is_rubbed
from app.order.saw_values import Point
from app.panel.project import Order

RANDOM = settings(max_examples=15, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
BRICK, KERF = (7.625, 2.25), 0.125
"""Modular brick; a blade of 1/8 in. (common practice)."""


def less(*gone: tuple[float, float]) -> tuple[Point, ...]:
    """A modular brick without triangles of these sides at its right end, the first above, the second below."""
    length, height = BRICK
    (wide, high), (under, up) = (*gone, (0.0, 0.0))[:2]
    low = [(length - under, 0.0), (length, up)] if under else [(length, 0.0)]
    return ((0.0, 0.0), *low, (length, height - high), (length - wide, height), (0.0, height))


@pytest.mark.parametrize(
    ("gone", "expected"),
    [
        ([(1 / 8, 1 / 16)], True),
        ([(3 / 4, 1 / 16)], True),
        ([(1 / 8, 1 / 8)], False),
        ([(1, 1)], False),
        ([(1 / 8, 1 / 16), (1 / 16, 1 / 16)], True),
        ([(1 / 8, 1 / 16), (1 / 2, 1 / 2)], False),
    ],
)
def test_a_corner_is_cut_where_it_is_as_large_as_the_kerf_both_ways(
    gone: list[tuple[float, float]], expected: bool
) -> None:
    assert is_rubbed(less(*gone), BRICK, KERF) is expected


def test_a_brick_of_which_nothing_goes_that_the_saw_could_be_set_to_is_not_cut() -> None:
    assert is_rubbed(((0, 0), (7.625, 0), (7.625, 2.25), (0, 2.25)), BRICK, KERF)


def chopped(wide: float, high: float) -> Layout:
    """Three bricks of stack bond, 8 in. each, on a face of 23-5/8 x 2-1/4 in. without a corner of these sides."""
    outline = [[0, 0], [23.625, 0], [23.625, 2.25 - high], [23.625 - wide, 2.25], [0, 2.25]]
    field = {"size": "modular", "bond": "stack"}
    return lay_out(read_panel({"mark": "C", "thickness": 7.25, "margin": 0, "outline": outline, "field": field}))


def test_a_rubbed_brick_is_no_brick_for_the_saw_and_one_of_the_order() -> None:
    saw, found = saw_of([chopped(1 / 8, 1 / 16)]), takeoff_of([chopped(1 / 8, 1 / 16)])
    (rub,) = saw.rubs
    assert (rub.count, rub.brick, [seat.panel for seat in rub.seats]) == (1, "modular stretcher", ["C"])
    assert (saw.bricks, saw.bound, saw.flat_pieces, saw.skews, saw.is_proven) == (0, 0, 0, (), True)
    bricks = next(line for line in found.lines if line.kind == "stretcher")
    assert bricks.net == 3
    assert bricks.note == "3 whole; 1 of the whole ones with a corner rubbed off"


def test_a_larger_corner_is_sawn_and_the_order_is_the_same() -> None:
    saw, found = saw_of([chopped(1 / 2, 1 / 4)]), takeoff_of([chopped(1 / 2, 1 / 4)])
    assert (saw.rubs, saw.bricks, len(saw.skews)) == ((), 1, 1)
    assert next(line for line in found.lines if line.kind == "stretcher").net == 3


@RANDOM
@given(panels(zones=1), st.sampled_from([1 / 16, 1 / 8, 1 / 4, 1 / 2]))
def test_whatever_the_kerf_a_piece_that_is_rubbed_was_a_brick_by_itself(document: Document, kerf: float) -> None:
    """Against a saw that takes next to nothing: the same notches and skew cuts, each a brick, and what is cut none of
    it below the kerf."""
    layout = lay_out(read_panel(document))
    thin = saw_of([layout], Order(kerf=Length.from_inches(1e-6)))
    saw = saw_of([layout], Order(kerf=Length.from_inches(kerf)))
    shaped = sum(piece.count for piece in (*thin.notches, *thin.skews, *thin.rubs))
    assert sum(piece.count for piece in (*saw.notches, *saw.skews, *saw.rubs)) == shaped
    for piece in (*saw.notches, *saw.skews):
        gone = shapely.box(0, 0, *piece.whole).difference(shapely.Polygon(piece.outline))
        sides = [(part.bounds[2] - part.bounds[0], part.bounds[3] - part.bounds[1]) for part in shapely.get_parts(gone)]
        assert any(min(pair) >= kerf - 1e-4 for pair in sides)
