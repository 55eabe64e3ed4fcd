"""A wall's datum and joint as a form says them, and in words what a change of them did."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any
from urllib.parse import urlencode

from app.brickwork.wall import is_continuous
from app.lengths import Length, LengthError, Unit, format_length, parse
from app.panel.faults import Fault, Refused
from app.panel.project import Wall
from app.storage.projects import StoredWall
from app.web.words import counted, listed
from app.workflow.wall_settings import NAMES, WallChange

_DEFAULT = Wall("", ())


@dataclass(frozen=True, slots=True)
class WallForm:
    """Datum and joint as they were typed, "" for one that was not; and what that means."""

    datum: str
    joint: str
    usual_datum: str
    usual_joint: str


@dataclass(frozen=True, slots=True)
class Changed:
    """The last change of a wall's settings: which wall, the project's revision it made, the values before, as typed."""

    wall_id: str
    revision: int
    datum: str
    joint: str


@dataclass(frozen=True, slots=True)
class ChangedPart:
    """What the last change did, and the values that undo it."""

    words: str
    datum: str
    joint: str


def form_of(stored: StoredWall, unit: str) -> WallForm:
    """What stands in the form, and beside an empty field what the wall has instead."""
    datum, joint = (typed_text(stored.settings.get(name)) for name in NAMES)
    return WallForm(datum, joint, format_length(_DEFAULT.datum, unit), format_length(_DEFAULT.joint, unit))


def asked_of(form: Mapping[str, str], wall: Wall, unit: Unit) -> dict[str, Any]:
    """The settings that the form would change, as typed; None for an empty field. Raises Refused with every fault."""
    asked, faults = {}, []
    for name, now in (("datum", wall.datum), ("joint", wall.joint)):
        text = form.get(name, "")
        try:
            if not text or parse(text, unit).nm != now.nm:
                asked[name] = _as_typed(text)
        except LengthError as error:
            faults.append(Fault(f"{name} of wall {wall.mark}", text, f"{error.expected}, for example {error.example}"))
    if faults:
        raise Refused(faults)
    return asked


def typed_text(value: Any) -> str:
    """A value of the project file as somebody would type it, no number with an exponent; "" for none."""
    if value is None or isinstance(value, str):
        return value or ""
    return f"{Decimal(json.dumps(value)):f}" if isinstance(value, float) else json.dumps(value)


def after(project_id: str, wall_id: str, change: WallChange) -> str:
    """The address that shows the wall and what changed."""
    before = {name: typed_text(change.before[name]) for name in NAMES}
    query = urlencode({"changed": wall_id, "revision": change.revision, **before})
    return f"/projects/{project_id}?{query}#wall-{wall_id}"


def changed_part(changed: Changed, wall: Wall, unit: Unit) -> ChangedPart | None:
    """The change in words; None where nothing changed or the values before cannot be read."""
    try:
        datum, joint = _before(changed.datum, _DEFAULT.datum, unit), _before(changed.joint, _DEFAULT.joint, unit)
    except LengthError:
        return None
    words = [_datum_words(wall, datum, unit), _joint_words(wall, joint, unit)]
    said = " ".join(filter(None, words))
    return ChangedPart(said, changed.datum, changed.joint) if said else None


def _before(text: str, default: Length, unit: Unit) -> Length:
    return parse(text, unit) if text else default


def _datum_words(wall: Wall, before: Length, unit: str) -> str:
    moved = wall.datum.nm - before.nm
    if not moved:
        return ""
    by, way = format_length(abs(moved) / 25_400_000, unit), "up" if moved > 0 else "down"
    following = sum(map(is_continuous, wall.panels))
    stay = [panel.mark for panel in wall.panels if not is_continuous(panel)]
    words = f"Datum moved {by} {way}, from {format_length(before, unit)} to {format_length(wall.datum, unit)};"
    words += f" the courses of {counted(following, 'panel')} moved with it."
    return words + (f" {listed(stay)} stayed." if stay else "")


def _joint_words(wall: Wall, before: Length, unit: str) -> str:
    if wall.joint.nm == before.nm:
        return ""
    return f"Panel joint changed from {format_length(before, unit)} to {format_length(wall.joint, unit)}."


def _as_typed(text: str) -> Any:
    """A bare number as a number of the file, anything else as the text it is; None for nothing."""
    try:
        value = json.loads(text)
    except ValueError:
        return text or None
    return value if type(value) in (int, float) else text
