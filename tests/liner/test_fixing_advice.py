"""Advice on fixing lines: the fewest that do, and what is said of them is what happens once they are drawn."""

from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from shapes import case, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.lengths import Length
from app.liner.drift import drift
from app.liner.drift_words import (
    Units,
    advice_words,
    effect_words,
    line_words,
    point_window_words,
    window_said,
    window_words,
)
from app.liner.fixing_advice import FixingAdvice, SpanAdvice, fewest_lines, fixing_advice
from app.liner.growth import free_lengths
from app.liner.lines import held_lines
from app.liner.tape import tapes
from app.panel.edits.add_fixing import AddFixing
from app.panel.laying import CORNERS
from app.panel.project import Day, Liner

RANDOM = settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
LINER = Liner()


def advised(layout: Layout, liner: Liner = LINER, day: Day = Day()) -> tuple[SpanAdvice, ...]:  # noqa: B008 - frozen
    return fixing_advice(layout, drift(layout, liner, day), liner, day)


def with_lines(layout: Layout, lines: tuple[FixingAdvice, ...]) -> Layout:
    """The face once the lines are added by the edit itself."""
    panel = layout.panel
    for line in lines:
        panel = AddFixing(line.line).changed(panel)
    return replace(layout, panel=panel)


def test_forty_feet_need_six_lines() -> None:
    """480 in. in parts of at most 79.4 in. (1/8 in. / 4.5e-5 / 35): 480 / 72 = 6.7, so six lines make seven parts."""
    (advice,) = advised(lay_out(rectangle(480, 40)))
    assert len(advice.lines) == 6
    assert advice.grows == pytest.approx(480 * 4.5e-5 * 35)
    assert advice.least == pytest.approx(72 * 4.5e-5 * 35)


def test_a_panel_within_the_tolerance_needs_none() -> None:
    assert advised(lay_out(rectangle(72, 40))) == ()
    assert advised(lay_out(rectangle(480, 40)), day=Day(70, 70)) == ()
    assert advised(lay_out(rectangle(20, 10, margin=5))) == ()


def test_no_line_is_advised_where_joints_are_too_far_apart() -> None:
    """One module of 8 in. grows 8 x 4.5e-5 x 70 = 0.025 in., more than 1/64 in."""
    advice = advised(lay_out(rectangle(80, 40)), replace(LINER, tolerance=Length.from_inches(1 / 64)), Day(70, 140))
    assert {one.lines for one in advice if one.span.axis == "x"} == {()}
    assert "do not cure" in advice_words(advice[0], 70, Units())


def test_after_each_advice_alone_growth_at_its_checkpoint_is_what_it_says() -> None:
    layout = lay_out(case("b1"))
    for advice in advised(layout):
        for line in advice.lines:
            found = drift(with_lines(layout, (line,)), LINER, Day())
            tape = next(tape for tape in tapes(layout, layout.panel.laying.corner) if tape.axis == line.axis)
            assert line.position == pytest.approx(tape.running(line.running))
            (free,) = free_lengths(held_lines(with_lines(layout, (line,)), tape, LINER), np.array([line.at]))
            assert line.after == pytest.approx(free * 4.5e-5 * 35)
            assert line.after < line.before
            assert any(
                point.axis == line.axis and abs(point.nominal - line.running) < 1e-5 for point in found.checkpoints
            )


@st.composite
def laid(draw: st.DrawFn) -> Document:
    return {**draw(panels(zones=0)), "laying": {"corner": draw(st.sampled_from(CORNERS))}}


@RANDOM
@given(laid(), st.integers(75, 160), st.sampled_from([0.02, 0.03, 0.05]))
def test_with_all_lines_no_span_drifts_past_the_tolerance(document: Document, high: int, tolerance: float) -> None:
    layout, day = lay_out(read_panel(document)), Day(70, high)
    liner = replace(LINER, tolerance=Length.from_inches(tolerance))
    for advice in advised(layout, liner, day):
        assert advice.grows > liner.tolerance.inches
        if not advice.lines:
            continue
        after = drift(with_lines(layout, advice.lines), liner, day).spans
        inside = [
            span
            for span in after
            if span.axis == advice.span.axis
            and advice.span.start - 1e-5 < span.start
            and span.end < advice.span.end + 1e-5
        ]
        assert len(inside) == len(advice.lines) + 1
        grown = max(span.end - span.start for span in inside) * 4.5e-5 * (high - 70)
        assert grown == pytest.approx(advice.least, abs=1e-6)
        assert grown <= liner.tolerance.inches + 1e-6


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.lists(st.integers(1, 99), max_size=9, unique=True), st.integers(10, 120))
def test_no_choice_of_fewer_joints_does_it(joints: list[int], most: int) -> None:
    """Against every choice of joints."""
    known = [float(joint) for joint in sorted(joints)]
    found = fewest_lines(known, 0.0, 100.0, float(most))

    def does(lines: tuple[float, ...]) -> bool:
        return float(np.diff([0.0, *lines, 100.0]).max()) <= most

    fewest = next((n for n in range(len(known) + 1) if any(map(does, combinations(known, n)))), None)
    assert len(found) == (fewest or 0)
    assert set(found) <= set(known)
    assert not found or does(tuple(found))


def test_lines_stand_evenly_only_where_that_keeps_every_part_short_enough() -> None:
    """Of joints at 28, 40 and 78 the even thirds' nearest are 28 and 78, with 50 between: more than 40."""
    assert fewest_lines([20.0, 33.0, 40.0, 66.0, 78.0], 0.0, 100.0, 40.0) == [33, 66]
    assert fewest_lines([28.0, 40.0, 78.0], 0.0, 100.0, 40.0) == [40, 78]


def test_words_say_where_and_how_much() -> None:
    (advice,) = advised(lay_out(rectangle(480, 40)))
    assert advice_words(advice, 70, Units()) == (
        'Along the panel from starting corner to far edge the liner grows by up to 3/4" at 105 °F; the tolerance is'
        ' 1/8". 6 fixing lines keep it within 1/8".'
    )
    assert line_words(advice.lines[0], Units()) == "Upright fixing line 6'-0\" from the tape's hook"
    last = [point for point in drift(lay_out(rectangle(480, 40)), LINER, Day()).checkpoints if point.axis == "x"][-1]
    assert effect_words(advice.lines[0], Units()) == f'By itself: growth at {last.mark} falls from 3/4" to 5/8".'


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (None, None, "May be laid at any bed temperature."),
        (50.0, 110.0, "May be laid all day; right between 50 and 110 °F."),
        (-130.0, 270.0, "May be laid at any bed temperature."),
        (-4.5, 120.0, "May be laid all day; right between \u22124 and 120 °F."),
        (58.4, 81.6, "Lay it while the bed is between 59 and 81 °F; at other times correct by the tape."),
        (69.24, 70.76, "Lay it while the bed is between 69.3 and 70.7 °F; at other times correct by the tape."),
        (20.0, 40.0, "Lay it while the bed is between 20 and 40 °F; the day is expected to stay warmer."),
        (110.0, 130.0, "Lay it while the bed is between 110 and 130 °F; the day is expected to stay colder."),
    ],
)
def test_windows_are_said_rounded_inwards(low: float | None, high: float | None, words: str) -> None:
    assert window_words(low, high, Day(55, 105), Units()) == words
    if low is not None and high is not None and "any" not in words:
        assert window_said(low, high, Units()) in words
        assert point_window_words((low, high), Units()) in words
