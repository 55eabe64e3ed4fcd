"""Project files, walls and panels as they begin: what a person typed, and our defaults for the rest."""

from dataclasses import dataclass
from typing import Any

from app.lengths import Length
from app.panel.things import Document

FORMAT = "castcourse-project/1"


@dataclass(frozen=True, slots=True)
class Usual:
    """What a part starts with. A joint of 3/4 in and a panel cast behind a 2x8 form, 7-1/4 in, are common practice in
    tilt-up; the metric figures are their round neighbours."""

    joint: str
    thickness: str
    size: str
    temperature_unit: str


INCHES = Usual(joint='3/4"', thickness='7 1/4"', size="modular", temperature_unit="F")
MILLIMETRES = Usual(joint="20 mm", thickness="185 mm", size="uk 215x65", temperature_unit="C")


def usual(unit: str) -> Usual:
    """The defaults for a project in this length unit."""
    return MILLIMETRES if unit == "mm" else INCHES


def new_project(name: str, unit: str) -> dict[str, Any]:
    """A project file with one empty wall, in inches or millimetres."""
    units = {"length_unit": unit, "temperature_unit": usual(unit).temperature_unit}
    settings = {"format": FORMAT, "name": name, **units}
    return settings | {"walls": [new_wall("A", unit)]}


def new_wall(mark: str, unit: str) -> dict[str, Any]:
    """A wall without panels."""
    return {"mark": mark, "datum": 0, "joint": usual(unit).joint, "panels": []}


def new_panel(mark: str, width: Length, height: Length, unit: str, size: str, bond: str) -> Document:
    """A rectangular panel as typed, without openings."""
    wide, high = _typed(width), _typed(height)
    return {
        "mark": mark,
        "thickness": usual(unit).thickness,
        "outline": [[0, 0], [wide, 0], [wide, high], [0, high]],
        "field": {"size": size, "bond": bond},
    }


def _typed(length: Length) -> str | int | float:
    return length.typed if length.typed is not None else length.inches
