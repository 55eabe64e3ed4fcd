"""Walking lanes: strips of the face that stay open to walk and kneel on while brick is set, and are filled last.

One stands outside the form along all edges of the panel, or in a lane: nobody steps on set brick. The edge of an
opening is no place to stand: the slab inside its form may be too small, and one comes there over brick only. A lane
that crosses an opening runs on over the slab inside it; one steps over the sides of its form.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from app.brickwork.layout import Layout
from app.panel.geometry import outline_polygon, shape_polygon
from app.panel.tolerance import TOLERANCE
from app.site.lane_lines import Floats, Span, fewest, gaps, joint_lines
from app.site.lane_values import WAYS_OUT, Direction, Lane, Lanes, WayOut
from app.site.places import Strip, concrete, inner_point

REACH = 30.0
"""Inches that one reaches from the edge that one kneels at (common practice)."""

WIDTH = 16.0
"""Inches of a lane in which one can kneel and turn (common practice)."""


def lanes(layout: Layout, reach: float = REACH, width: float = WIDTH, way_out: WayOut = "foot") -> Lanes:
    """The lanes such that every piece's middle is within `reach` inches of a lane or of the outline of the panel.

    A lane is `width` inches or wider: whole modules of the field's bond from one joint line to another, as far as the
    panel goes. Lanes run up or along the panel, whichever keeps less of the face open; up where both are alike. Every
    piece that lies in a lane, be it in part, waits for it. None for a face without brick. Raises ValueError for a reach
    or width that is not above 0, and for a way out that is none of `WAYS_OUT`.
    """
    for name, value in (("reach", reach), ("width", width)):
        if not value > 0:
            raise ValueError(f"{name} of a lane: found {value:g} in., expected more than 0")
    if way_out not in WAYS_OUT:
        raise ValueError(f"way out: found {way_out!r}, expected one of {', '.join(WAYS_OUT)}")
    face = _Face(layout)
    up, along = (_Cover.of(face, axis, reach, width) for axis in (0, 1))
    return _told(face, up if up.area <= along.area + TOLERANCE else along, reach, way_out)


@dataclass(frozen=True)
class _Face:
    """What lanes are found from: boxes of all pieces, and how far each piece's middle is from standing outside."""

    layout: Layout

    @cached_property
    def low(self) -> Floats:
        return np.column_stack([self.layout.units.x, self.layout.units.y])

    @cached_property
    def high(self) -> Floats:
        return self.low + np.column_stack([self.layout.units.width, self.layout.units.height])

    @cached_property
    def middle(self) -> Floats:
        return (self.low + self.high) / 2

    @cached_property
    def outside(self) -> Floats:
        """Distance of each middle to the outline itself, slants and steps as they are."""
        found: Floats = shapely.distance(shapely.points(self.middle), outline_polygon(self.layout.panel).exterior)
        return found

    @cached_property
    def concrete(self) -> BaseGeometry:
        return concrete(self.layout.panel)


@dataclass(frozen=True, eq=False)
class _Cover:
    """Lanes in one direction: their spans across `axis`, the parts of the face in each, and the face they keep open."""

    axis: int
    spans: list[Span]
    width: float
    parts: list[BaseGeometry]

    @classmethod
    def of(cls, face: _Face, axis: int, reach: float, width: float) -> "_Cover":
        lines = joint_lines(face.layout, axis, width)
        spans = fewest(lines, face.middle[:, axis], face.outside, reach)
        parts = [face.concrete.intersection(shapely.box(*_bounds(face.layout, axis, span))) for span in spans]
        return cls(axis, spans, max((high - low for low, high in spans), default=width), parts)

    @property
    def area(self) -> float:
        return float(sum(part.area for part in self.parts))

    @property
    def direction(self) -> Direction:
        return "up" if self.axis == 0 else "along"


def _bounds(layout: Layout, axis: int, span: Span) -> tuple[float, float, float, float]:
    low, high = span
    return (low, 0.0, high, layout.panel.height) if axis == 0 else (0.0, low, layout.panel.width, high)


def _told(face: _Face, cover: _Cover, reach: float, way_out: WayOut) -> Lanes:
    order = range(len(cover.spans))
    order = order if is_rising(cover.direction, way_out) else order[::-1]
    low, high, middle = (values[:, cover.axis] for values in (face.low, face.high, face.middle))
    lane_of = np.zeros(len(low), dtype=np.int16)
    for number, k in enumerate(order, 1):
        start, end = cover.spans[k]
        lane_of[(lane_of == 0) & (high > start + TOLERANCE) & (low < end - TOLERANCE)] = number
    distance = np.minimum(face.outside, gaps(cover.spans, middle, middle))
    found = tuple(_lanes_of(face, cover, [*order], lane_of, way_out))
    return Lanes(cover.direction, way_out, reach, cover.width, found, lane_of, distance, cover.area)


def is_rising(direction: Direction, way_out: WayOut) -> bool:
    """Whether what is farthest from the way out has the lowest place across the lanes, in the face frame.

    Where all lanes end at the way out they follow from the bed's left, which is the face's right, to its right.
    """
    return way_out == ("left" if direction == "up" else "top")


def leaves(direction: Direction, way_out: WayOut) -> WayOut:
    """The edge of the bed at which lanes are left: the way out where they end there, else the foot or the left."""
    if direction == "up":
        return "top" if way_out == "top" else "foot"
    return "right" if way_out == "right" else "left"


def _lanes_of(
    face: _Face, cover: _Cover, order: list[int], lane_of: NDArray[np.int16], way_out: WayOut
) -> Iterator[Lane]:
    counts = np.bincount(lane_of, minlength=len(order) + 1).tolist()
    end = leaves(cover.direction, way_out)
    for number, k in enumerate(order, 1):
        x0, y0, x1, y1 = _bounds(face.layout, cover.axis, cover.spans[k])
        strip = Strip(x0, y0, x1 - x0, y1 - y0)
        crossed = _crossed(face.layout, shapely.box(x0, y0, x1, y1))
        at = _place(cover.parts[k], strip, cover.axis, list(crossed.values()))
        yield Lane(number, strip, counts[number], end, at, tuple(crossed))


def _crossed(layout: Layout, box: BaseGeometry) -> dict[str, tuple[float, ...]]:
    """The openings that a lane crosses by mark, and the bounds of what each takes of it."""
    within = box.intersection(outline_polygon(layout.panel))
    taken = {opening.mark: within.intersection(shape_polygon(opening.shape)) for opening in layout.panel.openings}
    return {mark: shape.bounds for mark, shape in taken.items() if shape.area > TOLERANCE}


def _place(part: BaseGeometry, strip: Strip, axis: int, taken: list[tuple[float, ...]]) -> tuple[float, float]:
    """The middle of the longest stretch of a lane without an opening, else a point of its largest part."""
    run = 1 - axis
    if part.area <= TOLERANCE:
        return strip.x + strip.width / 2, strip.y + strip.height / 2
    blocked = sorted((bounds[run], bounds[run + 2]) for bounds in taken)
    low, stretches = part.bounds[run], [(0.0, 0.0)]
    for start, end in (*blocked, (part.bounds[run + 2], part.bounds[run + 2])):
        stretches.append((start - low, (low + start) / 2))
        low = max(low, end)
    along = max(stretches)[1]
    x, y = (strip.x + strip.width / 2, along) if axis == 0 else (along, strip.y + strip.height / 2)
    return (x, y) if shapely.contains_xy(part, x, y) else inner_point(max(shapely.get_parts(part), key=shapely.area))
