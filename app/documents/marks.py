"""Marks and names that must tell things apart across a whole project file."""

from collections.abc import Iterable, Iterator
from typing import Any

from app.panel.faults import Fault
from app.panel.wording import quoted


def mark_faults(document: Any) -> list[Fault]:
    """Faults of walls, panels (across all walls), sizes and bonds that share a mark or name; nothing for no project."""
    return [
        *_twice(_names(document, "sizes", "name"), "a name that no other size has"),
        *_twice(_names(document, "bonds", "name"), "a name that no other bond has"),
        *_twice(_names(document, "walls", "mark"), "a mark that no other wall has"),
        *_twice(_panel_marks(document), "a mark that no other panel of the project has"),
    ]


def _twice(places: Iterable[tuple[str, str]], expected: str) -> Iterator[Fault]:
    first: dict[str, str] = {}
    for path, mark in places:
        if mark in first:
            yield Fault(path, f"{quoted(mark)} again, as in {first[mark].rpartition('.')[0]}", expected)
        first.setdefault(mark, path)


def _panel_marks(document: Any) -> Iterator[tuple[str, str]]:
    for place, wall in enumerate(_items(document, "walls")):
        for path, mark in _names(wall, "panels", "mark"):
            yield f"walls[{place}].{path}", mark


def _names(holder: Any, name: str, key: str) -> Iterator[tuple[str, str]]:
    for place, item in enumerate(_items(holder, name)):
        said = item.get(key) if isinstance(item, dict) else None
        if isinstance(said, str) and said.strip():
            yield f"{name}[{place}].{key}", said


def _items(holder: Any, name: str) -> list[Any]:
    items = holder.get(name) if isinstance(holder, dict) else None
    return items if isinstance(items, list) else []
