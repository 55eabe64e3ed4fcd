"""A layout whose joints have given: the plain loop agrees, bricks keep their size, and the laws hold."""

from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from laws import assert_laws
from loop import assert_equal_to_loop
from random_panels import panels
from shapes import case

from app.brickwork.bonds import BONDS
from app.brickwork.layout import lay_out
from app.brickwork.place import Place
from app.brickwork.sizes import CATALOGUE
from app.brickwork.stretch import Stretch
from app.documents.project_file import read_panel

RANDOM = settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))


def _stretch(gauge: float, start: float, give: list[float]) -> Stretch:
    """Knots at every third course from `start`, each bed joint between two of them changed by one of `give`."""
    nominal = start + 3 * gauge * np.arange(len(give) + 1)
    real = nominal + np.concatenate([[0.0], np.cumsum(3 * np.array(give))])
    return Stretch(tuple(nominal.tolist()), tuple(real.tolist()))


@RANDOM
@given(panels(), st.lists(st.floats(-1 / 32, 1 / 32), min_size=1, max_size=12))
def test_the_loop_agrees_where_bed_joints_have_given(document: dict[str, Any], give: list[float]) -> None:
    panel = read_panel(document)
    bond = BONDS[panel.field.bond]
    level = bond.turn == 0 and all(cell.kind in ("stretcher", "header") for cell in bond.cells)
    origin = lay_out(panel).origin
    courses = _stretch(CATALOGUE[panel.field.size].gauge, origin[1], give) if level else None
    layout = assert_equal_to_loop(panel, place=Place(courses=courses))
    assert_laws(layout)


def test_bricks_keep_their_size_and_only_joints_change() -> None:
    panel = case("b1")
    plain = lay_out(panel)
    laid = lay_out(panel, place=Place(courses=_stretch(8 / 3, plain.origin[1], [1 / 32, -1 / 64] * 10)))
    whole = ~laid.units.is_trimmed
    assert set(np.round(laid.units.height[whole], 9)) == {2.25}
    assert set(np.round(laid.units.width[whole], 9)) == {7.625}
    bottoms = np.array([course.bottom for course in laid.courses])
    joints = np.diff(bottoms) - 2.25
    assert joints.max() == pytest.approx(5 / 12 + 1 / 32)
    assert joints.min() == pytest.approx(5 / 12 - 1 / 64)
