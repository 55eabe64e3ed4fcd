"""The engine's layout against a plain per-unit shapely loop (`tests/loop.py`): the same pieces, one by one."""

import pytest
from loop import assert_equal_to_loop
from shapes import SHAPES, case, example, rectangle

from app.brickwork.bonds import BONDS


def test_the_bench_panel_equals_the_loop_and_its_known_counts() -> None:
    layout = assert_equal_to_loop(case("b1"))
    assert (len(layout.units), layout.whole, len(layout.trims), layout.small) == (5929, 5144, 785, 177)


def test_a_herringbone_gable_with_a_round_window_equals_the_loop() -> None:
    layout = assert_equal_to_loop(case("b3"))
    assert layout.whole > 4000
    assert len(layout.trims) > 300


def test_a_door_through_the_bottom_edge_equals_the_loop() -> None:
    assert_equal_to_loop(case("door"))


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("bond", BONDS)
def test_every_bond_on_every_shape_equals_the_loop(bond: str, shape: str) -> None:
    assert_equal_to_loop(example(shape, "modular", bond))


def test_a_field_that_the_margins_eat_up_has_no_unit() -> None:
    layout = assert_equal_to_loop(rectangle(20, 10, margin=5))
    assert len(layout.units) == 0
    assert layout.area.field == 0
