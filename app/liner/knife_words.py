"""Cuts of a sheet in words, as they are read to whoever cuts."""

from app.lengths import format_length
from app.liner.knife import AT_LINE
from app.liner.work_values import Counted, KnifeCut

TICK = {"in": 1 / 16, "mm": 1 / 25.4}
"""Inches; a knife is set to the tape's smallest mark, and nobody is told how far off that is."""

LONG = 2.0
"""Inches in a ridge below which a knife just cuts through (common practice)."""


def knife_words(knife: KnifeCut, unit: str = "in") -> str:
    """One cut in words, lengths in `unit` to the tick: where it is in pockets and inches, how many ridges it crosses,
    and how to keep it off a ridge along which it would run."""
    runs = knife.in_ridge > LONG
    words = [_where(knife, unit)]
    if knife.ridges or not runs:
        words.append(_crossing(len(knife.ridges)))
    if runs:
        words.append(f"in a ridge for {to_tick(knife.in_ridge, unit)}{_better(knife.beside, unit)}")
    return ", ".join(words)


def to_tick(inches: float, unit: str) -> str:
    """A length to the nearest tick, in inches or millimetres."""
    return format_length(round(inches / TICK[unit]) * TICK[unit], unit)


def _where(knife: KnifeCut, unit: str) -> str:
    cut = knife.cut
    match cut.axis:
        case "x":
            return _place(knife.along, "pocket", cut.at, "along", unit)
        case "y":
            return _place(knife.up, "course", cut.at, "up", unit)
    ends = [
        f"{_place(knife.along[k : k + 1], 'pocket', end[0], 'along', unit)} and"
        f" {_place(knife.up[k : k + 1], 'course', end[1], 'up', unit)}"
        for k, end in enumerate((cut.start, cut.end))
    ]
    return f"from {ends[0]} to {ends[1]}"


def _place(counted: tuple[Counted, ...], what: str, at: float, way: str, unit: str) -> str:
    if not counted:
        return f"{to_tick(at, unit)} {way}"
    first = counted[0]
    if not first.pockets:
        return _in_first(first.past, what, way, unit)
    words = f"{first.pockets} {what}{'s' * (first.pockets != 1)}"
    if first.past < AT_LINE:
        return f"{words} {way} at the joint line"
    return f"{words} + {to_tick(first.past, unit)} {way}"


def _in_first(past: float, what: str, way: str, unit: str) -> str:
    """Where nothing whole is passed: so far into the first, or before it between the sheet's teeth."""
    if abs(past) < AT_LINE:
        return f"{way} at the near edge of the first {what}"
    if past < 0:
        return f"{to_tick(-past, unit)} before the first {what}"
    return f"0 {what}s + {to_tick(past, unit)} {way}"


def _crossing(count: int) -> str:
    return "no ridge" if count == 0 else f"{count} ridge{'s' * (count != 1)} across"


def _better(beside: float | None, unit: str) -> str:
    """Which way to set the knife, and how far."""
    if beside is None:
        return ""
    by = max(abs(beside), TICK[unit])
    return f": set it {to_tick(by, unit)} {'farther' if beside > 0 else 'nearer'}"
