"""A table as text with tabs between the cells, as spreadsheets copy and paste it."""

import csv
from collections.abc import Iterable, Iterator
from io import StringIO

from app.panel.cells import guarded, unguarded
from app.panel.faults import Fault, Refused
from app.panel.table_rows import COLUMNS
from app.panel.wording import one_of, quoted

MOST_ROWS = 500
"""More things than any panel has; keeps a pasted file from becoming a panel."""
HEADS = {
    "left": "x",
    "across": "x",
    "centre across": "x",
    "foot": "y",
    "up": "y",
    "centre up": "y",
    "bond": "use",
    "held by": "use",
    "rise": "more",
    "radius": "more",
    "points": "more",
    "line": "more",
    "type": "kind",
}
"""Heads that mean one of the columns; the columns' own names do as well."""


def read_table(text: str) -> tuple[dict[str, str], ...]:
    """The rows as cells by column; a first row of heads says which is which, else they come in the order of `COLUMNS`.

    Blank rows are left out. Raises Refused for no rows, too many, a cell too many, or a head that means nothing.
    """
    rows = [row for row in csv.reader(StringIO(text), "excel-tab") if any(cell.strip() for cell in row)]
    heads = _heads(rows[0]) if rows else None
    body, columns = (rows[1:], heads) if heads else (rows, COLUMNS)
    if not 0 < len(body) <= MOST_ROWS:
        raise Refused([Fault("table", f"{len(body):,} rows", f"1 to {MOST_ROWS} rows with tabs between the cells")])
    return tuple(_cells(row, columns, k) for k, row in enumerate(body, 1))


def write_table(rows: Iterable[tuple[str, ...]]) -> str:
    """Heads and rows; a cell that a spreadsheet would take for a formula begins with an apostrophe."""
    out = StringIO()
    writer = csv.writer(out, "excel-tab", lineterminator="\n")
    writer.writerow(COLUMNS)
    writer.writerows(tuple(guarded(cell) for cell in row) for row in rows)
    return out.getvalue()


def _heads(row: list[str]) -> tuple[str, ...] | None:
    """The columns that a row of heads names; None for a row that is none. Raises Refused for an unknown head."""
    said = [cell.strip().casefold() for cell in row]
    meant = [head if head in COLUMNS else HEADS.get(head, "") for head in said]
    if sum(map(bool, meant)) < 2:
        return None
    unknown = [quoted(head) for head, column in zip(said, meant, strict=True) if head and not column]
    twice = [column for k, column in enumerate(meant) if column and column in meant[:k]]
    if unknown or twice:
        raise Refused([Fault("table", f"head {one}", one_of(COLUMNS, one)) for one in (*unknown, *twice)])
    return tuple(meant)


def _cells(row: list[str], columns: tuple[str, ...], number: int) -> dict[str, str]:
    over = [cell for cell in row[len(columns) :] if cell.strip()]
    if over:
        found = f"row {number}: {len(row)} cells, the last {quoted(row[-1])}"
        raise Refused([Fault("table", found, f"at most {len(columns)}: {', '.join(columns)}")])
    pairs = zip(columns, row, strict=False)
    return {column: unguarded(cell.strip()) for column, cell in pairs if column}


def numbered(faults: Iterable[Fault], number: int) -> Iterator[Fault]:
    """Faults of one row as faults of the table, with the row's number and the column's name before what was found."""
    for fault in faults:
        yield Fault("table", f"row {number}, {fault.path}: {fault.found}", fault.expected)
