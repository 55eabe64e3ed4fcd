"""From a panel and its results to what the editor shows."""

from functools import lru_cache
from typing import Any

from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.web.editor_checkpoints import checkpoints_part, temperatures
from app.web.editor_choose import card_of
from app.web.editor_findings import findings_part
from app.web.editor_picture import Picture, picture_of
from app.web.editor_view import (
    LAYER_CHOICES,
    EditorPage,
    EditorParts,
    address_of,
    counts_of,
    saved_words,
    things_part,
)
from app.web.pages import Step
from app.workflow.compute import Computed, compute
from app.workflow.loading import LoadedPanel
from app.workflow.steps import Steps


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
        card=card_of(loaded, computed.layout, ""),
        layer_choices=LAYER_CHOICES,
        temperatures=temperatures(project.day),
        **_parts(loaded, computed, steps, None, swap=False),
    )


def parts_of(before: LoadedPanel | None, after: LoadedPanel, steps: Steps, temperature: float | None) -> EditorParts:
    """What an edit changed, checkpoints at the temperature shown; groups that look as in `before` are left out.

    `before` is the panel as the page shows it, None where that is not known: then every group is sent.
    """
    parts = _parts(after, _computed(after), steps, temperature, swap=True)
    picture: Picture = parts["drawing"]
    parts["drawing"] = (picture.less(_picture(before)) if before else picture).swapping()
    return EditorParts(**parts)


def _computed(loaded: LoadedPanel) -> Computed:
    return compute(loaded.project, loaded.wall, loaded.panel)


def _picture(loaded: LoadedPanel) -> Picture:
    return _drawn(loaded.project, loaded.wall, loaded.panel)


@lru_cache(maxsize=16)
def _drawn(project: Project, wall: Wall, panel: Panel) -> Picture:
    """Kept for the next edit, which sends only what differs."""
    return picture_of(compute(project, wall, panel), project.length_unit)


def _parts(
    loaded: LoadedPanel, computed: Computed, steps: Steps, temperature: float | None, *, swap: bool
) -> dict[str, Any]:
    project = loaded.project
    picture = _picture(loaded)
    return {
        "address": address_of(loaded.id),
        "revision": loaded.revision,
        "saved": saved_words(loaded.revision, loaded.saved_at),
        "drawing": picture,
        "things": things_part(computed.layout, project.length_unit, picture),
        "counts": counts_of(computed),
        "checkpoints": checkpoints_part(
            computed.drift, project, project.day.bed_high if temperature is None else temperature
        ),
        "findings": findings_part(computed.findings),
        "undo": steps.undo,
        "redo": steps.redo,
        "swap": swap,
    }
