"""Take a question off the list for the architect. Field: question (its mark)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import marked, without
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class RemoveQuestion(Edit):
    name: ClassVar[str] = "remove_question"
    question: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.text("question", "the question's mark"))

    def label(self, _panel: Panel, _unit: str = "in", /) -> str:
        return f"Remove question {self.question}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, questions=without(panel.questions, marked(panel.questions, self.question, "question")))


EDIT = RemoveQuestion
