"""Joints wider or narrower than brickwork may have: 1/4 to 1/2 in. for 3/8 in., others in proportion (common practice).

Head joints at jamb ends are the matter of `broken_bond`.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np

from app.brickwork.borders import Borders, borders
from app.brickwork.findings import Finding
from app.brickwork.fit import Limits
from app.brickwork.fit_lines import Control
from app.brickwork.lattice import Flags
from app.brickwork.layout import Layout
from app.brickwork.pieces import bounds
from app.brickwork.regions import Region
from app.brickwork.stretch import Stretch
from app.lengths import format_length
from app.panel.tolerance import TOLERANCE

_RANGE = Limits(0.0)


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a stretch between control lines whose joints leave the range, and one a level edge where slivers were
    left as joint; lengths in words in `unit`."""
    for region in layout.regions:
        if not region.across.is_identity:
            yield from _stretched(layout, region, 0, unit)
        if not region.up.is_identity:
            yield from _stretched(layout, region, 1, unit)
    if len(layout.left_out.unit):
        yield from _slivers(layout, unit)


def _stretched(layout: Layout, region: Region, axis: int, unit: str) -> Iterator[Finding]:
    stretch, named = (region.up, borders(layout).levels) if axis else (region.across, borders(layout).uprights)
    cells = _cells(region, axis)
    low, high = region.extent.bounds[axis], region.extent.bounds[axis + 2]
    known = [one.control for one in (layout.states.vertical if axis else layout.states.horizontal)]
    for place, (start, end, ratio) in enumerate(_parts(stretch), start=1):
        worst = max(((cell * ratio - face, cell - face) for cell, face in cells), key=_strain)
        is_out = not _RANGE.least * worst[1] - TOLERANCE <= worst[0] <= _RANGE.most * worst[1] + TOLERANCE
        if is_out and end > low and start < high:
            at = (max(start, low) + min(end, high)) / 2
            name = _name(named, known, start, cells) or f"control line {place}"
            about = f"{'bed' if axis else 'head'} joints from {name}"
            yield _finding(region, axis, at, worst, about, unit)


def _cells(region: Region, axis: int) -> list[tuple[float, float]]:
    """Each cell of the bond and its unit along the axis, inches."""
    size = region.size
    wide = [(cell.width if axis == 0 else cell.height).inches(size) for cell in region.bond.cells]
    return [(length, cell.face(size)[axis]) for length, cell in zip(wide, region.bond.cells, strict=True)]


def _parts(stretch: Stretch) -> Iterator[tuple[float, float, float]]:
    """Between neighbouring knots: from where to where really, inches, and real over nominal."""
    knots = zip(stretch.nominal_knots, stretch.real_knots, strict=True)
    for (nominal, real), (next_nominal, next_real) in pairwise(knots):
        yield real, next_real, (next_real - real) / (next_nominal - nominal)


def _strain(joint: tuple[float, float]) -> float:
    """How far a joint is from its nominal width, in parts of it."""
    real, nominal = joint
    return abs(real - nominal) / nominal if nominal > TOLERANCE else abs(real - nominal)


def _name(named: Borders, known: Sequence[Control], knot: float, cells: list[tuple[float, float]]) -> str:
    """The edge that a knot stands at, where a unit starts or a unit's length before one ends; else the control there,
    as of a zone; "" for none, as of another panel of the wall."""
    stops = np.array([[knot], *([knot + face] for _, face in cells)])
    meets = (np.abs(stops - named.at) <= 2 * TOLERANCE).any(axis=0) if named.names else np.zeros(0)
    found = np.flatnonzero(meets)
    if len(found):
        return named.names[int(found[0])]
    return next((one.name for one in known if abs(one.at - knot) <= 2 * TOLERANCE), "")


def _finding(region: Region, axis: int, at: float, joint: tuple[float, float], about: str, unit: str) -> Finding:
    real, nominal = joint
    bounds_of, words = region.extent.bounds, about[0].upper() + about[1:]
    text = (
        f"{words} are {format_length(real, unit, 64)}; {format_length(_RANGE.least * nominal, unit, 64)} to"
        f" {format_length(_RANGE.most * nominal, unit, 64)} is in range. Let one of the control lines go."
    )
    other = (bounds_of[1 - axis] + bounds_of[3 - axis]) / 2
    x, y = (at, other) if axis == 0 else (other, at)
    return Finding("joint-range", "warning", float(x), float(y), text, about)


def _is_flat(layout: Layout) -> Flags:
    """Which slivers were left out for their height."""
    x0, y0, x1, y1 = bounds(layout.left_out)
    flat: Flags = (y1 - y0 < layout.smallest_cut) & (y1 - y0 < x1 - x0)
    return flat


def _slivers(layout: Layout, unit: str) -> Iterator[Finding]:
    """Slivers along one level edge as one finding, where they make its bed joint too wide."""
    box = bounds(layout.left_out.take(_is_flat(layout)))
    names, thick = np.array(borders(layout).levels.met(box, 1), dtype=object), box[3] - box[1]
    _, bed = layout.regions[0].joints
    for name in dict.fromkeys(found for found in names.tolist() if found):
        here = names == name
        widest = int(np.flatnonzero(here)[thick[here].argmax()])
        joint, most = float(thick[widest]) + bed, _RANGE.most * bed
        if joint > most + TOLERANCE:
            places = f"{np.count_nonzero(here)} places"
            text = (
                f"Bed joint at {name} is {format_length(joint, unit)} as slivers are left out there in {places};"
                f" {format_length(most, unit)} is the most. Move the edge or the course lines."
            )
            x, y = (box[0] + box[2])[widest] / 2, (box[1] + box[3])[widest] / 2
            yield Finding("joint-range", "warning", float(x), float(y), text, name)
