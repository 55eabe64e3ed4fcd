"""Give many things by the rows of a table, in one step. Fields: table (rows with tabs between the cells)."""

from dataclasses import dataclass
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.faults import Refused
from app.panel.form import Form
from app.panel.table_rows import Row, is_known, put, read_row
from app.panel.table_text import numbered, read_table
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class PutTable(Edit):
    """Rows whose mark is there change that thing, all others are added; what is not in the table stays."""

    name: ClassVar[str] = "put_table"
    rows: tuple[Row, ...]

    @classmethod
    def read(cls, form: Form) -> Self:
        try:
            cells = read_table(form.values.get("table", ""))
        except Refused as refused:
            form.faults += refused.faults
            return cls(())
        rows = []
        for k, row in enumerate(cells, 1):
            inner = Form(row, form.unit, form.sizes, form.bonds)
            rows.append(read_row(inner))
            form.faults += numbered(inner.faults, k)
        return cls(tuple(row for row in rows if row))

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        known = sum(is_known(panel, row) for row in self.rows)
        parts = ((f"set {known}", known), (f"add {len(self.rows) - known}", len(self.rows) - known))
        said = ", ".join(words for words, count in parts if count) or "nothing"
        return f"From a table: {said}"

    def changed(self, panel: Panel) -> Panel:
        for row in self.rows:
            panel = put(panel, row)
        return panel


EDIT = PutTable
