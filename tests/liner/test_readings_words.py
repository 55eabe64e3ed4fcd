"""Verdicts on single readings: the worked example, its words, and what stands at the edges."""

from dataclasses import replace
from math import floor

import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.lengths import Length
from app.liner.drift import drift
from app.liner.readings import differs, judge, true_value
from app.liner.readings_ahead import joints_ahead
from app.liner.readings_values import Reading, Verdict
from app.liner.readings_words import REPLACES, amount
from app.liner.values import Checkpoint, Drift
from app.panel.laying import Laying
from app.panel.project import Day, Liner

LINER = Liner()


def points_of(width: float, liner: Liner = LINER, **more: object) -> tuple[Layout, Drift, dict[str, Checkpoint]]:
    layout = lay_out(replace(rectangle(width, 40, **more), laying=Laying("bed lower right")))
    found = drift(layout, liner, Day())
    return layout, found, {point.mark: point for point in found.checkpoints}


def at_96(reading: Reading, unit: str = "in") -> Verdict:
    """The checkpoint of the arithmetic: a jamb 96 in. from the corner, the other one 72 in. on."""
    layout, found, points = points_of(240, openings=[{"mark": "W1", "rect": [96, 8, 72, 16]}])
    point = next(point for point in points.values() if point.nominal == 96)
    return judge(replace(reading, mark=point.mark), point, joints_ahead(layout, LINER, found, point), unit)


def test_arithmetic_of_a_reading() -> None:
    """Arithmetic: 96 3/16 in. read 96 in. from the corner at 94 F, liner 4.5e-5 per F at 70 F, 9 joints to go."""
    verdict = at_96(Reading("", 96.1875, 94))
    assert (verdict.kind, verdict.error) == ("adjust", 0.1875)
    assert verdict.explained == pytest.approx(96 * 4.5e-5 * 24) == pytest.approx(0.10368)
    assert verdict.rest == pytest.approx(0.08382)
    assert verdict.coming == pytest.approx(72 * 4.5e-5 * 24) == pytest.approx(0.07776)
    assert abs(verdict.error) > verdict.band >= abs(verdict.rest or 1)
    assert verdict.spread is not None
    assert (verdict.spread.ticks, verdict.spread.joints, verdict.spread.sizes) == (17, 9, ((8, 2), (1, 1)))
    assert verdict.error + verdict.coming - verdict.spread.total == pytest.approx(-0.000365)


def test_an_instruction_says_why_and_what_a_hand_can_do() -> None:
    verdict = at_96(Reading("", 96.1875, 94))
    assert verdict.said == 'X2 reads 8\'-0 3/16": 3/16" long.'
    assert verdict.instruction == (
        'It is the heat: 7/64" of it comes from 24 °F over 70. Wait for the window 22 to 79 °F and read again, or do'
        ' this now. Liner at 94 °F grows 5/64" up to control line X3. Adjust: spread 17/64" over the next 9 joints:'
        ' squeeze 8 joints by 1/32" and 1 by 1/64", mixed evenly. Control line X3, 14\'-0", then is right.'
        " This takes the place of what an earlier reading said for these joints."
    )


def test_heat_that_would_make_more_than_was_read_is_told_so() -> None:
    """96 in. grow 0.225 in. at 122 F; 3/16 in. was read."""
    assert 'It is the heat: 52 °F over 70 would make even 7/32".' in at_96(Reading("", 96.1875, 122)).instruction


def test_without_a_bed_temperature_all_of_the_day_is_reckoned_with() -> None:
    """72 in. at 55 to 105 F, liner right at 70: 0.0486 in. shorter to 0.1134 longer, 0.0324 in the middle."""
    verdict = at_96(Reading("", 96 - 9 / 64))
    assert (verdict.explained, verdict.rest) == (None, None)
    assert (verdict.coming, verdict.doubt) == (pytest.approx(0.0324), pytest.approx(0.081))
    assert verdict.instruction.startswith(
        'Over the day\'s 55 to 105 °F the liner makes 3/64" shorter to 7/64" longer up to control line X3. Adjust:'
    )
    assert 'spread 7/64" over the next 7 joints: stretch each by 1/64".' in verdict.instruction
    assert "then is within 1/8\" with the bed at any of the day's 55 to 105 °F." in verdict.instruction


def test_where_the_day_may_carry_the_next_line_out_of_the_band_nothing_is_promised_without_a_temperature() -> None:
    """144 in. at 55 to 105 F: 0.324 in. between the coldest and the hottest, more than 1/8 in. either way."""
    layout, found, points = points_of(240, openings=[{"mark": "W1", "rect": [96, 8, 144, 16]}])
    point = next(point for point in points.values() if point.nominal == 96)
    ahead = joints_ahead(layout, LINER, found, point)
    told = judge(Reading(point.mark, 96), point, ahead)
    assert told.kind == "measure"
    assert told.instruction == (
        "Take the bed's temperature and check again before you lay on or change a joint. It is within 1/8\" here, but"
        ' over the day\'s 55 to 105 °F the liner makes 3/32" shorter to 15/64" longer up to control line'
        f" {ahead.mark}, more than can be met unseen."
    )
    assert judge(Reading(point.mark, 96, 70), point, ahead).kind == "hold"


def test_what_is_past_the_band_is_never_told_as_the_band() -> None:
    assert at_96(Reading("", 96.13, 70)).said == 'X2 reads 8\'-0 1/8": just over 1/8" long.'
    assert at_96(Reading("", 96.125, 70)).said == 'X2 reads 8\'-0 1/8": 1/8" long.'
    assert at_96(Reading("", 96.1252, 70), "mm").said == "X2 reads 2441.6 mm: just over 3.2 mm long."
    assert at_96(Reading("", 96.13, 70), "mm").said == "X2 reads 2441.7 mm: 3.3 mm long."


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_past_the_band_with_no_joint_ahead_is_laid_again(unit: str) -> None:
    layout, found, points = points_of(240)
    last = points["X4"]
    ahead = joints_ahead(layout, LINER, found, last)
    assert judge(Reading("X4", 240.125, 70), last, ahead, unit).kind == "hold"
    assert judge(Reading("X4", 240.13, 70), last, ahead, unit).kind == "relay"


@pytest.mark.parametrize("give", [0.0, 1 / 64, 1 / 32, 0.05])
def test_joints_give_by_whole_ticks_and_never_past_their_give(give: float) -> None:
    """Nine joints of 1/32 in. give 9/32 in., or 6.75 mm by quarters: 1/8 more is the most that can be brought back."""
    liner = replace(LINER, joint_give=Length.from_inches(give))
    layout, found, points = points_of(240, liner, openings=[{"mark": "W1", "rect": [96, 8, 72, 16]}])
    point = next(point for point in points.values() if point.nominal == 96)
    ahead = joints_ahead(layout, liner, found, point)
    for unit, tick in (("in", 1 / 64), ("mm", 0.25 / 25.4)):
        most = 1 / 8 + 9 * floor((give + 1e-9) / tick) * tick
        for k in range(-700, 701):
            told = judge(Reading(point.mark, 96 + k / 1000, 70), point, ahead, unit)
            assert (told.kind == "relay") == (abs(k / 1000) > most + 1e-9)


def test_a_new_reading_says_that_it_replaces_an_earlier_one_where_both_may_change_the_same_joints() -> None:
    assert at_96(Reading("", 96.1875, 94)).instruction.count(REPLACES) == 1
    assert REPLACES not in at_96(Reading("", 96, 70)).instruction
    layout, found, points = points_of(240)
    between = points["X2"]
    told = judge(Reading("X2", between.nominal, 70), between, joints_ahead(layout, LINER, found, between))
    assert told.kind == "hold"
    assert told.instruction.endswith(REPLACES)


def test_lengths_to_what_is_set_and_read() -> None:
    assert [amount(k / 4 / 25.4, "mm") for k in (1, 2, 3, 4)] == ["0.25 mm", "0.5 mm", "0.75 mm", "1 mm"]
    assert (amount(1 / 8, "mm"), amount(0.001, "mm"), amount(0.001, "in")) == ("3.2 mm", "under 0.25 mm", 'under 1/64"')


def test_a_reading_in_millimetres_is_changed_by_quarters_of_one() -> None:
    verdict = at_96(Reading("", 96 + 4 / 25.4, 70), "mm")
    assert verdict.said == "X2 reads 2442.4 mm: 4 mm long."
    words = "spread 4 mm over the next 9 joints: squeeze 7 joints by 0.5 mm and 2 by 0.25 mm, mixed evenly."
    assert words in verdict.instruction


def test_heat_ahead_is_taken_out_before_it_comes_though_this_reading_is_right() -> None:
    """72 in. grow 0.162 in. at 120 F, past the band of 1/8 in.; 10/64 in. is nearest, over all nine joints."""
    verdict = at_96(Reading("", 96, 120))
    assert (verdict.kind, verdict.error) == ("adjust", 0)
    assert verdict.spread is not None
    assert (verdict.spread.ticks, verdict.spread.joints) == (10, 9)


def test_past_the_last_control_line_an_error_can_only_be_laid_again() -> None:
    layout, found, points = points_of(240)
    last = points["X4"]
    ahead = joints_ahead(layout, LINER, found, last)
    assert (ahead.control, ahead.joints, last.nominal) == ("", 0, 240)
    assert judge(Reading("X4", 240.1, 90), last, ahead).kind == "hold"
    told = judge(Reading("X4", 240.2, 70), last, ahead)
    assert told.kind == "relay"
    assert "no joint lies ahead" in told.instruction
    assert "again from X3, or the last checkpoint before it that held" in told.instruction


def test_where_heat_alone_is_too_much_nothing_that_is_right_is_lifted() -> None:
    verdict = at_96(Reading("", 96, 240))
    assert verdict.kind == "relay"
    assert verdict.instruction.startswith('Stop: what is laid is right, but liner at 240 °F grows 35/64"')
    assert "Lay on only while the bed is at -55 to 195 °F." in verdict.instruction


def test_a_steel_tape_is_corrected_for_its_own_warmth() -> None:
    """304.8082 m read at 42 F are 304.757 m: surveying forum, *Steel Taping Puzzle*, printed example."""
    metres = 1000 / 25.4
    assert true_value(Reading("X1", 304.8082 * metres, None, 42)) == pytest.approx(304.757 * metres, abs=0.001 * metres)
    assert true_value(Reading("X1", 100, None, 20), "C") == pytest.approx(100)


def test_two_readings_of_one_checkpoint_differ_when_more_than_the_band_lies_between_them() -> None:
    point = points_of(240)[2]["X2"]
    near, far = Reading("X2", point.nominal), Reading("X2", point.nominal + 0.126)
    assert differs(near, far, point)
    assert not differs(near, replace(far, value=point.nominal + 0.125), point)
    warmer = 70 + 0.126 / point.grows_per_degree
    assert not differs(replace(near, bed_temperature=70), replace(far, bed_temperature=warmer), point)
