"""What is short for the next casting day, in words: ordered against delivered and placed."""

from dataclasses import dataclass

from app.order.line_words import amount
from app.order.values import ShortList, Stock
from app.web.words import counted, listed


@dataclass(frozen=True, slots=True)
class ShortRow:
    """One item of the order in the yard."""

    item: str
    delivered: str
    used: str
    on_hand: str
    needed: str
    short: str
    is_short: bool
    words: str


@dataclass(frozen=True, slots=True)
class ShortPart:
    """The next casting day, and every item that is needed, delivered or used; `expected` are deliveries to come,
    `notes` what does not add up."""

    title: str
    words: str
    rows: tuple[ShortRow, ...]
    expected: tuple[str, ...]
    notes: tuple[str, ...]


def short_part(found: ShortList) -> ShortPart:
    """The section of the page; rows that are short come first."""
    rows = [_row(stock) for stock in found.stock if stock.delivered or stock.used or stock.needed]
    missing = sum(row.is_short for row in rows)
    return ShortPart(
        title=f"For the casting day {found.day}" if found.day else "For the next casting day",
        words=_words(found, missing),
        rows=tuple(sorted(rows, key=lambda row: not row.is_short)),
        expected=tuple(f"{one.count:,} of {one.item} on {one.day}" for one in found.expected),
        notes=tuple(_notes(found)),
    )


def _words(found: ShortList, missing: int) -> str:
    if found.day is None:
        return "Every panel is placed: nothing is needed any more." if found.stock else "Nothing is needed."
    marks = f"{counted(len(found.panels), 'panel')} still to place: {listed(found.panels)}."
    if not found.day:
        marks = f"No panel to be placed has a casting day yet. {marks}"
    return f"{marks} {counted(missing, 'item is', 'items are').capitalize()} short."


def _row(stock: Stock) -> ShortRow:
    return ShortRow(
        item=stock.item,
        delivered=amount(stock.delivered),
        used=amount(stock.used),
        on_hand=amount(stock.on_hand),
        needed=amount(stock.needed),
        short=amount(stock.short),
        is_short=stock.short > 0,
        words=_later(stock),
    )


def _later(stock: Stock) -> str:
    """The first later day for which it will not do; nothing where it does for all, or is short already."""
    if stock.short:
        return ""
    later = next((day for day in stock.days[1:] if day.short), None)
    if later is None:
        return ""
    return f"{amount(later.short)} short {f'by {later.day}' if later.day else 'for panels without a day'}"


def _notes(found: ShortList) -> list[str]:
    notes = [
        f"{stock.item}: placed panels took {amount(stock.unnoted)} {stock.unit} more than was noted as delivered."
        for stock in found.stock
        if stock.unnoted
    ]
    return notes + [f"{item} was delivered but is no line of the order." for item in found.unknown]
