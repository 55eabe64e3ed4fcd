"""Give an opening another mark or use. Fields: opening (its mark), mark, use (blank: none)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, replaced
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RenameOpening(Edit):
    name: ClassVar[str] = "rename_opening"
    opening: str
    mark: str
    use: str | None = None

    @classmethod
    def read(cls, form: Form) -> Self:
        opening, mark = form.text("opening", "the opening's mark"), form.text("mark", "a mark")
        return cls(opening, mark, form.optional_text("use"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        if self.mark == self.opening:
            return f"Set use of {self.opening} to {self.use or 'none'}"
        return f"Rename {self.opening} to {self.mark}"

    def changed(self, panel: Panel) -> Panel:
        old = marked(panel.openings, self.opening, "opening")
        new = replace(old, mark=self.mark, use=self.use)
        return replace(panel, openings=replaced(panel.openings, old, new))


EDIT = RenameOpening
