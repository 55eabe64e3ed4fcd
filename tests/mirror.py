"""A panel as seen in a mirror: every x becomes the panel's width less x."""

from dataclasses import replace

from app.brickwork.bond import Bond, Cell, Module, face
from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.lengths import Length
from app.panel.shapes import Arch, Circle, Point, Polygon, Rect, Shape
from app.panel.size import BrickSize
from app.panel.values import Band, Brickwork, Panel

SYMMETRIC = ("running", "stack", "common-5", "common-6", "common-7", "flemish", "english", "soldier")
"""Bonds that are their own mirror image about the middle of their first unit."""


def mirrored(panel: Panel) -> Panel:
    """The mirror image; its origin is where the first unit's lower-left corner then is."""
    glass = _Mirror(max(x.nm for x, _ in panel.outline))
    return replace(
        panel,
        outline=glass.points(panel.outline),
        openings=tuple(replace(opening, shape=glass.shape(opening.shape)) for opening in panel.openings),
        strips=tuple(replace(strip, line=glass.points(strip.line)) for strip in panel.strips),
        plates=tuple(replace(plate, shape=glass.shape(plate.shape)) for plate in panel.plates),
        zones=tuple(
            replace(zone, region=glass.shape(zone.region), work=glass.brickwork(zone.work)) for zone in panel.zones
        ),
        field=glass.brickwork(panel.field),
    )


def mirrored_bond(bond: Bond, size: BrickSize) -> Bond:
    """Any bond in a mirror, for one brick size: every unit stands as far left of the origin as it stood right of it."""

    def across(cell: Cell) -> Module:
        return Module(p=-(cell.x.inches(size) + cell.face(size)[0]) / size.head_module)

    return replace(
        bond,
        cells=tuple(replace(cell, x=across(cell)) for cell in bond.cells),
        across=(bond.across[0], -bond.across[1]),
        up=(-bond.up[0], bond.up[1]),
        turn=-bond.turn,
    )


class _Mirror:
    def __init__(self, width_nm: int) -> None:
        self.width_nm = width_nm

    def x(self, x: Length, width: int = 0) -> Length:
        return Length(self.width_nm - x.nm - width)

    def points(self, points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((self.x(x), y) for x, y in points)

    def shape(self, shape: Shape | Band) -> Shape | Band:
        match shape:
            case Rect() | Arch():
                return replace(shape, x=self.x(shape.x, shape.width.nm))
            case Circle():
                return replace(shape, x=self.x(shape.x))
            case Polygon():
                return Polygon(self.points(shape.points))
            case Band():
                return shape

    def brickwork(self, work: Brickwork) -> Brickwork:
        if work.origin is None:
            return work
        width, _ = face(BONDS[work.bond].cells[0].kind, CATALOGUE[work.size])
        x, y = work.origin
        return replace(work, origin=(self.x(x, Length.from_inches(width).nm), y))
