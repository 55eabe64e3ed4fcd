"""Results kept by what they rest on, the least lately used given up first once they weigh too much together."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

Given = TypeVar("Given", bound=Hashable)
Result = TypeVar("Result")


class Kept(Generic[Given, Result]):
    """Keeps results up to `most` in all, weighed by `weight`; the newest one always stays. Safe between threads."""

    def __init__(self, work: Callable[[Given], Result], weight: Callable[[Result], int], most: int) -> None:
        self.work, self.weight, self.most = work, weight, most
        self._lock, self._total = Lock(), 0
        self._results: OrderedDict[Given, Result] = OrderedDict()

    def __call__(self, given: Given) -> Result:
        """The kept result, or a new one."""
        with self._lock:
            if given in self._results:
                self._results.move_to_end(given)
                return self._results[given]
        result = self.work(given)
        with self._lock:
            self._keep(given, result)
            return self._results[given]

    def _keep(self, given: Given, result: Result) -> None:
        if given in self._results:
            return
        self._results[given] = result
        self._total += self.weight(result)
        while self._total > self.most and len(self._results) > 1:
            _, old = self._results.popitem(last=False)
            self._total -= self.weight(old)
