"""Liner and steel tape in the heat, against published expansions and a printed example.

Sources: makeitfrom.com, *High Impact Polystyrene* (80e-6 per C = 44.4e-6 per F, of which 4.5e-5 per F is the round
value; by ASTM D696 tables print 5.0 to 5.1e-5 per F); surveying forum, *Steel Taping Puzzle*, printed example (6.45e-6
per F, standard at 68 F: 304.8082 m read at 42 F, factor 0.999832, corrected 304.757 m). Growth is arithmetic from them,
length x expansion x rise.
"""

import numpy as np
import pytest
from growth_field import growth_at
from shapes import rectangle

from app.brickwork.layout import lay_out
from app.liner.drift import drift, expected_at
from app.liner.growth import growth
from app.liner.tape import fahrenheit, steel_tape_correction, steel_tape_reading
from app.liner.tape_table import tape_tables
from app.panel.project import Day, Liner

FORTY_FEET = 480.0
RISES = [(20, 0.432), (30, 0.648), (40, 0.864)]


def test_the_default_expansion_lies_in_the_published_range() -> None:
    """80e-6 per C typical, up to 5.1e-5 per F by ASTM D696."""
    assert 80e-6 / 1.8 <= Liner().expansion_per_degree <= 5.1e-5


@pytest.mark.parametrize(("rise", "grown"), RISES)
def test_free_growth_of_forty_feet(rise: float, grown: float) -> None:
    """40 ft at 4.5e-5 per F over 20, 30 and 40 F."""
    assert growth(FORTY_FEET, 4.5e-5, rise) == pytest.approx(grown, abs=1e-9)
    assert growth(FORTY_FEET, 4.5e-5, -rise) == pytest.approx(-grown, abs=1e-9)


@pytest.mark.parametrize(("rise", "grown"), RISES)
def test_growth_is_the_same_in_celsius(rise: float, grown: float) -> None:
    """A degree C is 1.8 degrees F by definition, so 8.1e-5 per C is 4.5e-5 per F."""
    assert growth(FORTY_FEET, 8.1e-5, rise / 1.8) == pytest.approx(grown, abs=1e-9)


@pytest.mark.parametrize(("rise", "grown"), RISES)
def test_a_panel_of_forty_feet_reads_as_much_longer_at_its_far_edge(rise: float, grown: float) -> None:
    """The same figures at the last checkpoint, in the growth field and in the tape table, held at the corner alone."""
    layout, liner = lay_out(rectangle(FORTY_FEET, 40)), Liner()
    found, bed = drift(layout, liner, Day()), 70.0 + rise
    last = max((point for point in found.checkpoints if point.axis == "x"), key=lambda point: point.nominal)
    assert expected_at(last, bed) - FORTY_FEET == pytest.approx(grown)
    dx, _ = growth_at(layout, liner, bed, np.array([0.0]), np.array([0.0]))
    assert -dx[0] == pytest.approx(grown)
    across, _ = tape_tables(layout, found, liner, bed)
    assert across.rows[-1].first.expected == pytest.approx(FORTY_FEET + grown)


def test_the_printed_steel_tape_example() -> None:
    """304.8082 m read at 42 F are 304.757 m: the cold tape is short, so it reads too much."""
    assert steel_tape_correction(1.0, 42) == pytest.approx(0.999832, abs=5e-7)
    assert steel_tape_correction(304.8082, 42) == pytest.approx(304.757, abs=5e-4)
    assert steel_tape_reading(304.757, 42) == pytest.approx(304.8082, abs=5e-4)


def test_a_hot_tape_reads_short() -> None:
    """Arithmetic: at 108 F, 40 F over its standard, 40 ft of tape are 480 x 6.45e-6 x 40 = 0.124 in. too long."""
    assert steel_tape_reading(FORTY_FEET, 108) == pytest.approx(FORTY_FEET - 0.1238, abs=1e-4)
    assert steel_tape_correction(FORTY_FEET, 108) == pytest.approx(FORTY_FEET + 0.1238, abs=1e-4)


def test_a_steel_tape_is_right_at_its_standard_temperature() -> None:
    """68 F = 20 C."""
    assert steel_tape_reading(FORTY_FEET, 68) == steel_tape_correction(FORTY_FEET, 68) == FORTY_FEET
    assert fahrenheit(20, "C") == pytest.approx(68)
    assert fahrenheit(42, "F") == 42
