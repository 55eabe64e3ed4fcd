"""The plain way to lay out a face: one unit after the other, each cut by shapely; slow, short, and easy to believe.

It shares with the engine only the bond's data, the brick size, and the regions; `assert_equal_to_loop` holds the
engine to it, unit by unit.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise, product
from math import ceil, cos, floor, radians, sin

import numpy as np
import shapely
from shapely.affinity import rotate, translate

from app.brickwork.bond import KINDS, STANDING, face
from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.brickwork.place import ALONE, Place
from app.brickwork.regions import Lines, Region, corner, regions
from app.brickwork.sizes import CATALOGUE
from app.panel.geometry import brick_field
from app.panel.size import BrickSize
from app.panel.values import Panel

NEAR = 1e-6


@dataclass(frozen=True)
class Piece:
    """One piece of one unit: `unit` is (region, cell, i, j), `box` its bounds on the face, inches."""

    unit: tuple[int, int, int, int]
    kind: str
    outline: shapely.Polygon
    state: str
    length: float = 0.0
    height: float = 0.0
    cut: str = ""
    is_small: bool = False


def loop(panel: Panel, sizes: Mapping[str, BrickSize] = CATALOGUE, lines: Lines | None = None) -> list[Piece]:
    """Every piece of the face: "whole", "trimmed" or "left out"; `lines` where joints have given."""
    field = brick_field(panel, sizes[panel.field.size].head_joint.inches)
    shares = regions(panel, field, lines or Lines(corner(panel.field.origin, field)), sizes, BONDS)
    return [
        piece for k, region in enumerate(shares) if not region.extent.is_empty for piece in _region(k, region, panel)
    ]


def _region(k: int, region: Region, panel: Panel) -> Iterator[Piece]:
    bond = region.bond
    for n, i, j, x, y in _cells(region):
        cell = bond.cells[n]
        width, height = face(cell.kind, region.size)
        unit = _rectangle(region, x, y, x + width, y + height)
        inner = _rectangle(region, x + NEAR, y + NEAR, x + width - NEAR, y + height - NEAR)
        if not inner.intersects(region.extent):
            continue
        if region.extent.contains(inner):
            yield Piece((k, n, i, j), cell.kind, unit, "whole")
            continue
        for part in shapely.get_parts(unit.intersection(region.extent)):
            if part.area > 0:
                yield _sorted((k, n, i, j), cell.kind, part, region, panel)


def _cells(region: Region) -> Iterator[tuple[int, int, int, float, float]]:
    """Cell of the motif, steps along both lattice vectors, and corner, for at least all units over the region."""
    bond, size = region.bond, region.size
    (ax, ay), (ux, uy) = ([part.inches(size) for part in vector] for vector in (bond.across, bond.up))
    back = rotate(translate(region.extent, -region.origin[0], -region.origin[1]), -bond.turn, origin=(0, 0))
    x0, y0, x1, y1 = back.bounds
    if not (region.across.is_identity and region.up.is_identity):
        x0, y0, x1, y1 = x0 - 12, y0 - 12, x1 + 12, y1 + 12
    for n, cell in enumerate(bond.cells):
        width, height = face(cell.kind, size)
        dx, dy = cell.x.inches(size), cell.y.inches(size)
        corners = list(product((x0 - dx - width, x1 - dx), (y0 - dy - height, y1 - dy)))
        js = [(ax * y - ay * x) / (ax * uy - ay * ux) for x, y in corners]
        for j in range(floor(min(js)), ceil(max(js)) + 1):
            steps = [(x - j * ux) / ax for x, _ in corners]
            for i in range(floor(min(steps)), ceil(max(steps)) + 1):
                x, y = _given(region, dx + i * ax + j * ux, dy + i * ay + j * uy)
                if y < y1 and y + height > y0:
                    yield n, i, j, x, y


def _given(region: Region, x: float, y: float) -> tuple[float, float]:
    """Where a corner stands once joints have given, in the same frame."""
    ox, oy = region.origin
    return region.across.real(ox + x) - ox, region.up.real(oy + y) - oy


def _rectangle(region: Region, x0: float, y0: float, x1: float, y1: float) -> shapely.Polygon:
    """A rectangle of the bond's own frame (corner at the region's origin) as it lies on the face."""
    turn, (ox, oy) = radians(region.bond.turn), region.origin
    c, s = cos(turn), sin(turn)
    return shapely.Polygon(
        [(ox + c * x - s * y, oy + s * x + c * y) for x, y in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))]
    )


def _sorted(unit: tuple[int, int, int, int], kind: str, part: shapely.Polygon, region: Region, panel: Panel) -> Piece:
    smallest = panel.smallest_cut.inches if panel.smallest_cut is not None else 0.25
    least = panel.least_piece.inches if panel.least_piece is not None else region.size.half_bat
    turn = region.bond.turn
    own = rotate(part, -turn, origin=region.origin) if turn else part
    x0, y0, x1, y1 = own.bounds
    if min(x1 - x0, y1 - y0) < smallest - NEAR:
        return Piece(unit, kind, part, "left out")
    along, across = (y1 - y0, x1 - x0) if kind in STANDING else (x1 - x0, y1 - y0)
    full = face(kind, region.size)[0 if kind in STANDING else 1]
    cut = _cut_class(own, across >= full - NEAR)
    return Piece(unit, kind, part, "trimmed", along, across, cut, along < least - NEAR)


def _cut_class(part: shapely.Polygon, has_full_height: bool) -> str:
    x0, y0, x1, y1 = part.bounds
    if part.interiors:
        return "skew"
    if shapely.box(x0, y0, x1, y1).difference(part).area <= NEAR * (1 + x1 - x0 + y1 - y0):
        return "length" if has_full_height else "height"
    points = part.exterior.coords
    is_square = all(min(abs(a[0] - b[0]), abs(a[1] - b[1])) < NEAR for a, b in pairwise(points))
    return "notch" if is_square else "skew"


def assert_equal_to_loop(panel: Panel, sizes: Mapping[str, BrickSize] = CATALOGUE, place: Place = ALONE) -> Layout:
    """The engine's layout of `panel`, after it was found equal to the loop's, unit by unit."""
    layout = lay_out(panel, sizes, place=place)
    pieces = loop(panel, sizes, layout.lines)
    bricks = _in_order([piece for piece in pieces if piece.state != "left out"])
    _assert_same_units(layout, bricks)
    _assert_same_trims(layout, [piece for piece in bricks if piece.state == "trimmed"])
    left = sum(piece.outline.area for piece in pieces if piece.state == "left out")
    assert abs(left - layout.area.left_out) < 1e-5
    return layout


def _in_order(pieces: list[Piece]) -> list[Piece]:
    """By unit; the parts of a split unit by an arbitrary but telling measure of where they are."""
    return sorted(pieces, key=lambda piece: (piece.state == "trimmed", *piece.unit, _place(piece.outline.bounds)))


def _place(box: tuple[float, float, float, float]) -> float:
    return box[0] + 0.317 * box[1] + 0.173 * box[2] + 0.111 * box[3]


def _engine_order(layout: Layout) -> np.ndarray:
    u = layout.units
    x1, y1 = u.x + u.width, u.y + u.height
    return np.lexsort((_place((u.x, u.y, x1, y1)), u.j, u.i, u.cell, u.zone, u.is_trimmed))


def _assert_same_units(layout: Layout, bricks: list[Piece]) -> None:
    order, u = _engine_order(layout), layout.units
    assert len(u) == len(bricks)
    mine = np.array([piece.unit for piece in bricks]).reshape(-1, 4)
    theirs = np.column_stack([u.zone, u.cell, u.i, u.j])[order]
    assert (mine == theirs).all(), "other units"
    boxes = np.array([piece.outline.bounds for piece in bricks]).reshape(-1, 4)
    found = np.column_stack([u.x, u.y, u.x + u.width, u.y + u.height])[order]
    assert np.abs(boxes - found).max(initial=0) < NEAR, "other bounding boxes"
    assert [piece.kind for piece in bricks] == [KINDS[kind] for kind in u.kind[order]]
    assert [piece.state == "trimmed" for piece in bricks] == u.is_trimmed[order].tolist()
    brick = sum(piece.outline.area for piece in bricks)
    assert abs(brick - layout.area.brick) < 1e-9 * (1 + brick) + 1e-6


def _assert_same_trims(layout: Layout, trims: list[Piece]) -> None:
    order = _engine_order(layout)
    row_of_unit = {row[0]: row for row in layout.trim_rows()}
    rows = [row_of_unit[unit] for unit in order[layout.whole :].tolist()]
    assert len(rows) == len(layout.trims) == len(trims)
    for piece, (_, cut, length, height, is_small, outline) in zip(trims, rows, strict=True):
        where = f"unit {piece.unit} at {piece.outline.bounds}"
        assert abs(shapely.Polygon(outline).area - piece.outline.area) < 1e-5, where
        assert abs(length - piece.length) < NEAR, where
        assert abs(height - piece.height) < NEAR, where
        assert (cut, is_small) == (piece.cut, piece.is_small), where
