"""Colours of a blend: shares to the brick, no large clusters by an independent count, the same every time."""

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from shapely import affinity
from shapes import CROSSED, SHAPES, case, example, rectangle

from app.brickwork.blend import colours_of, shared_out
from app.brickwork.blend_finding import blend_findings
from app.brickwork.bonds import BONDS
from app.brickwork.clusters import Colours
from app.brickwork.layout import Layout, lay_out, whole_outlines
from app.documents.project_file import read_panel
from app.panel.blend import Blend, Colour

FOUR = (25.0, 25.0, 25.0, 25.0)
THREE = (40.0, 35.0, 25.0)
FACING = 0.01
"""Inches: bricks that face each other along less than this meet at a corner only."""


def blend(shares: tuple[float, ...], cluster: int = 4) -> Blend:
    return Blend(tuple(Colour(f"colour {k}", share) for k, share in enumerate(shares)), cluster)


def outlines(layout: Layout) -> list[shapely.Polygon]:
    """Every piece as it is, turned back with its bond."""
    found: dict[int, shapely.Polygon] = {}
    for zone in range(len(layout.regions)):
        whole = np.flatnonzero((layout.units.zone == zone) & ~layout.units.is_trimmed).tolist()
        found |= dict(zip(whole, map(shapely.Polygon, whole_outlines(layout, zone)), strict=True))
    found |= {row[0]: shapely.Polygon(row[-1]) for row in layout.trim_rows()}
    return [found[k] for k in range(len(found))]


def touch(one: tuple[float, ...], two: tuple[float, ...]) -> bool:
    """Whether boxes face each other over a joint: 1/2 in., the widest that a 3/8 in. joint gives to, and no brick."""
    across = max(one[0], two[0]) - min(one[2], two[2])
    up = max(one[1], two[1]) - min(one[3], two[3])
    return (across <= 0.56 and up < -FACING) or (up <= 0.56 and across < -FACING)


def largest(layout: Layout, colours: Colours) -> int:
    """Bricks in the largest cluster, by union of the boxes of whole bricks two by two; for a face of one bond."""
    turn = layout.regions[0].bond.turn
    boxes = [affinity.rotate(one, -turn, (0, 0)).bounds for one in outlines(layout)]
    parent = list(range(len(boxes)))

    def root(k: int) -> int:
        while parent[k] != k:
            k = parent[k]
        return k

    for k, one in enumerate(boxes):
        for other in range(k):
            if colours[k] == colours[other] and touch(one, boxes[other]):
                parent[root(k)] = root(other)
    return max(Counter(map(root, range(len(boxes)))).values())


@pytest.mark.parametrize("shape", CROSSED[:-1])
@pytest.mark.parametrize("bond", BONDS)
def test_no_cluster_is_larger_than_asked_on_any_bond(bond: str, shape: str) -> None:
    layout = lay_out(example(shape, bond=bond))
    assert largest(layout, colours_of(layout, blend(FOUR, 3))) <= 3


@pytest.mark.parametrize("size", ["modular", "utility", "uk 215x65", "roman"])
@pytest.mark.parametrize("bond", ["running", "stack", "third-raked", "english"])
def test_no_cluster_is_larger_than_asked_with_three_colours(bond: str, size: str) -> None:
    layout = lay_out(rectangle(160, 60, bond, size))
    assert largest(layout, colours_of(layout, blend(THREE))) <= 4


@pytest.mark.parametrize("width", [32.0, 90.5, 160.0, 161.3])
@pytest.mark.parametrize("bond", ["running", "third-raked", "stack"])
def test_four_equal_colours_never_touch_their_own_where_courses_step_evenly(bond: str, width: float) -> None:
    """Bricks in running bond touch like hexagons, which four colours part (three already do), shares and all."""
    layout = lay_out(rectangle(width, 60, bond))
    mixed = blend(FOUR, 1)
    assert largest(layout, colours_of(layout, mixed)) == 1
    assert not list(blend_findings(layout, mixed, colours_of(layout, mixed)))


def test_stack_bond_of_two_colours_makes_pairs() -> None:
    """Each brick touches four others and no two of those touch: a chequer board has no clusters at all."""
    layout = lay_out(rectangle(160, 60, "stack"))
    assert largest(layout, colours_of(layout, blend((50, 50), 6))) <= 6


@settings(max_examples=40, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(panels(), st.lists(st.integers(1, 20), min_size=1, max_size=6), st.integers(1, 9))
def test_every_share_is_met_to_the_brick(document: Document, parts: list[int], cluster: int) -> None:
    """On any panel and for any shares, reachable or not, each colour has its share rounded up or down."""
    layout = lay_out(read_panel(document))
    shares = tuple(100 * part / sum(parts) for part in parts)
    counted = np.bincount(colours_of(layout, blend(shares, cluster)), minlength=len(shares))
    exact = len(layout.units) * np.array(shares) / 100
    assert counted.sum() == len(layout.units)
    assert (np.abs(counted - exact) < 1).all()


@pytest.mark.parametrize("shape", SHAPES)
def test_what_is_found_is_what_there_is(shape: str) -> None:
    """A finding where a cluster is too large, none where there is none; its brick stands in the largest."""
    layout = lay_out(example(shape, bond="running"))
    for shares, cluster in ((FOUR, 3), (THREE, 2), ((90, 10), 4)):
        mixed = blend(shares, cluster)
        found = list(blend_findings(layout, mixed, colours_of(layout, mixed)))
        if len(layout.regions) == 1:
            size = largest(layout, colours_of(layout, mixed))
            assert bool(found) == (size > cluster)
            assert all(f"the largest {size} of" in one.text for one in found)


def test_shares_that_cannot_be_apart_are_met_and_told() -> None:
    layout = lay_out(rectangle(160, 60))
    mixed = blend((90, 10))
    colours = colours_of(layout, mixed)
    assert np.bincount(colours).tolist() == shared_out(len(colours), (90, 10)).tolist()
    (found,) = blend_findings(layout, mixed, colours)
    assert (found.code, found.severity, found.about) == ("blend-cluster", "note", "blend")
    assert "give colour 0 less than 90 percent" in found.text
    assert "what was reached" in found.text


def test_an_edit_far_away_changes_few_colours() -> None:
    """A window of B1 moves by half a brick: of the bricks more than 4 ft from it 1 in 20 may change."""
    panel, mixed = case("b1"), blend(THREE)
    window = panel.openings[0]
    moved = replace(window, shape=replace(window.shape, x=replace(window.shape.x, nm=window.shape.x.nm + 101_600_000)))
    before, after = lay_out(panel), lay_out(replace(panel, openings=(moved, *panel.openings[1:])))
    old, new = (_by_place(layout, colours_of(layout, mixed)) for layout in (before, after))
    far = [place for place, (x, y, _) in old.items() if place in new and (x > 150 or y > 155)]
    assert len(far) > 3_500
    changed = sum(old[place][2] != new[place][2] for place in far)
    assert changed <= len(far) / 20


def _by_place(layout: Layout, colours: Colours) -> dict[tuple[int, ...], tuple[float, float, int]]:
    units = layout.units
    places = zip(units.zone.tolist(), units.cell.tolist(), units.i.tolist(), units.j.tolist(), strict=True)
    return dict(zip(places, zip(units.x.tolist(), units.y.tolist(), colours.tolist(), strict=True), strict=True))


def test_the_same_face_has_the_same_colours() -> None:
    one, two = (colours_of(lay_out(case("b1")), blend(THREE)) for _ in range(2))
    assert one.tolist() == two.tolist()


def test_colours_vary_along_courses_and_from_course_to_course() -> None:
    """Not a pattern that shows: a course repeats none of the courses near it, moved any way."""
    layout = lay_out(rectangle(480, 80))
    colours = colours_of(layout, blend(THREE))
    rows = [
        colours[layout.units.course == k][np.argsort(layout.units.x[layout.units.course == k])][:58] for k in range(12)
    ]
    alike = [(np.roll(rows[a], move) == rows[b]).mean() for a in range(12) for b in range(a) for move in range(58)]
    assert max(alike) < 0.8


def test_brick_of_one_colour_or_none_at_all_has_the_first() -> None:
    layout = lay_out(example("window"))
    assert not colours_of(layout, Blend()).any()
    assert not colours_of(layout, blend((100,))).any()
    assert not list(blend_findings(layout, Blend(), colours_of(layout, Blend())))


def test_a_face_without_brick_has_no_colours() -> None:
    bare = lay_out(rectangle(4, 4, margin=2))
    assert colours_of(bare, blend(THREE)).shape == (0,)
    assert not list(blend_findings(bare, blend(THREE), colours_of(bare, blend(THREE))))


@pytest.mark.parametrize(
    ("count", "shares", "expected"),
    [(10, (50, 30, 20), [5, 3, 2]), (1, (50, 30, 20), [1, 0, 0]), (7, (1, 1, 1), [3, 2, 2]), (0, (60, 40), [0, 0])],
)
def test_largest_remainders_get_the_rest(count: int, shares: tuple[float, ...], expected: list[int]) -> None:
    """Method of largest remainders (Hamilton), small cases by hand."""
    assert shared_out(count, shares).tolist() == expected


def test_over_many_panels_no_colour_is_favoured() -> None:
    """Of 120 panels of an odd count two equal colours each get the odd brick about as often: 30 would be 2.7 sigma."""
    for pattern in ("N{}", "P-{:03}", "{}", "East {}"):
        first, second = sum(shared_out(35, (50, 50), pattern.format(k)) for k in range(1, 121)).tolist()
        assert abs(first - second) < 30
        three = sum(shared_out(31, (1, 1, 1), pattern.format(k)) for k in range(1, 121)).tolist()
        assert max(three) - min(three) < 30


def test_a_face_shares_out_by_its_mark() -> None:
    panel = rectangle(32, 5.25)
    found = {
        tuple(np.bincount(colours_of(lay_out(replace(panel, mark=f"N{k}")), blend((50, 50)))).tolist())
        for k in range(12)
    }
    assert len(found) == 2


def test_no_shares_are_refused() -> None:
    with pytest.raises(ValueError, match="expected one or more"):
        shared_out(3, ())
