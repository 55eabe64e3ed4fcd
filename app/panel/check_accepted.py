"""Faults of accepted findings and of questions to the architect."""

from app.panel.check_marks import LONGEST_MARK, text_faults
from app.panel.faults import Fault
from app.panel.values import Accepted, Question
from app.panel.wording import quoted

LONGEST_ABOUT = 200
LONGEST_REASON = 300
LONGEST_QUESTION = 600

PARTS = {
    "code": ("the finding's code", LONGEST_MARK),
    "about": ("what the finding is about", LONGEST_ABOUT),
    "by": ("the name of who accepts it", LONGEST_MARK),
    "reason": ("a reason", LONGEST_REASON),
}
"""Of an accepted finding: what each text says, and how many characters it has at most."""

QUESTION = "a question"


def accepted_faults(accepted: tuple[Accepted, ...]) -> list[Fault]:
    """Faults of texts that are missing, too long or do not print, and of a finding accepted twice."""
    faults: list[Fault] = []
    first: dict[tuple[str, str], int] = {}
    for k, one in enumerate(accepted):
        for name, (expected, longest) in PARTS.items():
            faults += text_faults(getattr(one, name), f"accepted[{k}].{name}", expected, longest)
        known = first.setdefault((one.code, one.about), k)
        if known != k:
            found = f"{quoted(one.code)} about {quoted(one.about)} again, as in accepted[{known}]"
            faults.append(Fault(f"accepted[{k}]", found, "every finding accepted once"))
    return faults


def question_faults(questions: tuple[Question, ...]) -> list[Fault]:
    """Faults of the questions' texts; their marks are looked at with all other marks."""
    return [
        fault
        for k, question in enumerate(questions)
        for fault in text_faults(question.text, f"questions[{k}].text", QUESTION, LONGEST_QUESTION)
    ]
