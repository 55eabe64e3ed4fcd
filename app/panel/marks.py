"""A panel's openings, strips, plates, zones and questions by mark: find one, replace it, a mark that is free."""

from collections.abc import Iterable
from itertools import count
from typing import TypeVar

from app.panel.faults import Fault, Refused
from app.panel.values import Opening, Plate, Question, Strip, Zone
from app.panel.wording import one_of, quoted

Item = TypeVar("Item", Opening, Strip, Plate, Zone, Question)

LETTERS = {"window": "W", "door": "D", "vent": "V", "louver": "L"}
OTHER_LETTER = "O"
"""For an opening whose use has no letter of its own."""


def opening_letter(use: str | None) -> str:
    """The letter that an opening's mark starts with, by its use: common practice on elevations."""
    return LETTERS.get((use or "").casefold(), OTHER_LETTER)


def free_mark(letter: str, items: Iterable[Opening | Strip | Plate | Zone | Question]) -> str:
    """The letter with the lowest number, from 1, that none of the items has."""
    taken = {item.mark for item in items}
    return next(mark for number in count(1) if (mark := f"{letter}{number}") not in taken)


def marked(items: tuple[Item, ...], mark: str, path: str) -> Item:
    """The item with this mark; raises Refused at `path`, naming the marks that are there."""
    for item in items:
        if item.mark == mark:
            return item
    raise Refused([Fault(path, quoted(mark), one_of([item.mark for item in items], mark))])


def all_marked(items: tuple[Item, ...], marks: Iterable[str], path: str) -> tuple[Item, ...]:
    """The items with these marks; raises Refused at `path` with a fault for every mark that is not there."""
    found, faults = [], list[Fault]()
    for mark in marks:
        try:
            found.append(marked(items, mark, path))
        except Refused as refused:
            faults += refused.faults
    if faults:
        raise Refused(faults)
    return tuple(found)


def replaced(items: tuple[Item, ...], old: Item, new: Item) -> tuple[Item, ...]:
    """The items with `new` in the place of `old`, which is one of them."""
    return tuple(new if item is old else item for item in items)


def without(items: tuple[Item, ...], gone: Item) -> tuple[Item, ...]:
    """The items but one."""
    return tuple(item for item in items if item is not gone)
