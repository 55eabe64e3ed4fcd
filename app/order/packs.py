"""From a net count to what is ordered: overage, then cartons and pallets, each rounded once, from the total."""

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


def brick_packs(count: int, order: Order) -> tuple[Pack, ...]:
    """Cartons that hold `count` bricks, and pallets that hold the cartons; no packs for no bricks."""
    if count <= 0:
        return ()
    cartons = ceil(count / order.per_carton)
    pallets = ceil(cartons / order.cartons_per_pallet)
    return Pack("carton", cartons, order.per_carton), Pack(
        "pallet", pallets, order.cartons_per_pallet * order.per_carton
    )
