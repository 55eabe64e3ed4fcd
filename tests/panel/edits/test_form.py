"""A form's texts become exact values, or faults beside their fields."""

import pytest
from panels import FULL

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.lengths import Length
from app.panel.edits import edit_from
from app.panel.faults import Refused

BROKEN = [
    ("move_opening", {"opening": "W1", "dx": "12'14\""}, "dx", "14", "inches below 12"),
    ("move_opening", {}, "opening", "nothing", "the opening's mark"),
    ("set_panel", {"mark": "N1"}, "thickness", "nothing", "a length, for example"),
    ("set_panel", {"mark": " ", "thickness": "8"}, "mark", "nothing", "the panel's mark"),
    ("move_point", {"point": "1.5", "x": "1", "y": "1"}, "point", "'1.5'", "a whole number"),
    ("move_point", {"point": "٣", "x": "1", "y": "1"}, "point", "'٣'", "a whole number"),
    ("set_outline", {"points": "0,0; 9,0; 9"}, "points", "point 2: '9'", "two lengths with a comma between"),
    ("set_outline", {"points": "0,0; 9,x; 9,9"}, "points", "point 1: 'x'", "a unit"),
    ("set_outline", {"points": "0,0;" * 1001}, "points", "1001 points", "at most 1000"),
    ("add_strip", {"width": "1"}, "line", "nothing", "points as x, y"),
    ("set_origin", {"part": "field", "x": "3/8"}, "y", "nothing", "a length"),
    ("set_edge", {"edge": "0", "treatment": "return"}, "depth", "nothing", "a length"),
    ("set_edge", {"edge": "0", "treatment": "fush"}, "treatment", "'fush'", "the nearest is flush"),
    ("set_brickwork", {"part": "field", "size": "modular", "bond": "x"}, "bond", "'x'", "one of"),
    ("set_brickwork", {"part": "field", "size": "moduler", "bond": "stack"}, "size", "'moduler'", "nearest is modular"),
    ("add_opening", {"shape": "oval"}, "shape", "'oval'", "one of rect, circle, arch, polygon"),
    ("reshape_opening", {"opening": "W1", "side": "lft"}, "side", "'lft'", "the nearest is left"),
    ("set_fit", {"courses": "perhaps"}, "courses", "'perhaps'", "yes or no"),
    ("set_fit", {"matter_heads": "requird"}, "matter_heads", "'requird'", "the nearest is required"),
    ("set_side", {"opening": "W1", "side": "left", "treatment": "return"}, "depth", "nothing", "a length"),
    ("set_side", {"opening": "W1", "side": "top", "treatment": "flush"}, "side", "'top'", "left, right, head, sill"),
    ("accept_finding", {"code": "a", "about": "b", "by": "c"}, "reason", "nothing", "a reason of at least one letter"),
    ("accept_finding", {"code": "a", "about": "b", "by": " ", "reason": "d"}, "by", "nothing", "the name of who"),
    (
        "accept_finding",
        {"code": "a", "about": "b", "by": "c", "reason": "d" * 301},
        "reason",
        "301 characters",
        "at most 300",
    ),
    ("ask_question", {"text": "w" * 1200}, "text", "1,200 characters", "at most 600 characters"),
    ("ask_question", {"text": "Why\nso?"}, "text", "'Why", "on one line"),
    ("move_openings", {"marks": " , ", "dx": "1"}, "marks", "nothing", "the openings' marks with commas between"),
    ("resize_openings", {"marks": "W1", "side": "head"}, "by", "nothing", "a length"),
    ("set_laying", {"corner": "bed lower lft", "direction": "up"}, "corner", "'bed lower lft'", "nearest is bed lower"),
    ("set_laying", {"corner": "bed upper left"}, "direction", "nothing", "one of across, up"),
    ("set_casting", {"cast_on": "2026-02-30"}, "cast_on", "'2026-02-30'", "such as 2026-12-01"),
    ("set_casting", {"cast_on": "20261201"}, "cast_on", "'20261201'", "such as 2026-12-01"),
    ("set_casting", {"placed": "perhaps"}, "placed", "'perhaps'", "yes or no"),
]


@pytest.mark.parametrize(("name", "typed", "path", "found", "expected"), BROKEN, ids=[f"{c[0]} {c[2]}" for c in BROKEN])
def test_what_cannot_be_read_is_refused_beside_its_field(name, typed, path, found, expected):
    with pytest.raises(Refused) as refused:
        edit_from(name, typed, "in", CATALOGUE, BONDS)
    (fault,) = refused.value.faults
    assert fault.path == path
    assert found in fault.found
    assert expected in fault.expected


ABSENT = [
    ("move_opening", {"opening": "W9", "dx": "1"}, "opening", "one of W1, D1, V1, L1, A1"),
    ("remove_zone", {"zone": "S9"}, "zone", "one of S1, B1"),
    ("remove_strip", {"strip": "Q"}, "strip", "one of R1"),
    ("set_brickwork", {"part": "S9", "size": "modular", "bond": "stack"}, "part", "one of field, S1, B1"),
    ("remove_point", {"point": "5"}, "point", "point 0 to 4"),
    ("add_point", {"edge": "-1"}, "edge", "edge 0 to 4"),
    ("remove_fixing", {"fixing": "1"}, "fixing", "0 to 0"),
    ("set_side", {"opening": "W9", "side": "left", "treatment": "flush"}, "opening", "one of W1, D1, V1, L1, A1"),
    ("withdraw_acceptance", {"code": "small-piece", "about": "W1 head"}, "about", "one of missed-head of W1 head"),
    ("remove_question", {"question": "Q9"}, "question", "one of Q1"),
    ("raise_zone", {"zone": "B1"}, "zone", "a zone with another above it"),
    ("lower_zone", {"zone": "S1"}, "zone", "a zone with another below it"),
    ("lower_zone", {"zone": "S9"}, "zone", "one of S1, B1"),
    ("move_openings", {"marks": "W1, W9", "dx": "1"}, "marks", "one of W1, D1, V1, L1, A1"),
    ("resize_openings", {"marks": "W1,A1", "side": "head", "by": "1"}, "marks", "rectangles only"),
    ("join_wall", {}, "released", "a panel that is released"),
]


@pytest.mark.parametrize(("name", "typed", "path", "expected"), ABSENT, ids=[case[0] for case in ABSENT])
def test_what_is_not_there_is_refused_beside_its_field_with_what_there_is(name, typed, path, expected):
    edit = edit_from(name, typed, "in", CATALOGUE, BONDS)
    assert expected in (edit.why_not(FULL) or "")
    with pytest.raises(Refused) as refused:
        edit.apply(FULL)
    assert [fault.path for fault in refused.value.faults] == [path]


def test_typed_lengths_keep_their_text_and_moved_ones_are_plain():
    typed = {"opening": "W1", "shape": "rect", "x": " 5'-0\" ", "y": "2440 mm", "width": "48", "height": "5'4"}
    after = edit_from("place_opening", typed, "in").apply(FULL).openings[0].shape
    assert [length.typed for length in (after.x, after.y, after.width, after.height)] == [
        "5'-0\"",
        "2440 mm",
        "48",
        "5'4",
    ]
    assert after.y == Length(2_440_000_000)
    moved = edit_from("move_opening", {"opening": "W1", "dx": "1"}, "in")
    shape = moved.apply(edit_from("place_opening", typed, "in").apply(FULL)).openings[0].shape
    assert (shape.x, shape.x.typed) == (Length(61 * 25_400_000), None)
    assert (shape.y.typed, shape.width.typed) == ("2440 mm", "48")


def test_a_bare_number_is_in_the_projects_unit():
    edit = edit_from("set_margin", {"margin": "10"}, "mm")
    assert edit.apply(FULL).margin == Length(10_000_000)


def test_a_wrong_result_says_why_not():
    edit = edit_from("move_opening", {"opening": "W1", "dx": "90", "dy": "-50"}, "in")
    assert edit.why_not(FULL) == "Found D1 overlapping W1 by 3'-4\" x 3'-2\", expected openings that do not overlap."
    assert edit_from("set_edge", {"edge": "1", "treatment": "flush"}, "in").why_not(FULL) is None
