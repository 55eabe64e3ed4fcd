"""The order of a submittal as rows of words."""

from app.order.values import Line, Pack, Takeoff
from app.panel.blend import Blend

Row = dict[str, str]


def order_rows(takeoff: Takeoff) -> list[Row]:
    """One row a line of the takeoff, numbers as they are ordered; no row for an empty takeoff."""
    return [_row(line) for line in takeoff.lines]


def blend_words(blend: Blend) -> list[str]:
    """The colours of the brick and their shares in one line; no line for brick of one colour."""
    if not blend.colours:
        return []
    shares = ", ".join(f"{colour.name} {colour.percent:g} percent" for colour in blend.colours)
    return [f"Blend: {shares}; at most {blend.cluster} bricks of one colour together, as far as the shares allow."]


def _row(line: Line) -> Row:
    return {
        "item": line.item,
        "net": _number(line.net),
        "overage": _number(line.overage),
        "reason": line.reason,
        "order": _number(line.order),
        "weight": "" if line.weight is None else f"{line.weight:,.0f} {line.weight_unit}",
        "topic": line.topic.capitalize(),
        "unit": line.unit,
        "packs": " or ".join(_pack(pack) for pack in line.packs),
        "note": line.note,
    }


def _pack(pack: Pack) -> str:
    return f"{pack.count} {pack.name}{'' if pack.count == 1 else 's'} of {pack.holds}"


def _number(value: float) -> str:
    """Whole numbers whole, others to a tenth."""
    return f"{value:.0f}" if value == round(value) else f"{value:.1f}"
