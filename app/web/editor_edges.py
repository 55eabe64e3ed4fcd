"""How the edges of an outline are called: by number, and by where they lie."""

from app.panel.values import Panel


def edge_words(panel: Panel, edge: int) -> str:
    """`edge 3, left`; lower, right, top, left, or slanted."""
    points = panel.outline_inches
    (x0, y0), (x1, y1) = points[edge], points[(edge + 1) % len(points)]
    return f"edge {edge}, {_where(x1 - x0, y1 - y0, _runs_left(panel))}"


def _where(dx: float, dy: float, runs_left: bool) -> str:
    """Where the edge is, seen from the concrete; a ring that runs to the left has the concrete at its left hand."""
    if dx and dy:
        return "slanted"
    if dy:
        return "right" if (dy > 0) == runs_left else "left"
    return "lower" if (dx > 0) == runs_left else "top"


def _runs_left(panel: Panel) -> bool:
    points = panel.outline_inches
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) > 0
