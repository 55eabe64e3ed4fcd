"""A line of something that is ordered by its length."""

from app.order.packs import length_overage, length_reason, with_overage
from app.order.rules import Rules
from app.order.values import Line


def measured_line(item: str, inches: float, note: str, rules: Rules, topic: str) -> Line:
    """So many inches, ordered by the whole foot or metre."""
    length, unit = rules.length(inches)
    percent = rules.order.overage_percent
    extra = length_overage(length, percent)
    words, order = length_reason(length, unit, percent), with_overage(length, percent)
    return Line(item, "", "", length, extra, order, unit, note=note, reason=words, topic=topic)
