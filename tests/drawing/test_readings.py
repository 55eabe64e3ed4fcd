"""The plot of readings: every reading by shape and letter, in order, against the band; words where there is none."""

from xml.etree import ElementTree

import pytest
from drawings import laid, liner_of
from shapes import rectangle
from svg_paths import SVG

from app.brickwork.layout import lay_out
from app.drawing.drawing import Drawing
from app.drawing.marks import Areas, Boxes, Circle, Lines, Text
from app.drawing.palettes import INKS
from app.drawing.svg import svg_document, svg_layers
from app.drawing.views.readings import NO_BRICK, NONE_YET, reading_history
from app.liner.drift import drift, expected_at
from app.liner.readings import judge
from app.liner.readings_ahead import joints_ahead
from app.liner.readings_values import Reading, Verdict
from app.panel.project import Day, Liner

AFTERNOON = (("X1", 0.01, 88), ("X4", 0.19, 94), ("X4", 0.05, 95), ("X4", 0.02, 95), ("X7", -0.16, 96), ("X9", 0.4, 98))


def verdicts(unit: str = "in") -> list[Verdict]:
    layout, (_, found) = laid("b1"), liner_of("b1")
    points = {point.mark: point for point in found.checkpoints}
    return [
        judge(
            Reading(mark, points[mark].nominal + off, bed),
            points[mark],
            joints_ahead(layout, Liner(), found, points[mark]),
            unit,
        )
        for mark, off, bed in AFTERNOON
    ]


def plot(told: list[Verdict], axis: str = "x", unit: str = "in") -> Drawing:
    return reading_history(liner_of("b1")[1], axis, told, reach=480, temperature=94, unit=unit)


def texts(drawing: Drawing, layer: str) -> list[str]:
    return [mark.text for mark in drawing.layer(layer).marks if isinstance(mark, Text)]


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("palette", INKS)
def test_the_plot_is_one_well_formed_file_in_every_palette(unit: str, palette: str) -> None:
    root = ElementTree.fromstring(svg_document(plot(verdicts(unit), unit=unit), palette))
    assert root.tag == f"{SVG}svg"
    assert all(svg_layers(plot(verdicts(unit), unit=unit)).values())


def test_each_verdict_has_its_own_shape_and_letter() -> None:
    told = verdicts()
    assert [verdict.kind for verdict in told] == ["hold", "adjust", "hold", "hold", "adjust", "relay"]
    marks = plot(told).layer("readings").marks
    assert [mark.text for mark in marks if isinstance(mark, Text) and len(mark.text) <= 2] == [
        "H",
        "A1",
        "H2",
        "H3",
        "A",
        "R",
    ]
    corners = [len(mark.points) for mark in marks if isinstance(mark, Areas)]
    assert (sum(isinstance(mark, Circle) for mark in marks), corners) == (3, [3, 3, 4])


def test_a_reading_stands_at_its_checkpoint_as_high_as_its_error() -> None:
    """The band is as wide as it says: an error of the band stands on its edge."""
    told = verdicts()
    drawing = plot(told)
    (band,) = [mark for mark in drawing.layer("reading_ground").marks if isinstance(mark, Boxes)]
    middle, half = float(band.y[0] + band.height[0] / 2), float(band.height[0] / 2)
    rings = [mark for mark in drawing.layer("readings").marks if isinstance(mark, Circle)]
    first = rings[0]
    assert first.x == told[0].nominal
    assert (first.y - middle) / half == pytest.approx(told[0].error / 0.125)
    assert middle == pytest.approx(drawing.height / 2)


def test_readings_of_one_checkpoint_are_joined_in_order() -> None:
    marks = plot(verdicts()).layer("readings").marks
    joined = [mark for mark in marks if isinstance(mark, Lines) and len(mark.count)]
    (one,) = joined
    assert len(one.count) == 2
    assert one.points[:, 0].tolist() == sorted(one.points[:, 0].tolist())
    assert one.points[1].tolist() == one.points[2].tolist()


def test_errors_are_written_with_their_sign() -> None:
    assert {'+13\u204432"', '\u22125\u204432"', '+1\u204464"'} <= set(texts(plot(verdicts()), "readings"))
    assert {"+10 mm", "\u22124 mm"} <= set(texts(plot(verdicts("mm"), unit="mm"), "readings"))


def test_the_expected_line_is_what_the_tape_reads_if_nothing_is_corrected() -> None:
    found = liner_of("b1")[1]
    drawing = plot(verdicts())
    (way,) = [
        mark for mark in drawing.layer("reading_ground").marks if isinstance(mark, Lines) and mark.style == "sheet"
    ]
    (band,) = [mark for mark in drawing.layer("reading_ground").marks if isinstance(mark, Boxes)]
    last = [point for point in found.checkpoints if point.axis == "x"][-1]
    off = (way.points[-1][1] - drawing.height / 2) / (band.height[0] / 2) * 0.125
    assert off == pytest.approx(expected_at(last, 94) - last.nominal)
    assert "94 °F" in texts(drawing, "reading_ground")


def test_only_readings_of_the_axis_are_shown() -> None:
    assert NONE_YET in texts(plot(verdicts(), "y"), "reading_words")


def test_no_readings_and_no_brick_are_said_in_words() -> None:
    assert NONE_YET in texts(plot([]), "reading_words")
    empty = drift(lay_out(rectangle(20, 10, margin=5)), Liner(), Day())
    assert NO_BRICK in texts(reading_history(empty, "x", [], reach=20), "reading_words")
