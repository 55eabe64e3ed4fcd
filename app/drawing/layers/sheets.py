"""Liner sheets: dashed seams, each drawn once, and the sheet's number in laying order."""

from collections.abc import Iterator

import numpy as np
import shapely

from app.drawing.lettering import text_width_mm
from app.drawing.marks import NORMAL, Boxes, Floats, Lines, Mark, Text
from app.drawing.scene import Scene
from app.liner.values import Ring, Sheet, SheetPlan

FRAME = "face"

Point = tuple[float, float]


def marks(scene: Scene) -> Iterator[Mark]:
    """Seams as one mark, then the numbers; none without a plan or sheets."""
    if scene.plan is None or not scene.plan.sheets:
        return
    yield seams(scene.plan)
    places = number_places(scene.plan.sheets)
    half_high = scene.mm(0.6 * NORMAL)
    wide = np.array([scene.mm(text_width_mm(sheet.mark, NORMAL) + 1) for sheet in scene.plan.sheets])
    high = np.full(len(wide), 2 * half_high)
    yield Boxes(places[:, 0] - wide / 2, places[:, 1] - half_high, wide, high, "label")
    for sheet, (x, y) in zip(scene.plan.sheets, places.tolist(), strict=True):
        yield Text(x, y, sheet.mark, "text sheet", NORMAL)


def number_places(sheets: tuple[Sheet, ...]) -> Floats:
    """A point on each sheet's largest part for its number, shape (sheets, 2)."""
    largest = [max((shapely.Polygon(ring) for ring in sheet.trim or (sheet.outline,)), key=_area) for sheet in sheets]
    middles = shapely.centroid(largest)
    inside = shapely.contains(largest, middles)
    points: Floats = shapely.get_coordinates(np.where(inside, middles, shapely.point_on_surface(largest)))
    return points


def _area(part: shapely.Polygon) -> float:
    return float(part.area)


def seams(plan: SheetPlan) -> Lines:
    """The edges of all sheets as they are trimmed, an edge that two sheets share only once."""
    drawn: set[tuple[Point, Point]] = set()
    runs: list[list[Point]] = []
    for sheet in plan.sheets:
        for ring in (*sheet.trim, *sheet.holes):
            runs += _new_runs(ring, drawn)
    points = np.array([point for run in runs for point in run], dtype=float).reshape(-1, 2)
    return Lines(points, np.array([len(run) for run in runs], dtype=np.int64), "sheet")


def _new_runs(ring: Ring, drawn: set[tuple[Point, Point]]) -> list[list[Point]]:
    runs: list[list[Point]] = []
    corners = [(round(x, 4), round(y, 4)) for x, y in ring]
    is_open = False
    for start, end in zip(corners, [*corners[1:], corners[0]], strict=True):
        edge = (start, end) if start < end else (end, start)
        if edge in drawn:
            is_open = False
            continue
        drawn.add(edge)
        if is_open:
            runs[-1].append(end)
        else:
            runs.append([start, end])
            is_open = True
    return runs
