"""The project file: read with every fault named, written so that what was not touched stays as it was typed."""

from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import Any

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.documents.bond_use import file_bond_faults, known_sizes, panel_bond_faults
from app.documents.json_text import read_text
from app.documents.kinds import Setting
from app.documents.marks import mark_faults
from app.documents.panel_keys import PANEL
from app.documents.project_checks import project_faults
from app.documents.project_keys import PROJECT
from app.lengths import Unit
from app.panel.faults import Refused
from app.panel.project import Project
from app.panel.size import BrickSize
from app.panel.values import Panel

__all__ = [
    "bond_names",
    "laid_by",
    "read_panel",
    "read_panel_of",
    "read_project",
    "read_stored",
    "read_text",
    "sizes_of",
    "write_panel",
    "write_project",
]

Document = dict[str, Any]


def read_project(document: Any) -> Project:
    """The project that a file's values say; raises Refused with every fault, each with its place in the file.

    A panel that cannot be read at all is not looked at further; all others are.
    """
    project = read_stored(document)
    faults = project_faults(project)
    if faults:
        raise Refused(faults)
    return project


def read_stored(document: Any) -> Project:
    """The same for what is stored already: what no panel suits any more must not lock a project up.

    A kerf or a sheet that fitted when it was typed stays when the last large panel is taken away.
    """
    setting = _setting(document)
    faults = mark_faults(document)
    try:
        project: Project = PROJECT.read(document, setting)
    except Refused as refused:
        raise Refused((*refused.faults, *faults)) from None
    faults += file_bond_faults(project)
    if faults:
        raise Refused(faults)
    return project


def write_project(project: Project, like: Document | None = None) -> Document:
    """The project file, keys in their usual order and defaults left out.

    `like` is the file as it was stored: what says the same in it is written the same, in the same order.
    """
    setting = Setting(_unit(project.length_unit), project.temperature_unit)
    return PROJECT.write(project, setting, like)


def read_panel(
    document: Any,
    unit: Unit = "in",
    sizes: Collection[str] = tuple(CATALOGUE),
    bonds: Collection[str] = tuple(BONDS),
) -> Panel:
    """One panel of a file, its numbers in `unit`; raises Refused, paths relative to the panel.

    `sizes` and `bonds` are the names that the panel may use: `sizes_of` and `bond_names` have a project's.
    """
    panel: Panel = PANEL.read(document, Setting(unit, sizes=sizes, bonds=bonds))
    return panel


def read_panel_of(project: Project, document: Any) -> Panel:
    """One panel in a project's unit, sizes and bonds; raises Refused, also where an own bond has holes."""
    panel = read_panel(document, project.length_unit, tuple(sizes_of(project)), bond_names(project))
    return laid_by(project, panel)


def laid_by(project: Project, panel: Panel) -> Panel:
    """The panel itself; raises Refused where one of the project's own bonds leaves holes with the brick it is in."""
    faults = panel_bond_faults(project, panel)
    if faults:
        raise Refused(faults)
    return panel


def write_panel(panel: Panel, unit: Unit, like: Document | None = None) -> Document:
    """One panel as `write_project` writes it."""
    return PANEL.write(panel, Setting(unit), like)


def sizes_of(project: Project) -> Mapping[str, BrickSize]:
    """The brick sizes that a project's panels can use, by name: the catalogue and its own, which go before."""
    return known_sizes(project)


def bond_names(project: Project) -> tuple[str, ...]:
    """The names of the bonds that a project's panels can use: the usual ones and its own."""
    return tuple(dict.fromkeys([*BONDS, *(bond.name for bond in project.bonds)]))


def _setting(document: Any) -> Setting:
    """Units and names as far as the file tells; what is wrong with them is told where they are read."""
    file = document if isinstance(document, dict) else {}
    sizes = tuple(dict.fromkeys([*CATALOGUE, *_own_names(file.get("sizes"))]))
    bonds = tuple(dict.fromkeys([*BONDS, *_own_names(file.get("bonds"))]))
    celsius = file.get("temperature_unit") == "C"
    known = Setting(_unit(file.get("length_unit")), sizes=sizes, bonds=bonds)
    return replace(known, temperature_unit="C" if celsius else "F")


def _own_names(items: Any) -> list[str]:
    named = [item.get("name") for item in items if isinstance(item, dict)] if isinstance(items, list) else []
    return [name for name in named if isinstance(name, str)]


def _unit(said: Any) -> Unit:
    return "mm" if said == "mm" else "in"
