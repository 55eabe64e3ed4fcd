"""Which panels a page of a project is about: all, one wall's, one casting day's or one panel."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from urllib.parse import quote

from app.web.caution_list import Cautions
from app.web.page_links import PageLink
from app.web.pages import Page
from app.web.problems import failure
from app.workflow.loading import LoadedPanel, LoadedProject

WHOLE = "project"

HOW = "project, wall:id, panel:id or day:2026-12-01"


@dataclass(frozen=True, slots=True)
class ScopeLink:
    """One choice of panels: its words, its address on the same page, whether it is the one shown."""

    words: str
    address: str
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class ScopeGroup:
    """Choices of one kind: "Project", "Walls", "Casting days" or "Panels"."""

    name: str
    links: tuple[ScopeLink, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ScopePage(Page):
    """A page about some panels of a project: which, and all that could be; `empty` says why it shows nothing."""

    scope: str
    lead: str
    links: tuple[PageLink, ...]
    groups: tuple[ScopeGroup, ...]
    empty: str
    cautions: Cautions


def query_of(of: str) -> str:
    """A scope as an address asks for it."""
    return f"of={quote(of, safe=':')}"


def panels_in(loaded: LoadedProject, of: str) -> tuple[str, tuple[LoadedPanel, ...]]:
    """Title and panels of a scope, in the project's order; a day on which nothing is cast has none.

    Raises Failure (not found) for a wall or panel that the project has not, and for what is no scope.
    """
    kind, _, name = of.partition(":")
    found = _chosen(loaded, kind, name)
    if found is None:
        raise failure("not-found", f"{of or 'Nothing'}: found no such part of this project, expected {HOW}.")
    return found


def scope_groups(loaded: LoadedProject, page: str, of: str) -> tuple[ScopeGroup, ...]:
    """Links to `page` ("saw") for every scope of the project, the one in `of` chosen; groups with nothing left out."""
    groups = (ScopeGroup(name, tuple(_links(loaded, page, of, rows))) for name, rows in _choices(loaded))
    return tuple(group for group in groups if group.links)


def _chosen(loaded: LoadedProject, kind: str, name: str) -> tuple[str, tuple[LoadedPanel, ...]] | None:
    if (kind, name) == (WHOLE, ""):
        return "Whole project", loaded.panels
    if kind == "wall":
        walls = [wall for wall in loaded.walls if wall.id == name]
        return (f"Wall {walls[0].wall.mark}", walls[0].panels) if walls else None
    if kind == "panel":
        panels = tuple(panel for panel in loaded.panels if panel.id == name)
        return (f"Panel {panels[0].panel.mark}", panels) if panels else None
    return _day(loaded, name) if kind == "day" else None


def _day(loaded: LoadedProject, name: str) -> tuple[str, tuple[LoadedPanel, ...]] | None:
    try:
        is_day = date.fromisoformat(name).isoformat() == name
    except ValueError:
        return None
    panels = tuple(panel for panel in loaded.panels if panel.panel.cast_on == name)
    return (f"Casting day {name}", panels) if is_day else None


def _choices(loaded: LoadedProject) -> Iterator[tuple[str, list[tuple[str, str]]]]:
    yield "Project", [("Whole project", WHOLE)]
    yield "Walls", [(wall.wall.mark, f"wall:{wall.id}") for wall in loaded.walls]
    days = sorted({panel.panel.cast_on for panel in loaded.panels if panel.panel.cast_on})
    yield "Casting days", [(day, f"day:{day}") for day in days]
    yield "Panels", [(panel.panel.mark, f"panel:{panel.id}") for panel in loaded.panels]


def _links(loaded: LoadedProject, page: str, of: str, rows: list[tuple[str, str]]) -> Iterator[ScopeLink]:
    for words, scope in rows:
        yield ScopeLink(words, f"/projects/{loaded.id}/{page}?{query_of(scope)}", scope == of)
