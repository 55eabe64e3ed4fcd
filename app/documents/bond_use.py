"""Whether a project's own bonds can be laid with the brick sizes that they stand beside in the field and the zones."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import islice

from app.brickwork.own_bonds import own_bond_faults
from app.brickwork.sizes import CATALOGUE
from app.lengths import Unit
from app.panel.faults import Fault
from app.panel.own_bond import OwnBond
from app.panel.project import Project
from app.panel.size import BrickSize
from app.panel.values import Brickwork, Panel

MOST_SIZES_TRIED = 20
"""A bond that no panel uses yet is sound when one of so many sizes is."""

MOST_FAULTY = 3
"""Bonds with holes or overlaps that are told at once: finding them all takes its time."""


def file_bond_faults(project: Project) -> tuple[Fault, ...]:
    """Overlaps and holes of own bonds, under `bonds[k]`: with every size they are used with, or with any if unused.

    Nothing for a project without own bonds.
    """
    faulty = (fault for k, own in enumerate(project.bonds) if (fault := _under(k, own, project)))
    return tuple(fault for faults in islice(faulty, MOST_FAULTY) for fault in faults)


def panel_bond_faults(project: Project, panel: Panel) -> tuple[Fault, ...]:
    """The same for one panel of the project, at the place where it asks for the bond (`zones[1].bond`)."""
    own = {bond.name: bond for bond in project.bonds}
    known = known_sizes(project)
    faults = []
    for path, work in _works(panel):
        if work.bond in own and work.size in known:
            found = _tried(own[work.bond], known[work.size], project.length_unit)[:1]
            faults += [Fault(f"{path}.bond", fault.found, fault.expected) for fault in found]
    return tuple(faults)


def known_sizes(project: Project) -> dict[str, BrickSize]:
    """The brick sizes that a project's panels can use, by name: the catalogue and its own, which go before."""
    return CATALOGUE | {size.name: size for size in project.sizes}


def _under(k: int, own: OwnBond, project: Project) -> tuple[Fault, ...]:
    sizes = _used_with(own.name, project)
    faults = _of_used(own, sizes, project.length_unit) if sizes else _of_unused(own, project)
    return tuple(fault.under(f"bonds[{k}]") for fault in faults)


def _of_used(own: OwnBond, sizes: list[BrickSize], unit: Unit) -> tuple[Fault, ...]:
    return next(filter(None, (_tried(own, size, unit) for size in sizes)), ())


def _of_unused(own: OwnBond, project: Project) -> tuple[Fault, ...]:
    sizes = dict.fromkeys([CATALOGUE["modular"], *project.sizes, *CATALOGUE.values()])
    first: tuple[Fault, ...] = ()
    for size in islice(sizes, MOST_SIZES_TRIED):
        faults = _tried(own, size, project.length_unit)
        if not faults:
            return ()
        first = first or faults
    return first


def _used_with(bond: str, project: Project) -> list[BrickSize]:
    known = known_sizes(project)
    works = (work for wall in project.walls for panel in wall.panels for _, work in _works(panel))
    names = dict.fromkeys(work.size for work in works if work.bond == bond)
    return [known[name] for name in names if name in known]


def _works(panel: Panel) -> Iterator[tuple[str, Brickwork]]:
    yield "field", panel.field
    for k, zone in enumerate(panel.zones):
        yield f"zones[{k}]", zone.work


@lru_cache(maxsize=512)
def _tried(own: OwnBond, size: BrickSize, unit: Unit) -> tuple[Fault, ...]:
    return own_bond_faults(own, (size,), unit)
