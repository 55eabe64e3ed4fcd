"""How far shapes reach, to the nanometre, and shapes mirrored."""

from dataclasses import dataclass, replace

from app.lengths import Length
from app.panel.shapes import Arch, Circle, Polygon, Rect, Shape
from app.panel.values import Opening, Side

MIRRORED = {"left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class Extent:
    """Nanometres in the face frame."""

    left: int
    foot: int
    right: int
    head: int

    @property
    def width(self) -> int:
        return self.right - self.left

    @property
    def height(self) -> int:
        return self.head - self.foot


def extent(shape: Shape) -> Extent:
    """The box around a shape; a polygon has points."""
    match shape:
        case Polygon(points=points):
            across, up = [x.nm for x, _ in points], [y.nm for _, y in points]
            return Extent(min(across), min(up), max(across), max(up))
        case Circle():
            x, y, radius = shape.x.nm, shape.y.nm, shape.radius.nm
            return Extent(x - radius, y - radius, x + radius, y + radius)
        case Rect() | Arch():
            x, y = shape.x.nm, shape.y.nm
            return Extent(x, y, x + shape.width.nm, y + shape.height.nm)


def mirrored(opening: Opening, twice_axis: int) -> Opening:
    """The opening mirrored about an upright line; `twice_axis` is double its place, nanometres. Sides change hands."""
    sides = tuple(replace(one, side=MIRRORED.get(one.side, one.side)) for one in opening.sides)
    return replace(opening, shape=_mirrored(opening.shape, twice_axis), sides=tuple(sorted(sides, key=_order)))


def _mirrored(shape: Shape, twice_axis: int) -> Shape:
    match shape:
        case Polygon(points=points):
            return Polygon(tuple((Length(twice_axis - x.nm), y) for x, y in reversed(points)))
        case Circle():
            return replace(shape, x=Length(twice_axis - shape.x.nm))
        case Rect() | Arch():
            return replace(shape, x=Length(twice_axis - shape.x.nm - shape.width.nm))


def _order(side: Side) -> str:
    return side.side
