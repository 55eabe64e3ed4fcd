"""A project's settings as fields of a form: what each is called, its unit, what was understood, what is usual."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from app.documents.kinds import Setting
from app.documents.order_keys import ORDER
from app.documents.project_keys import DAY, LINER
from app.documents.records import Record
from app.lengths import Length, Unit, format_length
from app.lengths.format import OFF_GRID
from app.panel.faults import Fault
from app.panel.project import Project
from app.web.wall_form import typed_text

RECORDS: Mapping[str, Record] = {"liner": LINER, "day": DAY, "order": ORDER}
"""The groups of single values, with how the project file reads them."""

TITLES = {"liner": "Liner", "day": "Bed temperatures", "order": "Order", "blend": "Blend"}

ASKED: Mapping[str, tuple[tuple[str, str, str], ...]] = {
    "liner": (
        ("columns", "Columns in a sheet", "columns"),
        ("rows", "Rows in a sheet", "rows"),
        ("thickness", "Thickness", ""),
        ("lap", "Lap over the neighbour", ""),
        ("expansion_per_degree", "Growth per degree", "per degree {t}"),
        ("reference_temperature", "True to size at", "degrees {t}"),
        ("tolerance", "Tolerance of a joint line", ""),
        ("joint_give", "Give of one joint", ""),
        ("density_lb_ft3", "Density of the liner", "lb/ft3"),
    ),
    "day": (
        ("bed_low", "Coldest bed while laying", "degrees {t}"),
        ("bed_high", "Hottest bed while laying", "degrees {t}"),
    ),
    "order": (
        ("overage_percent", "Overage", "percent"),
        ("kerf", "Kerf of the saw", ""),
        ("per_carton", "Bricks in a carton", "bricks"),
        ("cartons_per_pallet", "Cartons on a pallet", "cartons"),
        ("brick_density_lb_ft3", "Density of the brick", "lb/ft3"),
        ("sheets_per_pack", "Liner sheets in a pack", "sheets"),
        ("bead", "Bead of adhesive", ""),
        ("cartridge_fl_oz", "Cartridge of adhesive", "US fl oz"),
        ("nail_spacing", "Spacing of nails", ""),
    ),
}
"""Key, label and unit of each value; no unit: a length. {t} is the project's F or C."""


COUNTED = ("columns", "rows", "bricks", "cartons", "sheets")
"""Units of which there may be one."""


@dataclass(frozen=True, slots=True)
class SettingField:
    """One value: as typed, what that was understood as or what an empty field stands for, and what is wrong with it."""

    name: str
    label: str
    value: str
    holder: str
    echo: str
    fault: Fault | None = None


def fields_of(
    project: Project,
    group: str,
    document: Mapping[str, Any],
    typed: Mapping[str, str] | None,
    faults: Mapping[str, Fault],
) -> tuple[SettingField, ...]:
    """The fields of a group; `document` is what the file holds, `typed` a refused form, `faults` by their full path."""
    return tuple(
        _field(project, group, asked, document, typed, faults.get(f"{group}.{asked[0]}")) for asked in ASKED[group]
    )


def setting_of(project: Project) -> Setting:
    """The units in which the project's file is read."""
    return Setting(unit_of(project), project.temperature_unit)


def unit_of(project: Project) -> Unit:
    return "mm" if project.length_unit == "mm" else "in"


def differences(project: Project, group: str, before: Any, after: Any) -> list[str]:
    """What differs between two values of a group, as `kerf of the saw from 1/8" to 3/32"`; nothing for the same."""
    said = []
    for name, label, unit in ASKED[group]:
        old, new = getattr(before, name), getattr(after, name)
        if old != new:
            words = said_value(project, old, ""), said_value(project, new, unit)
            said.append(f"{label[:1].lower()}{label[1:]} from {words[0]} to {words[1]}")
    return said


def said_value(project: Project, value: Length | float, unit: str) -> str:
    """A value as a person reads it, in its unit."""
    if isinstance(value, Length):
        return _said_length(value, project.length_unit)
    words = unit.removesuffix("s") if value == 1 and unit in COUNTED else unit
    return f"{_figure(value)} {words.format(t=project.temperature_unit)}".strip()


def _said_length(length: Length, unit: str) -> str:
    """A length that no tape shows, such as the liner's thickness, by its decimals."""
    words = format_length(length, unit, 64)
    if not words.startswith(OFF_GRID):
        return words
    return f"{_figure(length.millimetres)} mm" if unit == "mm" else f"{_figure(length.inches)} in"


def _figure(value: float) -> str:
    return f"{value:,.9f}".rstrip("0").rstrip(".")


def _field(
    project: Project,
    group: str,
    asked: tuple[str, str, str],
    document: Mapping[str, Any],
    typed: Mapping[str, str] | None,
    fault: Fault | None,
) -> SettingField:
    name, label, unit = asked
    usual = said_value(project, getattr(_default(project, group), name), unit)
    if typed is not None:
        return SettingField(name, label, typed.get(name, ""), usual, "", fault)
    text = typed_text(document.get(name))
    now = said_value(project, getattr(getattr(project, group), name), unit)
    return SettingField(name, label, text, usual, f"= {now}" if text else f"usual: {usual}", fault)


def _default(project: Project, group: str) -> Any:
    return RECORDS[group].read({}, setting_of(project))
