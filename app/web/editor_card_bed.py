"""Forms of a panel's work on the bed: how its sheets are laid, when it is cast."""

from app.panel.laying import CORNERS, DIRECTIONS
from app.panel.values import Panel
from app.web.editor_cards import CardForm, Field, choice_field, tick_field


def laying_form(panel: Panel) -> CardForm:
    """Where the first sheet lies on the bed, and which way the next ones follow."""
    fields = (
        choice_field("corner", "First sheet at", panel.laying.corner, [(corner, corner) for corner in CORNERS]),
        choice_field("direction", "Then", panel.laying.direction, [(way, way) for way in DIRECTIONS]),
    )
    words = "As seen on the bed from its foot: bed left is the right of the face. The Liner page shows all sheets."
    return CardForm("set_laying", "Lay so", fields, words=words)


def casting_form(panel: Panel) -> CardForm:
    """The casting day, and whether the brick lies in the liner."""
    fields = (
        Field("cast_on", "Cast on", panel.cast_on or "", holder="such as 2026-12-01"),
        tick_field("placed", "Its brick is placed", panel.placed),
    )
    return CardForm("set_casting", "Set", fields)
