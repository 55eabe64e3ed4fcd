"""What the last change of a project's settings did, in words, and the form that undoes it."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from app.documents.json_text import read_text
from app.documents.order_keys import BLEND, DELIVERY
from app.panel.blend import Blend
from app.panel.delivery import Delivery
from app.panel.faults import Refused
from app.panel.project import Project
from app.web.settings_fields import RECORDS, TITLES, differences, setting_of
from app.web.words import counted


@dataclass(frozen=True, slots=True)
class Changed:
    """The last change as a page's address says it: the group, the revision it made, and what stood there before.

    `before` is the group as JSON; of deliveries it is the one that was taken back, or nothing where one was added, and
    `place` is where in the list.
    """

    group: str
    revision: int
    before: str
    place: int = 0


@dataclass(frozen=True, slots=True)
class Told:
    """The change in words; posting `fields` to `address` undoes it."""

    words: str
    address: str
    fields: tuple[tuple[str, str], ...]


def after(project_id: str, changed: Changed) -> str:
    """The address that shows what changed."""
    query = {"changed": changed.group, "revision": changed.revision, "before": changed.before, "place": changed.place}
    return f"/projects/{project_id}/settings?{urlencode(query)}#{changed.group}"


def before_text(value: Any) -> str:
    """A group as it stood, as an address carries it."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def told_of(project_id: str, revision: int, project: Project, changed: Changed | None) -> Told | None:
    """The change in words while nothing else has changed since; None where nothing did, or it cannot be read."""
    if changed is None or changed.revision != revision:
        return None
    address = f"/projects/{project_id}/settings/{changed.group}"
    try:
        return (
            _delivery_told(address, project, changed)
            if changed.group == "deliveries"
            else _told(address, project, changed)
        )
    except Refused:
        return None


def _told(address: str, project: Project, changed: Changed) -> Told | None:
    held = read_text(changed.before)
    if changed.group not in TITLES or not (held is None or isinstance(held, dict)):
        return None
    words = _words(project, changed.group, held or {})
    return Told(words, address, (("whole", changed.before),))


def _words(project: Project, group: str, held: Mapping[str, Any]) -> str:
    if group == "blend":
        before = BLEND.read(held, setting_of(project))
        words = f"from {said_blend(before)} to {said_blend(project.blend)}" if before != project.blend else ""
    else:
        before = RECORDS[group].read(held, setting_of(project))
        words = "; ".join(differences(project, group, before, getattr(project, group)))
    if not words:
        return f"{TITLES[group]} typed anew; it means the same as before."
    return f"{TITLES[group]} changed: {words}."


def said_blend(blend: Blend) -> str:
    """A blend in words."""
    return f"{blend.shares or 'one colour'} (at most {counted(blend.cluster, 'brick')} of one colour together)"


def _delivery_told(address: str, project: Project, changed: Changed) -> Told | None:
    if changed.before:
        one = DELIVERY.read(read_text(changed.before), setting_of(project))
        fields = (("day", one.day), ("item", one.item), ("count", str(one.count)), ("place", str(changed.place)))
        return Told(f"Taken back: {_said(one)}.", address, fields)
    if not 0 <= changed.place < len(project.deliveries):
        return None
    words = f"Noted: {_said(project.deliveries[changed.place])}."
    return Told(words, f"{address}/{changed.place}/take-back", ())


def _said(delivery: Delivery) -> str:
    return f"{delivery.count:,} of {delivery.item} on {delivery.day}"
