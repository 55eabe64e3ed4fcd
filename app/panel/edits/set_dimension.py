"""Give one dimension of a thing. Fields: thing (its key), dimension (width, height, left, right, foot, head), length.

Left, right, foot and head are distances to that edge of the panel's bounding box, and move the thing; width and height
keep its left and its foot, of a circle its centre.
"""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.lengths import Length
from app.panel.corners import corners_of, said_thing, with_corners
from app.panel.edit import Edit
from app.panel.extents import Extent, extent
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.frame import reframed
from app.panel.marks import marked, replaced
from app.panel.moving import moved_points, moved_shape
from app.panel.reshaping import reshaped
from app.panel.shapes import Arch, Circle, Point, Polygon, Rect, Shape
from app.panel.values import Band, Panel
from app.panel.wording import one_of, quoted, said

DIMENSIONS = ("width", "height", "left", "right", "foot", "head")
NONE = Length(0)


@dataclass(frozen=True, slots=True)
class SetDimension(Edit):
    name: ClassVar[str] = "set_dimension"
    thing: str
    dimension: str
    length: Length

    @classmethod
    def read(cls, form: Form) -> Self:
        thing = form.text("thing", "the thing's key, for example openings/W1")
        return cls(thing, form.choice("dimension", DIMENSIONS), form.length("length"))

    def label(self, _panel: Panel, unit: str = "in", /) -> str:
        return f"Set {self.dimension} of {said_thing(self.thing)} to {said(self.length, unit)}"

    def changed(self, panel: Panel) -> Panel:
        if self.dimension not in DIMENSIONS:
            raise Refused([Fault("dimension", quoted(self.dimension), one_of(DIMENSIONS, self.dimension))])
        kind, _, mark = self.thing.partition("/")
        match kind:
            case "openings":
                old = marked(panel.openings, mark, "thing")
                new = replace(old, shape=self._shaped(old.shape, panel))
                return replace(panel, openings=replaced(panel.openings, old, new))
            case "zones":
                zone = marked(panel.zones, mark, "thing")
                if isinstance(zone.region, Band):
                    raise Refused([Fault("thing", f"{mark}, a band of courses", "a rectangle or a polygon")])
                region = self._shaped(zone.region, panel)
                return replace(panel, zones=replaced(panel.zones, zone, replace(zone, region=region)))  # type: ignore[arg-type]
            case "plates":
                plate = marked(panel.plates, mark, "thing")
                moved = replace(plate, shape=self._shaped(plate.shape, panel))  # type: ignore[arg-type]
                return replace(panel, plates=replaced(panel.plates, plate, moved))
            case "outline":
                return self._outlined(panel)
        points = corners_of(panel, self.thing)
        return with_corners(panel, self.thing, moved_points(points, *self._move(_extent(points), panel)))

    def _shaped(self, shape: Shape, panel: Panel) -> Shape:
        box = extent(shape)
        if self.dimension in ("width", "height") and isinstance(shape, Circle):
            return replace(shape, radius=Length(self.length.nm // 2))
        if self.dimension == "width" and isinstance(shape, Rect):
            return replace(shape, width=self.length)
        if self.dimension == "height" and isinstance(shape, Rect | Arch):
            return replace(shape, height=self.length)
        if self.dimension == "width":
            return reshaped(shape, "right", Length(self.length.nm - box.width), NONE)
        if self.dimension == "height":
            return reshaped(shape, "top", NONE, Length(self.length.nm - box.height))
        if isinstance(shape, Rect | Arch) and self.dimension == "left":
            return replace(shape, x=self.length)
        if isinstance(shape, Rect | Arch) and self.dimension == "foot":
            return replace(shape, y=self.length)
        return moved_shape(shape, *self._move(box, panel))

    def _move(self, box: Extent, panel: Panel) -> Point:
        whole, length = _extent(panel.outline), self.length.nm
        match self.dimension:
            case "left":
                return Length(length - box.left), NONE
            case "right":
                return Length(whole.right - length - box.right), NONE
            case "foot":
                return NONE, Length(length - box.foot)
            case "head":
                return NONE, Length(whole.head - length - box.head)
        raise Refused([Fault("dimension", self.dimension, "left, right, foot or head of a line")])

    def _outlined(self, panel: Panel) -> Panel:
        """The right or the upper points of the outline move together."""
        whole = _extent(panel.outline)
        if self.dimension not in ("width", "height"):
            raise Refused([Fault("dimension", self.dimension, "width or height of the outline")])
        across = self.dimension == "width"
        side = "right" if across else "top"
        by = Length(self.length.nm - (whole.width if across else whole.height))
        moved = reshaped(Polygon(panel.outline), side, by if across else NONE, NONE if across else by)
        return reframed(replace(panel, outline=moved.points)) if isinstance(moved, Polygon) else panel


def _extent(points: tuple[Point, ...]) -> Extent:
    return extent(Polygon(points))


EDIT = SetDimension
