"""Lengths as text: nearest division, reduced, carried, marked when off the grid, and read back exactly."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.lengths import NM_PER_INCH, Length, LengthError, LengthParts, format_length, parse, parts

TWO_HUNDRED_FEET = 200 * 12


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (0, '0"'),
        (-0.0, '0"'),
        (0.375, '3/8"'),
        (5, '5"'),
        (5.375, '5 3/8"'),
        (11.9375, '11 15/16"'),
        (12, "1'-0\""),
        (16, "1'-4\""),
        (120, "10'-0\""),
        (120.375, "10'-0 3/8\""),
        (150.375, "12'-6 3/8\""),
        (6.5, '6 1/2"'),
        (-18, "-1'-6\""),
        (-0.375, '-3/8"'),
        (15.999, "≈ 1'-4\""),
        (11.99, "≈ 1'-0\""),
        (-15.999, "≈ -1'-4\""),
        (0.01, '≈ 0"'),
        (-0.01, '≈ 0"'),
        (8 / 3, '≈ 2 11/16"'),
        (3 * (8 / 3), '8"'),
        (45 * (8 / 3), "10'-0\""),
        (0.1 + 0.2 + 0.7 - 1e-12, '1"'),
    ],
)
def test_inches_are_written_to_the_nearest_sixteenth(inches: float, text: str) -> None:
    assert format_length(inches) == text
    assert format_length(Length.from_inches(inches)) == text


@pytest.mark.parametrize(("ticks", "text"), [(1, '1/16"'), (3, '1/8"'), (-1, '-1/16"'), (-3, '-1/8"'), (383, "1'-0\"")])
def test_ties_go_away_from_zero(ticks: int, text: str) -> None:
    assert format_length(ticks / 32) == f"≈ {text}"


@pytest.mark.parametrize(
    ("denominator", "text"),
    [(1, "≈ 10'-1\""), (2, "≈ 10'-0 1/2\""), (4, "≈ 10'-0 1/2\""), (8, "≈ 10'-0 1/2\""), (16, "≈ 10'-0 9/16\"")],
)
def test_a_coarser_grid_marks_what_it_rounds(denominator: int, text: str) -> None:
    assert format_length(120 + 35 / 64, denominator=denominator) == text
    assert format_length(120 + 35 / 64, denominator=64) == "10'-0 35/64\""


@pytest.mark.parametrize(
    ("nm", "text"),
    [
        (3_810_000_000, "3810 mm"),
        (0, "0 mm"),
        (-65_000_000, "-65 mm"),
        (65_500_000, "≈ 66 mm"),
        (-65_500_000, "≈ -66 mm"),
        (-400_000, "≈ 0 mm"),
        (65_000_002, "65 mm"),
        (65_000_003, "≈ 65 mm"),
    ],
)
def test_metric_is_written_in_whole_millimetres(nm: int, text: str) -> None:
    assert format_length(Length(nm), "mm") == text


@pytest.mark.parametrize("off", [-2, -1, 0, 1, 2])
def test_two_nanometres_of_round_off_stay_on_the_grid(off: int) -> None:
    assert format_length(Length(16 * NM_PER_INCH + off)) == "1'-4\""


@pytest.mark.parametrize("off", [-3, 3, 1000])
def test_more_than_two_nanometres_are_off_the_grid(off: int) -> None:
    assert format_length(Length(16 * NM_PER_INCH + off)) == "≈ 1'-4\""


@given(st.sampled_from([1, 2, 4, 8, 16, 32, 64]), st.data())
def test_every_length_on_the_inch_grid_is_read_back(denominator: int, data: st.DataObject) -> None:
    most = TWO_HUNDRED_FEET * denominator
    length = Length.from_inches(data.draw(st.integers(-most, most)) / denominator)
    text = format_length(length, "in", denominator)
    assert not text.startswith("≈")
    assert parse(text, "in") == length
    assert parse(text, "mm") == length


@given(st.integers(-61_000, 61_000))
def test_every_length_on_the_millimetre_grid_is_read_back(millimetres: int) -> None:
    length = Length.from_number(millimetres, "mm")
    text = format_length(length, "mm")
    assert not text.startswith("≈")
    assert parse(text, "mm") == parse(text, "in") == length


@given(st.floats(-TWO_HUNDRED_FEET, TWO_HUNDRED_FEET), st.sampled_from(["in", "mm"]))
def test_a_label_is_within_half_a_division_and_marked_unless_exact(inches: float, unit: str) -> None:
    label = format_length(inches, unit)
    read = parse(label.removeprefix("≈ "), unit)
    half = NM_PER_INCH // 32 if unit == "in" else 500_000
    off = abs(read.nm - Length.from_inches(inches).nm)
    assert off <= half
    assert label.startswith("≈ ") == (off > 2)


@given(st.integers(-TWO_HUNDRED_FEET * NM_PER_INCH, TWO_HUNDRED_FEET * NM_PER_INCH))
def test_the_negative_length_has_the_same_label_with_a_sign(nm: int) -> None:
    label, mirrored = format_length(Length(abs(nm))), format_length(Length(-abs(nm)))
    if label.removeprefix("≈ ") != '0"':
        assert mirrored.replace("-", "", 1) == label
    else:
        assert mirrored == label


@pytest.mark.parametrize(
    ("inches", "expected"),
    [
        (150.375, LengthParts(1, 12, 6, 3, 8, True)),
        (-18, LengthParts(-1, 1, 6, 0, 1, True)),
        (0, LengthParts(1, 0, 0, 0, 1, True)),
        (15.999, LengthParts(1, 1, 4, 0, 1, False)),
        (8 / 3, LengthParts(1, 0, 2, 11, 16, False)),
    ],
)
def test_parts_are_what_a_drawing_letters(inches: float, expected: LengthParts) -> None:
    assert parts(inches) == expected


@pytest.mark.parametrize("denominator", [0, -16, 3, 10, 128])
def test_a_division_that_no_tape_rule_has_is_refused(denominator: int) -> None:
    with pytest.raises(LengthError, match="expected a denominator of 1, 2, 4, 8, 16, 32 or 64"):
        format_length(1.0, denominator=denominator)


@pytest.mark.parametrize("unit", ["ft", "", "MM"])
def test_lengths_are_written_in_inches_or_millimetres_only(unit: str) -> None:
    with pytest.raises(LengthError, match="expected a unit to write lengths in: in or mm"):
        format_length(1.0, unit)


@pytest.mark.parametrize("inches", [float("nan"), float("inf"), 1e300])
def test_a_number_that_is_no_length_is_not_written(inches: float) -> None:
    with pytest.raises(LengthError):
        format_length(inches)
