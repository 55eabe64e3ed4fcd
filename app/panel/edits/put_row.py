"""Give one thing by the cells of its row. Fields: thing (its key; blank: one more) and the columns of `table_rows`."""

from dataclasses import dataclass
from typing import ClassVar, Self

from app.panel.corners import said_thing
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.table_rows import Row, put, read_row
from app.panel.values import Fixing, Panel


@dataclass(frozen=True, slots=True)
class PutRow(Edit):
    name: ClassVar[str] = "put_row"
    row: Row | None
    thing: str = ""

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(read_row(form), form.optional_text("thing") or "")

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Set {said_thing(self.thing)}" if self.thing else f"Add {self._said()}"

    def changed(self, panel: Panel) -> Panel:
        return put(panel, self.row, self.thing.partition("/")[2]) if self.row else panel

    def _said(self) -> str:
        item = self.row.item if self.row else None
        return "fixing line" if item is None or isinstance(item, Fixing) else item.mark or "one more"


EDIT = PutRow
