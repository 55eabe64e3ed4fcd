"""Ideas that change how the whole face is laid: another origin of the bond, closers, joints that give."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from app.brickwork.advice_words import length_as_typed, length_in_words
from app.brickwork.layout import Layout
from app.brickwork.phase import best_phase
from app.lengths import Length
from app.panel.tolerance import TOLERANCE

Values = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Idea:
    """One change not yet laid out: in words, as an edit's fields, as a question without its reason.

    (x, y) is where in the face, `move` how far things move, inches.
    """

    text: str
    edit: str
    values: Values
    ask: str
    x: float
    y: float
    move: float


def face_ideas(layout: Layout, unit: str) -> Iterator[Idea]:
    """Ideas for the whole face that are not taken yet; lengths in words and fields in the project's `unit`."""
    yield from _phase(layout, unit)
    yield from _closers(layout)
    yield from _fit(layout, unit)


def _phase(layout: Layout, unit: str) -> Iterator[Idea]:
    """The origin of lowest cost; nothing where the bond runs on from the wall."""
    if layout.place.origin is not None:
        return
    found = best_phase(layout.panel, layout.size, layout.bond, layout.field, layout.smallest_cut, layout.least_piece)
    if found is None or found.cost > found.before - TOLERANCE:
        return
    x, y = (Length.from_inches(part) for part in found.origin)
    dx, dy = found.origin[0] - layout.origin[0], found.origin[1] - layout.origin[1]
    moves = " and ".join(filter(None, (_moved(dx, "right", "left", unit), _moved(dy, "up", "down", unit))))
    if moves:
        values = (("part", "field"), ("x", length_as_typed(x, unit)), ("y", length_as_typed(y, unit)))
        ask = f"Can the bond start {moves}?"
        yield Idea(f"Move the bond {moves}", "set_origin", values, ask, *layout.origin, hypot(dx, dy))


def _moved(by: float, ahead: str, back: str, unit: str) -> str:
    if abs(by) <= TOLERANCE:
        return ""
    return f"{length_in_words(Length.from_inches(by), unit)} {ahead if by > 0 else back}"


def _closers(layout: Layout) -> Iterator[Idea]:
    if layout.panel.fit.closers or not layout.small:
        return
    unit = int(layout.trims.unit[layout.trims.is_small][0])
    x = float(layout.units.x[unit] + layout.units.width[unit] / 2)
    y = float(layout.units.y[unit] + layout.units.height[unit] / 2)
    ask = "May courses end in a half and a three-quarter instead of pieces below the least?"
    yield Idea("Closers at the ends of courses", "set_fit", _fit_values(layout, "closers"), ask, x, y, 0.0)


def _fit(layout: Layout, unit: str) -> Iterator[Idea]:
    give = length_in_words(Length.from_inches(layout.place.give), unit)
    for flag, joints, meet in (
        ("courses", "Bed joints", "courses meet heads and sills"),
        ("heads", "Head joints", "bricks meet jambs"),
    ):
        if not getattr(layout.panel.fit, flag):
            ask = f"May {joints.lower()} give by up to {give} each, so that {meet}?"
            yield Idea(f"{joints} that give", "set_fit", _fit_values(layout, flag), ask, *layout.origin, 0.0)


def _fit_values(layout: Layout, flag: str) -> Values:
    """Fields of the fit as it is, with one flag set."""
    flags = ("courses", "heads", "closers")
    return tuple((name, "yes" if name == flag or getattr(layout.panel.fit, name) else "no") for name in flags)
