"""What single edits make of a panel."""

from dataclasses import replace

import pytest
from panels import FULL, PLAIN, arch, circle, inch, points, polygon, rect

from app.brickwork.bonds import BONDS
from app.brickwork.layout import lay_out
from app.brickwork.sizes import CATALOGUE
from app.panel.edits import edit_from
from app.panel.values import Brickwork, Edge, Opening, Panel


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
