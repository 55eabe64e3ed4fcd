"""Held lines and control lines along the tape."""

from shapes import BOX, example, rectangle

from app.brickwork.layout import lay_out
from app.documents.project_file import read_panel
from app.liner.lines import Line, control_lines, held_lines
from app.liner.tape import tapes
from app.panel.project import Liner
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
    assert across == [(20, "jamb W1"), (36, "jamb W1"), (64, "edge 1")]
    assert up == [(10, "sill W1"), (30, "head W1"), (40, "top")]


def test_control_lines_are_counted_from_the_hook() -> None:
    across, up = both(rectangle(64, 40, openings=[WINDOW]), "bed upper left")
    assert across == [(28, "jamb W1"), (44, "jamb W1"), (64, "edge 3")]
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
    assert across == [(16, "zone K1"), (40, "zone K1"), (64, "edge 1")]
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


def test_a_slanted_line_holds_neither_way() -> None:
    fixings = [{"line": [[10, 0], [50, 40]]}]
    panel = {"mark": "S", "thickness": 7, "outline": BOX, "fixings": fixings}
    across, up = held(read_panel({**panel, "field": {"size": "modular", "bond": "running"}}))
    assert len(across) == len(up) == 1
