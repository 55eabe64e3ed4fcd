"""How many more bricks a bond with headers takes than running bond, counted over whole repeats of the bond.

Source: BIA Technical Notes 10, bond correction factors, from memory (not read for this test), and equal to the
geometry: a header takes half a stretcher's module, so headers every 6th course add 1/6, every 5th 1/5, Flemish bond
1/3. A course of s stretchers to a header adds 1/(2s + 1); header courses, one in n, add 1/n; a Flemish course, one in
n, adds 1/(3n). Where a header is a third of a stretcher (12 in. brick, 4 in. wide), header courses add 2/n.
"""

from fractions import Fraction

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.layout import lay_out

WINDOW = (12, 60)
"""Head modules by courses: whole repeats of the bonds counted in it."""


def _units(bond: str, modules: int, courses: int) -> int:
    """Units whose lower-left corner is in a window of so many head modules and courses, well inside a larger face."""
    units = lay_out(rectangle(8 * (modules + 6), (courses + 12) * 8 / 3, bond)).units
    x, y = units.x - 16.5, units.y - 6 * 8 / 3 + 1
    return int(np.count_nonzero((x > 0) & (x < 8 * modules) & (y > 0) & (y < courses * 8 / 3)))


@pytest.mark.parametrize(
    ("bond", "more", "window"),
    [
        ("stack", Fraction(0), WINDOW),
        ("third-raked", Fraction(0), WINDOW),
        ("quarter-raked", Fraction(0), WINDOW),
        ("quarter-alternating", Fraction(0), WINDOW),
        ("common-5", Fraction(1, 5), WINDOW),
        ("common-6", Fraction(1, 6), WINDOW),
        ("common-7", Fraction(1, 7), (12, 56)),
        ("common-5-flemish", Fraction(1, 15), WINDOW),
        ("common-6-flemish", Fraction(1, 18), WINDOW),
        ("common-7-flemish", Fraction(1, 21), (12, 56)),
        ("flemish", Fraction(1, 3), WINDOW),
        ("english", Fraction(1, 2), WINDOW),
        ("english-cross", Fraction(1, 2), WINDOW),
        ("english-garden-wall", Fraction(1, 4), WINDOW),
        ("monk", Fraction(1, 5), (10, 60)),
        ("flemish-garden-wall", Fraction(1, 7), (14, 60)),
        ("header", Fraction(1), WINDOW),
    ],
)
def test_a_bond_takes_so_many_more_bricks_than_running_bond(bond: str, more: Fraction, window: tuple[int, int]) -> None:
    assert Fraction(_units(bond, *window), _units("running", *window)) == 1 + more


def test_running_bond_has_one_brick_a_module() -> None:
    assert _units("running", 12, 60) == 12 * 60
