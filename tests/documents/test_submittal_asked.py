"""What a submittal asks, what was settled before it, and where the courses of its walls come from."""

from dataclasses import replace

import pytest
from pdf_text import page_texts
from shapes import example
from submittals import ISSUE, computed, project_of

from app.documents.submittal import submittal_pdf
from app.documents.submittal_asked import accepted_rows
from app.documents.submittal_walls import wall_facts
from app.drawing.scales import SHEETS
from app.lengths import Length
from app.panel.project import Project, Wall
from app.panel.values import Accepted, Panel, Question


def _texts(project: Project, sheet: str = "ANSI B") -> list[str]:
    return page_texts(submittal_pdf(project, computed(project), ISSUE, sheet=sheet))


def _asking(mark: str, *texts: str) -> Panel:
    questions = tuple(Question(f"Q{k}", text) for k, text in enumerate(texts, 1))
    return replace(example("window"), mark=mark, questions=questions)


def test_questions_have_a_sheet_with_room_for_an_answer() -> None:
    asked = "May the sill move down 3/8 in. to course 14?", "Which brick turns the corner?"
    texts = _texts(project_of(_asking("P1", *asked), _asking("P2"), _asking("P3", "Is the joint right?")))
    sheets = [text for text in texts if "Submittal, questions" in text]
    assert len(sheets) == 1
    for words in ("P1, North Q1 May the sill move", "P1, North Q2 Which brick", "P3, North Q1 Is the joint right?",
                  "Answer", "Initials, date"):  # fmt: skip
        assert words in sheets[0]
    assert "P2" not in sheets[0]
    assert f"Questions to the architect {texts.index(sheets[0]) + 1}" in texts[0]


def test_without_questions_there_is_no_such_sheet() -> None:
    assert not any("Questions to the architect" in text for text in _texts(project_of(_asking("P1"))))


def test_a_question_as_long_as_the_sheet_goes_on_to_the_next() -> None:
    many = _asking("P1", *(f"Question number {k}: {'word ' * 60}" for k in range(30)))
    texts = _texts(project_of(many), "A4")
    sheets = [text for text in texts if "Submittal, questions" in text]
    assert len(sheets) > 1
    assert all(f"Question number {k}:" in " ".join(sheets) for k in range(30))
    assert all("Initials, date" in text for text in sheets)


def test_accepted_findings_are_told_apart_from_open_ones_with_name_and_reason() -> None:
    panel = replace(example("window"), mark="P1")
    (results,) = computed(project_of(panel))
    taken = results.findings[0]
    same = [one for one in results.findings if (one.code, one.about) == (taken.code, taken.about)]
    assert len(same) < len(results.findings)
    accepted = Accepted(taken.code, taken.about, "Site office", "hidden behind the downpipe")
    text = " ".join(_texts(project_of(replace(panel, accepted=(accepted,)))))
    assert "Accepted findings" in text
    assert "Site office hidden behind the downpipe" in text
    still = len(results.findings) - len(same)
    assert f" {results.cutting.used} {still} 1 " in text
    (row,) = accepted_rows([accepted], results.findings)
    assert row["count"] == str(len(same))
    assert not row["note"]


def test_an_acceptance_of_what_is_no_longer_found_says_so() -> None:
    (row,) = accepted_rows([Accepted("missed-head", "W9 head", "Site office", "as drawn")], [])
    assert row["text"] == "Missed head: W9 head"
    assert row["note"] == "no longer found"
    assert row["count"] == "0"


def test_a_wall_sheet_says_datum_joints_and_what_stands_apart() -> None:
    raised = replace(example("plain"), mark="P2", base=Length.from_inches(24))
    panels = replace(example("plain"), mark="P1", released=True), raised
    wall = Wall("North", panels, datum=Length.from_inches(1.5), joint=Length.from_inches(0.5))
    assert [label for label, _ in wall_facts(wall, panels, "in")] == [
        "Datum", "Panel joints", "Released from the wall", "Bases other than 0",
    ]  # fmt: skip
    texts = _texts(Project("Depot", (wall,), "in"))
    sheet = next(text for text in texts if text.startswith("Wall North"))
    assert 'Datum: 1 1⁄2"; courses and bond run on' in sheet
    assert 'Panel joints: 1⁄2"' in sheet
    assert "Released from the wall: P1" in sheet
    assert "Bases other than 0: P2 2'-0\"" in sheet
    assert "released" in sheet


@pytest.mark.parametrize("sheet", ["A4", "ANSI B"])
def test_a_wall_too_long_for_every_scale_is_drawn_to_fit(sheet: str) -> None:
    panels = tuple(replace(example("plain"), mark=f"P{k}") for k in range(120))
    (first, *_) = texts = [text for text in _texts(project_of(*panels), sheet) if text.startswith("Wall North")]
    assert len(texts) == 1
    assert "scale " in first
    assert sheet in SHEETS
