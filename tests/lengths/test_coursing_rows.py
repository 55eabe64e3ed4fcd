"""Heights to the top of course n, against BIA Technical Notes on Brick Construction 10B (rev. June 1993), Table 3.

The feet and whole inches are the table's; fractions to 1/16 in are arithmetic (n x coursing height). Only a handful of
rows, to check how a length is written; the whole table belongs to the coursing.
"""

import pytest

from app.lengths import format_length, parse

ROWS = [
    ("3 courses = 8 in", 8 / 3, 1, "0'-2 11/16\""),
    ("3 courses = 8 in", 8 / 3, 5, "1'-1 5/16\""),
    ("3 courses = 8 in", 8 / 3, 10, "2'-2 11/16\""),
    ("3 courses = 8 in", 8 / 3, 20, "4'-5 5/16\""),
    ("3 courses = 8 in", 8 / 3, 45, "10'-0\""),
    ("3 courses = 8 in", 8 / 3, 47, "10'-5 5/16\""),
    ("3 courses = 8 in", 8 / 3, 100, "22'-2 11/16\""),
    ("5 courses = 16 in", 3.2, 3, "0'-9 5/8\""),
    ("5 courses = 16 in", 3.2, 48, "12'-9 5/8\""),
    ("5 courses = 16 in", 3.2, 100, "26'-8\""),
    ("2 courses = 4 in", 2, 50, "8'-4\""),
    ("2 courses = 4 in", 2, 100, "16'-8\""),
    ("1 course = 4 in", 4, 50, "16'-8\""),
    ("1 course = 4 in", 4, 100, "33'-4\""),
]


@pytest.mark.parametrize(("coursing", "gauge", "course", "printed"), ROWS)
def test_the_top_of_a_course_reads_as_printed(coursing: str, gauge: float, course: int, printed: str) -> None:
    label = format_length(course * gauge)
    assert label.removeprefix("≈ ") == printed.removeprefix("0'-"), coursing
    assert parse(label.removeprefix("≈ ")) == parse(printed)


@pytest.mark.parametrize(("coursing", "gauge", "course", "printed"), ROWS)
def test_only_a_height_between_sixteenths_is_marked_as_rounded(
    coursing: str, gauge: float, course: int, printed: str
) -> None:
    is_rounded = abs(parse(printed).inches - course * gauge) > 1e-6
    assert format_length(course * gauge).startswith("≈ ") == is_rounded, coursing
