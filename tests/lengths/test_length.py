"""Exactness of the value: the inch is 25.4 mm exactly (international yard and pound agreement, 1959)."""

import math
import pickle
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.lengths import NM_PER_INCH, Length, LengthError
from app.lengths.length import nearest


@given(st.integers(-200 * 12 * 64, 200 * 12 * 64))
def test_every_64th_of_an_inch_is_exact_both_ways(ticks: int) -> None:
    inches = ticks / 64
    assert Length.from_inches(inches).inches == inches
    assert Fraction(Length.from_inches(inches).nm, NM_PER_INCH) == Fraction(ticks, 64)


@given(st.integers(-60_000, 60_000))
def test_every_millimetre_is_exact_both_ways(millimetres: int) -> None:
    length = Length.from_number(millimetres, "mm")
    assert length.nm == millimetres * 1_000_000
    assert length.millimetres == millimetres


@pytest.mark.parametrize(
    ("value", "unit", "nm"),
    [
        (1, "in", 25_400_000),
        (1, "ft", 304_800_000),
        (3810, "mm", 3_810_000_000),
        (381, "cm", 3_810_000_000),
        (3.81, "m", 3_810_000_000),
        (0.1, "mm", 100_000),
        (12.1, "in", 307_340_000),
        (0.0000005, "mm", 1),
        (-0.0000005, "mm", -1),
        (0.0000004, "mm", 0),
        (2.6666666666666665, "in", 67_733_333),
    ],
)
def test_a_number_is_the_nearest_nanometre_of_its_decimals(value: float, unit: str, nm: int) -> None:
    length = Length.from_number(value, unit)
    assert length.nm == nm
    assert length.typed == value


def test_what_was_typed_takes_no_part_in_equality_or_hash() -> None:
    typed, plain = Length(3_810_000_000, "150"), Length(3_810_000_000)
    assert typed == plain
    assert hash(typed) == hash(plain)
    assert len({typed, plain}) == 1


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, True, False, "12", None, 1j, 1e9, -1e300, 10**400])
def test_what_is_no_number_or_absurd_is_refused(value: object) -> None:
    with pytest.raises(LengthError) as caught:
        Length.from_number(value, "in")
    assert "\n" not in str(caught.value)
    assert caught.value.expected in str(caught.value)


def test_an_unknown_unit_is_refused_by_name() -> None:
    with pytest.raises(LengthError, match=r"found 'yd', expected a unit: in, ft, mm, cm or m"):
        Length.from_number(1, "yd")


def test_an_error_survives_pickling_for_work_in_another_process() -> None:
    error = LengthError("12,6", 2, ",", "a point", "12.6")
    again = pickle.loads(pickle.dumps(error))
    assert (str(again), again.position) == (str(error), 2)


@given(st.fractions())
def test_nearest_is_at_most_half_away_and_symmetric(value: Fraction) -> None:
    assert abs(nearest(value) - value) <= Fraction(1, 2)
    assert nearest(-value) == -nearest(value)


def test_nearest_takes_ties_away_from_zero() -> None:
    assert [nearest(Fraction(n, 2)) for n in (-3, -1, 1, 3, 5)] == [-2, -1, 1, 2, 3]
