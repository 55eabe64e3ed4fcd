"""Ideas that move or resize openings that share a head, sill or jamb, so that brick starts or ends there uncut."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import islice

import numpy as np
import shapely

from app.brickwork.advice_cost import HEAD, LEFT, RIGHT, SILL, Estimate
from app.brickwork.advice_ideas import Idea
from app.brickwork.advice_words import length_as_typed, length_in_words, listed
from app.brickwork.lattice import Flags, Floats
from app.brickwork.layout import Layout
from app.lengths import Length
from app.panel.geometry import kept_margin, outline_polygon, shape_polygon, side_margins
from app.panel.shapes import Arch, Rect
from app.panel.tolerance import TOLERANCE
from app.panel.values import Opening

NAMES = {LEFT: "left", SILL: "sill", RIGHT: "right", HEAD: "head"}
_WORDS = {LEFT: "left jamb", SILL: "sill", RIGHT: "right jamb", HEAD: "head"}
_OUT = np.array([-1.0, -1.0, 1.0, 1.0])
_Key = tuple[bool, int, tuple[int, ...]]

NEARLY = 0.75
"""A smaller move is offered where it gains at least this share of what the best one does (our choice)."""


@dataclass(frozen=True)
class _Face:
    """Openings with level sills and upright jambs, and where the brick field ends round each, inches."""

    layout: Layout
    openings: tuple[Opening, ...]
    drawn: Floats
    boxes: Floats
    free: Flags

    @cached_property
    def outline(self) -> shapely.Polygon:
        """The panel's outline."""
        return outline_polygon(self.layout.panel)

    @cached_property
    def polygons(self) -> dict[str, shapely.Polygon]:
        """All openings of the panel by their marks, those of any shape."""
        return {one.mark: shape_polygon(one.shape) for one in self.layout.panel.openings}


@dataclass(frozen=True, slots=True)
class _Change:
    """One side of openings `who` moved by `by` inches, or the whole openings moved so that this side comes there."""

    side: int
    who: tuple[int, ...]
    by: float
    is_move: bool

    @property
    def sides(self) -> list[int]:
        return [self.side % 2, self.side % 2 + 2] if self.is_move else [self.side]

    @property
    def key(self) -> _Key:
        """Changes of one key are choices: only one is offered."""
        return self.is_move, self.side % 2 if self.is_move else self.side, self.who


def opening_ideas(layout: Layout, unit: str, most: int) -> list[Idea]:
    """The `most` ideas with the best estimate, best first; none for a bond that is turned or not level.

    Openings with the same head, sill or jamb move together. What stands on the panel's edge stays there, a door stays
    on its floor, and nothing leaves the face or touches another opening.
    """
    estimate, face = Estimate.of(layout), _face(layout)
    if estimate is None or not face.openings:
        return []
    changes = list(_changes(face, estimate))
    gains = _gains(changes, face, estimate)
    ranked = sorted(_least_moves(changes, gains.tolist()), key=lambda pair: (pair[0], abs(pair[1].by)))
    clear = (change for _, change in ranked if _is_clear(change, face))
    return [_idea(change, face, unit) for change in islice(clear, most)]


def _least_moves(changes: list[_Change], gains: list[float]) -> list[tuple[float, _Change]]:
    """Of the changes of one key, the least that gains nearly as much as the best; none that gains nothing."""
    best: dict[_Key, float] = {}
    for change, gain in zip(changes, gains, strict=True):
        best[change.key] = min(gain, best.get(change.key, -TOLERANCE))
    least: dict[_Key, tuple[float, _Change]] = {}
    for change, gain in sorted(zip(changes, gains, strict=True), key=lambda pair: abs(pair[0].by)):
        if gain <= NEARLY * best[change.key] and gain < -TOLERANCE:
            least.setdefault(change.key, (gain, change))
    return list(least.values())


def _face(layout: Layout) -> _Face:
    panel, margin = layout.panel, kept_margin(layout.panel, layout.size.head_joint.inches)
    openings = tuple(one for one in panel.openings if isinstance(one.shape, Rect | Arch) and "," not in one.mark)
    drawn = np.array([shape_polygon(one.shape).bounds for one in openings]).reshape(-1, 4)
    around = np.array([side_margins(one, margin) for one in openings]).reshape(-1, 4)
    boxes = drawn + _OUT * around
    bounds = np.array(layout.field.bounds if openings and not layout.field.is_empty else [0.0] * 4)
    inside = (boxes - bounds) * -_OUT
    free = inside > TOLERANCE
    for k, one in enumerate(openings):
        free[k, SILL] &= (one.use or "").casefold() != "door"
    boxes = np.where(inside > 0, boxes, bounds)
    return _Face(layout, openings, drawn, boxes, free)


def _changes(face: _Face, estimate: Estimate) -> Iterator[_Change]:
    for side in NAMES:
        axis = [side % 2, side % 2 + 2]
        for who in _groups(face, side):
            stretch = face.layout.lines.up if side % 2 else face.layout.lines.across
            at = float(face.boxes[who[0], side])
            nominal = stretch.nominal(at)
            for move in estimate.targets(side, nominal).tolist():
                by = stretch.real(nominal + move) - at
                if face.free[np.ix_(who, axis)].all():
                    yield _Change(side, who, by, is_move=True)
                if all(isinstance(face.openings[k].shape, Rect) for k in who):
                    yield _Change(side, who, by, is_move=False)


def _groups(face: _Face, side: int) -> list[tuple[int, ...]]:
    """Openings whose side stands at the same place, within the tolerance."""
    places = list(zip(face.drawn[:, side].tolist(), face.boxes[:, side].tolist(), strict=True))
    groups: list[list[int]] = []
    for k in sorted(np.flatnonzero(face.free[:, side]).tolist(), key=lambda k: places[k]):
        if groups and max(abs(a - b) for a, b in zip(places[k], places[groups[-1][0]], strict=True)) <= TOLERANCE:
            groups[-1].append(k)
        else:
            groups.append([k])
    return [tuple(sorted(group)) for group in groups]


def _gains(changes: list[_Change], face: _Face, estimate: Estimate) -> Floats:
    """The estimated change of cost of each change; below 0 is better, infinite where nothing is left of an opening."""
    before = estimate.costs(_nominal(face.boxes, face))
    which = np.array([n for n, change in enumerate(changes) for _ in change.who], dtype=np.int64)
    who = np.array([k for change in changes for k in change.who], dtype=np.int64)
    boxes = face.boxes[who]
    by = np.zeros((len(changes), 4))
    for n, change in enumerate(changes):
        by[n, change.sides] = change.by
    boxes = boxes + by[which]
    gone = ((boxes[:, RIGHT] - boxes[:, LEFT]) < 1.0) | ((boxes[:, HEAD] - boxes[:, SILL]) < 1.0)
    each = np.where(gone, np.inf, estimate.costs(_nominal(boxes, face)) - before[who])
    gains: Floats = np.bincount(which, each, len(changes)).astype(np.float64)
    return gains


def _nominal(boxes: Floats, face: _Face) -> Floats:
    lines = face.layout.lines
    columns = [lines.up.nominal(boxes[:, k]) if k % 2 else lines.across.nominal(boxes[:, k]) for k in range(4)]
    return np.column_stack(columns)


def _is_clear(change: _Change, face: _Face) -> bool:
    """Whether all changed openings that were inside the face still are, each clear of all other openings."""
    who = list(change.who)
    boxes = face.drawn[who].copy()
    boxes[:, change.sides] += change.by
    if not ((boxes[:, 2:] - boxes[:, :2]) > TOLERANCE).all():
        return False
    drawn, after = shapely.box(*face.drawn[who].T), shapely.box(*boxes.T)
    is_out = shapely.covers(face.outline, drawn) & ~shapely.covers(face.outline, after)
    if is_out.any() or (shapely.area(shapely.intersection(face.outline, after)) <= TOLERANCE).any():
        return False
    marks = {face.openings[k].mark for k in who}
    others = [polygon for mark, polygon in face.polygons.items() if mark not in marks]
    return not shapely.STRtree(others).query(after, predicate="intersects").size


def _idea(change: _Change, face: _Face, unit: str) -> Idea:
    by = Length.from_inches(round(change.by, 9))
    marks = [face.openings[k].mark for k in change.who]
    amount, direction = length_in_words(by, unit), _direction(change)
    box = face.drawn[change.who[0]]
    middle = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2]
    middle[change.side % 2] = box[change.side]
    to = length_in_words(Length.from_inches(round(float(box[change.side]) + change.by, 9)), unit)
    place = (float(middle[0]), float(middle[1]), abs(change.by))
    idea = Idea("", "resize_openings", (("marks", ", ".join(marks)),), "", *place)
    if change.is_move:
        return _moving(idea, change, marks, (direction, amount, to), length_as_typed(by, unit))
    what = _WORDS[change.side]
    several = f"the {what}s of {listed(marks)}" if len(marks) > 1 else f"the {what} of {marks[0]}"
    return replace(
        idea,
        text=f"{what.capitalize()} of {', '.join(marks)} {direction} {amount}",
        values=(*idea.values, ("side", NAMES[change.side]), ("by", length_as_typed(by, unit))),
        ask=f"Can {several} go {direction} {amount}, to {to} {_from(change)}?",
    )


def _moving(idea: Idea, change: _Change, marks: list[str], words: tuple[str, str, str], by: str) -> Idea:
    direction, amount, to = words
    side = _WORDS[change.side] + ("s" if len(marks) > 1 else "")
    dx, dy = ("0", by) if change.side % 2 else (by, "0")
    return replace(
        idea,
        text=f"{', '.join(marks)} {direction} {amount}",
        edit="move_openings",
        values=(*idea.values, ("dx", dx), ("dy", dy)),
        ask=f"Can {listed(marks)} go {direction} {amount}, the {side} to {to} {_from(change)}?",
    )


def _direction(change: _Change) -> str:
    return (("left", "right"), ("down", "up"))[change.side % 2][change.by > 0]


def _from(change: _Change) -> str:
    return "above the foot of the panel" if change.side % 2 else "from the left of the panel"
