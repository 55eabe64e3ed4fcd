"""The square edges of a brick field by name ("left jamb W1", "head W1", "right edge"), and which one a piece meets."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from app.brickwork.fit_controls import course_controls, head_joint_controls
from app.brickwork.fit_grids import course_grid, head_joint_grid
from app.brickwork.fit_lines import Control, Grid1
from app.brickwork.lattice import Flags, Floats
from app.brickwork.layout import Layout
from app.brickwork.phase_edges import Pairs, edging
from app.panel.geometry import kept_margin, shape_polygon
from app.panel.keyed import Keyed
from app.panel.shapes import Rect
from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel

Boxes = tuple[Floats, Floats, Floats, Floats]


@dataclass(frozen=True, slots=True)
class Borders:
    """Edges along one axis: `at` from `low` to `high` the other way, inches; brick `starts` there or else ends."""

    at: Floats
    low: Floats
    high: Floats
    starts: Flags
    names: tuple[str, ...]

    def met(self, box: Boxes, axis: int) -> list[str]:
        """For each box (x0, y0, x1, y1), inches: the name of the edge that it ends at along the axis, "" for none."""
        if not self.names or not len(box[0]):
            return [""] * len(box[0])
        near, far, low, high = (box[k][:, None] for k in (axis, axis + 2, 1 - axis, 3 - axis))
        ends = np.abs(np.where(self.starts, near, far) - self.at) <= 2 * TOLERANCE
        meets = ends & (high > self.low + TOLERANCE) & (low < self.high - TOLERANCE)
        return [
            self.names[k] if found else ""
            for k, found in zip(meets.argmax(1).tolist(), np.any(meets, axis=1).tolist(), strict=True)
        ]

    def name_at(self, at: float, starts: bool, low: float, high: float) -> str:
        """Name of the edge at `at` that lies between `low` and `high` in part, inches; "" for none."""
        on = (np.abs(self.at - at) <= 2 * TOLERANCE) & (self.starts == starts)
        found = np.flatnonzero(on & (self.high > low + TOLERANCE) & (self.low < high - TOLERANCE))
        return self.names[int(found[0])] if len(found) else ""


@dataclass(frozen=True, slots=True)
class NamedBorders:
    """Upright and level edges of a brick field, and the upright ones that face each other."""

    uprights: Borders
    levels: Borders
    pairs: Pairs


@dataclass(frozen=True, slots=True)
class _Line:
    """A control line's name, where brick starts or `ends` at it, and its middle the other way; inches."""

    name: str
    at: float
    ends: bool
    middle: float


def borders(layout: Layout) -> NamedBorders:
    """The edges of the layout's brick field, those of zones left out; none for an empty field. Named as the control
    lines of a fit are, in zones too; those that have no control are counted ("upright edge 1", "level edge 1")."""
    return _kept(Keyed((id(layout),), layout))


@lru_cache(maxsize=4)
def _kept(keyed: Keyed[Layout]) -> NamedBorders:
    """Kept while a layout's checks ask one after the other; it holds the layout, so its id stays its own."""
    layout = keyed.value
    size, origin, states = layout.size, layout.origin, layout.states
    jambs = _lines(layout, [one.control for one in states.horizontal], head_joint_grid(layout.bond, size, origin), 0)
    beds = _lines(layout, [one.control for one in states.vertical], course_grid(layout.bond, size, origin), 1)
    return _borders(layout.field, jambs, beds)


def _lines(layout: Layout, known: Sequence[Control], grid: Grid1 | str, axis: int) -> tuple[_Line, ...]:
    """Controls along one axis, those of plates too; looked for where the bond has no grid and so knows none, or where
    zones hide some from the field's own brick."""
    unit, panel = grid.unit if isinstance(grid, Grid1) else 0.0, layout.panel
    if panel.zones or not isinstance(grid, Grid1):
        unit = 0.0
        known = _looked_for(replace(panel, zones=()), layout.field, layout.size.head_joint.inches, axis)
    own = [_Line(one.name, one.at + unit * one.ends, one.ends, one.x if axis else one.y) for one in known]
    return (*own, *_plate_lines(layout.panel, axis))


@lru_cache(maxsize=16)
def _looked_for(panel: Panel, field: BaseGeometry, joint: float, axis: int) -> tuple[Control, ...]:
    """Controls where brick itself stops or starts: a grid of units without length."""
    find = (head_joint_controls, course_controls)[axis]
    return find(panel, field, joint, Grid1(0.0, 1.0, 1, joint, 0.0))


def _plate_lines(panel: Panel, axis: int) -> Iterator[_Line]:
    """Both edges of every plate along one axis; brick ends at the near one."""
    for plate in panel.plates:
        bounds = shape_polygon(plate.shape).bounds
        middle = (bounds[1 - axis] + bounds[3 - axis]) / 2
        for far in (0, 1):
            yield _Line(f"plate {plate.mark}", bounds[axis + 2 * far], not far, middle)


@lru_cache(maxsize=16)
def _borders(field: BaseGeometry, jambs: tuple[_Line, ...], beds: tuple[_Line, ...]) -> NamedBorders:
    found = edging(field)
    up, level = found.uprights, found.levels
    return NamedBorders(
        _named(up.x, up.y0, up.y1, up.right, jambs, "upright edge"),
        _named(level.y, level.x0, level.x1, level.above, beds, "level edge"),
        found.pairs,
    )


def _named(at: Floats, low: Floats, high: Floats, starts: Flags, lines: Sequence[_Line], kind: str) -> Borders:
    """Of the controls on an edge's line the one whose middle is on the edge, or else nearest to it; edges without one
    are counted by their place."""
    names = [""] * len(at)
    if lines:
        place, middle = np.array([line.at for line in lines]), np.array([line.middle for line in lines])
        ends = np.array([line.ends for line in lines])
        on_line = (np.abs(at[:, None] - place) <= 2 * TOLERANCE) & (starts[:, None] != ends)
        away = np.maximum(np.maximum(low[:, None] - middle, middle - high[:, None]), 0.0)
        nearest = np.where(on_line, away, np.inf).argmin(1)
        for k in np.flatnonzero(on_line.any(1)).tolist():
            names[k] = lines[int(nearest[k])].name
    unnamed = [k for k in np.lexsort((low, at)).tolist() if not names[k]]
    for count, k in enumerate(unnamed, start=1):
        names[k] = f"{kind} {count}"
    return Borders(at, low, high, starts, tuple(names))


def abouts(layout: Layout, box: Boxes, standing: Flags, otherwise: Sequence[str]) -> list[str]:
    """What each box (x0, y0, x1, y1), inches, ends at: an upright edge before a level one, the other way round for a
    `standing` one; else a round or slanted opening beside it; else as given."""
    named = borders(layout)
    across, up = named.uprights.met(box, 0), named.levels.met(box, 1)
    found = [
        (level or upright) if stands else (upright or level)
        for upright, level, stands in zip(across, up, standing.tolist(), strict=True)
    ]
    bare = np.array([not name for name in found], dtype=np.bool_)
    if bare.any():
        beside = iter(_openings_beside(layout, tuple(side[bare] for side in box)))  # type: ignore[arg-type]
        found = [name or next(beside) for name in found]
    return [name or other for name, other in zip(found, otherwise, strict=True)]


def _openings_beside(layout: Layout, box: Boxes) -> list[str]:
    """The mark of the opening, not a rectangle, that each box is a margin away from; "" for none."""
    openings = [opening for opening in layout.panel.openings if not isinstance(opening.shape, Rect)]
    if not openings:
        return [""] * len(box[0])
    reach = kept_margin(layout.panel, layout.size.head_joint.inches) + layout.smallest_cut
    shapes = np.array([shape_polygon(opening.shape) for opening in openings])
    near = shapely.dwithin(shapely.box(*box)[:, None], shapes[None, :], reach)
    return [
        openings[k].mark if found else ""
        for k, found in zip(near.argmax(1).tolist(), np.any(near, axis=1).tolist(), strict=True)
    ]
