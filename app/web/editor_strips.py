"""Pole and tape as handles: dragging the pole moves the field's courses, dragging the tape moves its bond."""

from dataclasses import dataclass

from app.brickwork.layout import Layout

REACH = 0.085
"""How far beside the panel a strip can be taken hold of, as a share of the panel's larger side."""


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip beside the panel, inches with y down; `slides` is the axis that a drag moves, from `origin`."""

    slides: str
    words: str
    x: float
    y: float
    width: float
    height: float
    origin: tuple[float, float]


def strips_of(layout: Layout) -> tuple[Strip, ...]:
    """The pole left of the panel and the tape below it."""
    panel, reach = layout.panel, REACH * max(layout.panel.width, layout.panel.height)
    return (
        Strip("y", "Drag the pole to move the courses", -reach, 0.0, reach, panel.height, layout.origin),
        Strip("x", "Drag the tape to move the bond", 0.0, panel.height, panel.width, reach * 0.6, layout.origin),
    )
