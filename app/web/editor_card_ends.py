"""Forms of how the brick ends: at an edge of the outline, at a side of an opening."""

import json
from collections.abc import Mapping
from dataclasses import replace

from app.lengths import format_length
from app.panel.check_edges import TREATMENTS
from app.panel.check_sides import SIDES
from app.panel.shapes import Rect
from app.panel.values import Edge, Opening, Panel, Side
from app.web.editor_cards import CardForm, Field, choice_field, length_field
from app.web.editor_edges import edge_words

ENDS = tuple((name, name) for name in TREATMENTS)

PLAIN = Edge(0, "margin")


def edge_form(panel: Panel, edge: Field, unit: str) -> CardForm:
    """The treatment of one edge, and which edges have one of their own."""
    own = {str(one.edge): one for one in sorted(panel.edges, key=lambda one: one.edge)}
    told = [f"{edge_words(panel, one.edge)}: {_ending(one, unit)}" for one in own.values()]
    words = _told(told, "Every edge has the panel's margin.")
    return CardForm("set_edge", "Set edge", _fields(edge, own, unit), words=words)


def side_form(opening: Opening, hidden: tuple[tuple[str, str], ...], unit: str) -> CardForm:
    """The treatment of one side of a rectangular opening, and which sides have one of their own."""
    side = choice_field("side", "Side", "left", [(name, name) for name in SIDES], wide=False)
    told = [f"{one.side}: {_ending(one, unit)}" for one in opening.sides]
    words = _told(told, "Every side has the panel's margin.")
    why_not = None if isinstance(opening.shape, Rect) else "Only a rectangle has sides."
    fields = _fields(side, {one.side: one for one in opening.sides}, unit)
    return CardForm("set_side", "Set side", fields, hidden, words=words, why_not=why_not)


def _fields(chooser: Field, own: Mapping[str, Edge | Side], unit: str) -> tuple[Field, ...]:
    """The chooser, which knows how the brick ends at every choice, and how it ends at the one chosen now."""
    ends = {option.value: _values(own.get(option.value, PLAIN), unit) for option in chooser.options}
    now = ends[chooser.value]
    return (
        replace(chooser, ends=json.dumps(ends)),
        choice_field("treatment", "Brick ends", now["treatment"], ENDS, wide=False),
        Field("margin", "Margin", now["margin"], holder="the panel's"),
        Field("depth", "Depth of return", now["depth"]),
    )


def _values(end: Edge | Side, unit: str) -> dict[str, str]:
    return {
        "treatment": end.treatment,
        "margin": length_field("margin", "", end.margin, unit).value,
        "depth": length_field("depth", "", end.depth, unit).value,
    }


def _told(told: list[str], nothing: str) -> str:
    return f"{'; '.join(told).capitalize()}." if told else nothing


def _ending(end: Edge | Side, unit: str) -> str:
    if end.depth is not None:
        return f"return {format_length(end.depth, unit)} deep"
    return f"margin of {format_length(end.margin, unit)}" if end.margin is not None else end.treatment
