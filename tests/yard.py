"""The panels of the demo's casting yard, each computed once for all tests."""

import json
from functools import cache
from pathlib import Path

from app.documents.project_file import read_project
from app.panel.project import Project
from app.workflow.compute import Computed, compute

DEMO = Path(__file__).parents[1] / "demo_data"
PANELS = ("N1", "N2", "N3", "N4", "N5", "N6", "E1", "E2", "E3", "E4", "E5", "B1")


@cache
def project_of(name: str) -> Project:
    """A demo project."""
    return read_project(json.loads((DEMO / f"{name}.json").read_text()))


@cache
def panel_of(mark: str) -> Computed:
    """All results of a panel of the yard."""
    project = project_of("casting_yard")
    wall, panel = next((wall, panel) for wall in project.walls for panel in wall.panels if panel.mark == mark)
    return compute(project, wall, panel)
