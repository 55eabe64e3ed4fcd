"""Headers a third of a stretcher, counted on laid faces: 12 in. brick, 4 in. wide, header courses every n-th.

Source: BIA Technical Notes 10, bond correction factors, from memory (not read for this test), and equal to the
geometry: three headers stand where one stretcher does, so a header course, one in n, adds 2/n.
"""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from laws import assert_laws
from shapes import example, rectangle

from app.brickwork.layout import lay_out
from app.brickwork.own_bonds import own_bond
from app.brickwork.sizes import CATALOGUE
from app.panel.own_bond import OwnBond, OwnCell

MODULES, COURSES = 6, 84
"""Window of the count: whole repeats of 5 (as far as 80 courses), 6 and 7 courses."""


def _header_courses(every: int) -> OwnBond:
    running = [OwnCell("stretcher", (f"{k % 2}/2 P", f"{k} G")) for k in range(every - 1)]
    headers = [OwnCell("header 1/3", (f"{k}/3 P - 1/6 P", f"{every - 1} G")) for k in range(3)]
    return OwnBond("thirds", (*running, *headers), ("P", "0"), ("0", f"{every} G"))


@pytest.mark.parametrize(("every", "more"), [(5, Fraction(2, 5)), (6, Fraction(2, 6)), (7, Fraction(2, 7))])
def test_header_courses_of_thirds_add_two_a_module(every: int, more: Fraction) -> None:
    """Utility brick, 12 by 4 in. with its joints; units whose corner is in a window of whole repeats."""
    panel = rectangle(12 * (MODULES + 4), 4 * (COURSES + 12), size="utility")
    panel = replace(panel, field=replace(panel.field, bond="thirds"))
    units = lay_out(panel, CATALOGUE, {"thirds": own_bond(_header_courses(every))}).units
    courses = COURSES - COURSES % every
    x, y = units.x - 25, units.y - 23
    inside = (x > 0) & (x < 12 * MODULES) & (y > 0) & (y < 4 * courses)
    assert Fraction(int(np.count_nonzero(inside)), MODULES * courses) == 1 + more


@pytest.mark.parametrize("shape", ["window", "gable", "round vent"])
def test_laws_hold_of_headers_a_third_long(shape: str) -> None:
    panel = example(shape, "utility")
    panel = replace(panel, field=replace(panel.field, bond="thirds"))
    layout = lay_out(panel, CATALOGUE, {"thirds": own_bond(_header_courses(5))})
    assert_laws(layout)
    assert layout.by_kind()["header"][0] > 0
