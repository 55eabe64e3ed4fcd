"""Sheets of the saw station: bricks at true scale, every piece with its length, every corner with its place."""

from functools import cache

import numpy as np
import pytest
from shapes import example
from works import saw_of

from app.brickwork.layout import lay_out
from app.drawing.drawing import Drawing
from app.drawing.lettering import lettered
from app.drawing.marks import Areas, Boxes, Text
from app.drawing.saw_figure import Figure, Pen
from app.drawing.saw_pattern import pattern_figure
from app.drawing.saw_places import places_in_words
from app.drawing.saw_shape import shape_figure
from app.drawing.views.saw_station import PAGE_MM, saw_station, usual_scale
from app.order.saw_values import Cut, Pattern, SawList, SawPiece, Seat
from app.panel.blend import Blend, Colour

PEN = Pen(usual_scale("in"), "in")
KERF = 0.125


@cache
def saw(shape: str = "polygon opening", bond: str = "running") -> SawList:
    return saw_of([lay_out(example(shape, bond=bond))])


def boxes(figure: Figure, style: str) -> list[tuple[float, float]]:
    """Left end and width of the boxes of a style, from the left, from the brick's own left end."""
    found = [
        (float(x), float(width))
        for mark in figure.marks
        if isinstance(mark, Boxes) and mark.style == style
        for x, width in zip(mark.x, mark.width, strict=True)
    ]
    return sorted((x - PEN.mm(14), width) for x, width in found)


def words(figure: Figure) -> list[str]:
    return [mark.text for mark in figure.marks if isinstance(mark, Text)]


def pattern(*pieces: tuple[float, bool], left_over: float) -> Pattern:
    return Pattern(3, "modular", "stretcher", (7.625, 2.25), tuple(Cut(*piece) for piece in pieces), left_over)


def test_two_pieces_with_factory_ends_stand_at_the_brick_s_ends_with_the_rest_between() -> None:
    figure = pattern_figure(pattern((4.0, True), (2.0, True), left_over=1.375), KERF, PEN)
    assert np.allclose(boxes(figure, "trimmed length"), [(0.0, 4.0), (5.625, 2.0)])
    assert np.allclose(boxes(figure, "solid"), [(4.0, KERF), (5.5, KERF)])
    assert words(figure).count("F") == 2
    assert {'4"', '2"', "3 bricks, modular stretcher"} <= set(words(figure))


def test_pieces_cut_at_both_ends_follow_one_another_a_kerf_apart() -> None:
    """Three of 2-1/2 in. and two kerfs of 1/16 in. use the brick up: 7-1/2 + 1/8 = 7-5/8 in."""
    figure = pattern_figure(pattern(*[(2.5, False)] * 3, left_over=0.0), 1 / 16, PEN)
    assert np.allclose(boxes(figure, "trimmed length"), [(0.0, 2.5), (2.5625, 2.5), (5.125, 2.5)])
    assert np.allclose(boxes(figure, "solid"), [(2.5, 0.0625), (5.0625, 0.0625)])
    assert "F" not in words(figure)
    assert "nothing left over" in words(figure)


@pytest.mark.parametrize("bond", ["running", "soldier", "herringbone-45"])
@pytest.mark.parametrize("shape", ["polygon opening", "stepped top", "round vent", "two windows"])
def test_everything_of_a_pattern_or_a_shape_stays_in_its_own_room(shape: str, bond: str) -> None:
    found = saw(shape, bond)
    figures = [pattern_figure(one, found.kerf, PEN) for one in found.patterns]
    figures += [shape_figure(piece, PEN) for piece in (*found.rips, *found.notches, *found.skews)]
    assert figures
    for figure in figures:
        for mark in figure.marks:
            if isinstance(mark, Text):
                assert -0.05 <= mark.x <= figure.width
                assert 0 <= mark.y <= figure.height
            elif isinstance(mark, Areas):
                assert mark.points.min() >= 0
                assert (mark.points.max(axis=0) <= (figure.width, figure.height)).all()


def test_every_corner_of_a_cut_is_measured_from_the_brick_s_own_corner() -> None:
    """An L: the notch is 3 in. long and 1 in. high at the lower right of a 7-5/8 x 2-1/4 in. brick."""
    outline = ((0.0, 0.0), (4.625, 0.0), (4.625, 1.0), (7.625, 1.0), (7.625, 2.25), (0.0, 2.25))
    seats = (Seat("N1", "", 4, 2),)
    piece = SawPiece("modular", "stretcher", "notch", 7.625, 2.25, 2, False, (7.625, 2.25), outline, seats)
    assert {lettered(4.625), '1"', "N", "N1 course 4 (2)"} <= set(words(shape_figure(piece, PEN)))


def test_both_edges_of_a_skew_cut_are_measured() -> None:
    """Along the foot to 6 in., along the top to 3 in."""
    outline = ((0.0, 0.0), (6.0, 0.0), (3.0, 2.25), (0.0, 2.25))
    piece = SawPiece("modular", "stretcher", "skew", 6.0, 2.25, 1, False, (7.625, 2.25), outline, ())
    figure = shape_figure(piece, PEN)
    at = {mark.text: mark.y for mark in figure.marks if isinstance(mark, Text) and mark.text in ('6"', '3"')}
    assert at['6"'] < at['3"']


def texts(drawing: Drawing) -> list[str]:
    return [mark.text for layer in drawing.layers for mark in layer.marks if isinstance(mark, Text)]


def test_every_pattern_and_every_shape_is_on_some_sheet_once() -> None:
    found = saw()
    sheets = saw_station(found, title="Saw station")
    told = [text for sheet in sheets for text in texts(sheet)]
    heads = [
        text
        for text in told
        if text.endswith(("modular stretcher",)) and text.split()[1].startswith(("brick", "piece"))
    ]
    assert len(heads) == len(found.patterns) + len(found.rips) + len(found.notches) + len(found.skews)
    for number, sheet in enumerate(sheets, start=1):
        assert any(f"page {number} of {len(sheets)}" in text for text in texts(sheet))
        assert any("Local code" in text for text in texts(sheet))


def test_figures_stay_on_their_sheet() -> None:
    for sheet in saw_station(saw()):
        assert (sheet.width / PEN.mm(1), sheet.height / PEN.mm(1)) == pytest.approx(PAGE_MM)
        for mark in sheet.layer("saw").marks:
            if isinstance(mark, Areas | Boxes):
                low = mark.points.min() if isinstance(mark, Areas) else min(mark.x.min(), mark.y.min())
                assert low >= -1e-9
                high = mark.points.max(axis=0) if isinstance(mark, Areas) else (mark.x + mark.width).max()
                assert (np.asarray(high) <= (sheet.width, sheet.height)).all() or float(np.max(high)) <= sheet.width


def test_each_colour_of_a_blend_is_named_beside_its_pieces_and_patterns() -> None:
    """A head for each pattern and shape, and a line for each length, with the colour it is cut from."""
    blend = Blend((Colour("ember", 60), Colour("smoke", 40)))
    found = saw_of([lay_out(example("polygon opening"))], blend=blend)
    told = [text for sheet in saw_station(found) for text in texts(sheet)]
    for name in ("ember", "smoke"):
        groups = [one for one in (*found.patterns, *found.groups) if one.colour == name]
        assert groups
        assert sum(text.endswith(f"modular stretcher, {name}") for text in told) == len(groups)


def test_nothing_to_cut_makes_no_sheets() -> None:
    assert saw_station(SawList()) == ()


def test_a_metric_job_is_drawn_one_to_five() -> None:
    assert usual_scale("mm").words == "1:5"


def test_places_are_told_by_panel_zone_and_course_with_how_many() -> None:
    seats = (Seat("N1", "", 4, 1), Seat("N1", "", 6, 2), Seat("N1", "S1", 0, 1), Seat("N2", "", 4, 1))
    assert places_in_words(seats) == "N1 course 4, 6 (2); N1 S1 course 0; N2 course 4"
    assert places_in_words(seats, 40) == "N1 course 4, 6 (2) and 2 more"
    assert places_in_words(()) == places_in_words((), 40) == ""
