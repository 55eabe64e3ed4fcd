"""A sheet of a workbook as plain values: its name, its columns, and rows of text and numbers."""

from collections.abc import Iterable
from dataclasses import dataclass

from app.documents.measure import Measured
from app.lengths import format_length

Cell = str | float | None
"""Text is written as text, guarded; nothing leaves the cell empty."""

Row = tuple[Cell, ...]
WIDE, USUAL, NARROW = 44, 16, 10
"""Widths of columns in characters."""


@dataclass(frozen=True, slots=True)
class Column:
    """Title and width of a column; `decimals` of its numbers."""

    title: str
    width: int = NARROW
    decimals: int = 0


@dataclass(frozen=True, slots=True)
class Table:
    """One topic: every row has a cell a column."""

    name: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]


def table(name: str, columns: Iterable[Column], rows: Iterable[Row]) -> Table:
    """The table of these columns and rows."""
    return Table(name, tuple(columns), tuple(rows))


def length_columns(title: str, unit: str) -> tuple[Column, Column]:
    """A length twice: as it is read, and as a number to reckon with."""
    return Column(title, USUAL), Column(f"{title}, {unit}", NARROW, 4 if unit == "in" else 1)


def length_cells(inches: float, unit: str) -> tuple[Cell, Cell]:
    """The cells of `length_columns`."""
    return format_length(inches, unit), Measured(unit).length(inches)
