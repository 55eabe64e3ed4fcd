"""Lines for information, not for buying: face, brick in it, concrete behind it, liner to recycle."""

from collections.abc import Iterator, Sequence

import numpy as np

from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.pieces import areas
from app.order.rules import Rules
from app.order.sheet_lines import mass_line
from app.order.values import TOPICS, Line
from app.order.weights import pounds
from app.order.work import PanelWork

NOT_FOR_LIFTING = "approximate, never for lifting: that is the licensed engineer's"


def information_lines(works: Sequence[PanelWork], rules: Rules) -> Iterator[Line]:
    """Area of the face, weight of the brick set in it, net volume of concrete, mass of the liner."""
    layouts = [work.layout for work in works]
    net = [layout.area.panel - layout.area.openings for layout in layouts]
    brick = [brick_volume(layout) for layout in layouts]
    thick = [layout.panel.thickness.inches for layout in layouts]
    concrete = sum(area * deep - volume for area, deep, volume in zip(net, thick, brick, strict=True))
    yield _told("Face of panels", *rules.area(sum(net)), "openings taken out; for information")
    weight = rules.weight(pounds(sum(brick), rules))
    yield _told("Brick set in the face", weight, rules.weight_unit, f"returns left out; {NOT_FOR_LIFTING}")
    note = f"face less openings by the panel's thickness, less the brick in it; {NOT_FOR_LIFTING}"
    yield _told("Concrete, net", *rules.volume(concrete), note)
    yield mass_line(works, rules)


def brick_volume(layout: Layout) -> float:
    """Cubic inches of brick in a face, trimmed pieces as they are; 0 for a face without."""
    return float(brick_volumes(layout).sum())


def brick_volumes(layout: Layout) -> Floats:
    """Cubic inches of each piece in the order of `Layout.units`, trimmed pieces as they are."""
    units, trims = layout.units, layout.trims
    area, thick = np.zeros(len(units)), np.zeros(len(layout.regions))
    for zone, region in enumerate(layout.regions):
        of = (units.zone == zone) & ~units.is_trimmed
        faces = np.array([width * height for width, height in (cell.face(region.size) for cell in region.bond.cells)])
        area[of] = faces[units.cell[of]]
        thick[zone] = region.size.thickness.inches
    area[trims.unit] = areas(trims.pieces)
    volumes: Floats = area * thick[units.zone]
    return volumes


def _told(item: str, value: float, unit: str, note: str) -> Line:
    return Line(item, "", "", value, 0, value, unit, note=note, topic=TOPICS[4])
