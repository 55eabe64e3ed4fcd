"""A form of project settings as the project file would say them: what was typed, as it was typed."""

import json
from collections.abc import Container, Mapping
from typing import Any

from app.documents.json_text import read_text
from app.documents.kinds import Setting
from app.documents.order_keys import DELIVERY
from app.panel.faults import Fault, Refused
from app.web.settings_fields import ASKED
from app.web.wall_form import typed_text

MOST_COLOURS = 12
"""Rows of colours that a form may bring: as many as a project file may have."""

LARGEST_NUMBER = 10**15
"""What is larger, or no number at all such as NaN, stays the text that was typed, and is refused as such."""


def group_typed(form: Mapping[str, str], group: str, document: Any) -> Any:
    """The group that a form asks for: `whole` as JSON where it is there, else what its fields say.

    `document` is what the file holds now: a field that was not touched stays as it stands there.
    """
    if "whole" in form:
        return read_text(form["whole"])
    held = document if isinstance(document, dict) else {}
    return _blend(form, held) if group == "blend" else _values(form, group, held)


def delivery_typed(form: Mapping[str, str]) -> dict[str, Any]:
    """A delivery that a form asks for; its day, item and count are checked where the project file is read."""
    day, item, count = (form.get(name, "") for name in ("day", "item", "count"))
    missing = [Fault(name, "nothing", what) for name, text, what in _expected(day, item, count) if not text]
    typed = {"day": day, "item": item, "count": as_typed(count)}
    if missing:
        raise Refused([*missing, *_wrong(typed, {fault.path for fault in missing})])
    return typed


def _wrong(typed: Mapping[str, Any], missing: Container[str]) -> list[Fault]:
    """What is wrong with the fields that are not missing."""
    try:
        DELIVERY.read(typed, Setting("in"))
    except Refused as refused:
        return [fault for fault in refused.faults if fault.path not in missing]
    return []


def as_typed(text: str) -> Any:
    """A bare number as a number of the file, anything else as the text it is."""
    try:
        value = json.loads(text)
    except ValueError:
        return text
    is_plain = type(value) in (int, float) and abs(value) < LARGEST_NUMBER
    return value if is_plain else text


def _values(form: Mapping[str, str], group: str, held: Mapping[str, Any]) -> dict[str, Any] | None:
    names = [name for name, _, _ in ASKED[group]]
    given = {name: _given(form, name, held.get(name)) for name in names}
    return _kept_order(held, given)


def _blend(form: Mapping[str, str], held: Mapping[str, Any]) -> dict[str, Any] | None:
    """Rows of colours, empty ones left out; a row of which one half is typed is kept, so that it is told."""
    rows = [(form.get(f"name{k}", ""), form.get(f"percent{k}", "")) for k in range(MOST_COLOURS + 1)]
    colours = [_colour(name, percent) for name, percent in rows if name or percent]
    before = held.get("colours", [])
    is_same = len(colours) == len(before) and all(map(_is_same_colour, colours, before))
    given = {"colours": before if is_same else colours, "cluster": _given(form, "cluster", held.get("cluster"))}
    return _kept_order(held, {key: value for key, value in given.items() if value != [] or key in held})


def _colour(name: str, percent: str) -> dict[str, Any]:
    return {"name": name} | ({"percent": as_typed(percent)} if percent else {})


def _is_same_colour(typed: Mapping[str, Any], held: Mapping[str, Any]) -> bool:
    return typed["name"] == held.get("name") and typed_text(typed.get("percent")) == typed_text(held.get("percent"))


def _given(form: Mapping[str, str], name: str, now: Any) -> Any:
    text = form.get(name, "")
    return now if text == typed_text(now) else as_typed(text) if text else None


def _kept_order(held: Mapping[str, Any], given: Mapping[str, Any]) -> dict[str, Any] | None:
    """Keys in their old order, new ones behind, what is empty left out; None for a group that comes to nothing."""
    order = dict.fromkeys([*held, *given])
    written = {key: given.get(key, held.get(key)) for key in order}
    return {key: value for key, value in written.items() if value is not None} or None


def _expected(day: str, item: str, count: str) -> tuple[tuple[str, str, str], ...]:
    return (
        ("day", day, "the day on which it came, such as 2026-12-01"),
        ("item", item, "an item of the order"),
        ("count", count, "how many pieces came"),
    )
