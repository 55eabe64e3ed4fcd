"""What the panel editor shows, as values: the whole page, and the parts that one edit changes."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from app.brickwork.layout import Layout
from app.web.editor_cards import Card
from app.web.editor_checkpoints import Checkpoints, Temperatures
from app.web.editor_findings import Findings
from app.web.editor_picture import Picture
from app.web.editor_strips import Strip, strips_of
from app.web.editor_things import Thing, things_of
from app.web.pages import Page
from app.workflow.compute import Computed


@dataclass(frozen=True, slots=True)
class Count:
    """A figure; `change` is by how much the edit made it more or fewer (`+61`), blank for a figure that stays.

    One with a `place` is sent again with the findings, where the state "follows" says that it was not yet known.
    """

    words: str
    figure: str
    state: str = ""
    change: str = ""
    place: str = ""


@dataclass(frozen=True, slots=True)
class Things:
    """The choosable shapes, and the view of the whole drawing for the script."""

    shapes: tuple[Thing, ...]
    home: str
    strips: tuple[Strip, ...]


@dataclass(frozen=True, slots=True)
class LayerChoice:
    name: str
    words: str
    shown: bool = True
    layers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Choice:
    """A button that answers a notice: a form with fixed values; a get leads to the page, a post stays on it."""

    act: str
    address: str
    values: tuple[tuple[str, str], ...] = ()
    method: str = "post"


@dataclass(frozen=True, slots=True)
class Notice:
    title: str
    lines: tuple[str, ...]
    choices: tuple[Choice, ...] = ()


@dataclass(frozen=True, kw_only=True)
class EditorParts:
    """What changes with every edit; the findings follow by themselves, once the drawing is painted.

    `checkpoints` are None where the page shows them already.
    """

    address: str
    revision: int
    saved: str
    drawing: Picture
    things: Things
    counts: tuple[Count, ...]
    checkpoints: Checkpoints | None
    undo: str | None
    redo: str | None
    changes: str = ""
    notice: Notice | None = None


@dataclass(frozen=True, kw_only=True)
class EditorPage(Page, EditorParts):
    """The whole page."""

    mark: str
    has_openings: bool
    findings: Findings
    unit: str
    words: str
    letters: str
    has_colours: bool
    card: Card
    layer_choices: tuple[LayerChoice, ...]
    temperatures: Temperatures


@dataclass(frozen=True, slots=True)
class CardPart:
    """The card alone."""

    address: str
    revision: int
    card: Card


@dataclass(frozen=True, slots=True)
class CheckpointsPart:
    checkpoints: Checkpoints


@dataclass(frozen=True, slots=True)
class FindingsPart:
    """The findings alone, and after an edit the figure that came with them."""

    address: str
    revision: int
    findings: Findings
    cut_sheets: Count | None = None


@dataclass(frozen=True, slots=True)
class LayersPart:
    drawing: Picture


@dataclass(frozen=True, slots=True)
class NoticePart:
    notice: Notice


LAYER_CHOICES = (
    LayerChoice("brick", "Brick"),
    LayerChoice("cuts", "Trimmed pieces"),
    LayerChoice("blend", "Colours", shown=False, layers=("blend",)),
    LayerChoice("small", "Small pieces"),
    LayerChoice("sheets", "Liner sheets", shown=False, layers=("sheets", "sheet_numbers")),
    LayerChoice("checkpoints", "Checkpoints", shown=False, layers=("checkpoints",)),
    LayerChoice("dimensions", "Dimensions"),
    LayerChoice("pole", "Pole"),
    LayerChoice("tape", "Tape"),
)


HIDEABLE = frozenset(layer for choice in LAYER_CHOICES for layer in choice.layers)
"""Layers that are not even sent while they are hidden."""


def hidden_layers(choices: Iterable[str]) -> frozenset[str]:
    """The layers of these choices that are not sent; nothing for names that are no choices."""
    names = set(choices)
    return frozenset(layer for choice in LAYER_CHOICES if choice.name in names for layer in choice.layers)


def address_of(panel_id: str) -> str:
    return f"/panels/{panel_id}"


def saved_words(revision: int, at: datetime) -> str:
    """When and as which revision the panel was saved, on this machine's clock."""
    return f"Saved {at.astimezone():%H:%M:%S}, rev {revision}"


def counts_of(computed: Computed, before: Computed | None = None) -> tuple[Count, ...]:
    """The figures that an edit changes, and by how much where it is known how it was before."""
    layout = computed.layout
    trimmed, small = changes_of(computed, before)
    return (
        Count("whole", f"{layout.whole:,}"),
        Count("trimmed", f"{len(layout.trims):,}", change=_signed(trimmed)),
        Count("small", f"{layout.small:,}", "attention" if layout.small else "", _signed(small)),
        Count("sheets", f"{computed.placed:,}"),
        cut_sheets_of(computed, before),
        Count("checkpoints", f"{len(computed.drift.checkpoints):,}"),
    )


def cut_sheets_of(computed: Computed, before: Computed | None = None) -> Count:
    """How many sheets are trimmed; as it was before an edit where the sheets are not cut yet, until that follows."""
    plan, state = computed.plan_so_far, ""
    if plan is None:
        plan, state = before.plan_so_far if before else None, "follows"
    figure = f"{sum(sheet.is_trimmed for sheet in plan.sheets):,}" if plan else "…"
    return Count("of them cut", figure, state, place="cut-sheets")


def changes_of(computed: Computed, before: Computed | None) -> tuple[int, int]:
    """By how many there are more trimmed and small pieces than before; 0 where that is not known."""
    if before is None:
        return 0, 0
    now, then = computed.layout, before.layout
    return len(now.trims) - len(then.trims), now.small - then.small


def change_words(computed: Computed, before: Computed | None) -> str:
    """`61 trimmed more, 2 small fewer.`, for who cannot see it beside the figures; nothing where all stays."""
    named = zip(changes_of(computed, before), ("trimmed", "small"), strict=True)
    words = [f"{abs(by):,} {name} {'more' if by > 0 else 'fewer'}" for by, name in named if by]
    return f"{', '.join(words)}." if words else ""


def _signed(by: int) -> str:
    return f"{by:+,}".replace("-", "\u2212") if by else ""


def things_part(layout: Layout, unit: str, picture: Picture) -> Things:
    """Shapes and view for the drawing's script."""
    left, top, width, height = picture.box
    home = {
        "height_in": layout.panel.height,
        "box": {"x": left, "y": top, "width": width, "height": height},
        "panel": {"width": layout.panel.width, "height": layout.panel.height},
    }
    return Things(
        shapes=things_of(layout, unit),
        home=json.dumps(home, separators=(",", ":")),
        strips=strips_of(layout),
    )
