"""From a net count to what is ordered: overage, cartons, pallets. Everything is rounded up, once, from the total."""

from fractions import Fraction
from math import ceil

from app.order.values import Pack
from app.panel.project import Order


def overage(net: int, percent: float) -> int:
    """Pieces on top of a net count, rounded up to a whole piece; the percentage is taken as the decimal it reads."""
    return ceil(net * Fraction(repr(percent)) / 100)


def brick_packs(count: int, order: Order) -> tuple[Pack, ...]:
    """Cartons that hold `count` bricks, and pallets that hold the cartons; no packs for no bricks."""
    if count <= 0:
        return ()
    cartons = ceil(count / order.per_carton)
    pallets = ceil(cartons / order.cartons_per_pallet)
    return Pack("carton", cartons, order.per_carton), Pack(
        "pallet", pallets, order.cartons_per_pallet * order.per_carton
    )
