"""A layout whose joints have given: the plain loop agrees, bricks keep their size, and the laws hold."""

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from laws import assert_laws
from loop import assert_equal_to_loop
from random_panels import panels
from shapes import case, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.checks import findings
from app.brickwork.layout import lay_out
from app.brickwork.place import Place
from app.brickwork.sizes import CATALOGUE
from app.brickwork.stretch import Stretch
from app.documents.project_file import read_panel
from app.panel.values import Panel

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


@RANDOM
@given(panels(zones=0), st.booleans(), st.booleans())
def test_a_fitted_panel_equals_the_loop_and_met_lines_are_met(
    document: dict[str, Any], courses: bool, heads: bool
) -> None:
    panel = read_panel({**document, "fit": {"courses": courses, "heads": heads}})
    layout = assert_equal_to_loop(panel)
    assert_laws(layout)
    joint = layout.size.head_joint.inches
    for outcome in layout.states.horizontal:
        assert abs(outcome.joint_change) <= min(1 / 32, joint / 3) + 1e-9
    bed = layout.size.gauge - layout.size.height.inches
    for outcome in layout.states.vertical:
        assert abs(outcome.joint_change) <= min(1 / 32, bed / 3) + 1e-9


def test_a_head_that_is_a_little_off_is_met_once_bed_joints_give_and_its_rips_are_gone() -> None:
    """Head 3/8 in. over a course line, 21 courses up: every bed joint below gives less than 1/32 in."""
    margin = 5 / 12
    head = 0.375 + 30 * 8 / 3 - margin + 3 / 8
    opening = {"mark": "W1", "rect": [60.375 - 0.375 + 0.375, 0.375 + 9 * 8 / 3 - 5 / 12 + 0.375, 40.375, 0]}
    opening["rect"][3] = head - opening["rect"][1]
    plain = rectangle(200, 200, openings=[opening], margin=0.375)
    fitted = rectangle(200, 200, openings=[opening], margin=0.375, fit={"courses": True})
    before, after = lay_out(plain), lay_out(fitted)
    state = {outcome.control.name: outcome for outcome in after.states.vertical}
    assert state["head W1"].is_met
    assert not {outcome.control.name: outcome for outcome in before.states.vertical}["head W1"].is_met
    assert len(after.trims) < len(before.trims)


def test_a_required_head_out_of_reach_is_told_with_what_joints_would_have_to_give() -> None:
    matter = {"heads": "required", "edges": "required"}
    opening = {"mark": "W1", "rect": [60, 4, 40, 9.5]}
    panel = rectangle(200, 40, openings=[opening], fit={"courses": True, "matter": matter})
    found = [finding for finding in findings(lay_out(panel)) if finding.code == "required-missed"]
    assert any(finding.about == "head W1" for finding in found)
    assert all(finding.severity == "error" and "would have to give" in finding.text for finding in found)


def test_what_a_joint_may_give_is_told_within_its_range_and_in_the_unit_of_the_project() -> None:
    """A bed joint of 5/12 in. gives a third of itself, 0.1389 in. or 3.53 mm, whatever more the project allows."""
    matter = {"heads": "required", "sills": "free", "edges": "required"}
    panel = rectangle(200, 40, openings=[{"mark": "W1", "rect": [60, 1, 40, 3]}], fit={"matter": matter})
    asked = replace(panel, fit=replace(panel.fit, courses=True))

    def text(drawn: Panel, unit: str) -> str:
        laid = lay_out(drawn, place=Place(give=0.5))
        return next(one.text for one in findings(laid, unit) if one.about == "head W1")

    assert text(asked, "in").startswith("Head W1 must be met")
    assert "each, 0.1389 in. is allowed" in text(asked, "in")
    assert "each, 3.53 mm is allowed" in text(asked, "mm")
    assert "no joint is asked to give" in text(panel, "in")


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


@pytest.mark.parametrize("bond", ["running", "stack", "soldier"])
@pytest.mark.parametrize("height", [95.6, 96.9])
def test_a_band_takes_part_in_the_fit_and_no_brick_is_cut_along_its_seams(bond: str, height: float) -> None:
    zone = {"mark": "Y", "size": "modular", "bond": bond, "band": {"course": 25, "courses": 3}}
    plain = rectangle(120, height, zones=[zone], margin=0.375, field={"size": "modular", "bond": "running"})
    layout = assert_equal_to_loop(replace(plain, fit=replace(plain.fit, courses=True)))
    assert not layout.lines.up.is_identity
    assert_laws(layout)
    units = layout.units
    inside = (units.y > 20) & (units.y + units.height < height - 6)
    assert {round(each, 6) for each in units.height[inside].tolist()} <= {2.25, 7.625}
