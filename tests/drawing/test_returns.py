"""Returns are drawn folded out beside their edges, with depth, fold and courses where they are on the face."""

from dataclasses import replace

import numpy as np
import pytest
from drawings import laid
from shapes import SHAPES, rectangle

from app.brickwork.layout import Layout, lay_out
from app.brickwork.returns import returns
from app.drawing.drawing import Drawing
from app.drawing.layers import layer
from app.drawing.layers.orientation import TOP_EDGE
from app.drawing.marks import Areas, Boxes, Letters, Lines, Text
from app.drawing.scales import QUARTER_INCH, US_SCALES, Scale
from app.drawing.scene import Scene
from app.drawing.svg import svg_document
from app.drawing.views.returns import LAYERS, returns_view
from app.lengths import Length
from app.panel.values import Side

GAUGE = 8 / 3
LARGE = US_SCALES[3]
WIDE, HIGH = 119.625, 36 * GAUGE


#        3 5/8 |<---- 119 5/8 --->| 7 1/4
#        +-----+------------------+-----+
#        |     |    3 5/8  7 1/4  |     |
#        |     |     +---+--+     |     |
#        |     |     | W1|  |     |     |
#        |     |     +---+--+     |     |
#        +-----+------------------+-----+
def corners(window: tuple[float, ...] = (35.625, 12 * GAUGE - 0.375, 48.375, 15 * GAUGE + 0.375)) -> Layout:
    """A return at either edge and at either side of a window, all on the bond."""
    edges = [{"edge": 1, "treatment": "return", "depth": 7.25}, {"edge": 3, "treatment": "return", "depth": 3.625}]
    panel = rectangle(WIDE, HIGH, edges=edges, openings=[{"mark": "W1", "use": "window", "rect": list(window)}])
    sides = (
        Side("left", "return", Length.from_inches(3.625)),
        Side("right", "return", Length.from_inches(7.25)),
    )
    return lay_out(replace(panel, openings=(replace(panel.openings[0], sides=sides),)))


def texts(drawing: Drawing) -> list[str]:
    return [mark.text for each in drawing.layers for mark in each.marks if isinstance(mark, Text)]


def marks_of(layout: Layout, scale: Scale = LARGE) -> tuple[object, ...]:
    return layer("returns", Scene(layout, scale=scale)).marks


def test_the_view_says_which_face_and_edge_it_shows_and_how_deep_each_return_is() -> None:
    found = texts(returns_view(corners(), scale=LARGE))
    assert {"FACE, seen from outside; returns folded out beside their edges", TOP_EDGE, "R, returns"} <= set(found)
    assert [words for words in found if words.startswith("return ")] == [
        'return edge 1, 7\u20091\u20444" deep',
        'return edge 3, 3\u20095\u20448" deep',
        'return W1 left, 3\u20095\u20448" deep',
        'return W1 right, 7\u20091\u20444" deep',
    ]
    assert {'7\u20091\u20444"', '3\u20095\u20448"'} <= set(found)


def test_every_return_stands_beside_its_edge_outside_the_brick() -> None:
    grounds = [mark for mark in marks_of(corners()) if isinstance(mark, Boxes) and mark.style == "concrete"]
    spans = [(float(mark.x[0]), float(mark.x[0] + mark.width[0])) for mark in grounds]
    assert spans == [(WIDE, WIDE + 7.25), (-3.625, 0), (35.625, 35.625 + 3.625), (84 - 7.25, 84)]


def test_the_fold_is_one_thin_line_and_no_cut_edge() -> None:
    layout = corners()
    folds = {(one.edge_at, one.bottom, one.top) for one in returns(layout)}
    thin = [mark.points for mark in marks_of(layout) if isinstance(mark, Lines) and mark.style == "rule"]
    assert folds <= {(points[0, 0], points[0, 1], points[1, 1]) for points in thin if points[0, 0] == points[1, 0]}
    thick = layer("unfolded", Scene(layout)).marks
    assert [mark.style for mark in thick] == ["opening rim", "outline"]
    for mark in thick:
        assert isinstance(mark, Lines)
        starts = np.cumsum(mark.count) - mark.count
        for start, count in zip(starts.tolist(), mark.count.tolist(), strict=True):
            line = mark.points[start : start + count]
            assert np.ptp(line[:, 1]) == 0, "only level lines are left where both upright edges fold"


def test_courses_of_the_return_are_drawn_at_the_heights_of_the_face() -> None:
    layout = corners()
    feet = {round(course.bottom, 9) for course in layout.courses}
    bricks = [mark for mark in marks_of(layout) if isinstance(mark, Boxes) and mark.style != "concrete"]
    assert {round(y, 9) for mark in bricks for y in mark.y.tolist()} == feet
    assert sum(len(mark.x) for mark in bricks) == sum(len(one.legs) + len(one.pieces) for one in returns(layout))


def test_no_brick_of_a_return_reaches_past_its_ground() -> None:
    for mark in marks_of(corners()):
        if isinstance(mark, Boxes) and mark.style == "concrete":
            low, high = float(mark.x[0]), float(mark.x[0] + mark.width[0])
        elif isinstance(mark, Boxes):
            assert mark.x.min() >= low - 1e-9
            assert (mark.x + mark.width).max() <= high + 1e-9


def test_a_corner_units_short_leg_is_drawn_whole_and_not_lettered_as_a_cut() -> None:
    scene = Scene(corners(), scale=LARGE)
    assert len(scene.layout.trims) > 0
    assert [mark.style for mark in layer("cuts", scene).marks] == ["whole"]
    assert layer("letters", scene).marks == ()
    cut = Scene(lay_out(rectangle(WIDE - 2, HIGH, edges=[{"edge": 1, "treatment": "return", "depth": 3}])), scale=LARGE)
    (mark,) = (mark for mark in layer("cuts", cut).marks if mark.style == "trimmed length")
    assert isinstance(mark, Areas)
    (letters,) = layer("letters", cut).marks
    assert isinstance(letters, Letters)


def test_words_that_do_not_fit_into_an_opening_are_cut_short_or_left_out() -> None:
    small = [mark for mark in marks_of(corners(), QUARTER_INCH) if isinstance(mark, Text)]
    assert [mark.text for mark in small if mark.angle] == [
        'return edge 1, 7\u20091\u20444" deep',
        'return edge 3, 3\u20095\u20448" deep',
        '3\u20095\u20448" deep',
        '7\u20091\u20444" deep',
    ]
    low = [mark for mark in marks_of(corners((35.625, 32, 48.375, 3)), QUARTER_INCH) if isinstance(mark, Text)]
    assert len([mark for mark in low if mark.angle]) == 2


def test_the_paper_holds_every_return_with_its_words() -> None:
    for scale in (LARGE, QUARTER_INCH):
        drawing = returns_view(corners(), scale=scale)
        left, _, wide, _ = drawing.view_box
        assert left < -3.625 - scale.inches_per_mm * 4
        assert left + wide > WIDE + 7.25 + scale.inches_per_mm * 4


@pytest.mark.parametrize("name", ["plain", "door", "gable", "edges", "round vent"])
def test_a_face_without_returns_is_drawn_alone(name: str) -> None:
    drawing = returns_view(laid(name))
    assert [each.name for each in drawing.layers] == list(LAYERS)
    assert bool(drawing.layer("returns").marks) == ("return" in str(SHAPES[name]))
    assert svg_document(drawing).startswith("<svg")


def test_millimetres_in_a_metric_project() -> None:
    found = texts(returns_view(corners(), unit="mm", scale=LARGE))
    assert "return edge 1, ≈ 184 mm deep" in found
