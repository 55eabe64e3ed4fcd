"""Ends of courses at jambs and piers, and laps: what the checks say of them."""

from dataclasses import replace
from typing import Any

import pytest
from shapes import case, example, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.checks.broken_bond import check as broken_bond
from app.brickwork.checks.lap import check as lap
from app.brickwork.checks.small_piece import check as small_piece
from app.brickwork.checks.unsymmetrical_pier import check as unsymmetrical_pier
from app.brickwork.laps import is_mirrored, own_least_lap
from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.panel.values import Fit

MODULAR = CATALOGUE["modular"]


def laid(width: float, bond: str = "running", closers: bool = False, **more: Any) -> Layout:
    return lay_out(replace(rectangle(width, 40, bond, **more), fit=Fit(closers=closers)))


@pytest.mark.parametrize(
    ("bond", "inches"),
    [
        ("running", 4), ("third-raked", 8 / 3), ("third-alternating", 8 / 3), ("quarter-raked", 2), ("flemish", 2),
        ("english", 2), ("common-6", 2), ("stack", 0), ("soldier", 0), ("herringbone-45", 0), ("basket-weave", 0),
    ],
)  # fmt: skip
def test_a_bonds_own_lap(bond: str, inches: float) -> None:
    """Half, a third and a quarter of the 8 in. module by their names; Flemish and English a quarter, headers centred on
    stretchers (definitions in a pocket guide of a US masonry institute, 2012)."""
    assert own_least_lap(BONDS[bond], MODULAR) == pytest.approx(inches)


def test_raked_bonds_have_no_mirror() -> None:
    mirrored = {name for name, bond in BONDS.items() if is_mirrored(bond, MODULAR)}
    assert {"running", "stack", "flemish", "english", "english-cross", "common-5", "soldier"} <= mirrored
    assert not mirrored & {"third-raked", "third-alternating", "quarter-raked", "herringbone-45"}


@pytest.mark.parametrize("bond", sorted(BONDS))
def test_no_bond_lines_up_joints_by_its_own_lattice(bond: str) -> None:
    assert list(lap(laid(61.25, bond, closers=False), "in")) == []


def test_closers_that_line_joints_up_are_found_once_at_the_edge_with_the_least_lap() -> None:
    """Running bond, 61-1/4 in.: courses end in 5-1/4 in., its left joint at 55-13/16, and in 1-1/4 in., which becomes a
    half with the joint at 57-7/16: a lap of 1-5/8, under a quarter of 7-5/8 in."""
    found = list(lap(laid(61.25, closers=True), "in"))
    assert [(one.code, one.severity, one.about) for one in found] == [("lap", "warning", "right edge")]
    assert 'the least lap is 1 5/8", ≈ 1 15/16" breaks joints' in found[0].text
    assert found[0].x == pytest.approx(55.8125)
    assert "in 14 places" in found[0].text


def test_a_half_and_a_three_quarter_break_joints() -> None:
    """The way out of 2 in. pieces in *Bricking around openings*, Masonry Construction magazine: laps are 2 in."""
    layout = laid(62, closers=True)
    assert layout.small == 0
    assert list(lap(layout, "in")) == []
    assert list(broken_bond(layout, "in")) == []


def test_stacked_courses_with_closers_are_no_lined_up_joints() -> None:
    assert list(lap(laid(61.25, "stack", closers=True), "in")) == []


def test_a_jamb_where_a_piece_is_left_out_is_a_broken_bond() -> None:
    """60-3/16 in. leaves 3/16 in. of every other course, thinner than 1/4: the joint there is 3/8 + 3/16 = 9/16."""
    layout = laid(60.1875)
    (found,) = broken_bond(layout, "in")
    assert (found.code, found.about, found.x) == ("broken-bond", "right edge", 60.1875)
    assert "7 of 15" in found.text or "8 of 15" in found.text
    assert '9/16"' in found.text
    assert '1/4"' in found.text


def test_a_joint_in_range_is_no_broken_bond() -> None:
    """3/8 + 1/8 = 1/2 in., the most that a 3/8 in. joint may be (common practice)."""
    assert list(broken_bond(laid(60.125), "in")) == []


def test_the_bonds_own_cut_lengths_are_no_broken_bond() -> None:
    for bond in BONDS:
        assert list(broken_bond(laid(61.25, bond), "in")) == []


def test_a_closer_that_is_neither_half_nor_three_quarter_breaks_the_bond() -> None:
    """Flemish, jamb of 1-1/4 in. and a header: one piece of 1-1/4 + 3/8 + 3-5/8 = 5-1/4 in."""
    panel = replace(example("two windows", bond="flemish"), fit=Fit(closers=True))
    found = {one.about: one.text for one in broken_bond(lay_out(panel), "in")}
    assert '5 1/4" where the bond\'s own is 1 1/4"' in found["right jamb W1"]


def test_a_pier_narrower_than_a_brick_is_cut_at_both_its_sides_by_the_bond_itself() -> None:
    """Between a strip that ends at 60.3 + 0.375 = 60.675 and a jamb at 62.5 - 0.375 = 62.125 in. stand 1.45 in."""
    more = {"openings": [{"mark": "W2", "rect": [62.5, 20, 30, 40]}]}
    strip = {"strips": [{"mark": "S1", "line": [[60.3, 0], [60.3, 80]], "width": 0.75}]}
    panel = replace(rectangle(140, 80, margin=0.375, **more, **strip), fit=Fit(closers=True))
    layout = lay_out(panel)
    assert float(layout.units.width[layout.units.x > 60.67].min()) == pytest.approx(1.45)
    assert list(broken_bond(layout, "in")) == []


def test_the_door_of_the_trades_example_has_unlike_piers() -> None:
    """11 ft wall, 6 ft door: 30 in. piers of 8 in. brick need 6 and 2 in. pieces nominal in alternate courses
    (Masonry Construction magazine, *Eliminating odd-size bricks around openings*), whole and half at the far end."""
    layout = lay_out(case("door"))
    found = list(unsymmetrical_pier(layout, "in"))
    assert {one.about for one in found} == {"pier left edge to left jamb D1", "pier right jamb D1 to right edge"}
    assert all(one.severity == "note" for one in found)
    assert any('7 5/8" and 6"' in one.text for one in found)
    assert {one.about for one in small_piece(layout, "in")} == {"left jamb D1", "right jamb D1"}


def test_a_pier_of_whole_and_half_bricks_is_alike_at_both_ends() -> None:
    """Two openings a pier of 3-1/2 modules less a joint apart, from a module line: whole left, half right by turns;
    of 3 modules less a joint: whole at both ends or half at both ends."""
    for width, unlike in ((28 - 0.375, 1), (24 - 0.375, 0)):
        openings = [{"mark": "W1", "rect": [8, 8, 24, 16]}, {"mark": "W2", "rect": [32 + width, 8, 24, 16]}]
        found = list(unsymmetrical_pier(laid(160, openings=openings), "in"))
        assert sum(one.about == "pier right jamb W1 to left jamb W2" for one in found) == unlike


@pytest.mark.parametrize("bond", ["third-raked", "quarter-raked", "herringbone-45"])
def test_bonds_without_a_mirror_have_no_unlike_piers(bond: str) -> None:
    assert list(unsymmetrical_pier(laid(100, bond, openings=[{"mark": "W1", "rect": [31, 8, 24, 16]}]), "in")) == []


def test_small_pieces_at_a_window_name_its_jambs_and_elsewhere_their_course() -> None:
    window = lay_out(example("window"))
    assert {one.about for one in small_piece(window, "in")} <= {"left jamb W1", "right jamb W1", "right edge"}
    gable = [one.about for one in small_piece(lay_out(example("gable")), "in")]
    assert any(about.startswith("field course ") for about in gable)
