"""A panel document's things: the smallest parts that two people may change independently.

A document is the panel object of a project file, as typed. Its things are each item of a list that has marks
(`openings/W1`, with the treatments of its sides), each outline edge (`edges/1`), each fixing by its place
(`fixings/0`), each accepted finding by its code and what it is about (`accepted/missed-head W1 head`), the order of
each such list (`openings/`), and every other key whole (`outline`, `margin`, `field`). A list whose items cannot be
told apart is one thing under its own name.
"""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from typing import Any, Final, Literal

from app.panel.list_order import is_reordered, merged_order

Document = dict[str, Any]


class Absent(Enum):
    """Stands for a thing that is not there; never stored, its key is left out."""

    ABSENT = "absent"


ABSENT: Final = Absent.ABSENT


@dataclass(frozen=True, slots=True)
class Change:
    """One thing before and after."""

    old: Any | Literal[Absent.ABSENT]
    new: Any | Literal[Absent.ABSENT]


Changes = dict[str, Change]

_TOLD_APART_BY = {
    "edges": ("edge",),
    **dict.fromkeys(("openings", "strips", "plates", "zones", "questions"), ("mark",)),
    "accepted": ("code", "about"),
}


def things(document: Document) -> dict[str, Any]:
    """Every thing of a document by its key, in document order; nothing for an empty document."""
    found: dict[str, Any] = {}
    for name, value in document.items():
        keys = _item_keys(name, value)
        if keys is None:
            found[name] = value
        else:
            found[f"{name}/"] = keys
            found.update({f"{name}/{key}": item for key, item in zip(keys, value, strict=True)})
    return found


def changes(before: Document, after: Document) -> Changes:
    """What differs between two documents, thing by thing; nothing when they hold the same values as typed."""
    old, new = things(before), things(after)
    pairs = {key: Change(old.get(key, ABSENT), new.get(key, ABSENT)) for key in dict.fromkeys([*old, *new])}
    return {key: change for key, change in pairs.items() if not same_as_typed(change.old, change.new)}


def inverse(changed: Changes) -> Changes:
    """The changes that lead back."""
    return {key: Change(change.new, change.old) for key, change in changed.items()}


def composed(steps: Iterable[Changes]) -> Changes:
    """Several changes, each made on what the one before left, as one; what was changed back is no change."""
    whole: Changes = {}
    for step in steps:
        for key, change in step.items():
            whole[key] = Change(whole[key].old if key in whole else change.old, change.new)
    return {key: change for key, change in whole.items() if not same_as_typed(change.old, change.new)}


def as_json(changed: Changes) -> tuple[dict[str, Any], dict[str, Any]]:
    """Before and after as two objects that hold only the changed things; a thing not there has no key."""
    before = {key: change.old for key, change in changed.items() if change.old is not ABSENT}
    after = {key: change.new for key, change in changed.items() if change.new is not ABSENT}
    return before, after


def from_json(before: dict[str, Any], after: dict[str, Any]) -> Changes:
    """The changes that `as_json` wrote."""
    return {key: Change(before.get(key, ABSENT), after.get(key, ABSENT)) for key in dict.fromkeys([*before, *after])}


def apply_changes(document: Document, changed: Changes) -> Document:
    """The document with the changes made, whatever else it holds; the document itself is left as it is."""
    parts = things(document)
    for key, change in changed.items():
        if not is_order(key):
            _put(parts, key, change.new)
    for name in dict.fromkeys(_list_name(key) for key in changed if "/" in key):
        _put(parts, f"{name}/", _new_order(parts, name, changed.get(f"{name}/")))
    return _composed(parts, list(document))


def conflicts(changes_a: Changes, changes_b: Changes) -> list[str]:
    """Keys of the things on which two sets of changes disagree; the same change made twice is no conflict."""
    shared = [key for key in changes_a if key in changes_b and _disagree(key, changes_a[key], changes_b[key])]
    whole = [*_items_of_whole_lists(changes_a, changes_b), *_items_of_whole_lists(changes_b, changes_a)]
    renumbered = [*_renumbered_edges(changes_a, changes_b), *_renumbered_edges(changes_b, changes_a)]
    return list(dict.fromkeys([*shared, *whole, *renumbered]))


def _item_keys(name: str, value: Any) -> list[str] | None:
    """What tells a list's items apart, or None when nothing does."""
    if not isinstance(value, list):
        return None
    if name == "fixings":
        return [str(place) for place in range(len(value))]
    told_apart_by = _TOLD_APART_BY.get(name)
    if told_apart_by is None:
        return None
    keys = [_item_key(item, told_apart_by) for item in value]
    named = [key for key in keys if key]
    return named if len(set(named)) == len(value) else None


def _item_key(item: Any, told_apart_by: tuple[str, ...]) -> str | None:
    keys = [item.get(name) for name in told_apart_by] if isinstance(item, dict) else []
    if told_apart_by == ("edge",):
        return next((str(key) for key in keys if isinstance(key, int) and not isinstance(key, bool)), None)
    texts = [key for key in keys if isinstance(key, str) and key]
    return " ".join(texts) if texts and len(texts) == len(told_apart_by) else None


def same_as_typed(one: Any, other: Any) -> bool:
    """Equal as typed: 12 and 12.0 differ, and so do 1 and true; the order of an object's keys does not count."""
    if one is ABSENT or other is ABSENT:
        return one is other
    return json.dumps(one, sort_keys=True) == json.dumps(other, sort_keys=True)


def _list_name(key: str) -> str:
    return key.partition("/")[0]


def _put(parts: dict[str, Any], key: str, value: Any) -> None:
    if value is ABSENT:
        parts.pop(key, None)
    else:
        parts[key] = value


def _new_order(parts: dict[str, Any], name: str, change: Change | None) -> Any:
    order = parts.get(f"{name}/")
    if change is not None:
        order = merged_order(order, _keys(change.old), _keys(change.new))
    present = [key.partition("/")[2] for key in parts if key.startswith(f"{name}/") and key != f"{name}/"]
    kept = [key for key in order or [] if key in present]
    complete = [*kept, *(key for key in present if key not in kept)]
    return ABSENT if order is None and not complete else complete


def _keys(order: Any) -> list[str] | None:
    return None if order is ABSENT else order


def _composed(parts: dict[str, Any], names: list[str]) -> Document:
    document: Document = {}
    for name in dict.fromkeys([*names, *map(_list_name, parts)]):
        if name in parts:
            document[name] = parts[name]
        elif f"{name}/" in parts:
            document[name] = [parts[f"{name}/{key}"] for key in parts[f"{name}/"]]
    return document


def _disagree(key: str, one: Change, other: Change) -> bool:
    if not is_order(key):
        return not same_as_typed(one.new, other.new)
    return reorders(one) and reorders(other) and reorders(Change(one.new, other.new))


def is_order(key: str) -> bool:
    """Whether a key stands for the order of a list, not for one of its items."""
    return key.partition("/")[1:] == ("/", "")


def reorders(change: Change) -> bool:
    """Whether a change of a list's order moves items that stay, and does not only add and remove some."""
    if change.old is ABSENT or change.new is ABSENT:
        return False
    return is_reordered(change.old, change.new)


def _items_of_whole_lists(items: Changes, wholes: Changes) -> list[str]:
    return [key for key in items if "/" in key and _list_name(key) in wholes]


def _renumbered_edges(edges: Changes, outlines: Changes) -> list[str]:
    """Edges are numbered along the outline: with another number of points, an edge's number means another edge."""
    outline = outlines.get("outline")
    if outline is None or _count(outline.old) == _count(outline.new):
        return []
    return [key for key in edges if key.startswith("edges/") and not is_order(key)]


def _count(points: Any) -> int:
    return len(points) if isinstance(points, list) else 0
