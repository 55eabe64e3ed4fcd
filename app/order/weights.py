"""What bricks weigh: their volume by the brick's density."""

from app.brickwork.bond import face
from app.order.rules import CUBIC_INCHES_PER_CUBIC_FOOT, Rules
from app.panel.size import BrickSize


def brick_pounds(size: BrickSize, kind: str, rules: Rules) -> float:
    """One flat brick of a kind as it is ordered."""
    width, height = face(kind, size)
    return pounds(width * height * size.thickness.inches, rules)


def corner_pounds(size: BrickSize, rules: Rules) -> float:
    """One whole corner unit: a long and a short leg, each measured outside to the corner, so that they share it."""
    legs = size.length.inches + size.half_bat - size.thickness.inches
    return pounds(legs * size.height.inches * size.thickness.inches, rules)


def pounds(cubic_inches: float, rules: Rules) -> float:
    """So much brick."""
    return cubic_inches / CUBIC_INCHES_PER_CUBIC_FOOT * rules.order.brick_density_lb_ft3
