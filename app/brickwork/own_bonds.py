"""Bonds of the project's own: read from their text, and checked for overlap and gaps before anything is laid."""

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from math import isfinite

from app.brickwork.bond import KINDS, ZERO, Bond, Cell, G, Module, P, S
from app.brickwork.bond_faults import tiling_faults
from app.brickwork.bonds import BONDS
from app.brickwork.module_text import read_module
from app.brickwork.sizes import CATALOGUE
from app.lengths import LengthError
from app.panel.faults import Fault, Refused
from app.panel.own_bond import ModulePoint, OwnBond, OwnCell
from app.panel.project import Project
from app.panel.size import BrickSize
from app.panel.wording import one_of, quoted

MOST_CELLS = 200
"""Cells of a motif: far over any bond of the trade."""

_KIND = re.compile(r"(?P<kind>[a-z]+)(\s+1/(?P<parts>[234]))?")
_MODULAR = CATALOGUE["modular"]

Vector = tuple[Module, Module]


@lru_cache(maxsize=512)
def own_bond(own: OwnBond) -> Bond:
    """The bond that the project's file describes; a cell's size follows from its kind.

    The vectors are put so that the first runs to the right and the second to its left, which changes no unit's place.
    Raises Refused for what cannot be read; `own_bond_faults` also finds overlap and gaps.
    """
    faults = _reading_faults(own)
    if faults:
        raise Refused(faults)
    across, up = _turned_right(_vector(own.across), _vector(own.up))
    return Bond(own.name, own.name, tuple(_cell(cell) for cell in own.cells), across, up, own.turn)


def own_bond_faults(own: OwnBond, sizes: Iterable[BrickSize], unit: str = "in") -> tuple[Fault, ...]:
    """All that is wrong with the bond: what cannot be read, and cells that overlap or leave a hole.

    Each of the brick sizes is tried until one has a fault. Places are in modules and in the project's `unit`, seen
    from the motif's own corner before any turn. No sizes: only the reading is checked.
    """
    faults = _reading_faults(own)
    if faults:
        return faults
    bond = own_bond(own)
    return next(filter(None, (tiling_faults(bond, size, unit) for size in sizes)), ())


def all_own_bond_faults(owns: Sequence[OwnBond], sizes: Iterable[BrickSize], unit: str = "in") -> tuple[Fault, ...]:
    """Faults of every bond of the project under `bonds[k]`, and of names that two of them share."""
    tried = tuple(sizes)
    faults = [fault.under(f"bonds[{k}]") for k, own in enumerate(owns) for fault in own_bond_faults(own, tried, unit)]
    names = [own.name for own in owns]
    twice = [k for k, name in enumerate(names) if name in names[:k]]
    faults += [Fault(f"bonds[{k}].name", f"{quoted(names[k])} again", "another name for each bond") for k in twice]
    return tuple(faults)


def known_bonds(project: Project) -> dict[str, Bond]:
    """Every bond that the project may use by name: the built-in ones, then its own. Raises Refused as `own_bond`."""
    return BONDS | {own.name: own_bond(own) for own in project.bonds}


def _reading_faults(own: OwnBond) -> tuple[Fault, ...]:
    faults = _name_faults(own.name) + _count_faults(len(own.cells))
    for k, cell in enumerate(own.cells[:MOST_CELLS]):
        faults += _kind_faults(cell.kind, f"cells[{k}].kind") + _point_faults(cell.at, f"cells[{k}].at")
    faults += _vector_faults(own.across, "across") + _vector_faults(own.up, "up")
    if not (isfinite(own.turn) and abs(own.turn) <= 360):
        faults.append(Fault("turn", f"{own.turn:g} degrees", "-360 to 360 degrees"))
    return tuple(faults)


def _name_faults(name: str) -> list[Fault]:
    if not name.strip():
        return [Fault("name", "nothing", "a name for the bond")]
    return [Fault("name", quoted(name), "a name that no built-in bond has")] if name in BONDS else []


def _count_faults(count: int) -> list[Fault]:
    if count == 0:
        return [Fault("cells", "no cells", "at least one cell")]
    return [Fault("cells", f"{count:,} cells", f"at most {MOST_CELLS} cells")] if count > MOST_CELLS else []


def _kind_faults(kind: str, path: str) -> list[Fault]:
    found = _KIND.fullmatch(kind)
    if found is None or found["kind"] not in KINDS:
        return [Fault(path, quoted(kind), one_of(KINDS, kind))]
    if found["parts"] and found["kind"] in ("stretcher", "soldier"):
        return [Fault(path, quoted(kind), f"{found['kind']}, which always shows the whole length")]
    return []


def _vector_faults(point: ModulePoint, path: str) -> list[Fault]:
    faults = _point_faults(point, path)
    if not faults and _vector(point) == (ZERO, ZERO):
        faults.append(Fault(path, "no step at all", "a step to the next motif"))
    return faults


def _point_faults(point: ModulePoint, path: str) -> list[Fault]:
    return [fault for axis in (0, 1) for fault in _module_faults(point[axis], f"{path}[{axis}]")]


def _module_faults(text: str, path: str) -> list[Fault]:
    try:
        read_module(text)
    except LengthError as error:
        place = f"{quoted(text)}, character {error.position + 1}: {error.found}" if text.strip() else "nothing"
        return [Fault(path, place, f"{error.expected}, for example {error.example}")]
    return []


def _vector(point: ModulePoint) -> Vector:
    return read_module(point[0]), read_module(point[1])


def _cell_size(kind: str, parts: int) -> Vector:
    width = P / parts
    sizes = {
        "stretcher": (P, G),
        "header": (width, G),
        "soldier": (S, P),
        "sailor": (width, P),
        "rowlock": (S, width),
        "shiner": (P, width),
    }
    return sizes[kind]


def _cell(own: OwnCell) -> Cell:
    """The cell, its kind read as "header" (half a head module) or "header 1/3" (a third of it)."""
    found = _KIND.fullmatch(own.kind)
    assert found is not None
    kind, parts = found["kind"], int(found["parts"] or 2)
    return Cell(kind, *_vector(own.at), *_cell_size(kind, parts), parts)


def _turned_right(across: Vector, up: Vector) -> tuple[Vector, Vector]:
    """The same lattice by vectors that the lines of a layout can run along: level first, to the right, then up."""
    if up[1] == ZERO and across[1] != ZERO:
        across, up = up, across
    if across[0] == ZERO:
        across = (across[0] + up[0], across[1] + up[1])
    (ax, ay), (ux, uy) = ([part.inches(_MODULAR) for part in vector] for vector in (across, up))
    if ax < 0:
        across, ax, ay = (-across[0], -across[1]), -ax, -ay
    return across, (-up[0], -up[1]) if ax * uy - ay * ux < 0 else up
