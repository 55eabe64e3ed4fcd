"""Every mould makes one piece without holes, of whole repeats."""

import pytest
import shapely

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.liner.mould import mould

CELLS = [(1, 1), (1, 2), (2, 1), (3, 5), (4, 5), (5, 2), (6, 9), (8, 4), (10, 13)]


@pytest.mark.parametrize("cells", CELLS)
@pytest.mark.parametrize("bond", BONDS)
def test_a_sheet_is_one_piece_of_whole_repeats(bond: str, cells: tuple[int, int]) -> None:
    for size in CATALOGUE.values():
        shape = mould(BONDS[bond], size, *cells)
        sheet = shapely.Polygon(shape.outline)
        assert sheet.is_valid
        assert sheet.area == pytest.approx(shape.area, rel=1e-7)
        motif = abs(shape.length * shape.step[1])
        assert shape.area == pytest.approx(motif * shape.repeats[0] * shape.repeats[1])


@pytest.mark.parametrize(
    ("bond", "repeats", "width", "height"),
    [
        ("running", (6, 9), 48, 24),
        ("stack", (6, 9), 48, 24),
        ("third-raked", (6, 9), 48, 24),
        ("flemish", (3, 9), 36, 24),
        ("english", (6, 4), 48, 64 / 3),
        ("common-6", (6, 1), 48, 16),
        ("soldier", (6, 9), 15.75, 72),
    ],
)
def test_a_sheet_of_six_cells_and_nine_courses_is_rounded_down_to_whole_repeats(
    bond: str, repeats: tuple[int, int], width: float, height: float
) -> None:
    shape = mould(BONDS[bond], CATALOGUE["modular"], 6, 9)
    assert shape.repeats == repeats
    assert shape.size == pytest.approx((width, height))


def test_a_common_bond_taller_than_the_sheet_still_makes_one_repeat() -> None:
    assert mould(BONDS["common-7"], CATALOGUE["modular"], 6, 5).repeats == (6, 1)


def test_a_herringbone_sheet_lies_nearly_level() -> None:
    """Three soldiers of 2-5/8 in. come within 1/8 in. of one stretcher of 8 in.: half a degree over 15-7/8 in."""
    shape = mould(BONDS["herringbone-90"], CATALOGUE["modular"], 6, 9)
    assert abs(shape.turn) < 0.5
    assert shape.size[0] == pytest.approx(3 * (3 * 2.625 + 8), rel=1e-3)
