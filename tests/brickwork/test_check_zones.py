"""Seams of zones, zones outside the face, joints out of range, and panels that do not run on from their wall."""

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.checks.joint_range import check as joint_range
from app.brickwork.checks.off_neighbour import off_lattice
from app.brickwork.checks.zone_outside import check as zone_outside
from app.brickwork.checks.zone_seam import check as zone_seam
from app.brickwork.layout import Layout, lay_out
from app.brickwork.place import Place
from app.brickwork.sizes import CATALOGUE
from app.brickwork.stretch import Stretch

MODULAR = CATALOGUE["modular"]


def with_zone(bond: str = "running", field: str = "running", **region: Any) -> Layout:
    zone = {"mark": "Z", "size": "modular", "bond": bond, **region}
    return lay_out(rectangle(64, 48, field, zones=[zone]))


def band(courses: int) -> dict[str, int]:
    return {"course": 6, "courses": courses}


def test_a_soldier_band_is_three_courses_high_and_a_rowlock_band_is_not_two() -> None:
    """Soldier band of modular brick: 8 in. = 3 courses; one rowlock course, 4 in., is no whole number of courses (faces
    per US Navy manual 14069, fig. 7-53): two courses, 5-1/3 in., rip the second rowlock."""
    assert list(zone_seam(with_zone("soldier", band=band(3)), "in")) == []
    assert list(zone_seam(with_zone("rowlock", band=band(3)), "in")) == []
    for bond in ("rowlock", "soldier"):
        (found,) = zone_seam(with_zone(bond, band=band(2)), "in")
        assert (found.code, found.about) == ("zone-seam", "zone Z upper edge")
        assert "rips a course of the zone" in found.text


def test_a_zone_off_the_course_lines_rips_the_fields_courses() -> None:
    """Zone from 17 to 33: 1 in. over course lines at 16 and 32; below it 17 - 5/12 - 16 = 7/12 in. of a brick is
    left, above it 2-1/4 - 1 = 1-1/4 in."""
    low, high = zone_seam(with_zone("stack", rect=[16, 17, 16, 16]), "in")
    assert [low.about, high.about] == ["zone Z lower edge", "zone Z upper edge"]
    assert 'of the field to ≈ 9/16" of 2 1/4"' in low.text
    assert 'of the field to 1 1/4" of 2 1/4"; 1" lower' in high.text
    assert list(zone_seam(with_zone("stack", rect=[16, 16, 16, 16]), "in")) == []


def test_no_seam_where_the_zone_ends_with_the_face_or_has_no_courses() -> None:
    assert list(zone_seam(with_zone("stack", rect=[16, 0, 16, 48]), "in")) == []
    assert list(zone_seam(with_zone("herringbone-45", "herringbone-45", rect=[16, 17, 16, 16]), "in")) == []


def test_a_zone_partly_outside_says_by_how_much_area() -> None:
    """24 x 24 in., of which 12 x 24 = 288 sq in. = 2 sq ft is past the right edge, of 4 sq ft."""
    (found,) = zone_outside(with_zone(rect=[52, 8, 24, 24]), "in")
    assert (found.code, found.about) == ("zone-outside", "zone Z")
    assert "2.00 sq ft of its 4.00 sq ft" in found.text
    assert found.x > 64
    (metric,) = zone_outside(with_zone(rect=[52, 8, 24, 24]), "mm")
    assert "0.186 m2 of its 0.372 m2" in metric.text


def test_zones_inside_wholly_outside_or_along_the_edge_are_not_partly_outside() -> None:
    for region in ({"rect": [0, 0, 64, 48]}, {"rect": [8, 8, 24, 24]}, {"band": {"course": 90, "courses": 3}}):
        assert list(zone_outside(with_zone(**region), "in")) == []


def test_a_band_counts_only_over_and_under_the_face() -> None:
    assert list(zone_outside(with_zone(band=band(3)), "in")) == []
    (found,) = zone_outside(with_zone(band={"course": 16, "courses": 4}), "in")
    assert "outside the face" in found.text


def test_joints_in_range_are_not_found_and_others_once_a_stretch() -> None:
    """Bed joint of modular brick 5/12; 2/3 to 4/3 of it, as 1/4 to 1/2 in. of 3/8, is 5/18 to 5/9 (common practice).
    Twelve courses over 34 in. instead of 32: 34/12 - 2-1/4 = 7/12 in., over 5/9."""
    panel = rectangle(64, 48)

    def found(top: float) -> list[str]:
        courses = Stretch((0.0, 32.0), (0.0, top))
        layout = lay_out(replace(panel, field=replace(panel.field, origin=None)), place=Place((0.0, 0.0), courses))
        return [one.text for one in joint_range(layout, "in")]

    assert found(32.375) == []
    (text,) = found(34)
    assert text.startswith('Bed joints from base are ≈ 37/64"; ≈ 9/32" to ≈ 9/16" is in range.')
    assert len(found(30)) == 1


def test_slivers_left_out_along_a_head_make_the_bed_joint_too_wide() -> None:
    """Head at 66-1/16: 3/16 in. of the course from 64 is left out; with the bed joint of 5/12 that is 29/48 in."""
    window = {"mark": "W1", "rect": [16, 24, 32, 42.0625]}
    (found,) = joint_range(lay_out(rectangle(64, 96, openings=[window])), "in")
    assert (found.code, found.about) == ("joint-range", "head W1")
    assert 'Bed joint at head W1 is ≈ 5/8"' in found.text


@pytest.mark.parametrize("name", sorted(BONDS))
def test_whole_lattice_vectors_are_no_difference(name: str) -> None:
    bond, shifts = BONDS[name], np.array([(1, 0), (0, 1), (7, -5), (-40, 33)])
    turn = np.radians(bond.turn)
    vectors = np.array([[part.inches(MODULAR) for part in vector] for vector in (bond.across, bond.up)])
    turning = np.array([[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])
    for shift in shifts @ vectors @ turning:
        assert off_lattice(bond, MODULAR, tuple(shift)) == pytest.approx((0, 0), abs=1e-6)


def test_courses_are_matched_before_head_joints() -> None:
    """Running bond one course up is half a module off, not a course off; 3 in. more is one less than half of 8."""
    across, up = off_lattice(BONDS["running"], MODULAR, (0, 8 / 3))
    assert (abs(across), up) == pytest.approx((4, 0))
    assert off_lattice(BONDS["running"], MODULAR, (3, 1)) == pytest.approx((3, 1))


def test_a_band_over_the_topmost_courses_is_not_outside_for_the_bed_joint_above_it() -> None:
    zone = {"mark": "B", "band": {"course": 33, "courses": 3}, "size": "modular", "bond": "soldier"}
    panel = rectangle(120, 96 + 1 / 3, zones=[zone], margin=0.375, field={"size": "modular", "bond": "running"})
    assert list(zone_outside(lay_out(panel), "in")) == []
