"""The keys of a panel in the project file, in their usual order."""

from typing import Any

from app.documents.kinds import Day, Flag, Kind, Known, Measure, Number, Setting, Text
from app.documents.records import Either, Key, Lengths, Listed, Record, always, by_attribute
from app.lengths import Length
from app.panel.check import panel_faults
from app.panel.check_accepted import PARTS
from app.panel.check_fit import MATTERS
from app.panel.faults import Fault
from app.panel.laying import Laying
from app.panel.shapes import Arch, Circle, Polygon, Rect
from app.panel.values import (
    Accepted,
    Band,
    Brickwork,
    Edge,
    Fit,
    Fixing,
    Matter,
    Opening,
    Panel,
    Plate,
    Question,
    Side,
    Strip,
    Zone,
)

MOST_POINTS = 2_000
MOST_ITEMS = 500

_NONE = always(None)
_EMPTY = always(())

_COURSE = Number("a course", is_whole=True)
_POINT = Lengths("a point", lambda x, y: (x, y), ("x", "y"))
_POINTS = Listed("points", _POINT, MOST_POINTS)
_RECT = Lengths("a rectangle", Rect, ("x", "y", "width", "height"))
_CIRCLE = Lengths("a circle", Circle, ("x", "y", "radius"))
_ARCH = Lengths("an arch", Arch, ("x", "y", "width", "height", "rise"))
_MARK = Key("mark", Text("a mark"))


class _Ring:
    """A polygon, as the list of its points."""

    def read(self, value: Any, setting: Setting) -> Polygon:
        return Polygon(_POINTS.read(value, setting))

    def write(self, value: Polygon, setting: Setting, like: Any) -> list[Any]:
        return _POINTS.write(value.points, setting, like)


_FLAT: dict[str, tuple[type, Kind]] = {"rect": (Rect, _RECT), "polygon": (Polygon, _Ring())}
_ROUND: dict[str, tuple[type, Kind]] = {"circle": (Circle, _CIRCLE), "arch": (Arch, _ARCH)}

_BAND = Record("a band", Band, (Key("course", _COURSE), Key("courses", _COURSE)))

_WORK = (
    Key("size", Known("the name of a brick size", "sizes")),
    Key("bond", Known("the name of a bond", "bonds")),
    Key("origin", _POINT, _NONE),
)

FIELD = Record("a field", Brickwork, _WORK)

_END = (
    Key("treatment", Text("a treatment")),
    Key("depth", Measure("a depth"), _NONE),
    Key("margin", Measure("a margin"), _NONE),
)

EDGE = Record("an edge", Edge, (Key("edge", Number("the edge's place in the outline", is_whole=True)), *_END))

SIDE = Record("a side", Side, (Key("side", Text("a side")), *_END))

OPENING = Record(
    "an opening",
    Opening,
    (
        _MARK,
        Key("use", Text("a use"), _NONE),
        Either("shape", {**_FLAT, **_ROUND}),
        Key("sides", Listed("sides", SIDE, MOST_POINTS, "side"), _EMPTY),
    ),
)

STRIP = Record("a strip", Strip, (_MARK, Key("line", _POINTS), Key("width", Measure("a width"))))

PLATE = Record("a plate", Plate, (_MARK, Either("shape", _FLAT)))

FIXING = Record("a fixing", Fixing, (Key("line", _POINTS), Key("by", Text("what it is fixed by"), _NONE)))

_MATTER = Matter()
MATTER = Record(
    "what matters",
    Matter,
    tuple(Key(name, Text("how much it matters"), always(by_attribute(_MATTER, name))) for name in MATTERS),
)

_OFF = always(False)
FIT = Record(
    "a fit",
    Fit,
    (
        Key("courses", Flag(), _OFF),
        Key("heads", Flag(), _OFF),
        Key("closers", Flag(), _OFF),
        Key("matter", MATTER, always(_MATTER)),
    ),
)

ACCEPTED = Record("an accepted finding", Accepted, tuple(Key(name, Text(what)) for name, (what, _) in PARTS.items()))

QUESTION = Record("a question", Question, (_MARK, Key("text", Text("a question"))))


_LAYING = Laying()
LAYING = Record(
    "how sheets are laid",
    Laying,
    (
        Key("corner", Text("a corner"), always(_LAYING.corner)),
        Key("direction", Text("a direction"), always(_LAYING.direction)),
    ),
)


def _zone(mark: str, region: Rect | Polygon | Band, size: str, bond: str, origin: Any) -> Zone:
    return Zone(mark, region, Brickwork(size, bond, origin))


def _zone_part(zone: Zone, name: str) -> Any:
    return by_attribute(zone if name in ("mark", "region") else zone.work, name)


ZONE = Record("a zone", _zone, (_MARK, Either("region", {**_FLAT, "band": (Band, _BAND)}), *_WORK), part=_zone_part)


def _faults(panel: Panel, setting: Setting) -> tuple[Fault, ...]:
    return panel_faults(panel, unit=setting.length_unit)


PANEL = Record(
    "a panel",
    Panel,
    (
        _MARK,
        Key("thickness", Measure("a thickness")),
        Key("base", Measure("a base"), always(Length(0))),
        Key("outline", _POINTS),
        Key("margin", Measure("a margin"), _NONE),
        Key("edges", Listed("edges", EDGE, MOST_POINTS, "edge"), _EMPTY),
        Key("openings", Listed("openings", OPENING, MOST_ITEMS, "mark"), _EMPTY),
        Key("strips", Listed("strips", STRIP, MOST_ITEMS, "mark"), _EMPTY),
        Key("plates", Listed("plates", PLATE, MOST_ITEMS, "mark"), _EMPTY),
        Key("field", FIELD),
        Key("zones", Listed("zones", ZONE, MOST_ITEMS, "mark"), _EMPTY),
        Key("fit", FIT, always(Fit())),
        Key("fixings", Listed("fixings", FIXING, MOST_ITEMS), _EMPTY),
        Key("smallest_cut", Measure("a smallest cut"), _NONE),
        Key("least_piece", Measure("a least piece"), _NONE),
        Key("released", Flag(), _OFF),
        Key("accepted", Listed("accepted findings", ACCEPTED, MOST_ITEMS), _EMPTY),
        Key("questions", Listed("questions", QUESTION, MOST_ITEMS, "mark"), _EMPTY),
        Key("laying", LAYING, always(_LAYING)),
        Key("cast_on", Day("a casting day"), _NONE),
        Key("placed", Flag(), _OFF),
    ),
    faults=_faults,
)
