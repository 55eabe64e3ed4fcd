"""Objects and lists of a project file: every key known, every fault found, every value back in its place."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

from app.documents.json_text import printable
from app.documents.kinds import Kind, Setting, in_words, read_length, refuse, write_length
from app.panel.faults import Fault, Refused
from app.panel.wording import quoted

MOST_FAULTS = 200
"""A list is read no further after this many: nobody mends more in one go."""


def required(setting: Setting) -> Any:
    """Stands as the default of a key that must be there."""
    raise KeyError(setting)


def always(value: Any) -> Callable[[Setting], Any]:
    """A default that rests on nothing else."""
    return lambda _: value


@dataclass(frozen=True, slots=True)
class Key:
    """One key of an object, and the attribute of the same name."""

    name: str
    kind: Kind
    default: Callable[[Setting], Any] = required

    @property
    def names(self) -> tuple[str, ...]:
        return (self.name,)

    def read(self, document: Mapping[str, Any], setting: Setting) -> Any:
        """The value under this key; raises Refused, paths relative to the object."""
        if self.name in document:
            return _under(self.name, self.kind, document[self.name], setting)
        if self.default is required:
            raise Refused([Fault(self.name, "nothing", "this key, which has no default")])
        return self.default(setting)

    def write(self, value: Any, setting: Setting, like: Mapping[str, Any]) -> dict[str, Any]:
        """The key and its value; nothing for a default that `like` does not spell out either."""
        is_default = self.default is not required and value == self.default(setting)
        if value is None or (is_default and self.name not in like):
            return {}
        return {self.name: self.kind.write(value, setting, like.get(self.name))}


@dataclass(frozen=True, slots=True)
class Either:
    """Several keys of which an object has exactly one; the type of the value tells which."""

    name: str
    kinds: Mapping[str, tuple[type, Kind]]

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(self.kinds)

    def read(self, document: Mapping[str, Any], setting: Setting) -> Any:
        """The value under the one key that is there; raises Refused, paths relative to the object."""
        there = [key for key in self.kinds if key in document]
        if len(there) != 1:
            raise refuse(" and ".join(there) or f"none of {', '.join(self.kinds)}", f"one of {', '.join(self.kinds)}")
        return _under(there[0], self.kinds[there[0]][1], document[there[0]], setting)

    def write(self, value: Any, setting: Setting, like: Mapping[str, Any]) -> dict[str, Any]:
        """The one key and its value."""
        key, kind = next((key, kind) for key, (made, kind) in self.kinds.items() if isinstance(value, made))
        return {key: kind.write(value, setting, like.get(key))}


def _under(path: str, kind: Kind, value: Any, setting: Setting) -> Any:
    try:
        return kind.read(value, setting)
    except Refused as refused:
        raise Refused(fault.under(path) for fault in refused.faults) from None


def by_attribute(value: Any, name: str) -> Any:
    """A part of a value that has it as an attribute."""
    return getattr(value, name)


@dataclass(frozen=True, slots=True)
class Record:
    """An object of a file: its keys in their usual order, what is made of them, and what makes it unusable then."""

    what: str
    build: Callable[..., Any]
    keys: tuple[Key | Either, ...]
    part: Callable[[Any, str], Any] = by_attribute
    faults: Callable[[Any, Setting], tuple[Fault, ...]] = lambda _value, _setting: ()

    def read(self, value: Any, setting: Setting) -> Any:
        if not isinstance(value, dict):
            raise refuse(in_words(value), f"{self.what} as an object")
        faults, parts = self._unknown(value), {}
        for key in self.keys:
            try:
                parts[key.name] = key.read(value, setting)
            except Refused as refused:
                faults += refused.faults
        if faults:
            raise Refused(faults)
        return self._sound(self.build(**parts), setting)

    def write(self, value: Any, setting: Setting, like: Any) -> dict[str, Any]:
        before = like if isinstance(like, dict) else {}
        written: dict[str, Any] = {}
        for key in self.keys:
            written |= key.write(self.part(value, key.name), setting, before)
        return {key: written[key] for key in [*before, *written] if key in written}

    def _sound(self, built: Any, setting: Setting) -> Any:
        faults = self.faults(built, setting)
        if faults:
            raise Refused(faults)
        return built

    def _unknown(self, document: Mapping[str, Any]) -> list[Fault]:
        known = [name for key in self.keys for name in key.names]
        return [_unknown_key(key, known, self.what) for key in document if key not in known]


def _unknown_key(key: str, known: list[str], what: str) -> Fault:
    nearest = get_close_matches(key, known, n=1)
    hint = f"; the nearest is {nearest[0]}" if nearest else ""
    return Fault(printable(key), f"the unknown key {quoted(key)}", f"only keys of {what}: {', '.join(known)}{hint}")


@dataclass(frozen=True, slots=True)
class Listed:
    """A list of at most `most` items; items with a `mark` key find what they were written like by it."""

    what: str
    item: Kind
    most: int
    mark: str = ""

    def read(self, value: Any, setting: Setting) -> tuple[Any, ...]:
        if not isinstance(value, list):
            raise refuse(in_words(value), f"a list of {self.what}")
        if len(value) > self.most:
            raise refuse(in_words(value), f"at most {self.most:,} {self.what}")
        faults: list[Fault] = []
        items = []
        for place, item in enumerate(value):
            try:
                items.append(_under(f"[{place}]", self.item, item, setting))
            except Refused as refused:
                faults += refused.faults
            if len(faults) > MOST_FAULTS:
                break
        if faults:
            raise Refused(faults)
        return tuple(items)

    def write(self, value: tuple[Any, ...], setting: Setting, like: Any) -> list[Any]:
        before = like if isinstance(like, list) else []
        return [self.item.write(item, setting, self._like(item, place, before)) for place, item in enumerate(value)]

    def _like(self, item: Any, place: int, before: list[Any]) -> Any:
        if not self.mark:
            return before[place] if place < len(before) else None
        mark = getattr(item, self.mark)
        return next((old for old in before if isinstance(old, dict) and old.get(self.mark) == mark), None)


@dataclass(frozen=True, slots=True)
class Lengths:
    """A list of so many lengths, each with its name: a point, a rectangle, a circle."""

    what: str
    build: Callable[..., Any]
    names: tuple[str, ...]

    def read(self, value: Any, setting: Setting) -> Any:
        if not isinstance(value, list) or len(value) != len(self.names):
            expected = f"{self.what} as a list of {len(self.names)} lengths: {', '.join(self.names)}"
            raise refuse(in_words(value), expected)
        faults: list[Fault] = []
        lengths = []
        for place, (name, said) in enumerate(zip(self.names, value, strict=True)):
            try:
                lengths.append(read_length(said, setting.length_unit, name))
            except Refused as refused:
                faults += [fault.under(f"[{place}]") for fault in refused.faults]
        if faults:
            raise Refused(faults)
        return self.build(*lengths)

    def write(self, value: Any, setting: Setting, like: Any) -> list[Any]:
        lengths = value if isinstance(value, tuple) else [getattr(value, name) for name in self.names]
        before = like if isinstance(like, list) and len(like) == len(self.names) else [None] * len(self.names)
        unit = setting.length_unit
        return [write_length(length, unit, old) for length, old in zip(lengths, before, strict=True)]
