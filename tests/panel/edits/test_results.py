"""What single edits make of a panel."""

from dataclasses import replace

import pytest
from panels import FULL, PLAIN, arch, circle, inch, points, polygon, rect

from app.brickwork.bonds import BONDS
from app.brickwork.layout import lay_out
from app.brickwork.sizes import CATALOGUE
from app.panel.edits import edit_from
from app.panel.faults import Refused
from app.panel.values import Accepted, Brickwork, Edge, Fit, Fixing, Matter, Opening, Panel, Question, Side


def edited(panel: Panel, name: str, **typed: str) -> Panel:
    return edit_from(name, typed, "in", CATALOGUE, BONDS).apply(panel)


@pytest.mark.parametrize(
    ("shape", "side", "dx", "dy", "after"),
    [
        (rect(60, 90, 40, 50), "left", "4", "9", rect(64, 90, 36, 50)),
        (rect(60, 90, 40, 50), "right", "4", "9", rect(60, 90, 44, 50)),
        (rect(60, 90, 40, 50), "top", "4", "9", rect(60, 90, 40, 59)),
        (rect(60, 90, 40, 50), "bottom", "4", "9", rect(60, 99, 40, 41)),
        (rect(60, 90, 40, 50), "bottom left", "4", "9", rect(64, 99, 36, 41)),
        (rect(60, 90, 40, 50), "top right", "4", "9", rect(60, 90, 44, 59)),
        (circle(60, 90, 20), "right", "4", "0", circle(60, 90, 24)),
        (circle(60, 90, 20), "bottom", "0", "4", circle(60, 90, 16)),
        (arch(60, 90, 40, 50, 20), "left", "4", "0", arch(64, 90, 36, 50, 18)),
        (arch(60, 90, 40, 50, 8), "top", "0", "6", arch(60, 90, 40, 56, 8)),
        (polygon((60, 90), (90, 90), (75, 120)), "top", "3", "6", polygon((60, 90), (90, 90), (75, 126))),
        (
            polygon((9, 9), (30, 9), (30, 30), (9, 30)),
            "top left",
            "3",
            "6",
            polygon((12, 9), (30, 9), (30, 36), (12, 36)),
        ),
    ],
)
def test_a_dragged_side_moves_and_the_opposite_one_stays(shape, side, dx, dy, after):
    panel = replace(PLAIN, openings=(Opening("W1", shape),))
    assert edited(panel, "reshape_opening", opening="W1", side=side, dx=dx, dy=dy).openings[0].shape == after


def test_a_blank_mark_becomes_the_lowest_free_one_of_its_use():
    box = {"shape": "rect", "width": "9", "height": "9"}
    panel = edited(FULL, "add_opening", use="Window", x="9", y="9", **box)
    panel = edited(panel, "add_opening", use="window", x="29", y="9", **box)
    panel = edited(panel, "remove_opening", opening="W2")
    panel = edited(panel, "add_opening", use="window", x="49", y="9", **box)
    assert [opening.mark for opening in panel.openings[-2:]] == ["W3", "W2"]


def test_edges_keep_their_treatment_when_a_point_comes_and_goes():
    #  4 +--3--+ 3     edge 1 is on the right, edge 4 on the left
    split = edited(FULL, "add_point", edge="1")
    assert split.edges == (
        Edge(1, "return", inch(3.625)),
        Edge(2, "return", inch(3.625)),
        Edge(5, "flush"),
    )
    assert split.outline[2] == (inch(360), inch(150))
    assert edited(split, "remove_point", point="2") == FULL


def test_the_edge_that_closes_a_gap_is_treated_as_the_one_before_it():
    panel = replace(PLAIN, edges=(Edge(0, "flush"), Edge(3, "margin", None, inch(3))))
    after = edited(edited(panel, "add_point", edge="3", x="-10", y="10"), "remove_point", point="0")
    assert after.edges == (Edge(2, "margin", None, inch(3)), Edge(3, "margin", None, inch(3)))


def test_a_new_outline_keeps_edges_only_with_the_same_number_of_points():
    assert edited(FULL, "set_outline", width="360", height="384").edges == ()
    gable = "0,0; 360,0; 360,310; 180,390; 0,310"
    assert edited(FULL, "set_outline", points=gable).edges == FULL.edges


def test_a_corner_pulled_outwards_makes_the_panel_larger_and_moves_nothing_in_the_face():
    origin = (inch(0.375), inch(0.375))
    panel = replace(FULL, field=Brickwork("modular", "running", origin), base=inch(100))
    after = edited(panel, "move_point", point="0", x="-12", y="-6")
    assert after.outline[:2] == points((0, 0), (372, 6))
    assert after.base == inch(94)
    assert after.openings[0].shape == rect(72, 102, 48, 64)
    assert after.openings[4].shape == arch(262, 96, 48, 80, 24)
    assert after.field.origin == (inch(12.375), inch(6.375))
    assert after.zones[0].region == rect(68, 166.375, 56, 8)
    assert after.zones[1] == FULL.zones[1]
    assert after.strips[0].line == points((12, 186), (372, 186))
    assert after.fixings[0].line == points((192, 6), (192, 306))
    assert edited(after, "move_point", point="0", x="12", y="6") == panel


def test_an_edge_set_back_to_the_margin_is_as_every_edge():
    assert edited(FULL, "set_edge", edge="1", treatment="margin").edges == (Edge(4, "flush"),)
    own = edited(FULL, "set_edge", edge="1", treatment="margin", margin="2")
    assert own.edges == (Edge(1, "margin", None, inch(2)), Edge(4, "flush"))
    assert edited(own, "set_edge", edge="0", treatment="flush").edges[0] == Edge(0, "flush")


def test_brickwork_of_a_zone_is_its_own_and_keeps_its_origin():
    panel = edited(FULL, "set_origin", part="S1", x="56", y="160.375")
    panel = edited(panel, "set_brickwork", part="S1", size="norman", bond="stack")
    assert panel.zones[0].work == Brickwork("norman", "stack", (inch(56), inch(160.375)))
    assert panel.field == FULL.field
    assert edited(panel, "set_origin", part="S1").zones[0].work.origin is None


def test_a_soldier_band_stands_on_the_course_line_over_the_head_in_whole_bricks():
    # Soldier band of modular brick: 8 in. = 3 courses, faces per US Navy manual 14069, fig. 7-53.
    # Head at 160, margin 3/8: course line 60 at 3/8 + 60 x 8/3 = 160-3/8. Half a module is 4 in. past each jamb.
    window = replace(PLAIN, openings=(Opening("W1", rect(60, 96, 48, 64)),))
    panel = edited(window, "soldier_band", opening="W1")
    band = panel.zones[0].region
    assert (band.y, band.height) == (inch(160.375), inch(8))
    assert band.x.inches <= 56
    assert band.x.inches + band.width.inches - 0.375 >= 112
    assert band.x.inches == pytest.approx(168 - (band.x.inches + band.width.inches - 0.375))
    before, after = lay_out(window), lay_out(panel)
    assert after.by_kind()["soldier"] == (round(band.width.inches / 2.625), 0)
    assert after.courses == before.courses


def test_a_soldier_band_starts_on_the_next_course_line_where_the_head_is_off_the_module():
    window = replace(PLAIN, margin=inch(0), openings=(Opening("A1", arch(60, 96, 48, 61, 12)),))
    band = edited(window, "soldier_band", opening="A1").zones[0].region
    assert band.y.inches == pytest.approx(59 * 8 / 3, abs=1e-6)


def test_limits_left_blank_go_back_to_their_defaults():
    after = edited(FULL, "set_limits", smallest_cut="", least_piece=" ")
    assert (after.smallest_cut, after.least_piece) == (None, None)


def test_a_side_is_set_alone_and_kept_when_the_opening_moves():
    panel = edited(FULL, "set_side", opening="W1", side="left", treatment="return", depth="3.625")
    assert panel.openings[0].sides == (
        Side("left", "return", inch(3.625)),
        Side("sill", "margin", None, inch(0.5)),
    )
    moved = edited(panel, "move_opening", opening="W1", dx="4")
    assert moved.openings[0].sides == panel.openings[0].sides
    again = edited(panel, "set_side", opening="W1", side="left", treatment="flush")
    assert again.openings[0].sides[0] == Side("left", "flush")


def test_a_side_set_back_to_the_margin_is_as_every_side():
    assert edited(FULL, "set_side", opening="W1", side="sill", treatment="margin").openings[0].sides == ()


def test_an_opening_that_is_no_rectangle_any_more_drops_its_sides():
    after = edited(FULL, "place_opening", opening="W1", shape="circle", x="80", y="120", radius="20")
    assert after.openings[0].sides == ()
    kept = edited(FULL, "place_opening", opening="W1", shape="rect", x="60", y="96", width="40", height="64")
    assert kept.openings[0].sides == FULL.openings[0].sides


def test_a_released_panel_keeps_the_start_of_its_bond_and_a_joined_one_takes_the_walls():
    typed = edited(FULL, "set_origin", part="field", x="1", y="2")
    released = edited(typed, "release_panel")
    assert (released.released, released.field.origin) == (True, (inch(1), inch(2)))
    joined = edited(released, "join_wall")
    assert (joined.released, joined.field.origin) == (False, None)
    assert edited(typed, "join_wall") == FULL


def test_a_panel_is_not_released_twice():
    released = edited(FULL, "release_panel")
    edit = edit_from("release_panel", {}, "in")
    assert edit.why_not(released) == (
        "Found 'N2' released from the wall already, expected a panel that is joined to its wall."
    )


def test_what_matters_stays_where_the_form_says_nothing_and_ticks_go():
    fit = edited(FULL, "set_fit", courses="yes", heads="yes", matter_heads="required", matter_strips="free").fit
    assert fit == Fit(courses=True, heads=True, matter=Matter(heads="required", strips="free"))
    again = edited(replace(FULL, fit=fit), "set_fit", closers="on", matter_strips="wanted").fit
    assert again == Fit(closers=True, matter=Matter(heads="required"))


def test_a_finding_accepted_again_has_the_new_reason_in_its_old_place():
    both = edited(FULL, "accept_finding", code="small-piece", about="D1 left", by="A. Mason", reason="Hidden.")
    again = edited(both, "accept_finding", code="missed-head", about="W1 head", by="B. Bond", reason="By drawing A4.")
    assert again.accepted == (
        Accepted("missed-head", "W1 head", "B. Bond", "By drawing A4."),
        Accepted("small-piece", "D1 left", "A. Mason", "Hidden."),
    )
    assert edited(again, "withdraw_acceptance", code="missed-head", about="W1 head").accepted == again.accepted[1:]


def test_a_question_gets_the_lowest_free_mark_behind_the_others():
    two = edited(FULL, "ask_question", text="Second?")
    assert two.questions[-1] == Question("Q2", "Second?")
    again = edited(edited(two, "remove_question", question="Q1"), "ask_question", text="Third?")
    assert [question.mark for question in again.questions] == ["Q2", "Q1"]


def test_a_zone_raised_and_lowered_is_where_it_was():
    three = edited(FULL, "soldier_band", opening="A1")
    raised = edited(three, "raise_zone", zone="S1")
    assert [zone.mark for zone in raised.zones] == ["B1", "S1", "S2"]
    assert edited(raised, "lower_zone", zone="S1") == three


def test_openings_move_together_and_past_one_another_without_meeting():
    pair = (
        Opening("W1", rect(60, 96, 48, 64)),
        Opening("W2", rect(110, 96, 48, 64)),
        Opening("W3", rect(300, 96, 9, 9)),
    )
    after = edited(replace(PLAIN, openings=pair), "move_openings", marks="W1,W2", dx="20", dy="-1")
    assert [one.shape for one in after.openings] == [rect(80, 95, 48, 64), rect(130, 95, 48, 64), rect(300, 96, 9, 9)]


def test_openings_moved_off_the_face_are_refused_as_one_is():
    one = edit_from("move_opening", {"opening": "W1", "dx": "900"}, "in")
    many = edit_from("move_openings", {"marks": "W1", "dx": "900"}, "in")
    assert many.why_not(FULL) == one.why_not(FULL)
    assert "partly inside the outline" in (one.why_not(FULL) or "")


@pytest.mark.parametrize(
    ("side", "by", "first", "second"),
    [
        ("head", "2", rect(60, 96, 48, 66), rect(150, 20, 40, 86)),
        ("sill", "2", rect(60, 98, 48, 62), rect(150, 22, 40, 82)),
        ("left", "-2", rect(58, 96, 50, 64), rect(148, 20, 42, 84)),
        ("right", "-2", rect(60, 96, 46, 64), rect(150, 20, 38, 84)),
    ],
)
def test_one_side_of_several_openings_moves_and_the_opposite_ones_stay(side, by, first, second):
    panel = replace(PLAIN, openings=(Opening("W1", rect(60, 96, 48, 64)), Opening("D1", rect(150, 20, 40, 84))))
    after = edited(panel, "resize_openings", marks="W1, D1", side=side, by=by)
    assert [one.shape for one in after.openings] == [first, second]


def test_a_casting_day_left_blank_is_taken_away_and_the_brick_is_no_longer_placed():
    cast = edited(FULL, "set_casting", cast_on="2026-12-01", placed="yes")
    assert (cast.cast_on, cast.placed) == ("2026-12-01", True)
    assert edited(cast, "set_casting") == FULL


def test_several_fixing_lines_come_after_those_there_are_all_held_by_the_same():
    after = edited(FULL, "add_fixings", lines="90,0; 90,300 | 0,100; 60,100;\n99,100", by="tape")
    one, two = after.fixings[len(FULL.fixings) :]
    assert after.fixings[: len(FULL.fixings)] == FULL.fixings
    assert (one, two) == (
        Fixing(points((90, 0), (90, 300)), "tape"),
        Fixing(points((0, 100), (60, 100), (99, 100)), "tape"),
    )


@pytest.mark.parametrize(
    ("lines", "path", "found"),
    [
        ("90,0; 90,300 | 0,100; 60", "lines", "line 2: point 1: '60'"),
        ("90,0; 90,300 | 5,x; 60,5", "lines", "line 2: point 0: 'x', x at character 1"),
        ("90,0; 90,300 | 9,9", "fixings[{}].line", "1 point"),
        ("| |", "lines", "nothing"),
        ("9,9" + "|9,9" * 1000, "lines", "1,001 lines"),
    ],
)
def test_one_wrong_fixing_line_keeps_all_out(lines, path, found):
    panel = replace(FULL, fixings=())
    with pytest.raises(Refused) as refused:
        edited(panel, "add_fixings", lines=lines)
    (fault,) = refused.value.faults
    assert (fault.path, fault.found) == (path.format(1), found)
