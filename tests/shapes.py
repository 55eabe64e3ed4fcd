"""Named example panels, and the project-file dictionaries they are made from. All lengths in inches.

`SHAPES` are small (about 5 x 4 ft) so that families of tests can cross every bond x size x shape.
"""

from pathlib import Path
from typing import Any

from app.documents.project_file import read_panel, read_project, read_text
from app.panel.project import Project
from app.panel.values import Panel

Document = dict[str, Any]

CASES = Path(__file__).with_name("cases")
BOX = [[0, 0], [60, 0], [60, 44], [0, 44]]

SHAPES: dict[str, Document] = {
    "plain": {"outline": BOX},
    "flush": {"outline": BOX, "margin": 0},
    "window": {"outline": BOX, "openings": [{"mark": "W1", "use": "window", "rect": [17.5, 13.25, 21, 18.5]}]},
    "two windows": {
        "outline": BOX,
        "margin": 0,
        "openings": [{"mark": "W1", "rect": [8, 8, 16.375, 16]}, {"mark": "W2", "rect": [33.0625, 9, 13, 22.75]}],
    },
    "door": {"outline": BOX, "openings": [{"mark": "D1", "use": "door", "rect": [20, -2, 19.5, 32]}]},
    "gable": {"outline": [[0, 0], [60, 0], [60, 24], [30, 50], [0, 24]]},
    "stepped top": {"outline": [[0, 0], [60, 0], [60, 46], [41, 46], [41, 33.5], [18, 33.5], [18, 40], [0, 40]]},
    "slanted": {"outline": [[3, 0], [60, 2.5], [54, 44], [0, 37]], "margin": 0},
    "round vent": {"outline": BOX, "openings": [{"mark": "V1", "use": "vent", "circle": [29, 23, 9]}]},
    "arch": {"outline": BOX, "openings": [{"mark": "A1", "use": "window", "arch": [18, 8, 22, 26, 8]}]},
    "polygon opening": {
        "outline": BOX,
        "margin": 0.5,
        "openings": [{"mark": "L1", "use": "louver", "polygon": [[14, 9], [43, 12], [38, 34], [21, 28]]}],
    },
    "strip": {"outline": BOX, "strips": [{"mark": "R1", "line": [[0, 21.5], [60, 21.5]], "width": 0.75}]},
    "plate": {"outline": BOX, "plates": [{"mark": "P1", "rect": [22.5, 17, 8, 8]}]},
    "edges": {
        "outline": BOX,
        "edges": [
            {"edge": 0, "treatment": "flush"},
            {"edge": 1, "treatment": "return", "depth": 3.625},
            {"edge": 2, "treatment": "margin", "margin": 2.5},
        ],
    },
    "soldier band": {
        "outline": BOX,
        "zones": [{"mark": "S1", "band": {"course": 6, "courses": 3}, "size": "modular", "bond": "soldier"}],
    },
    "stack panel": {
        "outline": BOX,
        "zones": [{"mark": "K1", "rect": [16, 12, 25, 17], "size": "modular", "bond": "stack"}],
    },
    "herringbone panel": {
        "outline": BOX,
        "zones": [
            {"mark": "H1", "rect": [10, 8, 32, 26], "size": "modular", "bond": "herringbone-45"},
            {"mark": "K1", "polygon": [[30, 20], [50, 16], [46, 38]], "size": "modular", "bond": "stack"},
        ],
    },
}

CROSSED = ("window", "door", "gable", "stepped top", "round vent", "stack panel")
"""The shapes that are crossed with every bond and every size: one of each sort of boundary and seam."""


def document(shape: str, size: str = "modular", bond: str = "running") -> Document:
    """The named example as a project file's panel."""
    return {"mark": shape, "thickness": 7.25, "field": {"size": size, "bond": bond}, **SHAPES[shape]}


def example(shape: str, size: str = "modular", bond: str = "running") -> Panel:
    """The named example as a panel."""
    return read_panel(document(shape, size, bond))


def case(name: str) -> Panel:
    """The panel of a reference case: "b1", "b3" or "door"."""
    return project(CASES / f"{name}.json").walls[0].panels[0]


def project(path: Path) -> Project:
    """The project of a file."""
    return read_project(read_text(path.read_text(encoding="utf-8")))


def rectangle(width: float, height: float, bond: str = "running", size: str = "modular", **more: Any) -> Panel:
    """A panel whose brick starts in its very corner: no margin, origin (0, 0)."""
    return read_panel(
        {
            "mark": "R",
            "thickness": 7.25,
            "outline": [[0, 0], [width, 0], [width, height], [0, height]],
            "margin": 0,
            "field": {"size": size, "bond": bond, "origin": [0, 0]},
            **more,
        }
    )
