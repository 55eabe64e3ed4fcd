"""What the Order screen shows: lines by topic with net, overage and its reason, packs and weight, and what is short."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.order.line_words import amount, pack_words, unit_words, weight_words
from app.order.saw_saved import Saved
from app.order.values import TOPICS, Line, Takeoff
from app.panel.project import Project
from app.site.cautions import Task
from app.web.caution_list import cautions_of
from app.web.order_short import ShortPart
from app.web.page_links import project_links, project_path
from app.web.scope import ScopePage, query_of, scope_groups
from app.web.words import counted
from app.workflow.loading import LoadedPanel, LoadedProject

TASKS: tuple[Task, ...] = ("fixing liner", "washing")

TITLES = {
    "brick": "Brick",
    "corner units": "Corner units",
    "liner": "Liner sheets",
    "fixings and sundries": "Fixings and sundries",
    "for information": "For information, not bought",
}


@dataclass(frozen=True, slots=True)
class OrderRow:
    """One line of the order in words; empty where there is nothing to say."""

    item: str
    note: str
    net: str
    overage: str
    reason: str
    order: str
    unit: str
    packs: str
    weight: str


@dataclass(frozen=True, slots=True)
class OrderGroup:
    """Lines about one thing; `is_bought` ones have overage, packs and weight."""

    name: str
    anchor: str
    rows: tuple[OrderRow, ...]
    weight: str
    is_bought: bool
    has_packs: bool
    has_weights: bool


@dataclass(frozen=True, slots=True)
class OrderFile:
    name: str
    address: str
    file_name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderPage(ScopePage):
    """The order for some panels of a project."""

    colours: str
    saved: str
    topics: tuple[OrderGroup, ...]
    short: ShortPart
    files: tuple[OrderFile, ...]


def page_of(
    loaded: LoadedProject,
    of: str,
    title: str,
    panels: Sequence[LoadedPanel],
    found: Takeoff,
    short: ShortPart,
    saved: Saved,
) -> OrderPage:
    """The page; a scope without panels says so in words."""
    project = loaded.project
    return OrderPage(
        title=f"Order, {title}",
        path=project_path(loaded.id, project.name, "Order"),
        scope=title,
        lead=_lead(project, panels),
        links=project_links(f"/projects/{loaded.id}", ("Saw list", f"saw?{query_of(of)}"), ("Settings", "settings")),
        groups=scope_groups(loaded, "order", of),
        empty=_empty(loaded, panels),
        colours=_colours(project),
        saved=saved.words,
        topics=_topics(found.lines),
        short=short,
        files=_files(loaded, of, title),
        cautions=cautions_of(*TASKS),
    )


def _lead(project: Project, panels: Sequence[LoadedPanel]) -> str:
    percent = f"{project.order.overage_percent:g}"
    return f"{counted(len(panels), 'panel')}. Counted from the layouts; overage of {percent} percent once, on each sum."


def _empty(loaded: LoadedProject, panels: Sequence[LoadedPanel]) -> str:
    if panels:
        return ""
    if not loaded.panels:
        return "No panels yet, so there is nothing to order. Add one on the project's page."
    return "No panel is cast on this day or stands here, so there is nothing to order."


def _colours(project: Project) -> str:
    shares = project.blend.shares
    return f"Blend of {shares}, counted as it is laid out." if shares else ""


def _topics(lines: Sequence[Line]) -> tuple[OrderGroup, ...]:
    groups = (_topic(topic, [line for line in lines if line.topic == topic]) for topic in TOPICS)
    return tuple(group for group in groups if group.rows)


def _topic(topic: str, lines: Sequence[Line]) -> OrderGroup:
    weights = [line.weight for line in lines if line.weight is not None]
    unit = next((line.weight_unit for line in lines if line.weight is not None), "")
    return OrderGroup(
        name=TITLES[topic],
        anchor=topic.replace(" ", "-"),
        rows=tuple(map(_row, lines)),
        weight=f"{sum(weights):,.0f} {unit} together" if len(weights) > 1 else "",
        is_bought=topic != TOPICS[-1],
        has_packs=any(line.packs for line in lines),
        has_weights=bool(weights),
    )


def _row(line: Line) -> OrderRow:
    return OrderRow(
        item=line.item,
        note=line.note,
        net=amount(line.net),
        overage=amount(line.overage) if line.overage else "",
        reason=line.reason,
        order=amount(line.order),
        unit=unit_words(line),
        packs=pack_words(line),
        weight=weight_words(line),
    )


def _files(loaded: LoadedProject, of: str, title: str) -> tuple[OrderFile, ...]:
    api, name = f"/api/projects/{loaded.id}/takeoff", f"{loaded.project.name}, order, {title}"
    query = f"?{query_of(of)}"
    return (
        OrderFile("Workbook, a sheet for each topic", f"{api}.xlsx{query}", f"{name}.xlsx"),
        OrderFile("Comma-separated list", f"{api}.csv{query}", f"{name}.csv"),
    )
