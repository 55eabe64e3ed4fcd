"""The face in a panel's results: areas, counts, courses, every unit, every trim."""

from typing import Any

from app.brickwork.blend import colours_of
from app.brickwork.bond import KINDS
from app.brickwork.layout import Layout
from app.brickwork.pieces import Pieces
from app.documents.measure import Measured
from app.panel.blend import Blend

Document = dict[str, Any]


def area(layout: Layout, measured: Measured) -> Document:
    """Areas in the unit squared."""
    return {
        "panel": measured.area(layout.area.panel),
        "openings": measured.area(layout.area.openings),
        "field": measured.area(layout.area.field),
        "brick": measured.area(layout.area.brick),
        "left_out": measured.area(layout.area.left_out),
    }


def counts(layout: Layout) -> Document:
    """How many pieces, whole and trimmed, and how many of those are small."""
    by_kind = {kind: {"whole": whole, "trimmed": trimmed} for kind, (whole, trimmed) in layout.by_kind().items()}
    return {"whole": layout.whole, "trimmed": len(layout.trims), "small": layout.small, "by_kind": by_kind}


def courses(layout: Layout, measured: Measured) -> list[Document]:
    """The courses of the field from the lowest up."""
    return [
        {"course": row.course, "bottom": measured.length(row.bottom), "top": measured.length(row.top)}
        for row in layout.courses
    ]


def units(layout: Layout, measured: Measured) -> Document:
    """Columns side by side: the bounding box of each piece in the face frame, what it is, and where it belongs."""
    columns = layout.units
    marks = [region.mark for region in layout.regions]
    return {
        "x": measured.lengths(columns.x.tolist()),
        "y": measured.lengths(columns.y.tolist()),
        "width": measured.lengths(columns.width.tolist()),
        "height": measured.lengths(columns.height.tolist()),
        "kind": [KINDS[kind] for kind in columns.kind.tolist()],
        "course": columns.course.tolist(),
        "zone": [marks[zone] for zone in columns.zone.tolist()],
        "state": ["trimmed" if is_trimmed else "whole" for is_trimmed in columns.is_trimmed.tolist()],
    }


def colours(layout: Layout, blend: Blend) -> Document:
    """A further column of `units`: each piece's colour, where brick is mixed of several."""
    if len(blend.colours) < 2:
        return {}
    return {"colour": [blend.colours[colour].name for colour in colours_of(layout, blend).tolist()]}


def trims(layout: Layout, measured: Measured) -> list[Document]:
    """One row a trimmed unit, `unit` counting in the columns of `units`."""
    return [
        {
            "unit": unit,
            "cut": cut,
            "length": measured.length(length),
            "height": measured.length(height),
            "small": is_small,
            "outline": measured.outline(outline.tolist()),
        }
        for unit, cut, length, height, is_small, outline in layout.trim_rows()
    ]


def left_out(layout: Layout, measured: Measured) -> list[list[list[float]]]:
    """Outlines of the pieces too thin to be bricks."""
    pieces: Pieces = layout.left_out
    return [measured.outline(pieces.ring(piece).tolist()) for piece in range(len(pieces.unit))]
