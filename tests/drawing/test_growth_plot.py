"""The growth plot shows what the engine says: curves, notches and checkpoints are measured on the paper again."""

from itertools import pairwise

import numpy as np
import pytest
from growth_field import growth_at
from shapes import case, rectangle

from app.brickwork.layout import Layout, lay_out
from app.drawing.drawing import Drawing
from app.drawing.lettering import text_width_mm
from app.drawing.marks import Areas, Boxes, Circle, Lines, Mark, Text
from app.drawing.plot import hatched
from app.drawing.styles import STYLES
from app.drawing.views.growth import Warmth, growth_plot
from app.drawing.views.growth_over_day import growth_over_day, worst_checkpoint
from app.liner.drift import drift
from app.panel.project import Day, Liner

LINER = Liner()
HELD = rectangle(
    480,
    120,
    fixings=[{"line": [[400, 0], [400, 120]]}, {"line": [[250, 0], [250, 120]]}],
    strips=[{"mark": "R1", "line": [[0, 60], [480, 60]], "width": 0.75}],
)
LAYOUTS = {"b1": lay_out(case("b1")), "held": lay_out(HELD)}


def plot(layout: Layout, axis: str = "x", at: float = 87, width: float = 240, *, turned: bool = False) -> Drawing:
    found = drift(layout, LINER, Day(55, 105))
    return growth_plot(found, axis, LINER, Warmth(55, 105, at, 38, 122), width=width, turned=turned)


def marks(drawing: Drawing) -> list[Mark]:
    return [mark for layer in drawing.layers for mark in layer.marks]


def lines(drawing: Drawing, style: str) -> list[np.ndarray]:
    return [mark.points for mark in marks(drawing) if isinstance(mark, Lines) and mark.style == style]


def growth_of(drawing: Drawing, y: float) -> float:
    """Inches of growth at a height on paper, measured between the two lines of the band."""
    (band,) = lines(drawing, "band")
    low, high = band[0, 1], band[2, 1]
    return (y - (low + high) / 2) / (high - low) * 2 * LINER.tolerance.inches


@pytest.mark.parametrize("name", LAYOUTS)
@pytest.mark.parametrize("axis", ["x", "y"])
@pytest.mark.parametrize("at", [40, 70, 87, 130])
def test_the_curve_is_the_growth_field_along_the_tape(name: str, axis: str, at: float) -> None:
    layout = LAYOUTS[name]
    drawing = plot(layout, axis, at)
    (curve,) = lines(drawing, "growth")
    reach = layout.panel.width if axis == "x" else layout.panel.height
    running = np.linspace(0.5, reach - 0.5, 77)
    shown = [
        growth_of(drawing, float(np.interp(at, curve[:, 0], curve[:, 1]))) for at in running / reach * drawing.width
    ]
    middle = np.full(len(running), 40.0)
    # The default corner is the bed's lower left, the face's right: along x the face runs against the tape.
    x, y = (layout.panel.width - running, middle) if axis == "x" else (middle, running)
    dx, dy = growth_at(layout, LINER, at, x, y)
    assert shown == pytest.approx(-dx if axis == "x" else dy, abs=1e-6)


def test_the_plot_stands_still_under_the_slider() -> None:
    """Band, frame and tape are the same at every temperature that the slider reaches."""
    grounds = [
        [
            point.tolist()
            for style in ("band", "tick")
            for part in lines(plot(LAYOUTS["held"], at=at), style)[:1]
            for point in part
        ]
        for at in range(38, 123, 7)
    ]
    assert all(ground == grounds[0] for ground in grounds)


@pytest.mark.parametrize("name", LAYOUTS)
def test_notches_stand_where_a_curve_leaves_the_band_and_nowhere_else(name: str) -> None:
    """At 105 F after 79.4 in. of each span, at 55 F after 185.2, at 87 F after 163.4."""
    layout = LAYOUTS[name]
    drawing = plot(layout)
    notches = [mark for mark in marks(drawing) if isinstance(mark, Areas) and mark.style == "missed"]
    shown = sorted(float(mark.points[:, 0].mean()) / drawing.width * layout.panel.width for mark in notches)
    spans = [span for span in drift(layout, LINER, Day()).spans if span.axis == "x"]
    free = [0.125 / (4.5e-5 * abs(at - 70)) for at in (55, 87, 105)]
    wanted = sorted(span.start + each for span in spans for each in free if span.start + each < span.end)
    assert shown == pytest.approx(wanted, abs=1e-6)
    assert all(abs(growth_of(drawing, float(mark.points[:, 1].mean()))) == pytest.approx(0.125) for mark in notches)
    told = [mark.text for mark in marks(drawing) if isinstance(mark, Text) and "past" in mark.text]
    assert len(told) == len([each for each in free if any(span.end - span.start > each for span in spans)])


@pytest.mark.parametrize("width", [100, 170, 300])
@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("name", LAYOUTS)
def test_nothing_leaves_the_paper_and_no_ring_stands_on_another(name: str, width: float, turned: bool) -> None:
    drawing = plot(LAYOUTS[name], width=width, turned=turned)
    left, top, wide, high = drawing.view_box
    assert wide == pytest.approx(width)
    for mark in marks(drawing):
        for x, y in corners(mark):
            assert left - 0.5 <= x <= left + wide + 0.5, mark
            assert top - 0.5 <= drawing.height - y <= top + high + 0.5, mark
            assert -1 <= x <= drawing.width + 1 or "past" not in getattr(mark, "text", "")
    rings = sorted(mark.x for mark in marks(drawing) if isinstance(mark, Circle))
    assert all(two - one > 6.2 for one, two in pairwise(rings))
    assert {mark.style for mark in marks(drawing)} <= set(STYLES)


def corners(mark: Mark) -> list[tuple[float, float]]:
    match mark:
        case Lines() | Areas():
            return [(x, y) for x, y in mark.points.tolist()]
        case Boxes():
            return [(mark.x[0], mark.y[0]), (mark.x[0] + mark.width[0], mark.y[0] + mark.height[0])]
        case Circle():
            return [(mark.x - mark.radius_mm, mark.y), (mark.x + mark.radius_mm, mark.y)]
        case Text():
            wide = text_width_mm(mark.text, mark.size_mm)
            shift = {"start": 0.0, "middle": -wide / 2, "end": -wide}[mark.anchor]
            ends = (shift, shift + wide)
            return [(mark.x, mark.y + end) if mark.angle else (mark.x + end, mark.y) for end in ends]
    raise AssertionError(mark)


def test_a_hook_at_the_right_turns_the_plot_over() -> None:
    plain, turned = (plot(LAYOUTS["held"], turned=turned) for turned in (False, True))
    (one,), (other,) = lines(plain, "growth"), lines(turned, "growth")
    assert other[:, 0] == pytest.approx(plain.width - one[:, 0])
    assert other[:, 1] == pytest.approx(one[:, 1])


def test_what_holds_the_liner_is_named_over_its_line() -> None:
    words = [mark.text for mark in marks(plot(LAYOUTS["held"], "x")) if isinstance(mark, Text)]
    assert {"starting corner", "fixing 1", "fixing 2"} <= set(words)
    assert "strip R1" in [mark.text for mark in marks(plot(LAYOUTS["held"], "y")) if isinstance(mark, Text)]


def test_no_brick_draws_nothing() -> None:
    assert plot(lay_out(rectangle(20, 10, margin=5))).layers == ()


def test_hatching_stays_in_its_rectangle() -> None:
    for mark in hatched((3.0, 5.0, 40.0, 11.0)):
        x, y = np.array(corners(mark)).T
        assert (x.min(), x.max(), y.min(), y.max()) >= (3.0, 3.0, 5.0, 5.0)
        assert x.max() <= 43.0 + 1e-9
        assert y.max() <= 16.0 + 1e-9
    assert list(hatched((0, 0, 40, 0))) == []


@pytest.mark.parametrize("at", [45, 70, 90])
def test_over_the_day_the_worst_checkpoint_is_right_inside_its_window(at: float) -> None:
    """480 in. use up 1/8 in. over 5.787 F: 64.213 to 75.787 F, said rounded inwards."""
    worst = worst_checkpoint(drift(LAYOUTS["b1"], LINER, Day()).checkpoints)
    assert worst is not None
    drawing = growth_over_day(worst, Warmth(55, 105, at, 38, 122))
    (curve,) = lines(drawing, "growth")
    assert [growth_of(drawing, y) for y in curve[:, 1]] == pytest.approx([480 * 4.5e-5 * rise for rise in (-32, 52)])
    (ring,) = (mark for mark in marks(drawing) if isinstance(mark, Circle))
    assert growth_of(drawing, ring.y) == pytest.approx(480 * 4.5e-5 * (at - 70))
    (window,) = (mark for mark in marks(drawing) if isinstance(mark, Boxes) and mark.style == "envelope")
    degrees = [38 + edge / drawing.width * 84 for edge in (window.x[0], window.x[0] + window.width[0])]
    assert degrees == pytest.approx([64.213, 75.787], abs=1e-3)
    assert "right between 65 and 75 °F" in [mark.text for mark in marks(drawing) if isinstance(mark, Text)]


def test_no_checkpoints_have_no_worst() -> None:
    assert worst_checkpoint(()) is None
