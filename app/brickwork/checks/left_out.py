"""A sliver too thin to be a brick: left as joint, so somebody should know."""

from collections.abc import Iterator
from math import floor

import numpy as np

from app.brickwork.borders import Boxes, abouts
from app.brickwork.findings import Finding
from app.brickwork.lattice import Flags
from app.brickwork.layout import Layout
from app.brickwork.pieces import bounds
from app.lengths import format_length

LEAST_READ = {"in": (1 / 64, '1/64"'), "mm": (0.5 / 25.4, "0.5 mm")}
"""Inches below which a rule reads nothing, and in words: what is left there is a saw's or a fit's residue."""


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a sliver, at its middle, about the edge that left it, and one an edge for all those thinner than a
    rule reads; lengths in words in `unit`, "in" or "mm"."""
    if not len(layout.left_out.unit):
        return
    box = bounds(layout.left_out)
    names = np.array(_names(layout, box), dtype=object)
    thin: Flags = np.minimum(box[2] - box[0], box[3] - box[1]) < LEAST_READ[unit][0]
    rows = zip(*(side.tolist() for side in box), names.tolist(), thin.tolist(), strict=True)
    for left, low, right, high, name, is_thin in rows:
        if not is_thin:
            text = (
                f"Sliver {_size(right - left, unit)} x {_size(high - low, unit)} left as joint;"
                f" thinner than {format_length(layout.smallest_cut, unit)}."
            )
            yield Finding("left-out", "note", (left + right) / 2, (low + high) / 2, text, name)
    for name in dict.fromkeys(names[thin].tolist()):
        yield _thin(box, thin & (names == name), name, unit)


def _thin(box: Boxes, here: Flags, name: str, unit: str) -> Finding:
    """All slivers of one edge that no rule reads, at the first of them."""
    left, low, right, high = (float(side[here][0]) for side in box)
    count = np.count_nonzero(here)
    text = f"{count} sliver{'' if count == 1 else 's'} at {name} thinner than {LEAST_READ[unit][1]} left as joint."
    return Finding("left-out", "note", (left + right) / 2, (low + high) / 2, text, name)


def _names(layout: Layout, box: Boxes) -> list[str]:
    """The edge that each sliver is at, or else the field's course."""
    foot = layout.lines.up.nominal((box[1] + box[3]) / 2) - layout.origin[1]
    otherwise = [f"field course {floor(course)}" for course in (foot / layout.size.gauge).tolist()]
    return abouts(layout, box, box[2] - box[0] > box[3] - box[1], otherwise)


def _size(inches: float, unit: str) -> str:
    return format_length(inches, unit, 16 if inches >= 1 / 16 else 64)
