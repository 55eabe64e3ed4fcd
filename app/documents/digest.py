"""A fingerprint of everything that a panel's results are computed from."""

import json
from dataclasses import asdict, fields, is_dataclass, replace
from hashlib import sha256
from typing import Any

from app.brickwork.own_bonds import known_bonds
from app.brickwork.wall import place_in
from app.documents.project_file import sizes_of
from app.lengths import Length
from app.panel.own_bond import OwnBond
from app.panel.project import Project, Wall
from app.panel.values import Panel

ENGINE = "castcourse-engine/3"
"""Raised when the same input gives other results than before."""


def panel_digest(project: Project, wall: Wall, panel: Panel) -> str:
    """`sha256:` and 64 hexadecimal figures: the same for the same values, however they were typed.

    Other panels of the project, its name and deliveries, the panel's casting day, questions to the architect, and
    brick sizes and own bonds that the panel does not use take no part; accepted findings do, for results say of each
    finding whether it is accepted.
    """
    inputs = {
        "engine": ENGINE,
        "units": [project.length_unit, project.temperature_unit],
        "panel": _plain(replace(panel, questions=(), cast_on=None, placed=False)),
        "sizes": [_plain(size) for size in used_sizes(project, panel)],
        "bonds": [_plain(bond) for bond in used_bonds(project, panel)],
        "place": _place(project, wall, panel),
        "liner": _plain(project.liner),
        "order": _plain(project.order),
        "day": _plain(project.day),
        "blend": _plain(project.blend),
    }
    text = json.dumps(inputs, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    return f"sha256:{sha256(text.encode()).hexdigest()}"


def _place(project: Project, wall: Wall, panel: Panel) -> Any:
    """Where the panel finds courses and bond of its wall, to the tenth of a thousandth of an inch."""
    place = place_in(wall, panel, sizes_of(project), project.liner.joint_give.inches, known_bonds(project))
    return json.loads(json.dumps(asdict(place)), parse_float=lambda text: round(float(text), 4) + 0.0)


def used_sizes(project: Project, panel: Panel) -> tuple[Any, ...]:
    """The brick sizes of the field and the zones, each once, by name."""
    names = {panel.field.size, *(zone.work.size for zone in panel.zones)}
    known = sizes_of(project)
    return tuple(known[name] for name in sorted(names))


def used_bonds(project: Project, panel: Panel) -> tuple[OwnBond, ...]:
    """The project's own bonds in the field and the zones, each once, by name; nothing where all are the usual ones."""
    names = {panel.field.bond, *(zone.work.bond for zone in panel.zones)}
    own = {bond.name: bond for bond in project.bonds if bond.name in names}
    return tuple(own[name] for name in sorted(own))


def _plain(value: Any) -> Any:
    """A frozen value as plain lists and objects; lengths as whole nanometres, and a shape says which it is."""
    if isinstance(value, Length):
        return value.nm
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    if is_dataclass(value):
        parts = {part.name: _plain(getattr(value, part.name)) for part in fields(value)}
        return {"is": type(value).__name__, **parts}
    return value
