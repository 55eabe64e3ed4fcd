"""Every way in which a panel can be wrong is refused with its place, what was found and what was expected."""

import json
import time
from dataclasses import replace
from pathlib import Path

import panels
import pytest
from hypothesis import given
from hypothesis import strategies as st
from panels import FULL, PLAIN, RUNNING, SOLDIER, arch, circle, inch, points, polygon, rect

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.lengths import Length
from app.panel.check import checked, panel_faults
from app.panel.faults import Refused
from app.panel.shapes import Arch, Circle, Polygon, Rect
from app.panel.values import Band, Brickwork, Edge, Fixing, Opening, Panel, Plate, Strip, Zone


def outlined(*pairs: tuple[float, float]) -> Panel:
    return replace(PLAIN, outline=points(*pairs))


def opened(*shapes) -> Panel:
    return replace(PLAIN, openings=tuple(Opening(f"W{k}", shape) for k, shape in enumerate(shapes, 1)))


def zoned(region, mark="S1", work=SOLDIER) -> Panel:
    return replace(PLAIN, zones=(Zone(mark, region, work),))


def stripped(width, *pairs) -> Panel:
    return replace(PLAIN, strips=(Strip("R1", points(*pairs), inch(width)),))


def edged(*edges: Edge) -> Panel:
    return replace(PLAIN, edges=edges)


def marked(*marks: str) -> Panel:
    return replace(PLAIN, openings=tuple(Opening(mark, rect(10 + 20 * k, 10, 10, 10)) for k, mark in enumerate(marks)))


BROKEN = [
    # outline
    ("two points", outlined((0, 0), (10, 0)), "outline", "2 points", "at least 3"),
    ("no points", outlined(), "outline", "0 points", "at least 3"),
    ("closed", outlined((0, 0), (10, 0), (10, 10), (0, 0)), "outline[3]", "the place of point 0 again", "of its own"),
    ("twice", outlined((0, 0), (9, 0), (9, 0), (9, 9)), "outline[2]", '9", 0", the place of point 1', "of its own"),
    # 1 +-----+ 2      edge 0 goes up from 0 to 1, edge 2 goes down from 2 to 3,
    #     \ /          edge 1 and edge 3 cross in the middle
    # 3 +-----+ 0
    (
        "bow tie",
        outlined((120, 0), (0, 120), (120, 120), (0, 0)),
        "outline",
        "edge 0 and edge 2 crossing or touching at 5'-0\", 5'-0\"",
        "only at their ends",
    ),
    ("spike", outlined((0, 0), (10, 0), (5, 0), (5, 5)), "outline", "edge 0 and edge 1", "only at their ends"),
    (
        "touching",
        outlined((0, 0), (10, 0), (10, 10), (5, 0), (0, 10)),
        "outline",
        'edge 0 and edge 2 crossing or touching at 5", 0"',
        "only at their ends",
    ),
    ("flat", outlined((0, 0), (10, 0), (20, 0)), "outline", "area of 0", "enclose an area"),
    ("shut fan", outlined((0, 0), (10, 10), (20, 0), (10, 10.000002)), "outline", "area of 0", "enclose an area"),
    (
        "left of the origin",
        outlined((-2, 1), (10, 1), (10, 10)),
        "outline",
        'lower left at -2", 1"',
        'every point 2" right and 1" down',
    ),
    ("right of it", outlined((3, 0), (10, 0), (10, 10)), "outline", '3", 0"', 'at 0, 0: every point 3" left'),
    ("wide", outlined((0, 0), (1201, 0), (1201, 9)), "outline", "a width of 100'-1\"", "at most 100'-0\""),
    ("high", outlined((0, 0), (9, 0), (9, 1200.5)), "outline", "a height of 100'-0 1/2\"", "at most 100'-0\""),
    # thickness and limits
    ("no thickness", replace(PLAIN, thickness=inch(0)), "thickness", '0"', "more than 0 and at most 3'-0\""),
    ("thick", replace(PLAIN, thickness=inch(36.5)), "thickness", "3'-0 1/2\"", "at most 3'-0\""),
    ("least cut", replace(PLAIN, smallest_cut=inch(-0.25)), "smallest_cut", '-1/4"', "0 or more"),
    ("least piece", replace(PLAIN, least_piece=inch(-1)), "least_piece", '-1"', "0 or more"),
    # openings
    ("no width", opened(rect(10, 10, 0, 9)), "openings[0].rect[2]", '0"', "a width of more than 0"),
    ("negative height", opened(rect(9, 9, 9, -4)), "openings[0].rect[3]", '-4"', "a height of more than 0"),
    ("no radius", opened(circle(50, 50, 0)), "openings[0].circle[2]", '0"', "a radius of more than 0"),
    ("absurd radius", opened(circle(50, 50, 1e5)), "openings[0].circle[2]", "8333'-4\"", "at most 100'-0\""),
    ("flat arch", opened(arch(50, 50, 40, 60, 0)), "openings[0].arch[4]", '0"', "a rise of more than 0"),
    ("steep arch", opened(arch(50, 50, 40, 60, 20.5)), "openings[0].arch[4]", "1'-8 1/2\"", "half the width (1'-8\")"),
    ("low arch", opened(arch(50, 50, 40, 10, 15)), "openings[0].arch[4]", "1'-3\"", 'the height (10")'),
    ("arch of no width", opened(arch(50, 50, 0, 10, 15)), "openings[0].arch[2]", '0"', "a width"),
    ("two corners", opened(polygon((5, 5), (9, 9))), "openings[0].polygon", "2 points", "at least 3"),
    (
        "crossing opening",
        opened(rect(100, 100, 9, 9), polygon((10, 10), (20, 20), (20, 10), (10, 20))),
        "openings[1].polygon",
        "edge 0 and edge 2",
        "only at their ends",
    ),
    ("outside", opened(rect(400, 10, 20, 20)), "openings[0].rect", "33'-4\" to 35'-0\" across", "inside the outline"),
    ("beside", opened(rect(360, 10, 20, 20)), "openings[0].rect", "30'-0\" to 31'-8\"", "0 to 30'-0\" across"),
    (
        "overlap",
        opened(rect(10, 10, 48, 64), rect(50, 20, 48, 64)),
        "openings[1].rect",
        'W2 overlapping W1 by 8" x 4\'-6"',
        "do not overlap",
    ),
    ("inside one another", opened(rect(9, 9, 90, 90), circle(50, 50, 9)), "openings[1].circle", "W2", "not overlap"),
    ("all of it", opened(rect(-1, -1, 400, 400)), "openings[0].rect", "the whole panel of 30'-0\" x 32'-0\"", "left"),
    ("all by two", opened(rect(0, 0, 180, 384), rect(180, 0, 180, 384)), "openings", "the whole panel", "some"),
    # marks
    ("blank mark", marked(" "), "openings[0].mark", "' '", "at least one letter or figure"),
    ("no mark", marked(""), "openings[0].mark", "nothing", "at least one letter or figure"),
    ("same mark", marked("W1", "W2", "W1"), "openings[2].mark", "'W1' again, as in openings[0]", "no other"),
    ("long mark", marked("W" * 61), "openings[0].mark", "61 characters", "at most 60"),
    ("two lines", marked("W1\nW2"), "openings[0].mark", r"'W1\nW2'", "signs that print"),
    ("turned writing", marked("W\u202e1"), "openings[0].mark", r"\u202e", "signs that print"),
    ("half a sign", marked("W\ud800"), "openings[0].mark", r"\ud800", "signs that print"),
    ("no panel mark", replace(PLAIN, mark=""), "mark", "nothing", "at least one letter or figure"),
    ("blank use", replace(PLAIN, openings=(Opening("A", rect(9, 9, 9, 9), ""),)), "openings[0].use", "nothing", "word"),
    ("reserved", zoned(rect(9, 9, 9, 9), "field"), "zones[0].mark", "'field'", "another mark"),
    # margin and edges
    ("negative margin", replace(PLAIN, margin=inch(-0.375)), "margin", '-3/8"', "0 or more"),
    ("all margin", replace(PLAIN, margin=inch(180.5)), "margin", "15'-0 1/2\"", "at most 15'-0\", half"),
    ("no such edge", edged(Edge(4, "flush")), "edges[0].edge", "edge 4", "0 to 3"),
    ("edge below 0", edged(Edge(-1, "flush")), "edges[0].edge", "edge -1", "0 to 3"),
    ("edge twice", edged(Edge(1, "flush"), Edge(1, "margin")), "edges[1].edge", "edge 1 again, as in edges[0]", "once"),
    (
        "treatment",
        edged(Edge(0, "flsh")),
        "edges[0].treatment",
        "'flsh'",
        "margin, flush, return; the nearest is flush",
    ),
    ("return of nothing", edged(Edge(1, "return")), "edges[0].depth", "nothing", "the depth of the return"),
    ("negative return", edged(Edge(1, "return", inch(-3))), "edges[0].depth", '-3"', "more than 0"),
    ("edge margin", edged(Edge(0, "margin", None, inch(-1))), "edges[0].margin", '-1"', "0 or more"),
    # strips, plates, fixings
    ("strip of no width", stripped(0, (0, 9), (9, 9)), "strips[0].width", '0"', "a width of more than 0"),
    ("strip of a point", stripped(1, (0, 9)), "strips[0].line", "1 point", "at least 2 points"),
    ("strip of nothing", stripped(1), "strips[0].line", "no points", "at least 2 points"),
    ("strip in one place", stripped(1, (3, 9), (3, 9)), "strips[0].line", 'no length at 3", 9"', "different places"),
    ("strip outside", stripped(1, (0, 390), (9, 390)), "strips[0].line", "outside the panel", "0 to 32'-0\" up"),
    ("plate", replace(PLAIN, plates=(Plate("P", rect(9, 9, 0, 9)),)), "plates[0].rect[2]", '0"', "a width"),
    ("plate outside", replace(PLAIN, plates=(Plate("P", rect(-9, 9, 9, 9)),)), "plates[0].rect", '-9" to 0"', "inside"),
    ("fixing outside", replace(PLAIN, fixings=(Fixing(points((0, -1), (9, -1))),)), "fixings[0].line", "outside", "up"),
    ("blank way", replace(PLAIN, fixings=(Fixing(points((0, 1), (9, 1)), " "),)), "fixings[0].by", "' '", "nothing"),
    # brickwork and zones
    ("size", replace(PLAIN, field=Brickwork("moduler", "running")), "field.size", "'moduler'", "nearest is modular"),
    ("bond", replace(PLAIN, field=Brickwork("modular", "flemsh")), "field.bond", "'flemsh'", "nearest is flemish"),
    ("no near bond", replace(PLAIN, field=Brickwork("modular", "qqq")), "field.bond", "'qqq'", "soldier, stack"),
    ("zone size", zoned(rect(9, 9, 9, 9), "S", Brickwork("x", "soldier")), "zones[0].size", "'x'", "one of modular"),
    ("zone bond", zoned(rect(9, 9, 9, 9), "S", Brickwork("modular", "x")), "zones[0].bond", "'x'", "one of"),
    ("empty zone", zoned(rect(9, 9, 9, 0)), "zones[0].rect[3]", '0"', "a height of more than 0"),
    ("zone outside", zoned(rect(9, 400, 9, 9)), "zones[0].rect", "33'-4\" to 34'-1\" up", "inside the outline"),
    ("zone crossing", zoned(polygon((0, 0), (9, 9), (9, 0), (0, 9))), "zones[0].polygon", "edge 0 and edge 2", "meet"),
    ("band of nothing", zoned(Band(3, 0)), "zones[0].band.courses", "0 courses", "1 to 10,000"),
    ("band of all", zoned(Band(3, 10**9)), "zones[0].band.courses", "1,000,000,000 courses", "1 to 10,000"),
    ("band far up", zoned(Band(10**6, 3)), "zones[0].band.course", "course 1,000,000", "-10,000 and 10,000"),
]


@pytest.mark.parametrize(
    ("panel", "path", "found", "expected"), [case[1:] for case in BROKEN], ids=[c[0] for c in BROKEN]
)
def test_a_broken_panel_is_refused_with_its_place_what_was_found_and_what_was_expected(panel, path, found, expected):
    faults = panel_faults(panel, CATALOGUE, BONDS)
    assert [fault.path for fault in faults] == [path]
    assert found in faults[0].found
    assert expected in faults[0].expected
    with pytest.raises(Refused) as refused:
        checked(panel, CATALOGUE, BONDS)
    assert refused.value.faults == faults


@pytest.mark.parametrize("panel", [PLAIN, FULL])
def test_a_sound_panel_is_passed_on_unchanged(panel):
    assert panel_faults(panel, CATALOGUE, BONDS) == ()
    assert checked(panel, CATALOGUE, BONDS) is panel


@pytest.mark.parametrize(
    "panel",
    [
        opened(rect(-10, 10, 20, 20)),
        opened(rect(9, 9, 9, 9), rect(18, 9, 9, 9)),
        opened(rect(0, 100, 360, 20)),
        opened(arch(20, 20, 40, 60, 20), arch(80, 20, 40, 20, 20)),
        outlined((0, 0), (0, 1200), (1200, 1200), (1200, 0)),
        replace(PLAIN, margin=inch(180)),
        stripped(1, (0, 0), (360, 0)),
        zoned(Band(-3, 3)),
        replace(PLAIN, thickness=inch(36), smallest_cut=inch(0)),
    ],
    ids=["door", "side by side", "across", "arches", "clockwise", "margin", "strip on edge", "low band", "limits"],
)
def test_what_only_just_holds_is_sound(panel):
    assert panel_faults(panel, CATALOGUE, BONDS) == ()


def test_names_are_not_checked_when_none_are_given():
    assert panel_faults(replace(PLAIN, field=Brickwork("own", "own"))) == ()


def test_lengths_are_said_in_millimetres_in_a_metric_project():
    panel = replace(PLAIN, thickness=Length(950_000_000))
    assert [fault.found for fault in panel_faults(panel, unit="mm")] == ["950 mm"]


def test_every_fault_is_told_at_once():
    panel = replace(PLAIN, mark="", thickness=inch(0), margin=inch(-1), field=Brickwork("x", "y"))
    paths = [fault.path for fault in panel_faults(panel, CATALOGUE, BONDS)]
    assert paths == ["mark", "thickness", "margin", "field.size", "field.bond"]


@pytest.mark.parametrize("name", ["b1", "b3", "door"])
def test_reference_cases_are_sound(name):
    case = json.loads((Path(__file__).parent.parent / "cases" / f"{name}.json").read_text())["walls"][0]["panels"][0]
    shapes = [rect(*opening["rect"]) for opening in case["openings"] if "rect" in opening]
    panel = replace(opened(*shapes), outline=points(*case["outline"]), margin=inch(case["margin"]))
    assert panel_faults(panel) == ()


lengths = st.integers(-3_048_000_000_000, 3_048_000_000_000).map(Length) | st.sampled_from(
    [Length(nm) for nm in (0, 1, 2, 25, 26, -1, 25_400_000, 50_800_000, 9_144_000_000, 9_753_600_000)]
)
places = st.lists(st.tuples(lengths, lengths), max_size=6).map(tuple)
texts = st.text(max_size=3)
shapes = st.one_of(
    st.builds(Rect, lengths, lengths, lengths, lengths),
    st.builds(Polygon, places),
    st.builds(Circle, lengths, lengths, lengths),
    st.builds(Arch, lengths, lengths, lengths, lengths, lengths),
)
works = st.builds(Brickwork, texts, texts, st.none() | st.tuples(lengths, lengths))
flat_shapes = st.one_of(st.builds(Rect, lengths, lengths, lengths, lengths), st.builds(Polygon, places))
bands = st.builds(Band, st.integers(), st.integers())
any_panel = st.builds(
    Panel,
    mark=texts,
    outline=places | st.just(panels.PLAIN.outline),
    thickness=lengths,
    field=works | st.just(RUNNING),
    margin=st.none() | lengths,
    edges=st.lists(st.builds(Edge, st.integers(-1, 6), texts, st.none() | lengths), max_size=2).map(tuple),
    openings=st.lists(st.builds(Opening, texts, shapes), max_size=3).map(tuple),
    strips=st.lists(st.builds(Strip, texts, places, lengths), max_size=2).map(tuple),
    plates=st.lists(st.builds(Plate, texts, flat_shapes), max_size=2).map(tuple),
    zones=st.lists(st.builds(Zone, texts, flat_shapes | bands, works), max_size=2).map(tuple),
    fixings=st.lists(st.builds(Fixing, places, st.none() | texts), max_size=2).map(tuple),
)


@given(any_panel)
def test_whatever_a_person_types_gives_faults_and_never_an_error(panel):
    for fault in panel_faults(panel, CATALOGUE, BONDS):
        assert fault.path
        assert fault.found
        assert fault.expected


@pytest.mark.quiet
def test_a_panel_of_hundred_openings_is_checked_in_a_fraction_of_a_drag():
    panel = opened(*(rect(10 + 30 * (k % 10), 10 + 30 * (k // 10), 20, 20) for k in range(100)))
    panel_faults(panel)
    start = time.perf_counter()
    assert panel_faults(panel) == ()
    assert time.perf_counter() - start < 0.1


def test_a_rise_of_a_hair_is_still_an_arch():
    assert panel_faults(opened(Arch(inch(9), inch(9), inch(300), inch(90), Length(1)))) == ()
