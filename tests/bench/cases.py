"""The reference panels of the benches."""

import json
from dataclasses import replace
from pathlib import Path

from app.documents.project_file import read_project
from app.lengths import Length
from app.panel.shapes import Polygon, Rect
from app.panel.values import Opening, Panel

CASES = Path(__file__).parents[1] / "cases"


def read(name: str) -> Panel:
    """The only panel of a reference case."""
    return read_project(json.loads((CASES / f"{name}.json").read_text())).walls[0].panels[0]


def b1() -> Panel:
    """40 x 30 ft, modular running bond, 12 openings off the module and a skew one."""
    return read("b1")


def b2() -> Panel:
    """B1 ten times as long."""
    panel = b1()
    width = panel.outline[1][0].nm
    outline = tuple((Length(x.nm * 10), y) for x, y in panel.outline)
    openings = tuple(_moved(opening, width * k) for k in range(10) for opening in panel.openings)
    return replace(panel, outline=outline, openings=openings)


def b3() -> Panel:
    """A gable with a round window, herringbone at 45 degrees."""
    return read("b3")


def _moved(opening: Opening, by: int) -> Opening:
    match opening.shape:
        case Rect() as rect:
            return replace(opening, shape=replace(rect, x=Length(rect.x.nm + by)))
        case Polygon(points):
            return replace(opening, shape=Polygon(tuple((Length(x.nm + by), y) for x, y in points)))
        case other:
            raise TypeError(f"B1 has rectangles and a polygon, found {other}")
