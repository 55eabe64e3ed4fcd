"""The bed joint is what coursing leaves over the brick, not the joint that a size is listed with.

Source: BIA Technical Notes on Brick Construction 10B, revised June 1993, Table 1, footnote: bed joints vary with
coursing and unit height, the listed joint is for length and width. The rule is the source's, the values are
arithmetic from its heights and coursing (gauge less height).
"""

from dataclasses import replace

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.layout import lay_out
from app.brickwork.sizes import CATALOGUE
from app.lengths import Length
from app.panel.size import BrickSize


def _bed_joint(size: BrickSize) -> float:
    """Clear height between two courses of a laid face, inches."""
    layout = lay_out(rectangle(24, 12, "stack", "modular"), {"modular": size})
    bottoms = np.unique(layout.units.y.round(9))
    return float(bottoms[1] - (layout.units.y + layout.units.height).min())


@pytest.mark.parametrize(
    ("name", "joint"),
    [
        ("modular", 5 / 12),
        ("engineer modular", 0.450),
        ("engineer norman", 0.3875),
        ("closure", 3 / 8),
        ("utility", 3 / 8),
    ],
)
def test_the_bed_joint_is_gauge_less_height(name: str, joint: float) -> None:
    assert _bed_joint(CATALOGUE[name]) == pytest.approx(joint, abs=1e-9)
    assert CATALOGUE[name].bed_joint == pytest.approx(joint, abs=1e-9)


def test_an_engineer_brick_2_13_16_high_has_a_bed_joint_of_0_3875() -> None:
    tall = replace(CATALOGUE["engineer modular"], height=Length.from_inches(2.8125))
    assert _bed_joint(tall) == pytest.approx(0.3875, abs=1e-9)


def test_the_modular_bed_joint_is_not_the_listed_three_eighths() -> None:
    assert _bed_joint(CATALOGUE["modular"]) - CATALOGUE["modular"].head_joint.inches == pytest.approx(1 / 24, abs=1e-9)
