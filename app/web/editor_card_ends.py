"""Forms of how the brick ends: at an edge of the outline, at a side of an opening."""

from app.lengths import format_length
from app.panel.check_edges import TREATMENTS
from app.panel.check_sides import SIDES
from app.panel.shapes import Rect
from app.panel.values import Edge, Opening, Panel, Side
from app.web.editor_cards import CardForm, Field, choice_field

ENDS = tuple((name, name) for name in TREATMENTS)

ENDING = (
    choice_field("treatment", "Brick ends", "margin", ENDS, wide=False),
    Field("margin", "Margin", holder="the panel's"),
    Field("depth", "Depth of return"),
)


def edge_form(panel: Panel, edge: Field, unit: str) -> CardForm:
    """The treatment of one edge, and which edges have one of their own."""
    told = [f"edge {one.edge}: {_ending(one, unit)}" for one in sorted(panel.edges, key=lambda one: one.edge)]
    return CardForm("set_edge", "Set edge", (edge, *ENDING), words=_told(told, "Every edge has the panel's margin."))


def side_form(opening: Opening, hidden: tuple[tuple[str, str], ...], unit: str) -> CardForm:
    """The treatment of one side of a rectangular opening, and which sides have one of their own."""
    side = choice_field("side", "Side", "left", [(name, name) for name in SIDES], wide=False)
    told = [f"{one.side}: {_ending(one, unit)}" for one in opening.sides]
    words = _told(told, "Every side has the panel's margin.")
    why_not = None if isinstance(opening.shape, Rect) else "Only a rectangle has sides."
    return CardForm("set_side", "Set side", (side, *ENDING), hidden, words=words, why_not=why_not)


def _told(told: list[str], nothing: str) -> str:
    return f"{'; '.join(told).capitalize()}." if told else nothing


def _ending(end: Edge | Side, unit: str) -> str:
    if end.depth is not None:
        return f"return {format_length(end.depth, unit)} deep"
    return f"margin of {format_length(end.margin, unit)}" if end.margin is not None else end.treatment
