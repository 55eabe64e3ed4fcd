"""The verdict on the tablet is the server's, word by word, whatever was read, at any temperature, in either unit."""

import json
from dataclasses import replace
from pathlib import Path
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Page

from app.documents.bed_set import BedInputs, bed_set
from app.documents.project_file import read_project
from app.liner.readings import judge
from app.liner.readings_ahead import joints_ahead
from app.liner.readings_values import Reading
from app.panel.project import Project
from app.workflow.compute import Computed, compute

pytestmark = pytest.mark.browser

YARD = Path(__file__).parents[2] / "demo_data" / "casting_yard.json"
CASES = 4000

JUDGED = """async ([address, cases, points, unit, degree]) => {
  const { judge } = await import(address);
  return cases.map(({ mark, reading }) => judge(reading, points[mark], unit, degree));
}"""


def panel(project: Project, number: int) -> tuple[Computed, dict[str, Any]]:
    wall = project.walls[0]
    drawn = wall.panels[number]
    done = compute(project, wall, drawn)
    parts = done.layout, done.plan, done.drift, done.sheet_work, done.face, done.takeoff, done.findings
    return done, bed_set(BedInputs(project, wall, drawn, *parts))


def project_in(unit: str, degree: str) -> Project:
    project = read_project(json.loads(YARD.read_text()))
    if degree == "C":
        liner = replace(project.liner, expansion_per_degree=8.1e-5, reference_temperature=21.0)
        project = replace(project, liner=liner, day=replace(project.day, bed_low=13.0, bed_high=39.0))
    return replace(project, length_unit=unit, temperature_unit=degree)


def cases(points: list[Any], unit: str, degree: str, random: Random) -> list[dict[str, Any]]:
    """Readings mostly near their points, some far off; to 1/16 in. or 1 mm, or anything; temperatures taken or not."""
    low, high = (20.0, 140.0) if degree == "F" else (-5.0, 60.0)
    found = []
    for _ in range(CASES):
        point = random.choice(points)
        off = random.choice((0.05, 0.2, 0.6, 2.0))
        value = max(0.0, point.nominal + random.uniform(-off, off))
        step = random.choice((1 / 16, 1 / 64) if unit == "in" else (1 / 25.4, 0.5 / 25.4))
        value = round(value / step) * step if random.random() < 0.8 else value
        temperatures = [
            random.choice((None, round(random.uniform(low, high)), round(random.uniform(low, high), 1) + 0.0))
            for _ in range(2)
        ]
        reading = {"value": value, "bed": temperatures[0], "tape": temperatures[1]}
        found.append({"mark": point.mark, "reading": reading})
    return found


@pytest.mark.parametrize(("unit", "degree"), [("in", "F"), ("mm", "C"), ("in", "C"), ("mm", "F")])
def test_the_tablet_says_what_the_server_says(page: Page, unit: str, degree: str) -> None:
    page.goto("/")
    script = page.evaluate("document.querySelector('script[src*=htmx]').src").replace("htmx.js", "bed/verdict.js")
    project, random = project_in(unit, degree), Random(f"{unit} {degree}")
    kinds = set()
    for number in (0, 1, 4):
        done, given = panel(project, number)
        points = {point["mark"]: point for point in given["checkpoints"]}
        asked = cases(list(done.drift.checkpoints), unit, degree, random)
        told = page.evaluate(JUDGED, [script, asked, points, unit, degree])
        for case, theirs in zip(asked, told, strict=True):
            point = next(one for one in done.drift.checkpoints if one.mark == case["mark"])
            reading = Reading(case["mark"], *case["reading"].values())
            ahead = joints_ahead(done.layout, project.liner, done.drift, point)
            ours = judge(reading, point, ahead, unit, degree)
            assert (theirs["kind"], theirs["said"], theirs["instruction"]) == (
                ours.kind,
                ours.said,
                ours.instruction,
            ), case
            kinds.add(ours.kind)
    assert kinds == {"hold", "adjust", "relay", "measure"}
