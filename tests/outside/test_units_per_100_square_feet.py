"""Units per 100 sq ft of face, counted on faces of whole modules.

Source: constructionmentor.net prints 675 for modular brick; the other sizes are arithmetic on their nominal grid
(geometry).
"""

import pytest
from shapes import rectangle

from app.brickwork.layout import lay_out


@pytest.mark.parametrize(
    ("size", "per_100_square_feet"),
    [
        ("modular", 675),
        ("engineer modular", 562.5),
        ("closure", 450),
        ("roman", 600),
        ("norman", 450),
        ("utility", 300),
    ],
)
def test_a_face_of_10_by_20_ft_holds_the_printed_number_of_units(size: str, per_100_square_feet: float) -> None:
    """120 x 240 in. is whole modules of every one of these sizes; each unit has its joints inside the face."""
    layout = lay_out(rectangle(120, 240, "stack", size))
    assert len(layout.trims) == 0
    assert layout.area.field / 144 == 200
    assert layout.whole == 2 * per_100_square_feet
