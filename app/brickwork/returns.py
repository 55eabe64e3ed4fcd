"""Returns: brick carried around an upright edge of the face, with corner units of a long and a short leg.

Legs are measured outside, to the corner: a modular unit's are 7-5/8 and 3-5/8 in., with 3/8 in. joints 12 in. of course
and so 1.0 sq ft of brick a foot of corner (three courses of modular brick are 8 in. high: BIA Technical Notes 10B).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Literal

import numpy as np
import shapely
from numpy.typing import NDArray

from app.brickwork.cuts import CUTS
from app.brickwork.lattice import Ints
from app.brickwork.layout import Layout
from app.panel.geometry import outline_polygon
from app.panel.keyed import Keyed
from app.panel.shapes import Rect
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Edge, Opening, Panel, Side

Hand = Literal["left", "right"]

LEG_TOLERANCE = 1 / 32
"""Inches: a leg this near to a corner unit's is that leg, and a unit this near to the edge reaches it.

Half of the 1/16 in. that a saw holds (common practice).
"""


@dataclass(frozen=True, slots=True)
class Leg:
    """One corner unit: its course, bottom and height on the return, what it shows on face and return, inches.

    `unit` counts in `Layout.units`. `is_cut` is a face leg of neither length, or a unit cut in height; a return leg
    cut to the depth of its return is told by `is_shortened` alone.
    """

    course: int
    bottom: float
    height: float
    face_leg: float
    return_leg: float
    unit: int
    is_cut: bool
    is_shortened: bool


@dataclass(frozen=True, slots=True)
class ReturnPiece:
    """A stretcher of the return face, in line behind corner unit `unit`: `start` from the corner, inches."""

    unit: int
    start: float
    bottom: float
    length: float
    height: float
    is_trimmed: bool


@dataclass(frozen=True)
class Return:
    """Brick around one upright edge: `name` is "edge 1" or "W1 left", `edge_at` its x in the face frame, inches.

    `opening` is the mark of the opening whose side it is, "" for an edge of the panel.
    `hand` is the end of the face it stands at, seen from outside; `bottom` and `top` are the edge's own. `bare` are
    the field's courses that reach the edge without a corner unit, for want of a piece as long as the smallest cut.
    """

    name: str
    opening: str
    edge_at: float
    hand: Hand
    bottom: float
    top: float
    depth: float
    legs: tuple[Leg, ...]
    pieces: tuple[ReturnPiece, ...]
    bare: tuple[int, ...]

    @cached_property
    def cut(self) -> tuple[Leg, ...]:
        """The corner units that are cut, from the lowest up."""
        return tuple(leg for leg in self.legs if leg.is_cut)


@dataclass(frozen=True, slots=True)
class _Edge:
    name: str
    opening: str
    at: float
    hand: Hand
    bottom: float
    top: float
    depth: float


def returns(layout: Layout) -> tuple[Return, ...]:
    """The returns of a face, edges of the outline first, then sides of openings; none where none is asked for.

    A return without brick at its edge has no legs. Raises nothing for a panel that `panel.check` finds sound.
    """
    return _kept(Keyed((id(layout),), layout))


@lru_cache(maxsize=4)
def _kept(keyed: Keyed[Layout]) -> tuple[Return, ...]:
    """Kept while checks, order and drawings ask one after the other; it holds the layout, so its id stays its own."""
    layout = keyed.value
    panel = layout.panel
    edges = [_outline_edge(panel, edge) for edge in panel.edges if _is_return(edge)]
    edges += [_opening_side(opening, side) for opening in panel.openings for side in opening.sides if _is_return(side)]
    if not edges:
        return ()
    ripped = _cut_otherwise(layout)
    return tuple(_return(layout, edge, ripped) for edge in edges)


def corner_units(found: Sequence[Return]) -> Ints:
    """The units of the face that are corner units, in order, each once; counts in `Layout.units`."""
    return np.unique(np.array([leg.unit for one in found for leg in one.legs], dtype=np.int64))


def is_uncut_corner(layout: Layout) -> NDArray[np.bool_]:
    """For each trim of a layout, whether it is no cut at all but the short leg of a corner unit."""
    uncut = [leg.unit for one in returns(layout) for leg in one.legs if not leg.is_cut]
    return np.isin(layout.trims.unit, uncut)


def _is_return(thing: Edge | Side) -> bool:
    return thing.treatment == "return" and thing.depth is not None


def _depth(thing: Edge | Side) -> float:
    return 0.0 if thing.depth is None else thing.depth.inches


def _outline_edge(panel: Panel, edge: Edge) -> _Edge:
    """With the outline anticlockwise an edge that runs up has its face at the left: the right end of the face."""
    points = panel.outline_inches
    (x, start), (_, end) = points[edge.edge], points[(edge.edge + 1) % len(points)]
    is_right = (end > start) == outline_polygon(panel).exterior.is_ccw
    hand: Hand = "right" if is_right else "left"
    return _Edge(f"edge {edge.edge}", "", x, hand, min(start, end), max(start, end), _depth(edge))


def _opening_side(opening: Opening, side: Side) -> _Edge:
    """At an opening's left side ends the pier left of it: the right end of a face."""
    if not isinstance(opening.shape, Rect):
        raise TypeError(f"{opening.mark}: found sides on {type(opening.shape).__name__}, expected a rectangle")
    shape = opening.shape
    x, low, wide, high = (length.inches for length in (shape.x, shape.y, shape.width, shape.height))
    name, depth = f"{opening.mark} {side.side}", _depth(side)
    if side.side == "left":
        return _Edge(name, opening.mark, x, "right", low, low + high, depth)
    return _Edge(name, opening.mark, x + wide, "left", low, low + high, depth)


def _cut_otherwise(layout: Layout) -> NDArray[np.bool_]:
    """Which units are cut in another way than in length alone."""
    cut = np.zeros(len(layout.units), dtype=np.bool_)
    cut[layout.trims.unit] = layout.trims.cut != CUTS.index("length")
    return cut


def _return(layout: Layout, edge: _Edge, ripped: NDArray[np.bool_]) -> Return:
    legs = tuple(_legs(layout, edge, ripped))
    sizes = [size_of(layout, leg.unit) for leg in legs]
    pieces = tuple(
        piece
        for leg, size in zip(legs, sizes, strict=True)
        for piece in _pieces(leg, size, edge.depth, layout.smallest_cut)
    )
    bare = tuple(_bare(layout, edge, legs))
    return Return(edge.name, edge.opening, edge.at, edge.hand, edge.bottom, edge.top, edge.depth, legs, pieces, bare)


def size_of(layout: Layout, unit: int) -> BrickSize:
    """The size of a unit of the face, by its place in `Layout.units`; raises IndexError for one that is not there."""
    return layout.regions[int(layout.units.zone[unit])].size


def _legs(layout: Layout, edge: _Edge, ripped: NDArray[np.bool_]) -> Iterator[Leg]:
    """From the lowest up: every unit that reaches the edge from its own side, at the height of the edge."""
    units = layout.units
    inward = edge.at - units.x if edge.hand == "right" else units.x + units.width - edge.at
    low, high = np.maximum(units.y, edge.bottom), np.minimum(units.y + units.height, edge.top)
    reaches = (inward > TOLERANCE) & (inward - units.width < LEG_TOLERANCE) & (high - low > TOLERANCE)
    chosen = np.flatnonzero(reaches)
    for unit in chosen[np.argsort(low[chosen], kind="stable")].tolist():
        height = float(high[unit] - low[unit])
        is_ripped = bool(ripped[unit]) or height < units.height[unit] - TOLERANCE
        size, course = size_of(layout, unit), int(units.course[unit])
        yield _leg(course, float(low[unit]), height, float(inward[unit]), unit, is_ripped, size, edge.depth)


def _leg(
    course: int,
    bottom: float,
    height: float,
    face_leg: float,
    unit: int,
    is_ripped: bool,
    size: BrickSize,
    depth: float,
) -> Leg:
    """The long leg turns into a short one and the short into a long; a cut face leg is cut from the next longer."""
    long, short = size.length.inches, size.half_bat
    is_corner = min(abs(face_leg - long), abs(face_leg - short)) <= LEG_TOLERANCE
    return_leg = long if face_leg <= short + LEG_TOLERANCE else short
    is_shortened = return_leg > depth + TOLERANCE
    is_cut = is_ripped or not is_corner
    return Leg(course, bottom, height, face_leg, min(return_leg, depth), unit, is_cut, is_shortened)


def _pieces(leg: Leg, size: BrickSize, depth: float, smallest_cut: float) -> Iterator[ReturnPiece]:
    """Whole stretchers behind the corner unit, the last one cut at the depth; none where only a joint is left."""
    start = leg.return_leg + size.head_joint.inches
    while depth - start >= max(smallest_cut, TOLERANCE) - TOLERANCE:
        length = min(size.length.inches, depth - start)
        is_trimmed = length < size.length.inches - TOLERANCE or leg.height < size.height.inches - TOLERANCE
        yield ReturnPiece(leg.unit, start, leg.bottom, length, leg.height, is_trimmed)
        start += size.head_module


def _bare(layout: Layout, edge: _Edge, legs: tuple[Leg, ...]) -> Iterator[int]:
    inside = edge.at + (-1 if edge.hand == "right" else 1) * 2 * TOLERANCE
    low, high = edge.bottom - TOLERANCE, edge.top + TOLERANCE
    within = [course for course in layout.courses if course.bottom >= low and course.top <= high]
    foot, top = (np.array([getattr(course, end) for course in within]) for end in ("bottom", "top"))
    is_field = shapely.contains_xy(layout.field, np.full(len(within), inside), (foot + top) / 2)
    leg_foot = np.array([leg.bottom for leg in legs])
    leg_top = leg_foot + np.array([leg.height for leg in legs])
    has_leg = ((leg_foot < top[:, None]) & (leg_top > foot[:, None])).any(axis=1)
    for k in np.flatnonzero(is_field & ~has_leg).tolist():
        yield within[k].course
