"""Placing concrete over brick: where the stream begins and how it spreads, where the vibrator goes in, how deep.

The stream falls on covered area only, never on bare brick, and is not dumped; the head goes in on a grid and keeps
clear of the brick (common practice). The concrete itself, its strength and its reinforcement are the licensed
engineer's of record.
"""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.lengths import format_length
from app.order.information import brick_volumes
from app.panel.rings import rings
from app.site.first_drop import Drop
from app.site.places import inner_point
from app.site.pour_bands import Piece, bands, is_level
from app.site.pour_grid import Grid, vibrator_points
from app.site.pour_values import Band, FirstDrop, Pass, Pour

GRID, DEPTH_LIMIT = 12.0, 3.0
"""Inches from one insertion of a pencil head to the next, and how far below the surface it goes over brick at most
(common practice)."""

CLEARANCE = 1.0
"""Inches that the head keeps from the backs of the bricks (our own default, so that it touches none)."""

PLAIN = 1e-3
"""Share of a square below which none of it is said to be plain."""

Floats = NDArray[np.float64]


def pour(
    layout: Layout,
    thickness: float | None = None,
    grid: float = GRID,
    depth_limit: float = DEPTH_LIMIT,
    clearance: float = CLEARANCE,
    unit: str = "in",
) -> Pour:
    """How the concrete of one panel is placed and vibrated; `thickness` is the panel's own where it is not given.

    Words have lengths in `unit`, "in" or "mm". Raises ValueError for a thickness, grid or depth that is not above 0, or
    a clearance below 0; all in inches. A panel too thin for the head is no error but a finding, with no depth.
    """
    thickness = layout.panel.thickness.inches if thickness is None else thickness
    _refuse(thickness=thickness, grid=grid, depth_limit=depth_limit)
    if clearance < 0:
        raise ValueError(f"clearance of the vibrator: found {clearance:g} in., expected 0 or more")
    squares = Grid(layout.panel, grid)
    pieces = bands(squares, layout.field)
    over = thickness - _brick(layout)
    depth = min(depth_limit, over - clearance)
    return Pour(
        grid,
        squares.step,
        over,
        clearance,
        depth if depth > 0 else None,
        tuple(_bands(layout, pieces, thickness)),
        tuple(_drops(pieces, unit)),
        tuple(_passes(squares, pieces)),
        tuple(_findings(layout, (thickness, over, depth, depth_limit, clearance), unit)),
    )


def _refuse(**values: float) -> None:
    for name, value in values.items():
        if not value > 0:
            raise ValueError(f"{name.replace('_', ' ')} of the pour: found {value:g} in., expected more than 0")


def _brick(layout: Layout) -> float:
    """Thickness of the thickest brick in the face, inches; 0 for a face without."""
    zones = np.unique(layout.units.zone).tolist()
    return max((layout.regions[zone].size.thickness.inches for zone in zones), default=0.0)


def _findings(layout: Layout, found: tuple[float, ...], unit: str) -> Iterator[Finding]:
    thick, over, depth, limit, clear = (format_length(value, unit) for value in found)
    x, y, mark = layout.panel.width / 2, layout.panel.height / 2, layout.panel.mark
    if found[2] <= 0:
        text = (
            f"Panel {mark} is {thick} thick and leaves {over} of concrete over the brick: the vibrator's head needs"
            f" more than the {clear} that it keeps from the brick. Ask the licensed engineer of record how the concrete"
            " is to be consolidated."
        )
        yield Finding("pour-too-thin", "error", x, y, text, mark)
    elif found[2] < found[3]:
        text = (
            f"Over the brick lie {over} of concrete: the vibrator's head goes {depth} below the surface, not {limit},"
            f" so that it keeps {clear} from the brick."
        )
        yield Finding("pour-shallow-head", "note", x, y, text, mark)


def _bands(layout: Layout, pieces: Sequence[Piece], thickness: float) -> Iterator[Band]:
    units = layout.units
    middles = np.column_stack([units.x + units.width / 2, units.y + units.height / 2])
    brick = np.bincount(_owners(pieces, middles), weights=brick_volumes(layout), minlength=len(pieces))
    for k, piece in enumerate(pieces):
        outline = tuple(tuple(map(tuple, ring.tolist())) for ring in rings(piece.shape))
        after = None if piece.after is None else piece.after + 1
        volume = float(piece.shape.area * thickness - brick[k])
        yield Band(k + 1, outline, inner_point(piece.shape), after, piece.begins, piece.heading, volume)


def _owners(pieces: Sequence[Piece], points: Floats) -> NDArray[np.int64]:
    """Which piece each point is in, or else nearest to; counts from 0."""
    if not len(pieces) or not len(points):
        return np.zeros(0, dtype=np.int64)
    found: NDArray[np.int64] = shapely.STRtree([piece.shape for piece in pieces]).nearest(shapely.points(points))
    return found


def _drops(pieces: Sequence[Piece], unit: str) -> Iterator[FirstDrop]:
    for k, piece in enumerate(pieces):
        if piece.drop is not None:
            yield FirstDrop(k + 1, piece.drop.strip, piece.drop.plain, _drop_words(piece.drop, unit))


def _drop_words(drop: Drop, unit: str) -> str:
    size = f"{format_length(drop.strip.width, unit)} x {format_length(drop.strip.height, unit)}"
    plain = f"{drop.plain:.0%} of it" if drop.plain > PLAIN else "none of it"
    where = f"First drop, {size}: at the form's edge, clear of openings as far as may be, with the most plain concrete"
    if drop.plain > 1 - PLAIN:
        return f"{where} (all of it). Let the stream down here, low and slowly."
    return (
        f"{where} ({plain}). Brick lies here: let no stream fall on it, but cover it by shovel first, then let the"
        " stream down on what is covered, low and slowly."
    )


def _passes(grid: Grid, pieces: Sequence[Piece]) -> Iterator[Pass]:
    """Band by band, rows from where the stream begins on, each row from the end that is nearer to the last point."""
    points, square = vibrator_points(grid)
    owner = _owners(pieces, points)
    line = square // grid.columns if is_level(grid) else square % grid.columns
    along, across = (0, 1) if is_level(grid) else (1, 0)
    number = 0
    for k, piece in enumerate(pieces):
        at = np.array(piece.begins)
        for row in _from_near(points, line, np.flatnonzero(owner == k), across, piece.begins[across]):
            walked = points[row[np.argsort(points[row, along], kind="stable")]]
            if np.hypot(*(walked[-1] - at)) < np.hypot(*(walked[0] - at)):
                walked = walked[::-1]
            number, at = number + 1, walked[-1]
            yield Pass(number, k + 1, walked)


def _from_near(
    points: Floats, line: NDArray[np.int64], chosen: NDArray[np.int64], across: int, begins: float
) -> list[NDArray[np.int64]]:
    """The chosen points row by row, the first row at the end at which the stream begins."""
    rows = [chosen[line[chosen] == row] for row in np.unique(line[chosen]).tolist()]
    if len(rows) > 1:
        first, last = (abs(float(points[row, across].mean()) - begins) for row in (rows[0], rows[-1]))
        rows = rows[::-1] if last < first else rows
    return rows
