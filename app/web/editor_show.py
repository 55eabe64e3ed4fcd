"""From a panel and its results to what the editor shows."""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from app.drawing.styles import CUT_LETTERS
from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.web.editor_checkpoints import checkpoints_part, temperatures
from app.web.editor_choose import card_of
from app.web.editor_findings import findings_part
from app.web.editor_picture import Picture, picture_of
from app.web.editor_view import (
    HIDEABLE,
    LAYER_CHOICES,
    EditorPage,
    EditorParts,
    address_of,
    change_words,
    counts_of,
    hidden_layers,
    saved_words,
    things_part,
)
from app.web.pages import Step
from app.workflow.compute import Computed, compute
from app.workflow.loading import LoadedPanel
from app.workflow.steps import Steps

LETTERS = f"{', '.join(f'{letter} {cut}' for cut, letter in CUT_LETTERS.items())}: where a piece is trimmed."


@dataclass(frozen=True, slots=True)
class Shown:
    """What the page shows just now: which layers not, and at which bed temperature (None: the day's highest)."""

    hidden: frozenset[str] = hidden_layers(choice.name for choice in LAYER_CHOICES if not choice.shown)
    temperature: float | None = None


def page_of(loaded: LoadedPanel, steps: Steps) -> EditorPage:
    """The whole page."""
    project, panel = loaded.project, loaded.panel
    computed = _computed(loaded)
    return EditorPage(
        title=f"Panel {panel.mark}, {project.name}",
        path=(
            Step("Projects", "/"),
            Step(project.name, f"/projects/{loaded.project_id}"),
            Step(f"{loaded.wall.mark} / {panel.mark}"),
        ),
        mark=panel.mark,
        unit=project.length_unit,
        words="Choose a thing by pointer or arrow keys; drag to move it, type to place it.",
        letters=LETTERS,
        card=card_of(loaded, computed.layout, ""),
        layer_choices=LAYER_CHOICES,
        temperatures=temperatures(project.day),
        findings=findings_part(computed.findings, loaded.panel.accepted),
        **_parts(loaded, computed, steps, Shown(), swap=False),
    )


def parts_of(before: LoadedPanel | None, after: LoadedPanel, steps: Steps, shown: Shown) -> EditorParts:
    """What an edit changed, checkpoints at the temperature shown; groups that look as in `before` are left out.

    `before` is the panel as the page shows it, None where that is not known: then every group is sent.
    """
    parts = _parts(after, _computed(after), steps, shown, swap=True)
    if before:
        known = _computed(before)
        parts |= {"counts": counts_of(_computed(after), known), "changes": change_words(_computed(after), known)}
    picture: Picture = parts["drawing"]
    parts["drawing"] = (picture.less(_picture(before, shown.hidden)) if before else picture).swapping()
    return EditorParts(**parts)


def _computed(loaded: LoadedPanel) -> Computed:
    return compute(loaded.project, loaded.wall, loaded.panel)


def layers_of(loaded: LoadedPanel, names: frozenset[str]) -> Picture:
    """The groups of some layers, for a page that shows them from now on."""
    picture = _picture(loaded, HIDEABLE - names)
    wanted = tuple(part for part in picture.parts if part.id.removeprefix("layer-").partition("-")[0] in names)
    return replace(picture, parts=wanted).swapping()


def _picture(loaded: LoadedPanel, hidden: frozenset[str]) -> Picture:
    return _drawn(loaded.project, loaded.wall, loaded.panel, hidden)


@lru_cache(maxsize=16)
def _drawn(project: Project, wall: Wall, panel: Panel, hidden: frozenset[str]) -> Picture:
    """Kept for the next edit, which sends only what differs."""
    return picture_of(compute(project, wall, panel), project.length_unit, hidden)


def _parts(loaded: LoadedPanel, computed: Computed, steps: Steps, shown: Shown, *, swap: bool) -> dict[str, Any]:
    project = loaded.project
    picture = _picture(loaded, shown.hidden)
    return {
        "address": address_of(loaded.id),
        "revision": loaded.revision,
        "saved": saved_words(loaded.revision, loaded.saved_at),
        "drawing": picture,
        "things": things_part(computed.layout, project.length_unit, picture),
        "counts": counts_of(computed),
        "checkpoints": checkpoints_part(
            computed.drift, project, project.day.bed_high if shown.temperature is None else shown.temperature
        ),
        "undo": steps.undo,
        "redo": steps.redo,
        "swap": swap,
    }
