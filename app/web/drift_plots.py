"""The plots of the Drift screen, each arranged for wide, middling and narrow windows."""

from dataclasses import dataclass, replace

from markupsafe import Markup

from app.drawing.drawing import Drawing
from app.drawing.views.growth import Warmth, growth_plot
from app.drawing.views.growth_over_day import growth_over_day, worst_checkpoint
from app.liner.drift_words import hook_words
from app.web.inline_drawing import InlineDrawing, inline_drawing
from app.workflow.compute import Computed

WIDE, MIDDLE, NARROW = 300.0, 170.0, 100.0
"""Millimetres of paper that a plot is made for, so that its letters read well in windows of three widths."""


@dataclass(frozen=True, slots=True)
class Plot:
    """One plot: its caption, and its drawings by the windows they are for ("wide", "middle", "narrow")."""

    name: str
    caption: str
    drawings: tuple[tuple[str, InlineDrawing], ...]


def plots_of(computed: Computed, warmth: Warmth) -> tuple[Plot, ...]:
    """Growth along, growth up, and growth at the worst checkpoint over the day; none for a panel without brick."""
    worst = worst_checkpoint(computed.drift.checkpoints)
    if worst is None:
        return ()
    along, up = (_growth(computed, axis, warmth) for axis in ("x", "y"))
    unit = computed.unit
    made = {name: growth_over_day(worst, warmth, width=width, unit=unit) for name, width in _SIZES[1:]}
    caption = f"Growth at {worst.mark}, the checkpoint that moves most, over bed temperature"
    return along, up, Plot("day", caption, _drawn(made, caption))


_SIZES = (("wide", WIDE), ("middle", MIDDLE), ("narrow", NARROW))


def _growth(computed: Computed, axis: str, warmth: Warmth) -> Plot:
    laying, liner = computed.layout.panel.laying, computed.given.liner
    turned = axis == "x" and laying.corner.endswith("right")
    made = {
        name: growth_plot(computed.drift, axis, liner, warmth, width=width, unit=computed.unit, turned=turned)
        for name, width in (_SIZES if axis == "x" else _SIZES[1:])
    }
    name = "Along the panel" if axis == "x" else "Up the panel"
    caption = f"{name}: {hook_words(laying, axis)}"
    return Plot("along" if axis == "x" else "up", caption, _drawn(made, caption))


def _drawn(made: dict[str, Drawing], label: str) -> tuple[tuple[str, InlineDrawing], ...]:
    """Without hatching patterns: plots draw their own lines."""
    return tuple((name, replace(inline_drawing(drawn, label), patterns=Markup())) for name, drawn in made.items())
