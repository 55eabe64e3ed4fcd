"""The order of a submittal as rows of words."""

from app.order.values import Line, Pack, Takeoff

Row = dict[str, str]


def order_rows(takeoff: Takeoff) -> list[Row]:
    """One row a line of the takeoff, numbers as they are ordered; no row for an empty takeoff."""
    return [_row(line) for line in takeoff.lines]


def _row(line: Line) -> Row:
    return {
        "item": line.item,
        "net": _number(line.net),
        "overage": _number(line.overage),
        "order": _number(line.order),
        "unit": line.unit,
        "packs": " or ".join(_pack(pack) for pack in line.packs),
        "note": line.note,
    }


def _pack(pack: Pack) -> str:
    return f"{pack.count} {pack.name}{'' if pack.count == 1 else 's'} of {pack.holds}"


def _number(value: float) -> str:
    """Whole numbers whole, others to a tenth."""
    return f"{value:.0f}" if value == round(value) else f"{value:.1f}"
