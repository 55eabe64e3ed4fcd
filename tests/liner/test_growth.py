"""The growth field: what holds the liner at a point, and that it agrees with the tape's checkpoints."""

from dataclasses import replace

import numpy as np
import pytest
from growth_field import growth_at
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, inches, panels
from shapes import rectangle

from app.brickwork.layout import lay_out
from app.documents.project_file import read_panel
from app.liner.drift import drift, expected_at
from app.liner.growth import free_lengths, free_span, worst_temperature
from app.liner.lines import Hold, holds
from app.liner.tape import tapes
from app.panel.laying import CORNERS
from app.panel.project import Day, Liner

RANDOM = settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
LINER = Liner()
NOTCHED = [[40, 0], [120, 0], [120, 80], [0, 80], [0, 40], [40, 40]]
"""A step in the lower left, 40 by 40 in."""


def moved(panel: object, points: list[tuple[float, float]], temperature: float = 110.0) -> list[tuple[float, float]]:
    """dx and dy in inches at each point."""
    x, y = np.array(points).T
    across, up = growth_at(lay_out(panel), LINER, temperature, x, y)  # type: ignore[arg-type]
    return list(zip(across.tolist(), up.tolist(), strict=True))


@pytest.mark.parametrize("corner", CORNERS)
def test_liner_grows_away_from_the_starting_corner(corner: str) -> None:
    """Of 120 x 40 in. at (40, 10): the corner on the face is on the other side than on the bed."""
    dx, dy = -80 if corner.endswith("left") else 40, 10 if "lower" in corner else -30
    (found,) = moved(rectangle(120, 40, laying={"corner": corner}), [(40, 10)])
    assert found == pytest.approx((dx * 4.5e-5 * 40, dy * 4.5e-5 * 40))


def test_nothing_moves_at_the_reference_temperature_and_cold_liner_moves_back() -> None:
    panel = rectangle(120, 40, laying={"corner": "bed lower right"})
    assert moved(panel, [(100, 30)], 70) == [(0, 0)]
    assert moved(panel, [(100, 30)], 50) == [pytest.approx((-100 * 4.5e-5 * 20, -30 * 4.5e-5 * 20))]


def test_a_fixing_over_a_part_of_the_face_holds_that_part_only() -> None:
    """From the foot to 20 in. up of 80; sheets are 24 in. up, so it does not hold the last one."""
    fixings = [{"line": [[60, 0], [60, 20]]}]
    panel = rectangle(120, 80, fixings=fixings, laying={"corner": "bed lower right"})
    (held, _), (free, _) = moved(panel, [(100, 10), (100, 50)])
    assert held == pytest.approx(40 * 4.5e-5 * 40)
    assert free == pytest.approx(100 * 4.5e-5 * 40)


@pytest.mark.parametrize(("margin", "held"), [(0, True), (0.375, False)])
def test_a_form_edge_on_the_starting_side_holds_where_brick_reaches_it(margin: float, held: bool) -> None:
    panel = rectangle(120, 80, outline=NOTCHED, margin=margin, laying={"corner": "bed lower right"})
    (below, _), (above, _) = moved(panel, [(100, 20), (100, 60)])
    assert below == pytest.approx((60 if held else 100) * 4.5e-5 * 40)
    assert above == pytest.approx(100 * 4.5e-5 * 40)
    (_, left), (_, right) = moved(panel, [(20, 60), (100, 60)])
    assert left == pytest.approx((20 if held else 60) * 4.5e-5 * 40)
    assert right == pytest.approx(60 * 4.5e-5 * 40)


def test_a_form_edge_on_the_far_side_holds_nothing() -> None:
    """The same step, but laying starts at the face's right and top, so its edges end the brick."""
    layout = lay_out(rectangle(120, 80, outline=NOTCHED, laying={"corner": "bed upper left"}))
    for tape in tapes(layout, "bed upper left"):
        assert holds(layout, tape, LINER) == [Hold(0.0, "starting corner")]


def test_no_points_and_no_brick_move_nothing() -> None:
    none = np.zeros(0)
    assert [len(part) for part in growth_at(lay_out(rectangle(120, 40)), LINER, 110, none, none)] == [0, 0]
    bare = lay_out(rectangle(20, 10, margin=5))
    assert growth_at(bare, LINER, 110, np.array([10.0]), np.array([5.0])) == ([0], [0])


def test_free_lengths_start_again_at_each_held_line() -> None:
    held = [(0.0, "starting corner"), (40.0, "strip R1")]
    assert free_lengths(held, np.array([0, 10, 39.5, 40, 50])) == pytest.approx([0, 10, 39.5, 0, 10])


def test_the_worst_temperature_is_the_one_farthest_from_the_reference() -> None:
    assert worst_temperature(Day(30, 100), LINER) == 30
    assert worst_temperature(Day(60, 105), LINER) == 105
    assert free_span(LINER, 105) == pytest.approx(0.125 / (4.5e-5 * 35))


@st.composite
def partly_held(draw: st.DrawFn) -> Document:
    """A random panel with fixing lines of any length, laid from any corner."""
    document = draw(panels(zones=0))
    width, height = (max(point[k] for point in document["outline"]) for k in (0, 1))
    x, ends = draw(inches(0, width)), draw(st.lists(inches(0, height), min_size=2, max_size=2, unique=True))
    fixings = [{"line": [[x, end] for end in ends]}]
    return {**document, "fixings": fixings, "laying": {"corner": draw(st.sampled_from(CORNERS))}}


@RANDOM
@given(partly_held(), st.integers(0, 150))
def test_the_field_never_moves_farther_than_the_tape_expects_and_as_far_where_all_lines_are_whole(
    document: Document, temperature: int
) -> None:
    try:
        layout = lay_out(read_panel(document))
    except ValueError:
        return
    if layout.field.is_empty:
        return
    rng = np.random.default_rng(7)
    for tape in tapes(layout, layout.panel.laying.corner):
        is_whole = all(hold.is_whole for hold in holds(layout, tape, LINER))
        for point in (point for point in drift(layout, LINER, Day()).checkpoints if point.axis == tape.axis):
            here = np.full(20, point.position)
            there = rng.uniform(*(layout.field.bounds[1::2] if tape.axis == "x" else layout.field.bounds[::2]), 20)
            x, y = (here, there) if tape.axis == "x" else (there, here)
            found = growth_at(layout, LINER, temperature, x, y)[0 if tape.axis == "x" else 1]
            expected = abs(expected_at(point, temperature) - point.nominal)
            assert np.abs(found).max() <= expected + 1e-9
            assert not is_whole or np.abs(found) == pytest.approx(expected, abs=1e-9)


def test_twice_the_expansion_grows_twice_as_far() -> None:
    layout, x = lay_out(rectangle(120, 40)), np.linspace(0, 120, 9)
    once, twice = (
        growth_at(layout, replace(LINER, expansion_per_degree=each), 100, x, x / 3) for each in (4.5e-5, 9e-5)
    )
    assert np.array(twice) == pytest.approx(2 * np.array(once))
