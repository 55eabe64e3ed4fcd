"""The keys of a project file around its panels: sizes, bonds, liner, order, day, walls."""

from typing import Any

from app.documents.bond_keys import BOND
from app.documents.kinds import INCH, Kind, Measure, Number, OneOf, Setting, Text, number_in_words, small
from app.documents.order_keys import BLEND, DELIVERY, MOST_DELIVERIES, ORDER
from app.documents.panel_keys import PANEL
from app.documents.records import Key, Listed, Record, always, by_attribute
from app.documents.temperature import Temperature
from app.lengths import Length
from app.panel.blend import Blend
from app.panel.faults import Fault
from app.panel.project import Day, Liner, Order, Project, Wall
from app.panel.size import BrickSize
from app.panel.wording import said

FORMAT = "castcourse-project/1"
LONGEST_MARK = 60
LONGEST_NAME = 120
MOST_WALLS = 200
MOST_PANELS = 500
MOST_SIZES = 200
MOST_BONDS = 50

LINERS = {"F": Liner(), "C": Liner(expansion_per_degree=8.1e-5, reference_temperature=21.0)}
"""Nine fifths of the growth per degree F, and 70 F to the nearest degree C."""

DAYS = {"F": Day(), "C": Day(bed_low=13.0, bed_high=41.0)}
"""55 to 105 F, to the nearest degree C."""

_TEMPERATURE = Temperature("a temperature")


_SIZE_KEYS = (
    Key("name", Text("a name", LONGEST_MARK)),
    Key("length", small("a face length", INCH, "at least 1 in (25.4 mm)")),
    Key("height", small("a face height", INCH // 2, "at least 1/2 in (12.7 mm)")),
    Key("thickness", small("a thickness", 1, "more than 0")),
    Key("head_joint", small("a head joint", 0, "0 or more")),
    Key("courses", Number("courses", 1, 1_000, is_whole=True)),
    Key("per", Measure("a height of those courses", 1, 1_200 * INCH, "more than 0 and at most 100 ft (30,480 mm)")),
    Key("source", Text("a source"), always("")),
)


def _size_faults(size: BrickSize, setting: Setting) -> tuple[Fault, ...]:
    unit, faults = setting.length_unit, []
    if size.per.nm <= size.height.nm * size.courses:
        gauge = said(Length(size.per.nm // size.courses), unit)
        expected = f"a gauge above the face height, {said(size.height, unit)}, so that a bed joint is left"
        faults.append(Fault("per", f"a gauge of {gauge} ({size.courses} courses in {said(size.per, unit)})", expected))
    if size.head_joint.nm >= size.length.nm:
        expected = f"less than the face length, {said(size.length, unit)}"
        faults.append(Fault("head_joint", said(size.head_joint, unit), expected))
    return tuple(faults)


SIZE = Record("a brick size", BrickSize, _SIZE_KEYS, faults=_size_faults)


def _liner_key(name: str, kind: Kind) -> Key:
    return Key(name, kind, lambda setting: by_attribute(LINERS[setting.temperature_unit], name))


LINER = Record(
    "a liner",
    Liner,
    (
        _liner_key("columns", Number("columns of cells", 1, 1_000, is_whole=True)),
        _liner_key("rows", Number("rows of cells", 1, 1_000, is_whole=True)),
        _liner_key("thickness", small("a thickness", 1, "more than 0")),
        _liner_key("expansion_per_degree", Number("growth per degree", 0, 0.01)),
        _liner_key("reference_temperature", _TEMPERATURE),
        _liner_key("tolerance", small("a tolerance", 1, "more than 0")),
        _liner_key("joint_give", small("a joint's give", 0, "0 or more")),
        _liner_key("density_lb_ft3", Number("a density in lb/ft3", more_than=0, most=1_000)),
        _liner_key("lap", small("a lap", 0, "0 or more")),
    ),
)


def _day_key(name: str) -> Key:
    return Key(name, _TEMPERATURE, lambda setting: by_attribute(DAYS[setting.temperature_unit], name))


def _day_faults(day: Day, setting: Setting) -> tuple[Fault, ...]:
    if day.bed_low <= day.bed_high:
        return ()
    low, high = number_in_words(day.bed_low), number_in_words(day.bed_high)
    unit = setting.temperature_unit
    return (Fault("bed_low", f"{low} {unit}", f"at most the hottest bed, {high} {unit}"),)


DAY = Record("a day", Day, (_day_key("bed_low"), _day_key("bed_high")), faults=_day_faults)

_WALL = Wall("", ())
WALL = Record(
    "a wall",
    Wall,
    (
        Key("mark", Text("a mark", LONGEST_MARK)),
        Key("datum", Measure("a datum"), always(_WALL.datum)),
        Key("joint", small("a panel joint", 0, "0 or more"), always(_WALL.joint)),
        Key("panels", Listed("panels", PANEL, MOST_PANELS, "mark")),
    ),
)


def _project(format: str, **parts: Any) -> Project:  # noqa: ARG001
    return Project(**parts)


def _project_part(project: Project, name: str) -> Any:
    return FORMAT if name == "format" else by_attribute(project, name)


PROJECT = Record(
    "a project",
    _project,
    (
        Key("format", OneOf((FORMAT,))),
        Key("name", Text("a name", LONGEST_NAME)),
        Key("length_unit", OneOf(("in", "mm"))),
        Key("temperature_unit", OneOf(("F", "C"))),
        Key("sizes", Listed("sizes", SIZE, MOST_SIZES, "name"), always(())),
        Key("bonds", Listed("bonds", BOND, MOST_BONDS, "name"), always(())),
        Key("liner", LINER, lambda setting: LINERS[setting.temperature_unit]),
        Key("order", ORDER, always(Order())),
        Key("day", DAY, lambda setting: DAYS[setting.temperature_unit]),
        Key("blend", BLEND, always(Blend())),
        Key("deliveries", Listed("deliveries", DELIVERY, MOST_DELIVERIES), always(())),
        Key("walls", Listed("walls", WALL, MOST_WALLS, "mark")),
    ),
    part=_project_part,
)
