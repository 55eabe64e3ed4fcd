"""Heads and sills against the courses: brick starts one margin above a head and stops one below a sill.

Three courses of modular brick are 8 in. high and the brick 2-1/4 in. (BIA Technical Notes 10B, Table 1); the rest is
arithmetic.
"""

from typing import Any

import pytest
from shapes import rectangle

from app.brickwork.checks.missed_control import check
from app.brickwork.findings import Finding
from app.brickwork.layout import lay_out


def found(*openings: dict[str, Any], **more: Any) -> list[Finding]:
    return list(check(lay_out(rectangle(96, 96, openings=list(openings), **more)), "in"))


def window(sill: float, height: float, **more: Any) -> dict[str, Any]:
    return {"mark": "W1", "rect": [24, sill, 48, height], **more}


def test_a_head_on_a_course_line_and_a_sill_in_a_bed_joint_are_met() -> None:
    assert found(window(24, 40)) == []


def test_a_head_that_rips_a_course_says_by_how_much_and_which_height_would_course() -> None:
    """Head at 65: 1 in. over the foot of the course at 64, so 2-1/4 - 1 = 1-1/4 in. of it is left."""
    (head,) = found(window(24, 41))
    assert (head.code, head.about, head.x, head.y) == ("missed-head", "head W1", 48, 65)
    assert head.text.startswith('Head W1 stands 1" off the courses and rips a course, 1 1/4" of 2 1/4" high; 1" lower')
    assert "at 5'-4\"" in head.text
    assert found(window(24, 40)) == []


def test_a_sill_that_rips_a_course_would_course_at_the_top_of_a_brick() -> None:
    """Sill at 25: 1 in. of the course from 24 is left; its top is at 26-1/4, the one below's at 24 - 5/12."""
    (sill,) = found(window(25, 39))
    assert (sill.code, sill.about) == ("missed-sill", "sill W1")
    assert 'rips a course, 1" of 2 1/4" high; 1 1/4" higher, at 2\'-2 1/4"' in sill.text


def test_what_is_too_thin_to_be_a_brick_is_called_a_sliver() -> None:
    (head,) = found(window(24, 42.125))
    assert 'leaves a sliver as joint, 1/8" of 2 1/4" high' in head.text


def test_an_own_margin_of_a_side_counts() -> None:
    assert found(window(24, 39.5, sides=[{"side": "head", "treatment": "margin", "margin": 0.5}])) == []


@pytest.mark.parametrize("bond", ["herringbone-45", "herringbone-90", "basket-weave"])
def test_bonds_without_courses_of_one_height_have_no_missed_heads(bond: str) -> None:
    layout = lay_out(rectangle(96, 96, bond, openings=[window(25, 39)]))
    assert list(check(layout, "in")) == []


def test_round_openings_have_no_head_and_a_door_has_no_sill() -> None:
    circle = {"mark": "V1", "circle": [48, 49, 12]}
    arch = {"mark": "A1", "arch": [24, 25, 40, 30, 10]}
    assert found(circle) == []
    assert [one.about for one in found(arch)] == ["sill A1"]
    assert [one.about for one in found({"mark": "D1", "rect": [24, -2, 40, 67]})] == ["head D1"]


def test_courses_of_soldiers_are_8_inches_high() -> None:
    """Soldier of modular brick: 7-5/8 in. with its joint 8; a head at 64 courses, at 60 leaves half."""
    assert list(check(lay_out(rectangle(96, 96, "soldier", openings=[window(24, 40)])), "in")) == []
    (head,) = check(lay_out(rectangle(96, 96, "soldier", openings=[window(24, 36)])), "in")
    assert 'rips a course, 3 5/8" of 7 5/8"' in head.text
