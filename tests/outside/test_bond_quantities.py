"""How many more bricks a bond with headers takes than running bond, counted over whole repeats of the bond.

Source: BIA Technical Notes 10, bond correction factors, from memory (not read for this test), and equal to the
geometry: a header takes half a stretcher's module, so headers every 6th course add 1/6, every 5th 1/5, Flemish bond
1/3.
"""

from fractions import Fraction

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.layout import lay_out

WIDE, HIGH = 6 * 8, 60
"""A window of six head modules by sixty courses: whole repeats of every bond counted here."""


def _units(bond: str) -> int:
    """Units whose lower-left corner is in the window, well inside a larger face."""
    units = lay_out(rectangle(96, (HIGH + 12) * 8 / 3, bond)).units
    x, y = units.x - 16.5, units.y - 6 * 8 / 3 + 1
    return int(np.count_nonzero((x > 0) & (x < WIDE) & (y > 0) & (y < HIGH * 8 / 3)))


@pytest.mark.parametrize(
    ("bond", "more"),
    [
        ("stack", Fraction(0)),
        ("common-6", Fraction(1, 6)),
        ("common-5", Fraction(1, 5)),
        ("flemish", Fraction(1, 3)),
        ("english", Fraction(1, 2)),
    ],
)
def test_a_bond_takes_so_many_more_bricks_than_running_bond(bond: str, more: Fraction) -> None:
    assert Fraction(_units(bond), _units("running")) == 1 + more


def test_running_bond_has_one_brick_a_module() -> None:
    assert _units("running") == 6 * HIGH
