"""Faults of brickwork and of the zones that have their own."""

from collections.abc import Collection

import shapely

from app.panel.check_shapes import outside_faults, shape_faults
from app.panel.faults import Fault
from app.panel.values import Band, Brickwork, Zone
from app.panel.wording import one_of, quoted

MOST_COURSES = 10_000
"""More than 100 ft has in the lowest course there is; keeps a slip of the keyboard from becoming a band of nothing."""


def work_faults(
    work: Brickwork, path: str, sizes: Collection[str] | None, bonds: Collection[str] | None
) -> list[Fault]:
    """Faults of a brick size and a bond that nobody knows; None for either leaves it unchecked."""
    faults = []
    if sizes is not None and work.size not in sizes:
        faults.append(Fault(f"{path}.size", quoted(work.size), one_of(sizes, work.size)))
    if bonds is not None and work.bond not in bonds:
        faults.append(Fault(f"{path}.bond", quoted(work.bond), one_of(bonds, work.bond)))
    return faults


def zone_faults(
    zones: tuple[Zone, ...],
    face: shapely.Polygon | None,
    sizes: Collection[str] | None,
    bonds: Collection[str] | None,
    unit: str,
) -> list[Fault]:
    """Faults of every zone: its region, and its brickwork."""
    faults: list[Fault] = []
    for k, zone in enumerate(zones):
        faults += _region_faults(zone, f"zones[{k}]", face, unit)
        faults += work_faults(zone.work, f"zones[{k}]", sizes, bonds)
    return faults


def _region_faults(zone: Zone, path: str, face: shapely.Polygon | None, unit: str) -> list[Fault]:
    if isinstance(zone.region, Band):
        return _band_faults(zone.region, f"{path}.band")
    alone = shape_faults(zone.region, path, unit)
    if alone or face is None:
        return alone
    return outside_faults(zone.region, face, path, unit)


def _band_faults(band: Band, path: str) -> list[Fault]:
    faults = []
    if abs(band.course) > MOST_COURSES:
        expected = f"a course of the field between -{MOST_COURSES:,} and {MOST_COURSES:,}"
        faults.append(Fault(f"{path}.course", f"course {band.course:,}", expected))
    if not 1 <= band.courses <= MOST_COURSES:
        faults.append(Fault(f"{path}.courses", f"{band.courses:,} courses", f"1 to {MOST_COURSES:,} courses"))
    return faults
