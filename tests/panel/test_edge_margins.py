"""With a margin for each edge no brick field comes nearer to any edge than its margin.

            /\\
           /  \\        gable: obtuse corners at the eaves, where a strip that ends square would leave a wedge
          |    |
"""

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from app.lengths import Length
from app.panel.geometry import brick_field, edge_margins
from app.panel.values import Brickwork, Edge, Panel

OUTLINES = {
    "gable": [(0, 0), (120, 0), (120, 100), (60, 140), (0, 100)],
    "hexagon": [(30, 0), (90, 0), (120, 52), (90, 104), (30, 104), (0, 52)],
    "step": [(0, 0), (120, 0), (120, 60), (70, 60), (70, 110), (0, 110)],
    "notch": [(0, 0), (120, 0), (120, 110), (80, 110), (60, 70), (40, 110), (0, 110)],
    "sharp": [(0, 0), (160, 0), (0, 60)],
}


def panel(name: str, margins: list[int]) -> Panel:
    points = tuple((Length.from_inches(x), Length.from_inches(y)) for x, y in OUTLINES[name])
    edges = tuple(Edge(k, "margin", margin=Length.from_inches(margin)) for k, margin in enumerate(margins))
    return Panel("T", points, Length.from_inches(7), Brickwork("modular", "running"), edges=edges)


@pytest.mark.parametrize("name", ["gable", "hexagon", "sharp"])
@given(margins=st.lists(st.integers(0, 8), min_size=7, max_size=7))
def test_brick_keeps_every_edges_margin(name: str, margins: list[int]) -> None:
    made = panel(name, margins[: len(OUTLINES[name])])
    field = brick_field(made, 0.375)
    points = made.outline_inches
    for k, margin in enumerate(edge_margins(made, 0.375)):
        edge = shapely.LineString([points[k], points[(k + 1) % len(points)]])
        assert field.is_empty or field.distance(edge) >= margin - 1e-6


@pytest.mark.parametrize("name", ["step", "notch"])
@given(margins=st.lists(st.integers(0, 8), min_size=7, max_size=7))
def test_brick_keeps_out_of_every_edges_own_strip(name: str, margins: list[int]) -> None:
    """Past a corner that turns into the panel the next edge's own margin counts, so only the strip beside the edge."""
    made = panel(name, margins[: len(OUTLINES[name])])
    field, points = brick_field(made, 0.375), made.outline_inches
    for k, margin in enumerate(edge_margins(made, 0.375)):
        line = shapely.LineString([points[k], points[(k + 1) % len(points)]])
        strip = line.buffer(margin, single_sided=True, cap_style="flat") if margin else shapely.Polygon()
        assert field.intersection(strip).area < 1e-6


@pytest.mark.parametrize("name", OUTLINES)
def test_one_margin_all_round_is_the_mitred_outline(name: str) -> None:
    mixed = brick_field(panel(name, [4] * len(OUTLINES[name])), 0.375)
    outline = shapely.Polygon(OUTLINES[name])
    assert mixed.symmetric_difference(outline.buffer(-4, join_style="mitre", mitre_limit=10)).area < 1e-6
