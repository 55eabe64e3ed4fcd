"""The card of several openings chosen together, and the forms that repeat one."""

from app.panel.edits.align_openings import LINES
from app.panel.edits.distribute_openings import LEAST
from app.web.editor_cards import Card, CardForm, Field, choice_field

WAYS = (("across", "across"), ("up", "up"))
SIDES = (("left", "left jamb"), ("right", "right jamb"), ("head", "head"), ("sill", "sill"))


def several_card(marks: tuple[str, ...]) -> Card:
    """Line up with the first, space evenly, move, size, copy, mirror."""
    hidden = (("marks", ", ".join(marks)),)
    line = choice_field("line", f"With {marks[0]}, by their", "sill", tuple(LINES.items()))
    way = choice_field("way", "Equal clear gaps", "across", WAYS)
    too_few = None if len(marks) >= LEAST else f"Choose at least {LEAST}."
    side = choice_field("side", "Side", "head", SIDES, wide=False)
    return Card(
        title=f"{len(marks)} openings",
        words=", ".join(marks),
        forms=(
            CardForm("align_openings", "Line up", (line,), hidden),
            CardForm("distribute_openings", "Space evenly", (way,), hidden, why_not=too_few),
            CardForm("move_openings", "Move", step_fields(), hidden),
            CardForm("resize_openings", "Move this side", (side, Field("by", "By")), hidden),
            copy_form(hidden).under("Copy with spacing"),
            mirror_form(hidden).under("Mirror"),
        ),
    )


def step_fields() -> tuple[Field, ...]:
    return Field("dx", "To the right", holder="0"), Field("dy", "Up", holder="0")


def copy_form(hidden: tuple[tuple[str, str], ...]) -> CardForm:
    fields = (*step_fields(), Field("count", "How often", holder="once"))
    return CardForm("copy_openings", "Copy", fields, hidden)


def mirror_form(hidden: tuple[tuple[str, str], ...]) -> CardForm:
    return CardForm("mirror_openings", "Mirror", (Field("axis", "About a line at", holder="panel's middle"),), hidden)


def grid_form(mark: str) -> CardForm:
    fields = (
        Field("columns", "Columns"),
        Field("rows", "Rows"),
        Field("across", "Clear gap across"),
        Field("up", "Clear gap up"),
    )
    return CardForm("grid_openings", "Repeat", fields, (("opening", mark),))
