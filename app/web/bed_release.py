"""The bed page of a release: one panel, task by task, for a tablet with no signal."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from app.site.before import BEFORE, BOUNDS, SIGN_OFFS, Check, SignOff
from app.site.cautions import Task
from app.storage.records import StoredRecord
from app.storage.releases import StoredRelease
from app.web.caution_list import Cautions, cautions_of
from app.web.pages import Page
from app.web.words import at

TASKS: Mapping[str, tuple[str, tuple[Task, ...]]] = {
    "set-out": ("Set out", ("walking on the bed",)),
    "sheets": ("Lay sheets", ("walking on the bed", "cutting liner", "fixing liner")),
    "brick": ("Place brick", ("walking on the bed", "sawing brick")),
    "check": ("Check", ("walking on the bed",)),
    "before": ("Before concrete", ("fixing liner",)),
    "concrete": ("Concrete", ("placing concrete",)),
    "strip": ("Strip and wash", ("lifting", "washing")),
}
"""In the order of the work: what each is called, and which cautions belong to it."""


COUNTED = frozenset({"sheets-laid", "readings-in-band"})
"""Lines of the list that the page counts by itself from what was recorded."""

TICKED = tuple(item for item in BEFORE if item.key not in COUNTED)


@dataclass(frozen=True, slots=True)
class TaskPart:
    name: str
    words: str
    cautions: Cautions


@dataclass(frozen=True, slots=True)
class ReleasePicture:
    view_box: str
    close: str
    patterns: Markup
    layers: tuple[tuple[str, Markup], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BedReleasePage(Page):
    """One release as it was frozen; `given` is its bed set, `data` what the page's script reads of it."""

    address: str
    mark: str
    rev: str
    released: str
    digest: str
    where: str
    given: Mapping[str, Any]
    picture: ReleasePicture
    tasks: tuple[TaskPart, ...]
    before: tuple[Check, ...]
    bounds: str
    signs: tuple[SignOff, ...]
    data: Markup
    may_record: bool
    is_guest: bool
    all_panels: str
    office: str


def release_page(
    row: StoredRelease, given: Mapping[str, Any], *, may_record: bool, is_guest: bool, all_panels: str
) -> BedReleasePage:
    """The page; raises KeyError for a bed set that lacks something."""
    picture = given["picture"]
    layers = tuple((layer["name"], Markup(layer["markup"])) for layer in picture["layers"])
    return BedReleasePage(
        title=f"{row.head.mark} rev {row.letter}, at the bed",
        address=f"/bed/{row.panel_id}",
        mark=row.head.mark,
        rev=row.letter,
        released=f"{at(row.at)}, {row.head.person}",
        digest=row.digest[7:19],
        where=f"{given['project']}, wall {given['wall']}",
        given=given,
        picture=ReleasePicture(picture["view_box"], picture["close"], Markup(picture["patterns"]), layers),
        tasks=tuple(TaskPart(name, words, cautions_of(*about)) for name, (words, about) in TASKS.items()),
        before=TICKED,
        bounds=BOUNDS,
        signs=SIGN_OFFS,
        data=_data(row, given, may_record),
        may_record=may_record,
        is_guest=is_guest,
        all_panels=all_panels,
        office=f"/panels/{row.panel_id}/at-bed",
    )


def _data(row: StoredRelease, given: Mapping[str, Any], may_record: bool) -> Markup:
    """What the script reads; no sign in it can end the element that holds it."""
    kept = {key: value for key, value in given.items() if key != "picture"}
    release = {"id": row.id, "rev": row.letter, "number": row.head.number, "digest": row.digest}
    data = {
        **kept,
        "panel": row.panel_id,
        "release": release,
        "mayRecord": may_record,
        "before": [item.key for item in TICKED],
        "signs": [{"key": each.key, "who": each.who} for each in SIGN_OFFS],
    }
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c").replace("&", "\\u0026"))


def now_of(rows: Sequence[StoredRelease], stored: Sequence[StoredRecord]) -> dict[str, Any]:
    """What a page that is open asks for: the newest release (the first), a hold, and records that came since."""
    newest = rows[0]
    return {
        "newest": {"id": newest.id, "rev": newest.letter, "number": newest.head.number},
        "hold": newest.hold.why if newest.hold else "",
        "revs": {row.id: row.letter for row in rows},
        "records": [_record(one) for one in stored],
    }


def _record(one: StoredRecord) -> dict[str, Any]:
    record = one.record
    return {
        "id": record.id,
        "device": record.device,
        "sequence": record.sequence,
        "release": record.release,
        "kind": record.kind,
        "body": dict(record.body),
        "at": record.at,
        "corrects": record.corrects,
        "arrival": one.arrival,
    }
