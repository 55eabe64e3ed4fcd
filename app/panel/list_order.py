"""The order of a list that two people change at once: what was added, removed and moved, merged."""

from collections.abc import Sequence


def is_reordered(old: Sequence[str], new: Sequence[str]) -> bool:
    """Whether the keys that both lists hold stand in another order; adding and removing is no reordering."""
    return [key for key in old if key in new] != [key for key in new if key in old]


def merged_order(current: list[str] | None, old: list[str] | None, new: list[str] | None) -> list[str] | None:
    """The change `old` to `new` made on `current`; None is a list that is not there.

    A key that comes back goes behind the neighbour it had; keys that only `current` knows keep their place.
    """
    if current == old:
        return new
    before, after = old or [], new or []
    kept = [key for key in current or [] if key in after or key not in before]
    if is_reordered(before, after):
        kept = _sorted_like(kept, after)
    for place, key in enumerate(after):
        if key not in kept and key not in before:
            kept.insert(_place_behind(kept, after[:place]), key)
    return kept if kept or new is not None else None


def _sorted_like(keys: list[str], model: list[str]) -> list[str]:
    """The keys that `model` knows, in its order, in the places they hold together."""
    known = iter(key for key in model if key in keys)
    return [next(known) if key in model else key for key in keys]


def _place_behind(keys: list[str], predecessors: list[str]) -> int:
    """Just behind the nearest predecessor that is still there; the front if none is."""
    return next((keys.index(key) + 1 for key in reversed(predecessors) if key in keys), 0)
