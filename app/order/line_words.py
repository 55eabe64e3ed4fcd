"""Lines of an order in words, the same on screen and on paper."""

from app.order.values import Line

COUNTED_UNITS = ("sheet", "cartridge")
"""Units of which there may be several; all others are measures, or "each"."""


def amount(value: float) -> str:
    """A count or a measure, thousands apart: whole where it is whole, else to a tenth."""
    return f"{value:,.0f}" if value == round(value) else f"{value:,.1f}"


def unit_words(line: Line) -> str:
    """The unit of what is ordered: `sheet`, `sheets`, `ft`."""
    return f"{line.unit}s" if line.unit in COUNTED_UNITS and line.order != 1 else line.unit


def weight_words(line: Line) -> str:
    """The weight of what is ordered; "" where it is not known."""
    return "" if line.weight is None else f"{line.weight:,.0f} {line.weight_unit}"


def pack_words(line: Line) -> str:
    """Packs of one kind or another: `12 cartons of 50 or 1 pallet of 2,400`; "" for what is not packed."""
    said = (f"{pack.count:,} {pack.name}{'' if pack.count == 1 else 's'} of {pack.holds:,}" for pack in line.packs)
    return " or ".join(said)


def to_hundredth(value: float) -> float:
    """A count as it is, all else to a hundredth: as a table of numbers holds it."""
    return round(value, 2) if isinstance(value, float) else value
