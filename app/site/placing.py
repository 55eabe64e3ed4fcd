"""In which order brick is set: the strips between lanes first, then each lane from its far end to the way out."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from app.brickwork.bond import KINDS
from app.lengths import format_length
from app.order.work import FaceWork
from app.panel.tolerance import TOLERANCE
from app.site.lane_values import Lane, Lanes, WayOut
from app.site.lanes import is_rising
from app.site.places import Strip

OPPOSITE: dict[WayOut, WayOut] = {"foot": "top", "top": "foot", "left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class Count:
    """Pieces of one kind and colour in a step: `kind` is the brick's, or "corner left" or "corner right"."""

    kind: str
    colour: str
    pieces: int
    cut: int


@dataclass(frozen=True, slots=True)
class PlacingStep:
    """One step: "strip" between lanes ("S1") or "lane" ("L1"), its rectangle in the face frame, what is set in it, and
    where one kneels and how one leaves in words."""

    number: int
    sort: Literal["strip", "lane"]
    mark: str
    strip: Strip
    counts: tuple[Count, ...]
    words: str

    @property
    def pieces(self) -> int:
        return sum(count.pieces for count in self.counts)


@dataclass(frozen=True, slots=True, eq=False)
class Placing:
    """All steps in order; `step_of` has for each unit of the layout the number of its step."""

    steps: tuple[PlacingStep, ...]
    step_of: NDArray[np.int16]


def placing(face: FaceWork, lanes: Lanes, unit: str = "in") -> Placing:
    """The order of placing for one face and its lanes, what is farthest from the way out first.

    Counts are by kind, corner units by the end of the face they stand at, and by colour where the project has a blend.
    Corner units count as one; bricks behind them on the return go with them and are not counted here. Strips without
    brick are left out; no steps for a face without. Words have lengths in `unit`, "in" or "mm".
    """
    kinds = _kinds(face)
    step_of = np.zeros(len(face.layout.units), dtype=np.int16)
    steps: list[PlacingStep] = []
    for sort, mark, strip, chosen, words in (*_strips(face, lanes, unit), *_lanes(lanes)):
        if not chosen.any():
            continue
        step_of[chosen] = len(steps) + 1
        counts = tuple(_counts(face, kinds, chosen))
        steps.append(PlacingStep(len(steps) + 1, sort, mark, strip, counts, words))
    return Placing(tuple(steps), step_of)


_Part = tuple[Literal["strip", "lane"], str, Strip, NDArray[np.bool_], str]


def _strips(face: FaceWork, lanes: Lanes, unit: str) -> Iterator[_Part]:
    """Between lanes; the whole panel where there are none."""
    axis, units = 0 if lanes.direction == "up" else 1, face.layout.units
    middle = (units.x + units.width / 2, units.y + units.height / 2)[axis]
    spans = _between(lanes, (face.layout.panel.width, face.layout.panel.height)[axis])
    number = 0
    for start, end, before, after in spans if is_rising(lanes.direction, lanes.way_out) else spans[::-1]:
        chosen = (lanes.lane_of == 0) & (middle >= start) & (middle < end)
        if chosen.any():
            number += 1
            strip = _strip(face, axis, max(start, 0.0), min(end, _extent(face, axis)))
            yield "strip", f"S{number}", strip, chosen, _strip_words(strip, lanes, before, after, unit)


def _extent(face: FaceWork, axis: int) -> float:
    return (face.layout.panel.width, face.layout.panel.height)[axis]


def _strip(face: FaceWork, axis: int, start: float, end: float) -> Strip:
    if axis == 0:
        return Strip(start, 0.0, end - start, face.layout.panel.height)
    return Strip(0.0, start, face.layout.panel.width, end - start)


def _between(lanes: Lanes, extent: float) -> list[tuple[float, float, Lane | None, Lane | None]]:
    """From low to high across the lanes: start and end of what is between two lanes, and those lanes.

    What is past the last lane, or before the first, has no end there.
    """
    axis = 0 if lanes.direction == "up" else 1
    sides = sorted((*_span(lane, axis), lane.number) for lane in lanes.lanes)
    by_number = {lane.number: lane for lane in lanes.lanes}
    found: list[tuple[float, float, Lane | None, Lane | None]] = []
    start, before = -np.inf, None
    for low, high, number in sides:
        found.append((start, low, before, by_number[number]))
        start, before = high, by_number[number]
    return [one for one in (*found, (start, np.inf, before, None)) if one[1] - one[0] > TOLERANCE and one[0] < extent]


def _span(lane: Lane, axis: int) -> tuple[float, float]:
    strip = lane.strip
    return (strip.x, strip.x + strip.width) if axis == 0 else (strip.y, strip.y + strip.height)


def _strip_words(strip: Strip, lanes: Lanes, before: Lane | None, after: Lane | None, unit: str) -> str:
    size = f"{format_length(strip.width, unit)} x {format_length(strip.height, unit)}"
    near = [lane.mark for lane in (before, after) if lane]
    if not near:
        return f"The whole panel, {size}: set from outside the form, along all its edges; no lane is needed."
    kneel = " and ".join(sorted(near, key=lambda mark: int(mark[1:])))
    keep = "keep it open" if len(near) == 1 else "keep both open"
    outside = " and outside the form" if len(near) == 1 else ""
    far = OPPOSITE[lanes.lanes[0].leaves]
    start = f"from the {_edge(far)} to the {_edge(lanes.lanes[0].leaves)}"
    return f"{size}, {start}: kneel in {kneel}{outside}, and {keep}; at the ends set from outside the form."


def _edge(way: WayOut) -> str:
    return {"foot": "foot", "top": "top edge", "left": "bed's left edge", "right": "bed's right edge"}[way]


def _lanes(lanes: Lanes) -> Iterator[_Part]:
    for lane in lanes.lanes:
        yield "lane", lane.mark, lane.strip, lanes.lane_of == lane.number, _lane_words(lane)


def _lane_words(lane: Lane) -> str:
    start, end = _edge(OPPOSITE[lane.leaves]), _edge(lane.leaves)
    over = f" Step over the form of {', '.join(lane.crosses)}." if lane.crosses else ""
    return f"Walking backwards from the {start} to the {end}; the last brick is set from outside the form.{over}"


def _kinds(face: FaceWork) -> list[str]:
    """The kind of each unit of the face, corner units by their hand."""
    kinds = [KINDS[kind] for kind in face.layout.units.kind.tolist()]
    for one in face.around:
        for leg in one.legs:
            kinds[leg.unit] = f"corner {one.hand}"
    return kinds


def _counts(face: FaceWork, kinds: Sequence[str], chosen: NDArray[np.bool_]) -> Iterator[Count]:
    """Kinds in the order of `KINDS`, corner units after them, colours as in the blend."""
    names = [colour.name for colour in face.blend.colours]
    units = np.flatnonzero(chosen)
    is_cut, colours = face.layout.units.is_trimmed[units].tolist(), face.colours[units].tolist()
    keys = [(kinds[k], colour) for k, colour in zip(units.tolist(), colours, strict=True)]
    pieces = Counter(keys)
    cut = Counter(key for key, trimmed in zip(keys, is_cut, strict=True) if trimmed)
    order = (*KINDS, "corner left", "corner right")
    for kind, colour in sorted(pieces, key=lambda key: (order.index(key[0]), key[1])):
        name = names[colour] if names else ""
        yield Count(kind, name, pieces[kind, colour], cut[kind, colour])
