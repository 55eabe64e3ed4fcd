"""Put a question on the list for the architect. Field: text."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.check_accepted import LONGEST_QUESTION, QUESTION
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.marks import free_mark
from app.panel.values import Panel, Question

LETTER = "Q"


@dataclass(frozen=True, slots=True)
class AskQuestion(Edit):
    """The question goes behind the others, with the lowest mark that is free: Q1, Q2 and so on."""

    name: ClassVar[str] = "ask_question"
    text: str

    @classmethod
    def read(cls, form: Form) -> Self:
        return cls(form.line("text", QUESTION, LONGEST_QUESTION))

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        return f"Ask question {free_mark(LETTER, panel.questions)}"

    def changed(self, panel: Panel) -> Panel:
        question = Question(free_mark(LETTER, panel.questions), self.text)
        return replace(panel, questions=(*panel.questions, question))


EDIT = AskQuestion
