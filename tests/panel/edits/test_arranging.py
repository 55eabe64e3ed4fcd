"""Openings arranged: lined up exactly, gaps equal to the nanometre, mirrored twice as they were, each its own mark."""

from dataclasses import replace
from itertools import pairwise

import pytest

from app.lengths import Length, parse
from app.panel.edits import edit_from
from app.panel.edits.align_openings import LINES
from app.panel.extents import extent
from app.panel.faults import Refused
from app.panel.shapes import Arch, Circle, Polygon, Rect
from app.panel.values import Brickwork, Opening, Panel, Side


def inch(value: str) -> Length:
    return parse(value, "in")


def box(*values: str) -> Rect:
    return Rect(*map(inch, values))


W, H = inch("480"), inch("240")
ZERO = Length(0)
SLANTED = Polygon(((inch("300"), inch("40")), (inch("331"), inch("44")), (inch("310"), inch("90 5/16"))))
PANEL = Panel(
    "P",
    ((ZERO, ZERO), (W, ZERO), (W, H), (ZERO, H)),
    inch("7 1/4"),
    Brickwork("modular", "running"),
    openings=(
        Opening("W1", box("10", "20", "30 1/2", "40"), "window", (Side("left", "return", inch("3 5/8")),)),
        Opening("W2", Arch(*map(inch, ("71 3/16", "33", "41", "52 5/8", "9"))), "window"),
        Opening("V1", Circle(*map(inch, ("200", "101", "9 7/8"))), "vent"),
        Opening("L1", SLANTED, "louver"),
    ),
)
MARKS = "W1, W2, V1, L1"


def made(name: str, panel: Panel = PANEL, **typed: str) -> Panel:
    return edit_from(name, typed, "in").apply(panel)


def place(opening: Opening, line: str) -> int:
    found = extent(opening.shape)
    middles = {"middle": (found.left + found.right) // 2, "level": (found.foot + found.head) // 2}
    edges = {"left": found.left, "right": found.right, "head": found.head, "sill": found.foot}
    return (middles | edges)[line]


@pytest.mark.parametrize("line", LINES)
def test_all_come_to_lie_on_the_first_ones_line(line: str) -> None:
    after = edit_from("align_openings", {"marks": MARKS, "line": line}, "in").changed(PANEL)
    first = place(PANEL.openings[0], line)
    assert all(abs(place(one, line) - first) <= 1 for one in after.openings)
    assert [extent(one.shape).width for one in after.openings] == [extent(one.shape).width for one in PANEL.openings]


def test_gaps_become_equal_and_the_outermost_stay() -> None:
    after = made("distribute_openings", marks=MARKS, way="across").openings
    boxes = [extent(one.shape) for one in after]
    gaps = [b.left - a.right for a, b in pairwise(boxes)]
    assert max(gaps) - min(gaps) <= 2, "nanometres"
    assert (after[0], after[3]) == (PANEL.openings[0], PANEL.openings[3])


def test_two_cannot_be_spaced() -> None:
    with pytest.raises(Refused) as refused:
        made("distribute_openings", marks="W1, W2", way="across")
    assert [(f.path, f.found, f.expected) for f in refused.value.faults] == [("marks", "2 openings", "at least 3")]


def test_mirrored_twice_is_as_it_was_and_once_changes_sides() -> None:
    once = made("mirror_openings", marks=MARKS)
    assert once.openings[0].sides[0].side == "right"
    assert extent(once.openings[0].shape).right == W.nm - inch("10").nm
    again = made("mirror_openings", once, marks=MARKS)
    assert [extent(one.shape) for one in again.openings] == [extent(one.shape) for one in PANEL.openings]
    assert again.openings[0].sides == PANEL.openings[0].sides


def test_copies_stand_at_equal_steps_with_marks_of_their_own() -> None:
    after = made("copy_openings", replace(PANEL, openings=PANEL.openings[:1]), marks="W1", dx="4'-2 1/2\"", count="3")
    assert [one.mark for one in after.openings] == ["W1", "W2", "W3", "W4"]
    lefts = [extent(one.shape).left for one in after.openings]
    assert [b - a for a, b in pairwise(lefts)] == [inch("50 1/2").nm] * 3
    assert all(one.sides == PANEL.openings[0].sides for one in after.openings)


def test_a_grid_has_its_clear_gaps_and_its_count() -> None:
    alone = replace(PANEL, openings=PANEL.openings[:1])
    after = made("grid_openings", alone, opening="W1", columns="4", rows="3", across="20", up="12 1/4")
    boxes = [extent(one.shape) for one in after.openings]
    assert len(boxes) == len({one.mark for one in after.openings}) == 12
    assert boxes[1].left - boxes[0].right == inch("20").nm
    assert boxes[4].foot - boxes[0].head == inch("12 1/4").nm


def test_a_grid_beyond_the_panel_is_refused_with_the_place() -> None:
    with pytest.raises(Refused) as refused:
        made("grid_openings", opening="W1", columns="30", rows="1", across="20")
    assert any("openings[" in fault.path for fault in refused.value.faults)


@pytest.mark.parametrize(
    ("dimension", "read"),
    [
        ("width", lambda found: found.width),
        ("left", lambda found: found.left),
        ("foot", lambda found: found.foot),
        ("right", lambda found: W.nm - found.right),
        ("head", lambda found: H.nm - found.head),
    ],
)
@pytest.mark.parametrize("k", range(4))
def test_the_dimension_typed_is_what_comes_out(dimension: str, read, k: int) -> None:
    mark = PANEL.openings[k].mark
    asked = {"thing": f"openings/{mark}", "dimension": dimension, "length": "21 3/16"}
    after = edit_from("set_dimension", asked, "in").changed(PANEL)
    assert abs(read(extent(after.openings[k].shape)) - inch("21 3/16").nm) <= 1
    assert after.openings[:k] + after.openings[k + 1 :] == PANEL.openings[:k] + PANEL.openings[k + 1 :]


def test_a_panel_made_wider_keeps_its_left() -> None:
    after = made("set_dimension", thing="outline", dimension="width", length="41'-0")
    assert (after.width, after.height) == (492, 240)
    assert after.openings == PANEL.openings
