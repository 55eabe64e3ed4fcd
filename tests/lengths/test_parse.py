"""How people type lengths: each way that is read, each that is refused and where."""

from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from app.lengths import NM_PER_INCH, Length, LengthError, parse

TWELVE_SIX = [
    "12'6-3/8",
    "12'-6 3/8\"",
    "12-6 3/8",
    "12-6-3/8",
    "12ft 6 3/8in",
    "12' 6.375\"",
    "12’-6 3/8”",
    "12‘-6 3/8“",
    "12′-6⅜″",
    "12′ 6 ⅜″",
    "12'\u00a06\u00a03/8\"",
    "12'-6\u20093⁄8\"",
    "12'-6 3∕8\"",
    "12–6⅜",
    "12—6 3/8",
    "12‑6-3/8",
    "12-6.375",
    "12 ft - 6 3/8 in",
    "12 Ft. 6.375 In.",
    "12 FEET 6 3/8 INCHES",
    "12'6 3/8''",
    "12-6 3/8 in",
    "12-6 6/16",
    "  12'-6 3/8\"\t\n",
]

OTHERS = [
    ("12-6", 150),
    ('12-6"', 150),
    ("12' 6\"", 150),
    ("12' - 6\"", 150),
    ("12'6", 150),
    ("12.5'", 150),
    ("12.5 ft", 150),
    ('150"', 150),
    ("150 in", 150),
    ("3.81 m", 150),
    ("381 cm", 150),
    ("3810 mm", 150),
    ("3810MM", 150),
    ("12'", 144),
    ("12 ft", 144),
    ("1 foot", 12),
    ("12'-0 3/8\"", 144.375),
    ("12'-3/8\"", 144.375),
    ("12'⅜", 144.375),
    ("6-3/8", 6.375),
    ("6 3/8", 6.375),
    ("6⅜", 6.375),
    ('6.375"', 6.375),
    ("150-3/8", 150.375),
    ("3/8", 0.375),
    ('3/8"', 0.375),
    ("1/64", 1 / 64),
    ("½", 0.5),
    ('6"', 6),
    ("6''", 6),
    ("6 in", 6),
    ("6 inches", 6),
    ("1 inch", 1),
    ("0'-6\"", 6),
    ("0", 0),
    ("-0", 0),
    ('.5"', 0.5),
    ("-1'6", -18),
    ("−1'-6\"", -18),
    ("–1-6", -18),
    ("- 1' 6\"", -18),
    ("-1-6 3/8", -18.375),
    ("-6 3/8", -6.375),
    ("-3810 mm", -150),
]


@pytest.mark.parametrize("text", TWELVE_SIX)
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_feet_inches_and_fraction_are_read_in_every_unit(text: str, unit: str) -> None:
    length = parse(text, unit)
    assert length.inches == 150.375
    assert length.typed == text


@pytest.mark.parametrize(("text", "inches"), OTHERS)
def test_each_way_of_typing_is_read(text: str, inches: float) -> None:
    assert parse(text).inches == inches


@pytest.mark.parametrize(
    ("unit", "nm"),
    [("in", 317_500_000), ("mm", 12_500_000), ("cm", 125_000_000), ("m", 12_500_000_000), ("ft", 3_810_000_000)],
)
def test_a_bare_number_is_in_the_unit_that_the_caller_gives(unit: str, nm: int) -> None:
    assert parse("12.5", unit) == Length(nm)
    assert parse("-12.5", unit) == Length(-nm)


@pytest.mark.parametrize("text", ["1", "150", "3810", "99999"])
def test_no_unit_is_guessed_from_the_size(text: str) -> None:
    assert parse(text).nm == int(text) * NM_PER_INCH
    assert parse(text, "mm").nm == int(text) * 1_000_000


@pytest.mark.parametrize(("text", "inches"), [("6-3/8", 6.375), ("3/8", 0.375), ("12-6", 150), ("12'", 144)])
def test_a_fraction_or_a_feet_mark_means_inches_also_where_bare_numbers_are_millimetres(
    text: str, inches: float
) -> None:
    assert parse(text, "mm").inches == inches


REFUSED = [
    ("12'14\"", 3, '14"'),
    ("12'14", 3, "14"),
    ("12-14", 3, "14"),
    ("12-12", 3, "12"),
    ("12'-12.5 in", 4, "12.5 in"),
    ("12' 13 3/8\"", 4, '13 3/8"'),
    ("12-6/0", 5, "0"),
    ("1'2'3", 3, "'"),
    ("12,6", 2, ","),
    ("1,200", 1, ","),
    ("1/2/3", 3, "/"),
    ("1e3", 1, "e"),
    ("6 3/8 5", 6, "5"),
    ("1/128", 2, "128"),
    ("6 3/100", 4, "100"),
    ("1/3", 2, "3"),
    ("⅓", 0, "⅓"),
    ("↉", 0, "↉"),
    ("6 9/8", 2, "9/8"),
    ("8/8", 0, "8/8"),
    ("63/8", 0, "63/8"),
    ("12/6", 3, "6"),
    ("12 6 3/8", 3, "6"),
    ("12 6", 3, "6"),
    ("12 - 6", 3, "-"),
    ("12 -6", 3, "-"),
    ("6 - 3/8", 2, "-"),
    ("", 0, "nothing"),
    (" \t", 0, "nothing"),
    ("-", 1, "the end"),
    ("--1", 1, "-"),
    ("+1", 0, "+"),
    ("'", 0, "'"),
    ('"6', 0, '"'),
    ("mm", 0, "mm"),
    ("12'-", 4, "the end"),
    ("12'--6", 4, "-"),
    ("12'6-3", 5, "3"),
    ("12-6-", 5, "the end"),
    ("12.5' 6", 6, "6"),
    ("12.5-6", 0, "12.5"),
    ("6.5 3/8", 4, "3/8"),
    ("3/8'", 0, "3/8"),
    ("1/2 m", 0, "1/2"),
    ("6 3/8 mm", 6, "mm"),
    ("3 m 81 cm", 4, "81"),
    ("12-6 ft", 5, "ft"),
    ("12'6\" 3", 6, "3"),
    ('6" 3/8', 3, "3/8"),
    ("12 yd", 3, "yd"),
    ("12.", 2, "."),
    ("1.2.3", 3, ".3"),
    ("≈ 12'-6\"", 0, "≈"),
    ("nan", 0, "nan"),
    ("inf", 0, "inf"),
    ("0x10", 1, "x"),
    ("1_000", 1, "_"),
    ("١٢", 0, "١"),
    ("²", 0, "²"),
    ("120001 in", 0, "120001 in"),
    ("9" * 80, 0, "9" * 80),
    ("9" * 5000, 0, "5,000 characters"),
]


@pytest.mark.parametrize(("text", "position", "found"), REFUSED)
@pytest.mark.parametrize("unit", ["in", "ft"])
def test_what_leaves_a_doubt_is_refused_at_its_place(text: str, position: int, found: str, unit: str) -> None:
    with pytest.raises(LengthError) as caught:
        parse(text, unit)
    assert (caught.value.text, caught.value.position, caught.value.found) == (text, position, found)
    assert_says_where_and_what(caught.value)


@pytest.mark.parametrize(
    ("text", "example_text"), [("12'14\"", "13'-2\""), ("12-24", "14'-0\""), ("0'-13 3/8\"", "1'-1\"")]
)
def test_too_many_inches_after_feet_are_answered_with_the_length_they_make(text: str, example_text: str) -> None:
    with pytest.raises(LengthError) as caught:
        parse(text)
    assert caught.value.example == example_text


def test_the_message_is_one_calm_line() -> None:
    with pytest.raises(LengthError) as caught:
        parse("12'14\"")
    expected = "character 4: found '14\"', expected inches below 12 after feet, for example 13'-2\""
    assert str(caught.value) == f"12'14\", {expected}"


def assert_says_where_and_what(error: LengthError) -> None:
    said = str(error)
    assert f"character {error.position + 1}: found " in said
    assert f"expected {error.expected}, for example {error.example}" in said
    assert said.isprintable()
    assert 0 <= error.position <= len(error.text)
    assert isinstance(parse(error.example), Length)


PIECES = st.sampled_from([*"0123456789'\"-/. ,≈⅜⅓−″′⁄\u00a0\n", "12", "3/8", "ft", "in", "mm", "m", "''", "1e3", "0"])


@given(st.one_of(st.text(), st.lists(PIECES, max_size=12).map("".join)), st.sampled_from(["in", "mm"]))
@example("\ud800", "in")
@example("12'\x00", "in")
@example("ſt", "in")
def test_no_text_raises_anything_but_a_length_error(text: str, unit: str) -> None:
    try:
        length = parse(text, unit)
    except LengthError as error:
        assert_says_where_and_what(error)
    else:
        assert length.typed == text


FEET_MARKS = st.sampled_from(["'", "’", "′", "ft", " ft", " FT.", " feet"])
SEPARATORS = st.sampled_from(["", " ", "-", " - ", "\u00a0", "–"])
STROKES = st.sampled_from(["/", "⁄", "∕"])
JOINERS = st.sampled_from([" ", "-", "\u00a0", "–"])
INCH_MARKS = st.sampled_from(["", '"', "”", "″", " in", " IN.", " inches", "''"])


@given(
    st.tuples(st.sampled_from(["", "-", "−"]), st.integers(0, 200), st.integers(0, 11), st.integers(1, 63)),
    st.tuples(FEET_MARKS, SEPARATORS, JOINERS, STROKES, INCH_MARKS),
)
def test_every_mix_of_marks_says_the_same_length(
    numbers: tuple[str, int, int, int], marks: tuple[str, str, str, str, str]
) -> None:
    sign, feet, inches, ticks = numbers
    foot, separator, joiner, stroke, inch = marks
    length = parse(f"{sign}{feet}{foot}{separator}{inches}{joiner}{ticks}{stroke}64{inch}")
    exact = (12 * feet + inches + Fraction(ticks, 64)) * (-1 if sign else 1)
    assert Fraction(length.nm, NM_PER_INCH) == exact
