"""Each side of a rectangular opening, and each edge, has margin, flush or return; what cannot be built is refused."""

from dataclasses import replace

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from panels import PLAIN, circle, inch, points, rect

from app.lengths import Length
from app.panel.check import panel_faults
from app.panel.geometry import brick_field
from app.panel.values import Edge, Opening, Panel, Side

MARGIN = 0.375
SIDES = ("left", "right", "head", "sill")
DEPTH = inch(3.625)


def sided(*sides: Side, shape=rect(60, 96, 48, 64)) -> Panel:  # noqa: B008 - frozen
    return replace(PLAIN, openings=(Opening("W1", shape, sides=sides),))


def hole(panel: Panel) -> tuple[float, ...]:
    """Bounds of the only hole in the brick field."""
    (ring,) = brick_field(panel, MARGIN).interiors
    return tuple(ring.bounds)


def test_sides_that_say_nothing_keep_the_margin() -> None:
    assert hole(sided()) == (59.625, 95.625, 108.375, 160.375)
    assert hole(sided(Side("left", "margin"))) == (59.625, 95.625, 108.375, 160.375)


@pytest.mark.parametrize("treatment", ["flush", "return"])
@pytest.mark.parametrize(("side", "corner"), [("left", 0), ("sill", 1), ("right", 2), ("head", 3)])
def test_brick_runs_up_to_a_flush_or_return_side_and_to_no_other(treatment: str, side: str, corner: int) -> None:
    expected = [59.625, 95.625, 108.375, 160.375]
    expected[corner] = [60, 96, 108, 160][corner]
    assert hole(sided(Side(side, treatment, DEPTH))) == tuple(expected)


def test_a_sides_own_margin_goes_before_that_of_the_panel() -> None:
    panel = replace(sided(Side("head", "margin", None, inch(2))), margin=inch(1))
    assert hole(panel) == (59, 95, 109, 162)


@given(st.lists(st.none() | st.integers(0, 8), min_size=4, max_size=4))
def test_brick_keeps_every_sides_margin(margins: list[int | None]) -> None:
    rows = zip(SIDES, margins, strict=True)
    panel = sided(*(Side(side, "margin", None, inch(margin)) for side, margin in rows if margin is not None))
    left, right, head, sill = (MARGIN if margin is None else margin for margin in margins)
    taken = shapely.box(60 - left, 96 - sill, 108 + right, 160 + head)
    whole = brick_field(PLAIN, MARGIN)
    assert brick_field(panel, MARGIN).symmetric_difference(whole.difference(taken)).area < 1e-6


def test_a_pier_between_two_openings_has_a_margin_at_either_end_of_its_own() -> None:
    left, right = rect(60, 96, 48, 64), rect(130, 96, 48, 64)
    sides = (Opening("W1", left, sides=(Side("right", "flush"),)), Opening("W2", right))
    pier = brick_field(replace(PLAIN, openings=sides), MARGIN).intersection(shapely.box(100, 120, 140, 121))
    assert pier.bounds == (108, 120, 129.625, 121)


def edged(*edges: Edge) -> Panel:
    return replace(PLAIN, edges=edges)


#  3 +-----------+ 2     edge 1 slants, edge 3 stands upright
#    |            \
#  0 +-------------+ 1
SLANTED = replace(PLAIN, outline=points((0, 0), (360, 0), (300, 384), (0, 384)))

BROKEN = [
    ("side name", sided(Side("top", "flush")), ".sides[0].side", "'top'", "one of left, right, head, sill"),
    (
        "side twice",
        sided(Side("left", "flush"), Side("left", "margin")),
        ".sides[1].side",
        "left again, as in sides[0]",
        "once",
    ),
    ("treatment", sided(Side("left", "retrun")), ".sides[0].treatment", "'retrun'", "the nearest is return"),
    ("no depth", sided(Side("left", "return")), ".sides[0].depth", "nothing", "the depth of the return"),
    ("depth 0", sided(Side("left", "return", inch(0))), ".sides[0].depth", '0"', "more than 0"),
    (
        "too deep",
        sided(Side("right", "return", inch(9))),
        ".sides[0].depth",
        '9"',
        'at most the panel thickness, 7 1/4"',
    ),
    ("side margin", sided(Side("left", "margin", None, inch(-1))), ".sides[0].margin", '-1"', "0 or more"),
    (
        "margin at a return",
        sided(Side("left", "return", DEPTH, inch(1))),
        ".sides[0].margin",
        '1"',
        "no margin at a return",
    ),
    (
        "return head",
        sided(Side("head", "return", DEPTH)),
        ".sides[0].treatment",
        "a return at the head of W1, which is level",
        "corner units stand upright",
    ),
    (
        "round sides",
        sided(Side("left", "flush"), shape=circle(90, 90, 20)),
        ".sides",
        "sides on a shape of circle",
        "a rectangle only",
    ),
]


@pytest.mark.parametrize(("panel", "path", "found", "expected"), [c[1:] for c in BROKEN], ids=[c[0] for c in BROKEN])
def test_a_broken_side_is_refused_with_its_place(panel: Panel, path: str, found: str, expected: str) -> None:
    (fault,) = panel_faults(panel)
    assert fault.path == f"openings[0]{path}"
    assert found in fault.found
    assert expected in fault.expected


BROKEN_EDGES = [
    ("level", edged(Edge(0, "return", DEPTH)), "treatment", "a return at edge 0, which is level"),
    (
        "slanted",
        replace(SLANTED, edges=(Edge(1, "return", DEPTH),)),
        "treatment",
        "a return at edge 1, which is slanted",
    ),
    ("deep", edged(Edge(1, "return", inch(7.5))), "depth", '7 1/2"'),
    ("margin", edged(Edge(1, "return", DEPTH, inch(0.5))), "margin", '1/2"'),
]


@pytest.mark.parametrize(("panel", "key", "found"), [c[1:] for c in BROKEN_EDGES], ids=[c[0] for c in BROKEN_EDGES])
def test_a_return_that_cannot_be_built_is_refused_at_its_edge(panel: Panel, key: str, found: str) -> None:
    (fault,) = panel_faults(panel)
    assert (fault.path, fault.found) == (f"edges[0].{key}", found)


def test_a_return_as_deep_as_the_panel_is_sound() -> None:
    assert panel_faults(edged(Edge(1, "return", PLAIN.thickness), Edge(3, "return", DEPTH))) == ()
    assert panel_faults(sided(Side("left", "return", PLAIN.thickness), Side("head", "flush"))) == ()


def test_depths_are_said_in_millimetres_in_a_metric_project() -> None:
    panel = replace(edged(Edge(1, "return", Length(230_000_000))), thickness=Length(185_000_000))
    (fault,) = panel_faults(panel, unit="mm")
    assert (fault.found, fault.expected) == (
        "230 mm",
        "a depth of more than 0 and at most the panel thickness, 185 mm",
    )


treatments = st.sampled_from(["margin", "flush", "return", "x"])
lengths = st.none() | st.integers(-4, 400).map(inch)
any_side = st.builds(Side, st.sampled_from([*SIDES, "", "top"]), treatments, lengths, lengths)


@given(st.lists(any_side, max_size=5))
def test_whatever_is_typed_of_sides_gives_faults_or_a_field(sides: list[Side]) -> None:
    panel = sided(*sides)
    faults = panel_faults(panel)
    assert all(fault.path and fault.found and fault.expected for fault in faults)
    assert faults or brick_field(panel, MARGIN).is_valid
