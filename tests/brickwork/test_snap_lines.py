"""What a hand meets is where brick and openings really are, by an independent look at the units one by one."""

import pytest
from shapes import example

from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.brickwork.snap_lines import Neighbour, snap_corners, snap_lines

NEAR = 1e-5


def laid(shape: str, bond: str) -> Layout:
    return lay_out(example(shape, bond=bond), CATALOGUE, BONDS)


def places(layout: Layout, kind: str, axis: str, words: str = "") -> list[float]:
    return [line.at for line in snap_lines(layout) if (line.kind, line.axis) == (kind, axis) and words in line.name]


def is_near(value: float, among: list[float]) -> bool:
    return any(abs(value - one) < NEAR for one in among)


@pytest.mark.parametrize("bond", ["running", "stack", "flemish", "english"])
@pytest.mark.parametrize("shape", ["plain", "window", "two windows", "gable"])
def test_every_whole_brick_of_the_field_begins_and_ends_on_lines(shape: str, bond: str) -> None:
    layout = laid(shape, bond)
    units = layout.units
    tops, feet = places(layout, "course", "y", "top"), places(layout, "course", "y", "foot")
    for k in range(len(units)):
        if units.zone[k] or units.is_trimmed[k]:
            continue
        courses = "odd" if int(units.course[k]) % 2 else "even"
        x, y = float(units.x[k]), float(units.y[k])
        assert is_near(x, places(layout, "head joint", "x", f"left end of a brick, {courses}"))
        assert is_near(x + float(units.width[k]), places(layout, "head joint", "x", f"right end of a brick, {courses}"))
        assert is_near(y, feet)
        assert is_near(y + float(units.height[k]), tops)


def test_the_courses_of_modular_brick_stand_eight_inches_for_three() -> None:
    """ASTM C216 modular brick lays three courses to 8 in.: course n of a plain panel starts n x 8/3 over the margin."""
    layout = laid("plain", "running")
    feet = places(layout, "course", "y", "foot")
    assert all(abs(foot - (0.375 + k * 8 / 3)) < NEAR for k, foot in enumerate(feet))


def test_jambs_heads_and_corners_of_an_opening_are_those_typed() -> None:
    """rect 17.5, 13.25, 21 x 18.5 by hand."""
    layout = laid("window", "running")
    found = {line.name: line.at for line in snap_lines(layout) if line.of == "openings/W1"}
    assert found == {
        "left jamb of W1": 17.5,
        "right jamb of W1": 38.5,
        "sill of W1": 13.25,
        "head of W1": 31.75,
        "middle of W1": 28.0,
    }
    corners = {(one.x, one.y) for one in snap_corners(layout.panel) if one.of == "openings/W1"}
    assert corners == {(17.5, 13.25), (38.5, 13.25), (38.5, 31.75), (17.5, 31.75)}


def test_a_strip_gives_its_middle_and_both_sides() -> None:
    """A strip 3/4 in. wide at 21 1/2 in."""
    assert places(laid("strip", "running"), "strip", "y") == [21.5, 21.125, 21.875]


def test_a_neighbours_courses_run_on_at_their_own_height() -> None:
    here, beside = laid("plain", "running"), laid("window", "running")
    lifted = [line for line in snap_lines(here, [Neighbour(beside, 3.5)]) if line.kind.startswith("neighbour")]
    tops = [line.at for line in lifted if line.kind == "neighbour course"]
    assert tops == [course.top + 3.5 for course in beside.courses]
    head = next(line for line in lifted if line.name.startswith("head of W1 in "))
    assert head.at == 31.75 + 3.5


def test_a_slanted_edge_is_no_line_and_a_turned_bond_gives_no_brick() -> None:
    assert [line.at for line in snap_lines(laid("slanted", "running")) if line.of == "outline"] == []
    turned = laid("plain", "herringbone-45")
    assert {line.kind for line in snap_lines(turned)} <= {"edge", "middle", "course"}
