"""Projects made of example panels, computed in full, for tests and benches of what is printed of them."""

from dataclasses import replace
from datetime import date

from shapes import case, example

from app.brickwork.layout import lay_out
from app.documents.digest import panel_digest
from app.documents.panel_results import Issue, PanelResults
from app.documents.project_file import sizes_of
from app.documents.results import all_findings
from app.liner.drift import drift
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.takeoff import takeoff
from app.order.work import FaceWork, PanelWork
from app.panel.project import Project, Wall
from app.panel.values import Panel

ISSUE = Issue(date(2026, 3, 2), "B")

DEMO = ("window", "door", "gable", "stepped top", "round vent", "arch", "strip", "plate", "edges", "soldier band",
        "stack panel", "herringbone panel")  # fmt: skip


def project_of(*panels: Panel, name: str = "Dry Creek Depot", unit: str = "in") -> Project:
    """One wall of these panels."""
    return Project(name, (Wall("North", panels),), unit)


def twelve_panels() -> Project:
    """Twelve small panels, no two alike."""
    return project_of(*(example(shape) for shape in DEMO))


def panels_like_b1(count: int) -> Project:
    """The large reference panel so many times, each under its own mark."""
    return project_of(*(replace(case("b1"), mark=f"P{place + 1}") for place in range(count)))


def computed(project: Project) -> list[PanelResults]:
    """Every panel's results, wall by wall."""
    return [panel_results(project, wall, panel) for wall in project.walls for panel in wall.panels]


def panel_results(project: Project, wall: Wall, panel: Panel) -> PanelResults:
    """One panel's results at its first revision."""
    unit, degrees = project.length_unit, project.temperature_unit
    layout = lay_out(panel, sizes_of(project))
    plan = sheet_plan(layout, project.liner)
    cutting = cutting_plan(layout, plan, project.liner)
    work, rules = PanelWork(FaceWork(layout, project.blend), plan, cutting), Rules.of(project)
    drifted = drift(layout, project.liner, project.day, degrees, length_unit=unit)
    return PanelResults(
        wall=wall,
        panel=panel,
        layout=layout,
        plan=plan,
        cutting=cutting,
        drift=drifted,
        takeoff=takeoff([work], saw_list([work.face], rules), rules),
        findings=all_findings(layout, plan, drifted, unit),
        revision="1",
        digest=panel_digest(project, wall, panel),
    )
