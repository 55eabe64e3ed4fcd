"""Changes of a panel document in words: what a person reads in the history and when two edits meet."""

import json
from typing import Any

from app.panel.things import ABSENT, Change, Changes, is_order, reorders, same_as_typed

_ITEM_NOUN = {
    "openings": "opening",
    "strips": "strip",
    "plates": "plate",
    "zones": "zone",
    "edges": "edge",
    "fixings": "fixing",
    "questions": "question",
    "accepted": "finding",
}
_CAME_OR_WENT = {"accepted": ("accepted", "no longer accepted")}
"""Of items that do not come and go as drawn ones do: what is said of one more, and of one less."""

_OF_THE_PANEL = {True: "released from the wall", False: "joined to the wall"}
_LONGEST_VALUE = 24
_SHAPES = ("rect", "circle")


def in_words(changed: Changes) -> list[str]:
    """One short sentence a change, in the order of the changes; nothing for no change."""
    renamed = _renamed(changed)
    gone = {key for pair in renamed for key in pair}
    words = [f"{_noun(old)} {_named(old)} renamed {new.partition('/')[2]}" for old, new in renamed]
    words += [_change_in_words(key, change) for key, change in changed.items() if _is_told(key, changed, gone)]
    return words


def _is_told(key: str, changed: Changes, gone: set[str]) -> bool:
    """An order that follows from items added, removed or renamed is not told again."""
    if not is_order(key):
        return key not in gone
    return reorders(changed[key]) or not any(other.startswith(key) and other != key for other in changed)


def _renamed(changed: Changes) -> list[tuple[str, str]]:
    removed = [key for key, change in changed.items() if _is_item(key) and change.new is ABSENT]
    added = {key: _without_mark(change.new) for key, change in changed.items() if _is_item(key) and _is_new(change)}
    pairs = []
    for key in removed:
        left = _without_mark(changed[key].old)
        match = next((other for other, rest in added.items() if rest == left and _noun(other) == _noun(key)), None)
        if left is not None and match is not None:
            pairs.append((key, match))
            del added[match]
    return pairs


def _is_item(key: str) -> bool:
    return "/" in key and not is_order(key)


def _is_new(change: Change) -> bool:
    return change.old is ABSENT


def _without_mark(item: Any) -> str | None:
    if not isinstance(item, dict) or "mark" not in item:
        return None
    return json.dumps({key: value for key, value in item.items() if key != "mark"}, sort_keys=True)


def _change_in_words(key: str, change: Change) -> str:
    name = _named(key)
    if key == "released" and (words := _released_in_words(change)):
        return words
    if is_order(key):
        return f"{name} put in another order" if reorders(change) else f"empty list {name} {_came_or_went(change)}"
    if change.old is ABSENT or change.new is ABSENT:
        return _item_in_words(key, change) if _has_mark(key) else _whole_in_words(name, change)
    if isinstance(change.old, dict) and isinstance(change.new, dict):
        return _object_in_words(name, change.old, change.new)
    return f"{name} changed{_from_to(change.old, change.new)}"


def _item_in_words(key: str, change: Change) -> str:
    came, went = _CAME_OR_WENT.get(key.partition("/")[0], ("added", "removed"))
    return f"{_noun(key)} {_named(key)} {came if change.old is ABSENT else went}"


def _released_in_words(change: Change) -> str:
    """Nothing where the panel is as released as before, or where no yes or no stands."""
    was, now = (False if value is ABSENT else value for value in (change.old, change.new))
    return _OF_THE_PANEL[now] if isinstance(was, bool) and isinstance(now, bool) and was is not now else ""


def _noun(key: str) -> str:
    return _ITEM_NOUN.get(key.partition("/")[0], "")


def _has_mark(key: str) -> bool:
    return _is_item(key) and _noun(key) not in ("edge", "fixing")


def _named(key: str) -> str:
    """A marked item by its mark, an edge by its number, a fixing by its place counted from one."""
    name, slash, item = key.partition("/")
    if not slash or not item:
        return name.replace("_", " ")
    if name == "fixings":
        return f"fixing {int(item) + 1}"
    return f"edge {item}" if name == "edges" else item


def _came_or_went(change: Change) -> str:
    return "added" if change.old is ABSENT else "removed"


def _whole_in_words(name: str, change: Change) -> str:
    value = change.new if change.old is ABSENT else change.old
    shown = _short(value)
    return f"{name} {_came_or_went(change)}" + (f": {shown}" if shown else "")


def _flat(value: dict[str, Any]) -> dict[str, Any]:
    """The object with the parts of an inner one beside its own: `matter heads`."""
    parts: dict[str, Any] = {}
    for key, part in value.items():
        parts |= {f"{key} {inner}": deeper for inner, deeper in part.items()} if isinstance(part, dict) else {key: part}
    return parts


def _object_in_words(name: str, whole_old: dict[str, Any], whole_new: dict[str, Any]) -> str:
    old, new = _flat(whole_old), _flat(whole_new)
    differing = [
        key for key in dict.fromkeys([*old, *new]) if not same_as_typed(old.get(key, ABSENT), new.get(key, ABSENT))
    ]
    if len(differing) == 1 and differing[0] in _SHAPES:
        return _shape_in_words(name, old.get(differing[0]), new.get(differing[0]))
    if len(differing) == 1:
        key = differing[0]
        return f"{name} changed: {key.replace('_', ' ')}{_from_to(old.get(key), new.get(key), only_plain=True)}"
    return f"{name} changed: {', '.join(key.replace('_', ' ') for key in differing)}"


def _shape_in_words(name: str, old: Any, new: Any) -> str:
    """Moved when only the first two numbers (the place) differ, resized when only the rest do."""
    if not (isinstance(old, list) and isinstance(new, list)):
        return f"{name} changed: shape"
    if old[2:] == new[2:]:
        return f"{name} moved{_from_to(old[:2], new[:2])}"
    if old[:2] == new[:2]:
        return f"{name} resized{_from_to(old[2:], new[2:])}"
    return f"{name} moved and resized"


def _from_to(old: Any, new: Any, *, only_plain: bool = False) -> str:
    if only_plain and (isinstance(old, list) or isinstance(new, list)):
        return ""
    was, now = _short(old), _short(new)
    return f" from {was} to {now}" if was and now else ""


def _short(value: Any) -> str:
    """A value as typed if it is short, else nothing."""
    if isinstance(value, bool):
        return "on" if value else "off"
    if isinstance(value, list) and value and not any(isinstance(part, (list, dict)) for part in value):
        shown = ", ".join(map(str, value))
    else:
        shown = str(value) if isinstance(value, (str, int, float)) else ""
    return shown if len(shown) <= _LONGEST_VALUE else ""
