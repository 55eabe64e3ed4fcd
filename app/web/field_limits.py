"""How much one link or account may send from the bed: far above what hands can do, far below what harms."""

import time
from collections import OrderedDict
from threading import Lock

A_MINUTE = 1200
"""Records a minute from one link: 500 that waited are through at once."""

KEPT = 1000


class FieldLimits:
    """Allowances that fill up again with time, one a sender."""

    def __init__(self, a_minute: int = A_MINUTE) -> None:
        self._most, self._lock = float(a_minute), Lock()
        self._left: OrderedDict[str, tuple[float, float]] = OrderedDict()

    def wait(self, sender: str, count: int) -> int:
        """Seconds until so many more are taken; 0: they are, and count."""
        with self._lock:
            now = time.monotonic()
            left, at = self._left.pop(sender, (self._most, now))
            left = min(self._most, left + (now - at) * self._most / 60)
            is_taken = left >= min(count, self._most)
            self._left[sender] = (left - count if is_taken else left, now)
            while len(self._left) > KEPT:
                self._left.popitem(last=False)
        return 0 if is_taken else max(1, round((count - left) * 60 / self._most))
