"""The returns of a face in a panel's results: each edge that brick goes around, and its corner units."""

from typing import Any

from app.brickwork.layout import Layout
from app.brickwork.returns import Return, returns
from app.documents.measure import Measured

Document = dict[str, Any]


def return_edges(layout: Layout, measured: Measured) -> list[Document]:
    """One row an edge or opening side with a return; none where none is asked for."""
    return [_row(found, measured) for found in returns(layout)]


def _row(found: Return, measured: Measured) -> Document:
    return {
        "at": found.name,
        "hand": found.hand,
        "x": measured.length(found.edge_at),
        "depth": measured.length(found.depth),
        "corner_units": len(found.legs),
        "cut": len(found.cut),
        "legs": [
            {
                "course": leg.course,
                "unit": leg.unit,
                "face": measured.length(leg.face_leg),
                "return": measured.length(leg.return_leg),
                "cut": leg.is_cut,
            }
            for leg in found.legs
        ],
    }
