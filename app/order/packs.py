"""From a net count to what is ordered: overage, then packs, each rounded once, from the total."""

from fractions import Fraction
from math import ceil, floor

from app.order.values import Pack
from app.panel.project import Order


def overage(net: int, percent: float) -> int:
    """Pieces on top of a net count, to the nearest piece, at least one; the percentage is the decimal it reads.

    So the printed estimates do it: 5 per cent of 5,882 is 294 (*Building Construction* vol. 4).
    """
    exact = net * Fraction(repr(percent)) / 100
    return max(floor(exact + Fraction(1, 2)), 1) if exact > 0 else 0


def reason(net: int, percent: float) -> str:
    """Where `overage` of the same comes from, in words."""
    if not overage(net, percent):
        return "none: the project asks for no overage" if net else ""
    exact = net * Fraction(repr(percent)) / 100
    end = "at least one piece" if exact < Fraction(1, 2) else "to the nearest piece"
    return f"{percent:g} percent of {net:,}, {end}"


def length_overage(net: float, percent: float) -> float:
    """What is added to a length so that the order is net and its percentage, up to a whole foot or metre."""
    return _whole_length(net, percent) - net


def _whole_length(net: float, percent: float) -> int:
    return ceil(net * (1 + percent / 100) - 1e-9)


def length_reason(net: float, unit: str, percent: float) -> str:
    """Where `length_overage` of the same comes from, in words."""
    return f"{percent:g} percent of {net:,.1f} {unit}, up to the whole {unit}"


def with_overage(net: float, percent: float) -> float:
    """What is ordered of a net count or length: pieces are whole numbers, all else is a length."""
    return net + overage(net, percent) if isinstance(net, int) else _whole_length(net, percent)


def brick_packs(count: int, order: Order) -> tuple[Pack, ...]:
    """Cartons that hold `count` bricks, and pallets that hold the cartons; no packs for no bricks."""
    if count <= 0:
        return ()
    cartons = ceil(count / order.per_carton)
    pallets = ceil(cartons / order.cartons_per_pallet)
    return Pack("carton", cartons, order.per_carton), Pack(
        "pallet", pallets, order.cartons_per_pallet * order.per_carton
    )


def sheet_packs(count: int, order: Order) -> tuple[Pack, ...]:
    """Packs that hold `count` sheets of liner; none for no sheets, and none where sheets come loose."""
    if count <= 0 or order.sheets_per_pack <= 1:
        return ()
    return (Pack("pack", ceil(count / order.sheets_per_pack), order.sheets_per_pack),)
