"""A panel is computed once for as long as it stays as it is."""

from dataclasses import replace

from broken_files import SOUND

from app.documents.project_file import read_project
from app.lengths import Length
from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.workflow.compute import compute, takeoff_of


def first() -> tuple[Project, Wall, Panel]:
    project = read_project(SOUND)
    return project, project.walls[0], project.walls[0].panels[0]


def test_the_same_panel_is_laid_out_once_however_it_was_read():
    assert compute(*first()).layout is compute(*first()).layout


def test_another_name_of_the_project_computes_nothing_again():
    project, wall, panel = first()
    assert compute(replace(project, name="Another"), wall, panel) is compute(project, wall, panel)


def test_a_change_of_the_panel_or_of_what_it_shares_computes_again():
    project, wall, panel = first()
    done = compute(project, wall, panel)
    assert compute(project, wall, replace(panel, margin=Length(0))).layout is not done.layout
    assert compute(replace(project, liner=replace(project.liner, columns=3)), wall, panel).plan is not done.plan
    assert compute(replace(project, day=replace(project.day, bed_high=150)), wall, panel).drift is not done.drift


def test_findings_of_the_face_come_before_those_of_the_liner():
    project, wall, panel = first()
    done = compute(project, wall, panel)
    assert done.findings[len(done.findings) - len(done.drift.findings) :] == done.drift.findings
    assert len(done.findings) > len(done.drift.findings)


def test_the_order_for_all_panels_counts_what_each_counts():
    project, wall, _ = first()
    done = [compute(project, wall, panel) for panel in wall.panels]
    alone = sum(line.net for panel in done for line in panel.takeoff.lines if line.kind == "stretcher")
    assert sum(line.net for line in takeoff_of(project, done).lines if line.kind == "stretcher") == alone
