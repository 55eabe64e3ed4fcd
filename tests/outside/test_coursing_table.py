"""Heights to the top of each course, and how courses make a height.

Source: BIA Technical Notes on Brick Construction 10B, revised June 1993, Table 3 "Vertical Coursing" (reprinted in
Masonry Magazine, April 1994, p. 25), and Table 1 for the coursing of each size. Feet and whole inches are the printed
ones; the copy that was read shows that an entry has a fraction (here `+`) but not which. Fractions are arithmetic, n
x coursing height to the nearest 1/16 in.
"""

import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.lengths import LengthParts, format_length, parts

COLUMNS = {"2C = 4 in.": "roman", "3C = 8 in.": "modular", "5C = 16 in.": "engineer modular", "1C = 4 in.": "utility"}
"""Each column of the table, and a size that BIA Technical Notes 10B, Table 1 lists with that coursing."""

TABLE = """
  1     0-2    0-2+    0-3+     0-4
  2     0-4    0-5+    0-6+     0-8
  3     0-6     0-8    0-9+     1-0
  4     0-8   0-10+    1-0+     1-4
  5    0-10    1-1+     1-4     1-8
  6     1-0     1-4    1-7+     2-0
  7     1-2    1-6+   1-10+     2-4
  8     1-4    1-9+    2-1+     2-8
  9     1-6     2-0    2-4+     3-0
 10     1-8    2-2+     2-8     3-4
 11    1-10    2-5+   2-11+     3-8
 12     2-0     2-8    3-2+     4-0
 13     2-2   2-10+    3-5+     4-4
 14     2-4    3-1+    3-8+     4-8
 15     2-6     3-4     4-0     5-0
 16     2-8    3-6+    4-3+     5-4
 17    2-10    3-9+    4-6+     5-8
 18     3-0     4-0    4-9+     6-0
 19     3-2    4-2+    5-0+     6-4
 20     3-4    4-5+     5-4     6-8
 21     3-6     4-8    5-7+     7-0
 22     3-8   4-10+   5-10+     7-4
 23    3-10    5-1+    6-1+     7-8
 24     4-0     5-4    6-4+     8-0
 25     4-2    5-6+     6-8     8-4
 26     4-4    5-9+   6-11+     8-8
 27     4-6     6-0    7-2+     9-0
 28     4-8    6-2+    7-5+     9-4
 29    4-10    6-5+    7-8+     9-8
 30     5-0     6-8     8-0    10-0
 31     5-2   6-10+    8-3+    10-4
 32     5-4    7-1+    8-6+    10-8
 33     5-6     7-4    8-9+    11-0
 34     5-8    7-6+    9-0+    11-4
 35    5-10    7-9+     9-4    11-8
 36     6-0     8-0    9-7+    12-0
 37     6-2    8-2+   9-10+    12-4
 38     6-4    8-5+   10-1+    12-8
 39     6-6     8-8   10-4+    13-0
 40     6-8   8-10+    10-8    13-4
 41    6-10    9-1+  10-11+    13-8
 42     7-0     9-4   11-2+    14-0
 43     7-2    9-6+   11-5+    14-4
 44     7-4    9-9+   11-8+    14-8
 45     7-6    10-0    12-0    15-0
 46     7-8   10-2+   12-3+    15-4
 47    7-10   10-5+   12-6+    15-8
 48     8-0    10-8   12-9+    16-0
 49     8-2  10-10+   13-0+    16-4
 50     8-4   11-1+    13-4    16-8
100    16-8   22-2+    26-8    33-4
"""

FRACTIONS = [
    ("modular", 1, '2 11/16"'),
    ("modular", 5, "1'-1 5/16\""),
    ("modular", 10, "2'-2 11/16\""),
    ("modular", 20, "4'-5 5/16\""),
    ("modular", 45, "10'-0\""),
    ("modular", 47, "10'-5 5/16\""),
    ("modular", 100, "22'-2 11/16\""),
    ("engineer modular", 3, '9 5/8"'),
    ("engineer modular", 48, "12'-9 5/8\""),
    ("engineer modular", 100, "26'-8\""),
]
"""Printed feet and inches with the fraction by arithmetic."""

ROWS = [line.split() for line in TABLE.strip().splitlines()]


def _tall(size: str) -> Layout:
    """101 courses of one size, from the panel's very foot; 34 ft at most."""
    return lay_out(rectangle(24, 101 * CATALOGUE[size].gauge, "stack", size))


def _top_of_joint(layout: Layout, courses: int) -> float:
    """Height of so many courses with their bed joints: where the next course begins, inches."""
    return layout.courses[courses].bottom


def test_the_table_has_204_entries() -> None:
    assert [int(row[0]) for row in ROWS] == [*range(1, 51), 100]
    assert sum(len(row) - 1 for row in ROWS) == 204


@pytest.mark.parametrize(("column", "size"), list(enumerate(COLUMNS.values(), start=1)))
def test_every_course_of_a_face_is_at_the_printed_height(column: int, size: str) -> None:
    layout = _tall(size)
    for row in ROWS:
        split = parts(_top_of_joint(layout, int(row[0])))
        assert _as_printed(split) == row[column], f"{size}, course {row[0]}"


def _as_printed(split: LengthParts) -> str:
    return f"{split.feet}-{split.inches}{'+' if split.numerator else ''}"


@pytest.mark.parametrize(("size", "courses", "label"), FRACTIONS)
def test_a_height_reads_to_the_nearest_sixteenth(size: str, courses: int, label: str) -> None:
    assert format_length(_top_of_joint(_tall(size), courses)).removeprefix("≈ ") == label


@pytest.mark.parametrize(
    ("size", "courses", "inches"),
    [
        ("modular", 3, 8),
        ("norman", 3, 8),
        ("standard", 3, 8),
        ("engineer modular", 5, 16),
        ("engineer norman", 5, 16),
        ("king", 5, 16),
        ("queen", 5, 16),
        ("roman", 2, 4),
        ("closure", 1, 4),
        ("utility", 1, 4),
    ],
)
def test_so_many_courses_make_so_many_inches(size: str, courses: int, inches: float) -> None:
    """BIA Technical Notes 10B, Table 1; *Standardized Brick Sizes*, Masonry Magazine, Oct 1993, p. 34."""
    assert _top_of_joint(_tall(size), courses) == pytest.approx(inches, abs=1e-9)


def test_three_bricks_and_their_joints_make_8_in_up_and_24_in_along() -> None:
    """Common practice of the trade for modular brick, no source."""
    layout = lay_out(rectangle(24, 8, "stack"))
    assert layout.by_kind() == {"stretcher": (9, 0)}
    assert layout.area.brick == pytest.approx(9 * 7.625 * 2.25)
