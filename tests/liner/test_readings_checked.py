"""Readings that cannot be are refused with what was found and what was expected, in words and units."""

from dataclasses import replace
from math import inf, nan

import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.liner.drift import drift
from app.liner.readings_checked import checked
from app.liner.readings_values import Reading
from app.panel.faults import Refused
from app.panel.laying import Laying
from app.panel.project import Day, Liner


def thirty_feet() -> Layout:
    return lay_out(replace(rectangle(360, 96), laying=Laying("bed lower right")))


def refusal(reading: Reading, length_unit: str = "in", temperature_unit: str = "F") -> str:
    layout = thirty_feet()
    with pytest.raises(Refused) as caught:
        checked(reading, layout, Liner(), drift(layout, Liner(), Day()), length_unit, temperature_unit)
    return str(caught.value)


def test_a_reading_past_the_panel_is_refused() -> None:
    words = "reading: found 40'-0\" along the panel, expected 0 to 30'-0\", the panel's width"
    assert refusal(Reading("X1", 480)) == words
    assert (
        refusal(Reading("Y1", 480)) == "reading: found 40'-0\" up the panel, expected 0 to 8'-0\", the panel's height"
    )
    assert refusal(Reading("X1", 480), "mm").endswith(
        "found 12192 mm along the panel, expected 0 to 9144 mm, the panel's width"
    )


@pytest.mark.parametrize("value", [-1.0, nan, inf, -inf])
def test_a_reading_below_zero_or_no_number_is_refused(value: float) -> None:
    found = '-1" along the panel' if value == -1 else "no number"
    assert refusal(Reading("X1", value)) == f"reading: found {found}, expected 0 to 30'-0\", the panel's width"


def test_temperatures_no_bed_has_are_refused() -> None:
    assert refusal(Reading("X1", 64, 900)) == "bed temperature: found 900 °F, expected -60 to 250 °F"
    assert refusal(Reading("X1", 64, -61)) == "bed temperature: found -61 °F, expected -60 to 250 °F"
    assert refusal(Reading("X1", 64, 70, 140), "in", "C") == "tape temperature: found 140 °C, expected -51 to 121 °C"
    assert "bed temperature: found nan °F" in refusal(Reading("X1", 64, nan))


def test_a_mark_that_is_not_there_is_refused_with_the_nearest_one() -> None:
    layout = thirty_feet()
    marks = [point.mark for point in drift(layout, Liner(), Day()).checkpoints]
    last = [mark for mark in marks if mark.startswith("X")][-1]
    assert refusal(Reading("X99", 64)) == (
        f"checkpoint: found X99, expected one of X1 to {last} or Y1 to {marks[-1]}; nearest is {last} at 30'-0\""
    )
    assert f"nearest is {last} at 30'-0\"" in refusal(Reading("B7", 359))
    assert "found nothing" in refusal(Reading("", nan))


def test_a_reading_more_than_one_sheet_off_asks_for_the_other_checkpoint() -> None:
    layout = thirty_feet()
    points = [point for point in drift(layout, Liner(), Day()).checkpoints if point.axis == "x"]
    near, far = points[0], points[-1]
    words = refusal(Reading(near.mark, far.nominal))
    assert words.startswith("reading: found 30'-0\" along the panel, expected X1 at ")
    assert words.endswith(f"; did you read {far.mark}? It is at 30'-0\"")
    words = refusal(Reading(near.mark, far.nominal - 2))
    assert words.endswith(f"within one sheet of 4'-0\"; did you read another checkpoint? {far.mark} is at 30'-0\"")


def test_a_reading_that_is_right_at_the_next_checkpoint_is_not_taken_for_this_one() -> None:
    """A jamb at 8'-0" and the other at 9'-0", less than a sheet apart: what is right at the one is not 1'-0" off at the
    other. Between them, and where two lie within 1 in., nobody asks."""
    opening = {"mark": "W1", "rect": [96, 8, 12, 16]}
    layout = lay_out(replace(rectangle(360, 96, openings=[opening]), laying=Laying("bed lower right")))
    found = drift(layout, Liner(), Day())
    here, there = (next(p for p in found.checkpoints if p.axis == "x" and p.nominal == at) for at in (96, 108))
    with pytest.raises(Refused) as caught:
        checked(Reading(there.mark, 96.1), layout, Liner(), found)
    words = f"expected {there.mark} at 9'-0\"; did you read {here.mark}? It is at 8'-0\""
    assert str(caught.value).endswith(words)
    for value in (96.126, 106.9, 108):
        assert checked(Reading(there.mark, value), layout, Liner(), found) == there


def test_all_that_is_wrong_is_told_at_once() -> None:
    assert len(refusal(Reading("X1", 480, 900, 900)).splitlines()) == 3


def test_a_panel_without_brick_has_nothing_to_read() -> None:
    layout = lay_out(rectangle(20, 10, margin=5))
    with pytest.raises(Refused, match="this panel has no brick and no checkpoints"):
        checked(Reading("X1", 4), layout, Liner(), drift(layout, Liner(), Day()))


def test_liner_grown_a_little_past_the_edge_can_be_read() -> None:
    layout = thirty_feet()
    found = drift(layout, Liner(), Day())
    last = [point for point in found.checkpoints if point.axis == "x"][-1]
    assert checked(Reading(last.mark, 360.5, 105), layout, Liner(), found) == last
