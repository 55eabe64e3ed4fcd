"""Held lines and control lines along the tape."""

from math import inf

import numpy as np
import pytest
from growth_field import growth_at
from hypothesis import given, settings
from hypothesis import strategies as st
from shapes import BOX, example, rectangle

from app.brickwork.layout import lay_out
from app.documents.project_file import read_panel
from app.liner.drift import drift
from app.liner.lines import Line, control_lines, held_lines, holds
from app.liner.tape import tapes
from app.panel.faults import Refused
from app.panel.laying import CORNERS
from app.panel.project import Day, Liner
from app.panel.values import Panel

SMALL = Liner(columns=2, rows=3)
"""16 in. along, 8 in. up."""

WINDOW = {"mark": "W1", "rect": [20, 10, 16, 20]}


def both(panel: Panel, corner: str = "bed lower right") -> tuple[list[Line], list[Line]]:
    layout = lay_out(panel)
    across, up = tapes(layout, corner)
    return control_lines(layout, across), control_lines(layout, up)


def held(panel: Panel, corner: str = "bed lower right") -> tuple[list[Line], list[Line]]:
    layout = lay_out(panel)
    across, up = tapes(layout, corner)
    return held_lines(layout, across, SMALL), held_lines(layout, up, SMALL)


def test_jambs_sills_heads_and_the_far_edges_are_control_lines() -> None:
    """
    64 x 40 in., window 16 x 20 at 20, 10, hook at the face's lower left.
    """
    across, up = both(rectangle(64, 40, openings=[WINDOW]))
    assert across == [(20, "jamb W1"), (36, "jamb W1"), (64, "form edge, bed left")]
    assert up == [(10, "sill W1"), (30, "head W1"), (40, "top")]


def test_control_lines_are_counted_from_the_hook() -> None:
    across, up = both(rectangle(64, 40, openings=[WINDOW]), "bed upper left")
    assert across == [(28, "jamb W1"), (44, "jamb W1"), (64, "form edge, bed right")]
    assert up == [(10, "head W1"), (30, "sill W1"), (40, "base")]


def test_control_lines_at_one_place_are_one_with_both_names() -> None:
    second = {"mark": "W2", "rect": [40, 10, 8, 12]}
    _, up = both(rectangle(64, 40, openings=[WINDOW, second]))
    assert up[0] == (10, "sill W1, sill W2")


def test_a_door_has_no_sill_below_the_hook() -> None:
    _, up = both(rectangle(64, 40, openings=[{"mark": "D1", "rect": [20, -2, 16, 32]}]))
    assert up == [(30, "head D1"), (40, "top")]


def test_strips_and_zone_edges_are_control_lines() -> None:
    across, up = both(
        rectangle(
            64,
            40,
            strips=[{"mark": "R1", "line": [[0, 22], [64, 22]], "width": 0.75}],
            zones=[{"mark": "K1", "rect": [16, 8, 24, 8], "size": "modular", "bond": "stack"}],
        )
    )
    assert across == [(16, "zone K1"), (40, "zone K1"), (64, "form edge, bed left")]
    assert up == [(8, "zone K1"), (16, "zone K1"), (22, "strip R1"), (40, "top")]


def test_a_slanted_far_side_is_still_read_at_its_farthest_point() -> None:
    across, up = both(example("slanted"))
    assert across == [(60, "far edge")]
    assert up == [(44, "top")]


def test_only_the_starting_corner_holds_a_plain_panel() -> None:
    assert held(rectangle(64, 40)) == ([(0, "starting corner")], [(0, "starting corner")])


def test_an_upright_strip_holds_along_and_a_level_one_up() -> None:
    strips = [
        {"mark": "R1", "line": [[0, 22], [64, 22]], "width": 0.75},
        {"mark": "R2", "line": [[30, 0], [30, 40]], "width": 0.75},
    ]
    across, up = held(rectangle(64, 40, strips=strips))
    assert across == [(0, "starting corner"), (30, "strip R2")]
    assert up == [(0, "starting corner"), (22, "strip R1")]


def test_fixing_lines_hold_and_are_counted_from_one() -> None:
    across, up = held(rectangle(64, 40, fixings=[{"line": [[48, 0], [48, 40]], "by": "glue"}]), "bed lower left")
    assert across == [(0, "starting corner"), (16, "fixing 1")]
    assert up == [(0, "starting corner")]


def test_a_line_that_stops_a_sheet_short_holds_nothing() -> None:
    """Sheets are 8 in. up: a line that ends 7 in. below the top still holds the last sheet, one that ends 9 in. not."""
    ends = {33: [(0, "starting corner"), (48, "fixing 1")], 31: [(0, "starting corner")]}
    for end, expected in ends.items():
        assert held(rectangle(64, 40, fixings=[{"line": [[48, 0], [48, end]]}]))[0] == expected


DOOR = {"mark": "D1", "rect": [20, -2, 16, 30]}
BROKEN = [{"line": [[24, 0], [24, 10]]}, {"line": [[24, 30], [24, 40]]}]
"""A line at 24 in. over a face of 40 in., broken at the window of 20 in."""


def names_held(**things: object) -> list[Line]:
    """What holds along, from the face's left, beside the starting corner."""
    return held(rectangle(64, 40, **things), "bed lower right")[0][1:]  # type: ignore[arg-type]


def test_lines_broken_at_an_opening_hold_like_one() -> None:
    assert names_held(openings=[WINDOW], fixings=BROKEN) == [(24, "fixing 1, fixing 2")]
    strips = [{"mark": f"R{k}", "width": 0.75, **line} for k, line in enumerate(BROKEN, start=1)]
    assert names_held(openings=[WINDOW], strips=strips) == [(24, "strip R1, strip R2")]
    assert names_held(openings=[WINDOW], strips=strips[1:], fixings=BROKEN[:1]) == [(24, "fixing 1, strip R2")]
    level = [{"line": [[0, 20], [20, 20]]}, {"line": [[64, 20], [36, 20]]}]
    wide = {"mark": "W1", "rect": [20, 10, 16, 20]}
    assert held(rectangle(64, 40, openings=[wide], fixings=level))[1][1:] == [(20, "fixing 1, fixing 2")]


def test_lines_broken_where_brick_is_hold_each_its_own_part() -> None:
    """20 in. between them without an opening, against sheets of 8 in."""
    layout = lay_out(rectangle(64, 40, fixings=BROKEN))
    across, _ = tapes(layout, "bed lower right")
    assert [(hold.low, hold.high) for hold in holds(layout, across, SMALL)[1:]] == [(-inf, 10), (30, inf)]
    assert names_held(fixings=BROKEN) == []


def test_a_gap_counts_without_its_openings() -> None:
    """Brick of 7 in. below the window and of 7 in. above it is free, each less than a sheet of 8 in.; then 9 in."""
    for free, expected in ((7, [(24, "fixing 1, fixing 2")]), (9, [])):
        short = [{"line": [[24, 0], [24, 10 - free]]}, {"line": [[24, 30 + free], [24, 40]]}]
        assert names_held(openings=[WINDOW], fixings=short) == expected


def test_a_line_over_a_door_holds_down_to_the_foot() -> None:
    assert names_held(openings=[DOOR], fixings=[{"line": [[24, 28], [24, 40]]}]) == [(24, "fixing 1")]
    assert names_held(openings=[WINDOW], fixings=[{"line": [[24, 28], [24, 40]]}]) == []


def test_brick_right_beyond_a_line_counts_not_what_is_before_it() -> None:
    """At the near jamb the window lies beyond the line, at the far one brick does."""
    for x, expected in ((20, [(20, "fixing 1, fixing 2")]), (36, [])):
        jamb = [{"line": [[x, 0], [x, 10]]}, {"line": [[x, 30], [x, 40]]}]
        assert names_held(openings=[WINDOW], fixings=jamb) == expected
    jamb = [{"line": [[36, 0], [36, 10]]}, {"line": [[36, 30], [36, 40]]}]
    assert held(rectangle(64, 40, openings=[WINDOW], fixings=jamb), "bed lower left")[0][1:] == [
        (28, "fixing 1, fixing 2")
    ]


def test_a_line_drawn_twice_at_one_place_is_one() -> None:
    whole = {"line": [[24, 0], [24, 40]]}
    assert names_held(fixings=[whole, whole]) == [(24, "fixing 1, fixing 2")]
    bent = {"line": [[24, 0], [24, 15], [30, 20], [24, 21], [24, 40]]}
    assert names_held(fixings=[bent]) == [(24, "fixing 1")]


@settings(max_examples=150, deadline=None, derandomize=True)
@given(
    st.lists(st.tuples(st.integers(0, 60), st.integers(4, 40)), min_size=1, max_size=3),
    st.lists(st.tuples(st.integers(1, 60), st.integers(1, 40)), max_size=2),
    st.sampled_from(["bed lower right", "bed lower left"]),
)
def test_parts_hold_like_a_whole_line_if_no_stretch_as_long_as_a_sheet_is_free(
    lines: list[tuple[int, int]], windows: list[tuple[int, int]], corner: str
) -> None:
    """Against a count inch by inch: 100 in. high, ends on whole inches, sheets of 8 in., windows around the line."""
    openings = [{"mark": f"W{k}", "rect": [20, low, 16, length]} for k, (low, length) in enumerate(windows)]
    fixings = [{"line": [[28, low], [28, min(100, low + length)]]} for low, length in lines]
    try:
        panel = rectangle(64, 100, openings=openings, fixings=fixings)
    except Refused:
        return
    taken = [(low, low + length) for low, length in (*lines, *windows)]
    free = "".join("." if any(low <= inch < high for low, high in taken) else "F" for inch in range(100))
    assert bool(held(panel, corner)[0][1:]) == (max(map(len, free.split("."))) < 8)


def test_drift_of_a_broken_line_is_that_of_a_whole_one() -> None:
    """Readings, windows and growth of all that is beyond."""
    whole, broken = (
        rectangle(200, 40, openings=[WINDOW], fixings=fixings, laying={"corner": "bed lower right"})
        for fixings in ([{"line": [[24, 0], [24, 40]]}], BROKEN)
    )
    one, two = (drift(lay_out(panel), SMALL, Day()) for panel in (whole, broken))
    assert [point.grows_per_degree for point in one.checkpoints] == [
        point.grows_per_degree for point in two.checkpoints
    ]
    assert [(span.start, span.end) for span in one.spans] == [(span.start, span.end) for span in two.spans]
    x, y = np.meshgrid(np.linspace(0, 200, 51), np.linspace(0, 40, 41))
    grown = [growth_at(lay_out(panel), SMALL, 100, x.ravel(), y.ravel()) for panel in (whole, broken)]
    assert np.array_equal(grown[0], grown[1])


def test_a_slanted_line_holds_neither_way() -> None:
    fixings = [{"line": [[10, 0], [50, 40]]}]
    panel = {"mark": "S", "thickness": 7, "outline": BOX, "fixings": fixings}
    across, up = held(read_panel({**panel, "field": {"size": "modular", "bond": "running"}}))
    assert len(across) == len(up) == 1


@pytest.mark.parametrize("corner", CORNERS)
def test_a_line_a_little_out_of_square_holds_from_its_end_nearest_the_hook(corner: str) -> None:
    """A glue line 1/16 in. out over 10 ft, one 3/8 in. out, and a strip: from the left the low end counts."""
    is_turned = corner.endswith("left")
    for out in (1 / 16, 3 / 8):
        lines = [[[120, 0], [120 + out, 120]]]
        for things in (
            {"fixings": [{"line": line} for line in lines]},
            {"strips": [{"mark": "R1", "line": lines[0], "width": 0.75}]},
        ):
            layout = lay_out(rectangle(240, 120, laying={"corner": corner}, **things))
            across = next(tape for tape in tapes(layout, corner) if tape.axis == "x")
            expected = 240 - 120 - out if is_turned else 120
            assert [at for at, _ in held_lines(layout, across, SMALL)] == [0, pytest.approx(expected)]
            assert not [one for one in drift(layout, SMALL, Day()).findings if one.code == "liner-line-askew"]


@pytest.mark.parametrize("line", [[[120, 0], [121, 120]], [[120, 0], [120.3, 4]], [[0, 10], [240, 100]]])
def test_a_line_square_to_neither_axis_holds_nothing_and_says_so(line: list[list[float]]) -> None:
    layout = lay_out(rectangle(240, 120, fixings=[{"line": line}], laying={"corner": "bed lower right"}))
    for tape in tapes(layout, "bed lower right"):
        assert [name for _, name in held_lines(layout, tape, SMALL)] == ["starting corner"]
    (finding,) = (one for one in drift(layout, SMALL, Day()).findings if one.code == "liner-line-askew")
    assert finding.text == "Fixing 1 is not square to either axis, so it resets no growth."
    assert (finding.severity, finding.about) == ("note", "fixing 1")
    assert (finding.x, finding.y) == tuple((a + b) / 2 for a, b in zip(*line, strict=True))
