"""Days of the calendar as texts, year first (ISO 8601); which day it is nobody here knows."""

import re
from calendar import monthrange

_DAY = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")


def is_day(text: str) -> bool:
    """Whether a text such as "2026-12-01" names a day that there is; raises nothing."""
    found = _DAY.fullmatch(text)
    if found is None:
        return False
    year, month, day = map(int, found.groups())
    return year >= 1 and 1 <= month <= 12 and 1 <= day <= monthrange(year, month)[1]
