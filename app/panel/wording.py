"""Words of a message: lengths, points and names as a person reads them."""

from collections.abc import Collection
from difflib import get_close_matches

from app.lengths import NM_PER_INCH, Length, format_length
from app.panel.shapes import Point

FEET_AND_INCHES = ("in", "ft")


def said(length: Length | float, unit: str = "in") -> str:
    """A length (or a number of inches) to 1/64 in, or to whole millimetres for a project in a metric unit."""
    exact = length if isinstance(length, Length) else Length(round(length * NM_PER_INCH))
    return format_length(exact, "in" if unit in FEET_AND_INCHES else "mm", 64)


def said_point(point: Point | tuple[float, float], unit: str = "in") -> str:
    """A point of the face frame as `x, y`."""
    return f"{said(point[0], unit)}, {said(point[1], unit)}"


def said_size(width: Length | float, height: Length | float, unit: str = "in") -> str:
    """Width and height as `48" x 64"`."""
    return f"{said(width, unit)} x {said(height, unit)}"


def quoted(text: str, most: int = 60) -> str:
    """Text in quotes, on one line, cut short; "nothing" for empty text."""
    shown = text if len(text) <= most else text[: most - 1] + "…"
    plain = "".join(sign if sign.isprintable() else sign.encode("unicode_escape", "replace").decode() for sign in shown)
    return f"'{plain}'" if text else "nothing"


def one_of(known: Collection[str], found: str) -> str:
    """What was expected where only some names are known: all of them, and the nearest by spelling if one is near."""
    names = ", ".join(known) or "nothing: none is known"
    nearest = get_close_matches(found, list(known), n=1)
    return f"one of {names}" + (f"; the nearest is {nearest[0]}" if nearest else "")


def said_move(dx: Length, dy: Length, unit: str) -> str:
    """A move as `1" right and 5/8" up`; "by nothing" when both are 0."""
    across = f"{said(Length(abs(dx.nm)), unit)} {'right' if dx.nm > 0 else 'left'}" if dx.nm else ""
    up = f"{said(Length(abs(dy.nm)), unit)} {'up' if dy.nm > 0 else 'down'}" if dy.nm else ""
    return " and ".join(filter(None, (across, up))) or "by nothing"
