"""How brick meets its control lines, in a panel's results."""

from collections.abc import Sequence
from typing import Any

from app.brickwork.fit_lines import Outcome
from app.brickwork.layout import Layout
from app.documents.measure import Measured

Document = dict[str, Any]


def fit(layout: Layout, measured: Measured) -> Document:
    """Every control line up the face and along it: where it is, whether brick meets it, by how much it does not."""
    return {
        "vertical": _rows(layout.states.vertical, measured),
        "horizontal": _rows(layout.states.horizontal, measured),
    }


def _rows(outcomes: Sequence[Outcome], measured: Measured) -> list[Document]:
    return [
        {
            "control": outcome.control.name,
            "at": measured.length(outcome.control.edge),
            "matter": outcome.control.matter,
            "met": outcome.is_met,
            "off": measured.length(outcome.off),
            "nearest": measured.length(outcome.nearest),
            "cut": measured.length(outcome.cut),
            "joint_change": measured.length(outcome.joint_change),
        }
        for outcome in outcomes
    ]
