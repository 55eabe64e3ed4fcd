"""A little picture shows the bond itself: as much brick as the bond's own cell has, all of it inside the window."""

import re

import pytest
from svg_paths import Ring, rings

from app.brickwork.bond import Bond
from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.drawing.palettes import INKS
from app.drawing.swatch import HIGH, WIDE, swatch

MODULAR = CATALOGUE["modular"]


def bricks(picture: str, fill: str) -> list[Ring]:
    """The corners of every brick; the path of the joints is filled otherwise."""
    paths = re.findall(r"<path ([^>]*)>", picture)
    data = [re.search(r' ?d="([^"]+)"', path) for path in paths if f'fill="{fill}"' in path]
    return [ring for found in data if found for ring in rings(found[1])]


def area(ring: Ring) -> float:
    pairs = zip(ring, ring[1:] + ring[:1], strict=True)
    return abs(sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairs)) / 2


def share_of_brick(bond: Bond) -> float:
    faces = [cell.face(MODULAR) for cell in bond.cells]
    ax, ay, ux, uy = (part.inches(MODULAR) for part in (*bond.across, *bond.up))
    return sum(width * height for width, height in faces) / abs(ax * uy - ay * ux)


@pytest.mark.parametrize("bond", BONDS.values(), ids=BONDS)
@pytest.mark.parametrize("palette", ["paper", "night"])
def test_the_window_holds_as_much_brick_as_the_bond(bond: Bond, palette: str) -> None:
    found = bricks(swatch(bond, palette), INKS[palette].brick)
    assert sum(area(ring) for ring in found) / (WIDE * HIGH) == pytest.approx(share_of_brick(bond), abs=0.04)
    for x, y in (point for ring in found for point in ring):
        assert -1e-3 <= x <= WIDE + 1e-3
        assert -1e-3 <= y <= HIGH + 1e-3


def test_no_two_bonds_look_the_same() -> None:
    assert len({swatch(bond).split("</desc>")[1] for bond in BONDS.values()}) == len(BONDS)


def test_running_bond_shows_nine_courses_by_turns() -> None:
    """36 x 24 in. of modular brick, 8 x 2 2/3 in. module: 9 courses, 5 bricks with halves at either end by turns."""
    found = bricks(swatch(BONDS["running"]), INKS["paper"].brick)
    rows: dict[float, int] = {}
    for ring in found:
        foot = round(max(y for _, y in ring), 1)
        rows[foot] = rows.get(foot, 0) + 1
    assert list(rows[foot] for foot in sorted(rows)) == [5] * 9
