"""The cover: whose order this is, of what and when, and what to mind."""

from collections.abc import Iterator

from app.documents.order_book import OrderBook
from app.documents.workbook_table import USUAL, WIDE, Column, Row, Table, table
from app.order.saw_saved import Saved
from app.order.values import TOPICS
from app.site.cautions import DEFERENCE, FOR_INFORMATION, OUTSIDE, Task, cautions_for

TASKS: tuple[Task, ...] = ("sawing brick", "cutting liner", "fixing liner", "washing")
"""Tasks that the sheets of the workbook are used for."""

PACKS = "Overage and packs are taken once, from the sum of the panels named above."
BLEND = "Cut bricks are counted colour by colour, as a piece is cut from a brick of its own colour."
COUNTED = "The list Short counts the whole project: deliveries and placed panels are the project's."


def cover(book: OrderBook) -> Table:
    """Two columns: what, and the words for it."""
    return table("Cover", (Column("What", USUAL + 8), Column("Words", 2 * WIDE + USUAL)), _rows(book))


def _rows(book: OrderBook) -> Iterator[Row]:
    yield "Project", book.project.name
    yield "Order for", book.scope
    yield "Panels", ", ".join(panel.casting.mark for panel in book.panels)
    yield "Revision", book.revision
    yield "Made on", book.day.isoformat()
    yield "Lengths in", {"in": "feet and inches", "mm": "millimetres"}.get(book.unit, book.unit)
    yield "Overage", f"{book.project.order.overage_percent:g} percent"
    for colour in book.project.blend.colours:
        yield "Colour", f"{colour.name}, {colour.percent:g} percent"
    if weight := book.takeoff.weight:
        yield "Weight, approximate", f"{weight:,.0f} {book.rules.weight_unit}: brick, corner units and liner as ordered"
    yield "Counted", PACKS
    if saved := Saved(book.saw.bricks, sum(panel.saw.bricks for panel in book.panels)).words:
        yield "Counted", saved
    if len(book.project.blend.colours) > 1:
        yield "Counted", BLEND
    yield "Counted", COUNTED
    yield "Not bought", f"Lines {TOPICS[-1]} are not bought. {FOR_INFORMATION}"
    for task in TASKS:
        for caution in cautions_for(task):
            words = f"{caution.text} Decides: {caution.decides}."
            yield f"Caution, {task}", f"{caution.hazard}: {words}"
    yield "Caution", DEFERENCE
    yield "Caution", OUTSIDE
