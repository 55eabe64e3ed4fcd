"""What a submittal asks and what was settled before it: questions to the architect, accepted findings."""

from collections.abc import Iterable, Sequence

from app.brickwork.findings import Finding
from app.documents.accepted import accepted_findings
from app.documents.panel_results import PanelResults
from app.drawing.lettering import with_fractions
from app.panel.values import Accepted

Row = dict[str, str]


def question_rows(computed: Iterable[PanelResults]) -> list[Row]:
    """One row a question, panel by panel; no row where nothing is asked."""
    return [
        {
            "panel": results.panel.mark,
            "wall": results.wall.mark,
            "mark": question.mark,
            "text": with_fractions(question.text),
        }
        for results in computed
        for question in results.panel.questions
    ]


def accepted_rows(accepted: Iterable[Accepted], findings: Sequence[Finding]) -> list[Row]:
    """One row an acceptance: what it covers, in how many places, by whom and why; no row for none."""
    return [_row(one, accepted_findings(one, findings)) for one in accepted]


def _without_way_out(text: str) -> str:
    """What was found, without the remedy behind its last semicolon: what is accepted is not to be mended."""
    found, mark, _ = text.rpartition("; ")
    return f"{found}." if mark else text


def _row(one: Accepted, covered: Sequence[Finding]) -> Row:
    about = f"{one.code.replace('-', ' ').capitalize()}: {one.about}"
    text = _without_way_out(covered[0].text) if len(covered) == 1 else about
    return {
        "text": with_fractions(text),
        "count": str(len(covered)),
        "by": one.by,
        "reason": with_fractions(one.reason),
        "note": "" if covered else "no longer found",
    }
