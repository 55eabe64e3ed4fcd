"""A course that would end in a small piece ends in closers.

Source: Masonry Construction magazine, *Bricking around openings*: at jambs use a half and a three-quarter; *Eliminating
odd-size bricks around openings*: the 6 ft door centred in an 11 ft wall.
"""

from dataclasses import replace

import pytest
from laws import assert_laws
from shapes import CROSSED, case, example, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.panel.values import Panel


def _closed(drawn: Panel) -> Layout:
    return lay_out(replace(drawn, fit=replace(drawn.fit, closers=True)))


def _ends_at(layout: Layout, jamb: float) -> list[float]:
    u = layout.units
    below = u.y + u.height < 84
    return sorted({round(float(w), 4) for w in u.width[below & (abs(u.x + u.width - jamb) < 1e-6)]})


def test_the_two_inch_pieces_beside_the_door_become_a_half_and_a_three_quarter() -> None:
    plain, closed = lay_out(case("door")), _closed(case("door"))
    assert _ends_at(plain, 30) == [2.0, 6.0]
    assert _ends_at(closed, 30) == [3.625, 6.0]
    assert plain.small > 0
    assert closed.small == 0
    assert_laws(closed)


def test_as_much_face_is_brick_as_before() -> None:
    plain, closed = lay_out(case("b1")), _closed(case("b1"))
    assert closed.brick_area == pytest.approx(plain.brick_area, rel=1e-9)
    assert closed.small < plain.small


@pytest.mark.parametrize("shape", CROSSED)
@pytest.mark.parametrize("bond", [name for name, bond in BONDS.items() if bond.turn == 0])
def test_the_laws_hold_with_closers_in_every_bond_on_every_shape(bond: str, shape: str) -> None:
    drawn = example(shape, bond=bond)
    closed = _closed(drawn)
    assert_laws(closed)
    assert closed.small <= lay_out(drawn).small


def test_a_piece_cut_at_both_ends_is_not_joined_to_the_brick_beyond_a_strip() -> None:
    """Strip from 39-5/8 to 40-3/8 between two stretchers, window from 42: 1-5/8 in. of a brick from 40 is left."""
    strip = {"mark": "S1", "line": [[40, 0], [40, 48]], "width": 0.75}
    window = {"mark": "W1", "rect": [42, 8, 20, 24]}
    closed = _closed(rectangle(96, 48, strips=[strip], openings=[window], margin=0))
    assert_laws(closed)
    across = (closed.units.x < 39.9) & (closed.units.x + closed.units.width > 40.1)
    assert not across.any()
