"""From a panel and its results to what the editor shows."""

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import cycle
from typing import Any

from app.drawing.layers.blend import HATCH_WORDS
from app.drawing.layers.blend import LETTERS as COLOUR_LETTERS
from app.drawing.styles import CUT_LETTERS
from app.panel.blend import Blend
from app.panel.keyed import Keyed
from app.web.editor_checkpoints import Checkpoints, checkpoints_part, temperatures
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


@dataclass(frozen=True, slots=True, eq=False)
class Laid:
    """A panel and all that follows from it."""

    loaded: LoadedPanel
    computed: Computed

    def checkpoints(self, temperature: float | None) -> Checkpoints:
        """The readings at a bed temperature; None is the day's highest."""
        project = self.loaded.project
        at = project.day.bed_high if temperature is None else temperature
        return checkpoints_part(self.computed.drift, project, at)

    def picture(self, hidden: frozenset[str]) -> Picture:
        """The drawing without some layers, kept for the next edit, which sends only what differs."""
        unit = self.loaded.project.length_unit
        return _drawn(Keyed((id(self.computed), unit, hidden), self.computed), unit, hidden)


def laid_out(loaded: LoadedPanel) -> Laid:
    """The panel with its results."""
    return Laid(loaded, compute(loaded.project, loaded.wall, loaded.panel))


@lru_cache(maxsize=16)
def _drawn(computed: Keyed[Computed], unit: str, hidden: frozenset[str]) -> Picture:
    """Results are kept with their picture, so that no others can get their identity."""
    return picture_of(computed.value, unit, hidden)


def _colour_words(blend: Blend) -> str:
    """What the letters and hatchings of colours mean; nothing for brick of one colour."""
    looks = zip(COLOUR_LETTERS, blend.colours, cycle(HATCH_WORDS), strict=False)
    names = (f"{letter} {colour.name} ({hatch})" for letter, colour, hatch in looks)
    return f" Colours: {', '.join(names)}." if len(blend.colours) > 1 else ""


def page_of(loaded: LoadedPanel, steps: Steps) -> EditorPage:
    """The whole page."""
    project, panel = loaded.project, loaded.panel
    laid = laid_out(loaded)
    return EditorPage(
        title=f"Panel {panel.mark}, {project.name}",
        path=(
            Step("Projects", "/"),
            Step(project.name, f"/projects/{loaded.project_id}"),
            Step(f"{loaded.wall.mark} / {panel.mark}"),
        ),
        mark=panel.mark,
        has_openings=bool(panel.openings),
        unit=project.length_unit,
        words="Choose a thing by pointer or arrow keys; drag to move it, type to place it.",
        letters=LETTERS + _colour_words(project.blend),
        has_colours=len(project.blend.colours) > 1,
        card=card_of(loaded, laid.computed.layout),
        layer_choices=LAYER_CHOICES,
        temperatures=temperatures(project.day),
        findings=findings_part(laid.computed.findings, panel.accepted),
        **_parts(laid, steps, Shown()),
    )


def parts_of(before: Laid | None, after: Laid, steps: Steps, shown: Shown) -> EditorParts:
    """What an edit changed, checkpoints at the temperature shown; what looks as in `before` is left out.

    `before` is the panel as the page shows it, None where that is not known: then everything is sent.
    """
    parts = _parts(after, steps, shown)
    picture: Picture = parts["drawing"]
    if before:
        known, now = before.computed, after.computed
        parts |= {"counts": counts_of(now, known), "changes": change_words(now, known)}
        if before.checkpoints(shown.temperature) == parts["checkpoints"]:
            parts["checkpoints"] = None
        picture = picture.less(before.picture(shown.hidden))
    parts["drawing"] = picture
    return EditorParts(**parts)


def layers_of(loaded: LoadedPanel, names: frozenset[str]) -> Picture:
    """The groups of some layers, for a page that shows them from now on."""
    picture = laid_out(loaded).picture(HIDEABLE - names)
    wanted = tuple(part for part in picture.parts if part.id.removeprefix("layer-").partition("-")[0] in names)
    return replace(picture, parts=wanted)


def _parts(laid: Laid, steps: Steps, shown: Shown) -> dict[str, Any]:
    loaded = laid.loaded
    picture = laid.picture(shown.hidden)
    return {
        "address": address_of(loaded.id),
        "revision": loaded.revision,
        "saved": saved_words(loaded.revision, loaded.saved_at),
        "drawing": picture,
        "things": things_part(laid.computed.layout, loaded.project.length_unit, picture),
        "counts": counts_of(laid.computed),
        "checkpoints": laid.checkpoints(shown.temperature),
        "undo": steps.undo,
        "redo": steps.redo,
    }
