"""Results kept by what they rest on, the least lately used given up first once they weigh too much together."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

Given = TypeVar("Given", bound=Hashable)
Result = TypeVar("Result")


class _Hashed(Generic[Given]):
    """What a result rests on, hashed once: it is large, and looked for several times."""

    __slots__ = ("_hash", "value")

    def __init__(self, value: Given) -> None:
        self.value, self._hash = value, hash(value)

    def __hash__(self) -> int:
        return self._hash

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Hashed) and self._hash == other._hash and self.value == other.value


class Kept(Generic[Given, Result]):
    """Keeps results up to `most` in all, weighed by `weight`; the newest one always stays. Safe between threads."""

    def __init__(self, work: Callable[[Given], Result], weight: Callable[[Result], int], most: int) -> None:
        self.work, self.weight, self.most = work, weight, most
        self._lock, self._total = Lock(), 0
        self._results: OrderedDict[_Hashed[Given], Result] = OrderedDict()

    def __call__(self, given: Given) -> Result:
        """The kept result, or a new one."""
        key = _Hashed(given)
        with self._lock:
            known = self._results.get(key)
            if known is not None:
                self._results.move_to_end(key)
                return known
        result = self.work(given)
        with self._lock:
            return self._keep(key, result)

    def _keep(self, key: _Hashed[Given], result: Result) -> Result:
        if key in self._results:
            return self._results[key]
        self._results[key] = result
        self._total += self.weight(result)
        while self._total > self.most and len(self._results) > 1:
            _, old = self._results.popitem(last=False)
            self._total -= self.weight(old)
        return result
