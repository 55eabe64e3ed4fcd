"""Sheets lie where joints have given: they still cover the field, and their edges follow the real lines."""

import numpy as np
import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.liner.drift import drift
from app.liner.sheets import sheet_plan
from app.liner.tape import joint_lines, tapes
from app.panel.project import Day, Liner


def _fitted() -> Layout:
    """A window 3/8 in. off the courses and the half modules, met by joints that give less than 1/32 in. each."""
    opening = {"mark": "W1", "rect": [96 + 0.25, 80 + 0.3, 47.6, 53.2]}
    return lay_out(rectangle(260, 200, openings=[opening], margin=0.375, fit={"courses": True, "heads": True}))


def test_sheets_of_a_fitted_face_cover_the_field_and_overlap_nowhere() -> None:
    layout = _fitted()
    assert not layout.lines.up.is_identity
    assert not layout.lines.across.is_identity
    plan = sheet_plan(layout, Liner())
    assert plan.bare == pytest.approx(0.0, abs=1e-6)
    assert sum(sheet.area for sheet in plan.sheets) == pytest.approx(layout.field.area, rel=1e-9)


def test_level_edges_of_sheets_stand_on_the_real_course_lines() -> None:
    layout = _fitted()
    feet = np.array([course.bottom for course in layout.courses])
    edges = {round(y, 9) for sheet in sheet_plan(layout, Liner()).sheets for _, y in sheet.outline}
    within = [y for y in edges if feet.min() <= y <= feet.max()]
    assert all(np.abs(feet - y).min() < 1e-6 for y in within)


def test_the_tape_reads_the_real_joint_lines() -> None:
    layout = _fitted()
    _, up = tapes(layout, "lower left")
    lines = joint_lines(layout, up, Liner())
    feet = np.array([course.bottom for course in layout.courses])
    assert all(np.abs(lines - foot).min() < 1e-6 for foot in feet if layout.field.bounds[1] <= foot)
    assert len(drift(layout, Liner(), Day(), "F").checkpoints)
