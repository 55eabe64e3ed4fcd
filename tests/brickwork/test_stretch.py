"""The map of grid lines: checked against its definition (linear between knots, slope 1 beyond them)."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.brickwork.stretch import IDENTITY, Stretch

KNOTS = Stretch((0.0, 8.0, 24.0), (1.0, 9.5, 25.0))

rises = st.lists(st.tuples(st.floats(0.5, 40), st.floats(0.5, 40)), min_size=1, max_size=6)
starts = st.floats(-100, 100)
places = st.floats(-300, 300)


def stretch_of(start: float, steps: list[tuple[float, float]]) -> Stretch:
    nominal, real = np.cumsum([(start, start + 1), *steps], axis=0).T.tolist()
    return Stretch(tuple(nominal), tuple(real))


def test_knots_stand_exactly_where_they_must():
    assert [KNOTS.real(at) for at in KNOTS.nominal_knots] == list(KNOTS.real_knots)
    assert [KNOTS.nominal(at) for at in KNOTS.real_knots] == list(KNOTS.nominal_knots)


def test_between_knots_all_joints_change_alike():
    assert KNOTS.real(4.0) == pytest.approx(5.25)
    assert KNOTS.real(16.0) == pytest.approx(17.25)


def test_beyond_the_knots_distances_stay():
    assert KNOTS.real(-3.0) == pytest.approx(-2.0)
    assert KNOTS.real(30.0) == pytest.approx(31.0)
    assert KNOTS.nominal(-2.0) == pytest.approx(-3.0)


def test_arrays_map_as_their_numbers_do():
    at = np.linspace(-5, 40, 91)
    assert KNOTS.real(at).tolist() == [KNOTS.real(float(one)) for one in at]
    assert isinstance(KNOTS.real(2.0), float)


def test_identity_moves_nothing_and_an_array_stays_what_it_is():
    assert IDENTITY.is_identity
    assert not KNOTS.is_identity
    assert Stretch((1.0, 2.0), (1.0, 2.0)).is_identity
    assert IDENTITY.real(0.1 + 0.2) == 0.1 + 0.2
    assert IDENTITY.nominal(np.array([1.5])).tolist() == [1.5]


def test_one_knot_shifts_everything():
    shifted = Stretch((4.0,), (4.25,))
    assert [shifted.real(at) for at in (-10.0, 4.0, 99.0)] == [-9.75, 4.25, 99.25]


def test_stretches_are_values():
    assert len({KNOTS, Stretch((0.0, 8.0, 24.0), (1.0, 9.5, 25.0)), IDENTITY}) == 2


@given(starts, rises, places)
def test_nominal_undoes_real(start, steps, at):
    stretch = stretch_of(start, steps)
    assert stretch.nominal(stretch.real(at)) == pytest.approx(at, abs=1e-9)


@given(starts, rises, places, st.floats(-50, 50))
def test_a_moved_map_is_the_same_map_elsewhere(start, steps, at, by):
    stretch = stretch_of(start, steps)
    assert stretch.moved(by).real(at + by) == pytest.approx(stretch.real(at) + by, abs=1e-9)


@pytest.mark.parametrize("knots", [((0.0, 1.0), (0.0,)), ((0.0, 0.0), (0.0, 1.0)), ((0.0, 1.0), (2.0, 1.0))])
def test_knots_that_do_not_pair_or_rise_are_refused(knots):
    with pytest.raises(ValueError, match=r"^stretch: .* expected$"):
        Stretch(*knots)
