"""Overage to the nearest piece and packs rounded up, once."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.order.packs import brick_packs, overage
from app.panel.project import Order


@pytest.mark.parametrize(
    ("net", "percent", "extra"),
    [(0, 5, 0), (1, 5, 1), (100, 5, 5), (101, 5, 5), (110, 5, 6), (700, 0.1, 1), (1000, 0.1, 1), (9, 0, 0)],
)
def test_overage_is_the_nearest_whole_piece_and_at_least_one(net: int, percent: float, extra: int) -> None:
    assert overage(net, percent) == extra


def test_overage_of_the_navy_wall() -> None:
    """690 brick and 10 % waste: US Navy training manual 14045, brick estimating example; it rounds 759 to 760."""
    assert 690 + overage(690, 10) == 759


def test_overage_of_the_textbook_front() -> None:
    """5,882 brick and 5 % waste: *Building Construction* vol. 4, "Estimating the Brickwork"; it writes 294.1 as 294."""
    assert overage(5882, 5) == 294


@given(st.integers(0, 100_000), st.integers(0, 400).map(lambda quarters: quarters / 4))
def test_overage_is_within_half_a_piece_of_the_percentage_or_the_one_spare(net: int, percent: float) -> None:
    extra, wanted = overage(net, percent), Fraction(net * round(4 * percent), 400)
    assert abs(extra - wanted) <= Fraction(1, 2) or (extra == 1 and 0 < wanted < 1)
    assert (extra == 0) == (wanted == 0)


@given(st.integers(1, 100_000), st.integers(1, 200), st.integers(1, 80))
def test_packs_hold_all_brick_and_one_less_would_not(count: int, per_carton: int, cartons: int) -> None:
    carton, pallet = brick_packs(count, Order(per_carton=per_carton, cartons_per_pallet=cartons))
    for pack in (carton, pallet):
        assert pack.count * pack.holds >= count
        assert (pack.count - 1) * pack.holds < count
    assert (carton.name, pallet.name) == ("carton", "pallet")


def test_no_brick_takes_no_packs() -> None:
    assert brick_packs(0, Order()) == ()
