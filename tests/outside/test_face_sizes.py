"""Face sizes of bricks as laid: height x length of whole units.

Source: *Standardized Brick Sizes*, Masonry Magazine, October 1993, p. 34. Where it prints a range (engineer modular
2-3/4 to 2-13/16 in. high, king 2-5/8 to 2-3/4, queen 7-5/8 to 8 long) the catalogue's size lies in it.
"""

import pytest
from shapes import rectangle

from app.brickwork.layout import lay_out

FACES = [
    ("modular", 2.25, 2.25, 7.625, 7.625),
    ("engineer modular", 2.75, 2.8125, 7.625, 7.625),
    ("closure", 3.625, 3.625, 7.625, 7.625),
    ("roman", 1.625, 1.625, 11.625, 11.625),
    ("norman", 2.25, 2.25, 11.625, 11.625),
    ("engineer norman", 2.8125, 2.8125, 11.625, 11.625),
    ("utility", 3.625, 3.625, 11.625, 11.625),
    ("standard", 2.25, 2.25, 8, 8),
    ("king", 2.625, 2.75, 9.625, 9.625),
    ("queen", 2.75, 2.75, 7.625, 8),
]


@pytest.mark.parametrize(("size", "lowest", "highest", "shortest", "longest"), FACES)
def test_a_whole_unit_has_the_listed_face(
    size: str, lowest: float, highest: float, shortest: float, longest: float
) -> None:
    layout = lay_out(rectangle(60, 40, "running", size))
    whole = ~layout.units.is_trimmed
    assert whole.any()
    assert ((layout.units.height[whole] > lowest - 1e-9) & (layout.units.height[whole] < highest + 1e-9)).all()
    assert ((layout.units.width[whole] > shortest - 1e-9) & (layout.units.width[whole] < longest + 1e-9)).all()
