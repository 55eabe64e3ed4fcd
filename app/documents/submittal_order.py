"""The order of a submittal as rows of words."""

from app.order.line_words import amount, pack_words, unit_words, weight_words
from app.order.values import Line, Takeoff
from app.panel.blend import Blend

Row = dict[str, str]


def order_rows(takeoff: Takeoff) -> list[Row]:
    """One row a line of the takeoff, numbers as they are ordered; no row for an empty takeoff."""
    return [_row(line) for line in takeoff.lines]


def blend_words(blend: Blend) -> list[str]:
    """The colours of the brick and their shares in one line; no line for brick of one colour."""
    if not blend.colours:
        return []
    most = f"at most {blend.cluster} bricks of one colour together"
    return [f"Blend: {blend.shares}; {most}, as far as the shares allow."]


def _row(line: Line) -> Row:
    return {
        "item": line.item,
        "net": amount(line.net),
        "overage": amount(line.overage),
        "reason": line.reason,
        "order": amount(line.order),
        "weight": weight_words(line),
        "topic": line.topic.capitalize(),
        "unit": unit_words(line),
        "packs": pack_words(line),
        "note": line.note,
    }
