"""Laying windows and advice on fixing lines in a panel's results, and their lengths in the project's unit."""

import json
from typing import Any

import pytest
from shapes import CASES

from app.documents.project_file import read_project
from app.documents.results import layout_result
from app.workflow.compute import compute


def drift_of(**more: Any) -> dict[str, Any]:
    file = json.loads((CASES / "b1.json").read_text(encoding="utf-8")) | more
    project = read_project(file)
    wall = project.walls[0]
    done = compute(project, wall, wall.panels[0])
    parts = (done.layout, done.plan, done.cutting, done.drift, done.takeoff, done.saw)
    drift: dict[str, Any] = layout_result(project, wall, wall.panels[0], *parts)["drift"]
    return drift


def test_each_span_has_its_window_and_one_that_is_too_long_its_fixing_lines() -> None:
    drift = drift_of(day={"bed_low": 55, "bed_high": 105})
    assert [(span["axis"], span["from"], span["to"]) for span in drift["windows"]] == [("x", 0, 480), ("y", 0, 360)]
    for span, advice in zip(drift["windows"], drift["fixing_advice"], strict=True):
        assert span["high"] - 70 == pytest.approx(0.125 / (span["to"] * 4.5e-5)) == pytest.approx(70 - span["low"])
        assert advice["growth"] == pytest.approx(span["to"] * 4.5e-5 * 35)
        assert advice["least"] <= 0.125 + 1e-6
        assert all(line["growth"]["after"] < line["growth"]["before"] for line in advice["lines"])
    first = drift["fixing_advice"][0]["lines"][0]
    assert first["position"] == pytest.approx(480 - first["nominal"])
    assert [point[0] for point in first["line"]] == [first["position"]] * 2
    assert first["mark"] in {point["mark"] for point in drift["checkpoints"]}


def test_a_day_at_the_reference_temperature_needs_no_fixing() -> None:
    drift = drift_of(day={"bed_low": 70, "bed_high": 70})
    assert drift["worst_span"] is None
    assert drift["fixing_advice"] == []
    assert len(drift["windows"]) == 2
