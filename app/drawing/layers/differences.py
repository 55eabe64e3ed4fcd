"""What differs between two states of a panel: as it was, broken; as it is, heavy."""

from collections.abc import Iterator, Mapping

import numpy as np

from app.brickwork.layout import Layout
from app.brickwork.regions import zone_extent
from app.drawing.marks import Mark, line
from app.drawing.rings import areas_of
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.panel.geometry import inches
from app.panel.rings import Rings, rings, shape_rings, strip_rings

FRAME = "face"

Corners = tuple[tuple[tuple[float, float], ...], ...]
Shapes = Mapping[str, Corners]


def marks(scene: Scene) -> Iterator[Mark]:
    """Shapes of the earlier state that are gone or others, then those of this one; none where all is as it was."""
    if scene.earlier is None:
        return
    was, now = _shapes(scene.earlier), _shapes(scene.layout)
    yield from _drawn(was, now, "earlier")
    yield from _drawn(now, was, "changed")


def _drawn(shapes: Shapes, others: Shapes, style: Style) -> Iterator[Mark]:
    for key, shape in shapes.items():
        if others.get(key) == shape:
            continue
        if key.startswith("fixings/"):
            yield from (line(list(ring), style) for ring in shape)
        else:
            yield areas_of([np.array(ring) for ring in shape], style)


def _shapes(layout: Layout) -> dict[str, Corners]:
    """Everything drawn on a panel, by its key, as rings and lines of corners in inches."""
    panel = layout.panel
    drawn: dict[str, Rings] = {"outline": [np.array(panel.outline_inches)]}
    drawn |= {f"openings/{one.mark}": shape_rings(one.shape) for one in panel.openings}
    drawn |= {f"plates/{one.mark}": shape_rings(one.shape) for one in panel.plates}
    drawn |= {f"strips/{one.mark}": strip_rings(panel, one) for one in panel.strips}
    lines, gauge, field = layout.lines, layout.size.gauge, layout.field
    drawn |= {f"zones/{one.mark}": rings(zone_extent(one, lines, gauge, field)) for one in panel.zones}
    drawn |= {f"fixings/{k}": [np.array(inches(one.line))] for k, one in enumerate(panel.fixings)}
    return {key: tuple(tuple(map(tuple, ring.tolist())) for ring in shape) for key, shape in drawn.items()}
