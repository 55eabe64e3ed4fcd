"""A pier whose courses end in other pieces at its left than at its right."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.borders import NamedBorders, borders
from app.brickwork.course_ends import CourseEnds
from app.brickwork.findings import Finding
from app.brickwork.laps import is_mirrored
from app.brickwork.lattice import Flags, Ints
from app.brickwork.layout import Layout
from app.brickwork.phase_edges import Pairs
from app.brickwork.phase_terms import SYMMETRY
from app.lengths import format_length
from app.panel.tolerance import TOLERANCE

_ONE_COURSE = 1e-4
"""Inches: pieces whose feet are nearer than this are of one course."""


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One note a pier between two openings, or an opening and an edge, with unlike ends in some course.

    Nothing in a bond that no mirror leaves as it is, or where an edge of the face is at both sides. Lengths in `unit`.
    """
    mirrored = np.array([is_mirrored(region.bond, region.size) for region in layout.regions], dtype=np.bool_)
    if not layout.panel.openings or not mirrored.any():
        return
    named, ends = borders(layout), CourseEnds(layout)
    pairs = named.pairs
    for k in np.flatnonzero(pairs.pier).tolist():
        names = _sides(pairs, k, named)
        if any(" jamb " in name for name in names):
            left, right = _matched(layout, ends, pairs, k, mirrored)
            yield from _unlike(layout, left, right, names, unit)


def _sides(pairs: Pairs, k: int, named: NamedBorders) -> tuple[str, str]:
    """Names of the left and the right side of a pier."""
    low, high = float(pairs.y0[k]), float(pairs.y1[k])
    left, right = float(pairs.x0[k]), float(pairs.x1[k])
    return named.uprights.name_at(left, True, low, high), named.uprights.name_at(right, False, low, high)


def _matched(layout: Layout, ends: CourseEnds, pairs: Pairs, k: int, mirrored: Flags) -> tuple[Ints, Ints]:
    """End pieces at the left and the right of one course, from the lowest up, where the bond can be alike at both."""
    low, high = float(pairs.y0[k]), float(pairs.y1[k])
    left = ends.at(float(pairs.x0[k]), True, low, high)
    right = ends.at(float(pairs.x1[k]), False, low, high)
    one, two = np.nonzero(np.abs(left.foot[:, None] - right.foot) <= _ONE_COURSE)
    zone = layout.units.zone
    alike = (zone[left.unit[one]] == zone[right.unit[two]]) & mirrored[zone[left.unit[one]]]
    return left.unit[one][alike], right.unit[two][alike]


def _unlike(layout: Layout, left: Ints, right: Ints, names: tuple[str, str], unit: str) -> Iterator[Finding]:
    units = layout.units
    unlike = np.flatnonzero(np.abs(units.width[left] - units.width[right]) > SYMMETRY + TOLERANCE)
    if not len(unlike):
        return
    one, two = int(left[unlike[0]]), int(right[unlike[0]])
    about = f"pier {names[0]} to {names[1]}"
    ends = f"{format_length(float(units.width[one]), unit)} and {format_length(float(units.width[two]), unit)}"
    text = (
        f"Pier from {names[0]} to {names[1]}: {len(unlike)} of {len(left)} courses end unlike, the lowest in {ends};"
        f" move the bond's origin or an opening by half the difference."
    )
    x = float(units.x[one] + units.x[two] + units.width[two]) / 2
    yield Finding("unsymmetrical-pier", "note", x, float(units.y[one] + units.height[one] / 2), text, about)
