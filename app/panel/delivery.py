"""What has come to the yard."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Delivery:
    """So many pieces of one item of the order, on one day.

    `day` is year, month and day ("2026-12-01", ISO 8601), so days sort as texts; `item` is the line of the order to the
    letter.
    """

    day: str
    item: str
    count: int
