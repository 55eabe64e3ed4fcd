"""Cuts of a sheet in words, as they are read to whoever cuts."""

from app.lengths import SMALLEST_MARK, format_length
from app.liner.knife import AT_LINE
from app.liner.work_values import Counted, KnifeCut, KnifeLine, Point

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


def line_words(line: KnifeLine, unit: str = "in") -> str:
    """What is cut as one, in words: a cut as `knife_words` has it, teeth and arcs by where they are and how far they
    go."""
    match line.kind:
        case "teeth":
            return _teeth_words(line)
        case "arc":
            return _arc_words(line, unit)
    return knife_words(line.cuts[0], unit)


def _teeth_words(line: KnifeLine) -> str:
    names = ("pocket", "course") if line.axis == "x" else ("course", "pocket")
    across, run = (line.along, line.up) if line.axis == "x" else (line.up, line.along)
    words = "along the teeth"
    if across:
        after = " and ".join(str(count) for count in dict.fromkeys(counted.pockets for counted in across))
        words += f", after {after} {names[0]}{'s' * (after != '1')}"
    if run:
        low, high = run[0].pockets + 1, run[1].pockets + (run[1].past > run[1].joint + AT_LINE)
        words += f", {names[1]} {low}" if low >= high else f", {names[1]}s {low} to {high}"
    return words


def _arc_words(line: KnifeLine, unit: str) -> str:
    if line.arc is None:
        return ""
    ends = _ends_words(line.along, line.up, line.arc.ends, unit)
    where = f"middle at {ends[0]}" if line.arc.is_circle else f"from {ends[0]} to {ends[1]}"
    radius = "" if line.arc.radius is None else f"radius {to_tick(line.arc.radius, unit)}, "
    return f"{'circle' if line.arc.is_circle else 'arc'}, {radius}follow the line, {where}"


def _ends_words(along: tuple[Counted, ...], up: tuple[Counted, ...], ends: tuple[Point, ...], unit: str) -> list[str]:
    return [
        f"{_place(along[k : k + 1], 'pocket', end[0], 'along', unit)} and"
        f" {_place(up[k : k + 1], 'course', end[1], 'up', unit)}"
        for k, end in enumerate(ends)
    ]


def to_tick(inches: float, unit: str) -> str:
    """A length to the tape's smallest mark; nobody is told how far off that is."""
    mark = SMALLEST_MARK[unit]
    return format_length(round(inches / mark) * mark, unit)


def _where(knife: KnifeCut, unit: str) -> str:
    cut = knife.cut
    match cut.axis:
        case "x":
            return _place(knife.along, "pocket", cut.at, "along", unit)
        case "y":
            return _place(knife.up, "course", cut.at, "up", unit)
    ends = _ends_words(knife.along, knife.up, (cut.start, cut.end), unit)
    return f"from {ends[0]} to {ends[1]}"


def _place(counted: tuple[Counted, ...], what: str, at: float, way: str, unit: str) -> str:
    if not counted:
        return f"{to_tick(at, unit)} {way}"
    first = counted[0]
    if not first.pockets:
        return _in_first(first, what, way, unit)
    words = f"{first.pockets} {what}{'s' * (first.pockets != 1)}"
    if first.past <= first.joint + AT_LINE:
        return f"{words} {way} at the joint line{_in_joint(first, unit)}"
    return f"{words} + {to_tick(first.past, unit)} {way}"


def _in_joint(counted: Counted, unit: str) -> str:
    """Where in a joint: nothing at its near edge, at which the pocket ends."""
    if counted.past < AT_LINE:
        return ""
    return "'s far edge" if counted.joint - counted.past < AT_LINE else f" + {to_tick(counted.past, unit)}"


def _in_first(counted: Counted, what: str, way: str, unit: str) -> str:
    """Where nothing whole is passed: so far into the first, or before it between the sheet's teeth."""
    past = counted.past
    if abs(past) < AT_LINE:
        return f"{way} at the near edge of the first {what}"
    if -counted.joint - AT_LINE <= past < 0:
        return f"{way} at the joint line before the first {what}"
    if past < 0:
        return f"{to_tick(-past, unit)} before the first {what}"
    return f"0 {what}s + {to_tick(past, unit)} {way}"


def _crossing(count: int) -> str:
    return "no ridge" if count == 0 else f"{count} ridge{'s' * (count != 1)} across"


def _better(beside: float | None, unit: str) -> str:
    """Which way to set the knife, and how far."""
    if beside is None:
        return ""
    by = max(abs(beside), SMALLEST_MARK[unit])
    return f": set it {to_tick(by, unit)} {'farther' if beside > 0 else 'nearer'}"
