"""What the page of a project's settings shows, made from one project of one moment."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from app.panel.delivery import Delivery
from app.panel.faults import Fault
from app.panel.project import Project
from app.web.page_links import project_path
from app.web.pages import Page
from app.web.settings_fields import ASKED, TITLES, SettingField, fields_of
from app.web.settings_told import Told
from app.web.wall_form import typed_text
from app.web.words import counted
from app.workflow.loading import LoadedProject

WORDS = {
    "liner": "As the maker states it. What an empty field stands for is written under it.",
    "day": "Lowest and highest temperature of the bed while liner is laid. Drift is worked out for both.",
    "order": "What is added, how brick, sheets and adhesive are packed, and what the saw takes.",
}
DELIVERY_LABELS = (("day", "Day"), ("item", "Item"), ("count", "Pieces"))

SPARE_ROWS = 2
FEWEST_ROWS = 3
MOST_ROWS = 12


@dataclass(frozen=True, slots=True)
class SettingGroup:
    """One form of single values."""

    name: str
    title: str
    words: str
    address: str
    fields: tuple[SettingField, ...]


@dataclass(frozen=True, slots=True)
class ToldFault:
    """What is wrong, under what its field is called."""

    label: str
    fault: Fault


@dataclass(frozen=True, slots=True)
class ColourRow:
    """One colour as typed, with what is wrong with it."""

    number: int
    place: int
    name: str
    percent: str
    faults: tuple[ToldFault, ...]


@dataclass(frozen=True, slots=True)
class BlendForm:
    address: str
    words: str
    rows: tuple[ColourRow, ...]
    cluster: SettingField
    faults: tuple[Fault, ...]


@dataclass(frozen=True, slots=True)
class DeliveryRow:
    """One delivery, newest day first; `take_back` is where it is taken back."""

    day: str
    item: str
    count: str
    take_back: str
    is_unknown: bool
    is_expected: bool


@dataclass(frozen=True, slots=True)
class DeliveryForm:
    """What came, and the form for what comes next; `items` are those of the order."""

    address: str
    rows: tuple[DeliveryRow, ...]
    items: tuple[str, ...]
    day: str
    item: str
    count: str
    faults: tuple[ToldFault, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingsPage(Page):
    """The settings of a project; `faults` are those that stand beside no field of the page."""

    revision: int
    facts: str
    groups: tuple[SettingGroup, ...]
    blend: BlendForm
    deliveries: DeliveryForm
    told: Told | None
    is_refused: bool
    faults: tuple[Fault, ...]
    notice: str


@dataclass(frozen=True, slots=True)
class Asked:
    """What belongs to one answer alone: a refused form with its group and faults, a notice, the change before this."""

    group: str = ""
    typed: Mapping[str, str] = field(default_factory=dict)
    faults: tuple[Fault, ...] = ()
    notice: str = ""
    told: Told | None = None


def page_of(
    loaded: LoadedProject, document: Mapping[str, Any], items: Sequence[str], today: str, asked: Asked
) -> SettingsPage:
    """The page; `document` has the groups as typed, `items` are the lines of the order, `today` a day to begin with."""
    project, address = loaded.project, f"/projects/{loaded.id}"
    faults = {fault.path: fault for fault in reversed(asked.faults)}
    groups = tuple(_group(project, name, address, document, asked, faults) for name in ASKED)
    blend = _blend(project, address, document.get("blend") or {}, asked, faults)
    deliveries = _deliveries(loaded, address, items, today, asked)
    return SettingsPage(
        title=f"Settings of {project.name}",
        path=project_path(loaded.id, project.name, "Settings"),
        revision=loaded.revision,
        facts=_facts(project),
        groups=groups,
        blend=blend,
        deliveries=deliveries,
        told=asked.told,
        is_refused=bool(asked.faults),
        faults=_elsewhere(asked.faults, groups, blend, deliveries),
        notice=asked.notice,
    )


def _facts(project: Project) -> str:
    unit = {"in": "feet and inches", "mm": "millimetres"}[project.length_unit]
    bare = {"in": "inches", "mm": "millimetres"}[project.length_unit]
    return f"Lengths in {unit}, a bare number is in {bare}. Temperatures in degrees {project.temperature_unit}."


def _group(
    project: Project, name: str, address: str, document: Mapping[str, Any], asked: Asked, faults: Mapping[str, Fault]
) -> SettingGroup:
    typed = asked.typed if asked.group == name else None
    fields = fields_of(project, name, document.get(name) or {}, typed, faults)
    return SettingGroup(name, TITLES[name], WORDS[name], f"{address}/settings/{name}", fields)


def _blend(
    project: Project, address: str, document: Mapping[str, Any], asked: Asked, faults: Mapping[str, Fault]
) -> BlendForm:
    typed = asked.typed if asked.group == "blend" else None
    told = _colours_typed(typed) if typed is not None else _colours_held(document)
    spare = max(min(len(told) + SPARE_ROWS, MOST_ROWS), FEWEST_ROWS) - len(told)
    rows = tuple(_colour(k, *pair, faults) for k, pair in enumerate([*told, *[("", "")] * spare]))
    cluster = document.get("cluster")
    text = typed_text(cluster) if typed is None else typed.get("cluster", "")
    now = f"= {counted(project.blend.cluster, 'brick')}" if text else "usual: 4 bricks"
    label = "Most bricks of one colour that touch"
    field = SettingField("cluster", label, text, "4", "" if typed is not None else now, faults.get("blend.cluster"))
    whole = tuple(fault for path in ("blend", "blend.colours") if (fault := faults.get(path)))
    return BlendForm(f"{address}/settings/blend", _blend_words(project), rows, field, whole)


def _blend_words(project: Project) -> str:
    if not project.blend.colours:
        return "Brick of one colour. Name the colours and their shares to have them laid out without clusters."
    return f"{project.blend.shares}, laid out the same way every time."


def _colours_typed(typed: Mapping[str, str]) -> list[tuple[str, str]]:
    rows = [(typed.get(f"name{k}", ""), typed.get(f"percent{k}", "")) for k in range(MOST_ROWS + 1)]
    return [row for row in rows if any(row)]


def _colours_held(document: Mapping[str, Any]) -> list[tuple[str, str]]:
    return [(one["name"], typed_text(one["percent"])) for one in document.get("colours", [])]


def _colour(place: int, name: str, percent: str, faults: Mapping[str, Fault]) -> ColourRow:
    path = f"blend.colours[{place}]"
    labels = ((f"{path}.name", f"Colour {place + 1}"), (f"{path}.percent", f"Share of colour {place + 1}"))
    wrong = tuple(ToldFault(label, fault) for one, label in labels if (fault := faults.get(one)))
    return ColourRow(place + 1, place, name, percent, wrong)


def _deliveries(loaded: LoadedProject, address: str, items: Sequence[str], today: str, asked: Asked) -> DeliveryForm:
    mine = asked.typed if asked.group == "deliveries" else {}
    came = list(enumerate(loaded.project.deliveries))
    rows = [_delivery(place, one, address, items, today) for place, one in sorted(came, key=_newest_first)]
    faults = {fault.path.rpartition(".")[2]: fault for fault in asked.faults} if mine else {}
    return DeliveryForm(
        address=f"{address}/settings/deliveries",
        rows=tuple(rows),
        items=tuple(items),
        day=mine.get("day", today),
        item=mine.get("item", ""),
        count=mine.get("count", ""),
        faults=tuple(ToldFault(label, faults[name]) for name, label in DELIVERY_LABELS if name in faults),
    )


def _newest_first(numbered: tuple[int, Delivery]) -> tuple[int, int]:
    place, delivery = numbered
    return -int(delivery.day.replace("-", "")), -place


def _delivery(place: int, one: Delivery, address: str, items: Sequence[str], today: str) -> DeliveryRow:
    take_back = f"{address}/settings/deliveries/{place}/take-back"
    return DeliveryRow(one.day, one.item, f"{one.count:,}", take_back, one.item not in items, one.day > today)


def _elsewhere(
    faults: Sequence[Fault], groups: Sequence[SettingGroup], blend: BlendForm, deliveries: DeliveryForm
) -> tuple[Fault, ...]:
    """Faults that stand beside no field."""
    beside = [field.fault for group in groups for field in group.fields]
    beside += [blend.cluster.fault, *blend.faults, *(told.fault for row in blend.rows for told in row.faults)]
    beside += [told.fault for told in deliveries.faults]
    return tuple(fault for fault in faults if fault not in beside)
