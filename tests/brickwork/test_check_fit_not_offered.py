"""Joints asked to give in a bond that offers no grid: what the check says of it."""

from dataclasses import replace

import pytest
from shapes import rectangle

from app.brickwork.checks.fit_not_offered import check
from app.brickwork.findings import Finding
from app.brickwork.layout import lay_out
from app.panel.values import Fit


def found(bond: str, courses: bool = False, heads: bool = False) -> list[Finding]:
    return list(check(lay_out(replace(rectangle(80, 40, bond), fit=Fit(courses, heads))), "in"))


@pytest.mark.parametrize("bond", ["running", "stack", "english", "flemish", "herringbone-45"])
def test_joints_that_are_not_asked_to_give_are_not_missed(bond: str) -> None:
    assert found(bond) == []


def test_running_bond_offers_both_and_flemish_its_courses() -> None:
    """Running bond is stretchers only; Flemish has headers and stretchers in each course (common practice)."""
    assert found("running", courses=True, heads=True) == []
    assert found("flemish", courses=True) == []


def test_flemish_cannot_let_head_joints_give() -> None:
    (one,) = found("flemish", courses=True, heads=True)
    assert (one.code, one.severity, one.about) == ("fit-not-offered", "warning", "fit heads")
    assert one.text.startswith("Head joints cannot give in ")
    assert "its units have 2 lengths. Take a bond of level units all one length" in one.text


def test_turned_herringbone_offers_neither() -> None:
    bed, head = found("herringbone-45", courses=True, heads=True)
    assert (bed.about, head.about) == ("fit courses", "fit heads")
    assert all("it is turned 45 degrees. Take a bond" in one.text for one in (bed, head))
