"""A brick estimate worked in print, found from layouts.

Source: US Navy training manual 14045, brick estimating example: standard brick 8 x 2-1/4 in. with 1/2 in. joints all
round, 6.16 bricks a sq ft; a wall 14 x 8 ft without openings takes 690 bricks, with 10 % for waste 760.
"""

from math import ceil

import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.lengths import Length
from app.order.packs import overage
from app.panel.size import BrickSize
from app.panel.values import Panel

SIZES = {
    "modular": BrickSize(
        name="standard with 1/2 in. joints",
        length=Length.from_inches(8),
        height=Length.from_inches(2.25),
        thickness=Length.from_inches(0.625),
        head_joint=Length.from_inches(0.5),
        courses=1,
        per=Length.from_inches(2.75),
    )
}


def _laid(panel: Panel) -> Layout:
    return lay_out(panel, SIZES)


def _per_square_foot() -> float:
    """Bricks a sq ft of a face of whole modules: 34 bricks along, 48 courses up."""
    layout = _laid(rectangle(34 * 8.5, 48 * 2.75, "stack"))
    assert len(layout.trims) == 0
    return layout.whole / (layout.area.field / 144)


def test_a_square_foot_takes_6_16_bricks() -> None:
    assert round(_per_square_foot(), 2) == 6.16


def test_a_wall_of_14_by_8_ft_takes_690_bricks_and_760_with_waste() -> None:
    """The wall's area as laid x bricks a sq ft as laid, up to the whole brick; 759 with waste, up to tens in print."""
    wall = _laid(rectangle(14 * 12, 8 * 12))
    bricks = ceil(wall.area.field / 144 * _per_square_foot())
    assert bricks == 690
    assert bricks + overage(bricks, 10) == 759
    assert ceil(759 / 10) * 10 == 760


def test_the_face_itself_agrees_with_the_estimate_to_2_percent() -> None:
    """Brick laid in the wall, whole and trimmed, in bricks; the estimate knows no edges of the wall."""
    layout = _laid(rectangle(14 * 12, 8 * 12))
    assert layout.area.brick / (8 * 2.25) == pytest.approx(690, rel=0.02)
