"""What holds for every edit on every sound panel, made from a form or by hand."""

from collections.abc import Callable
from dataclasses import fields, replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import FULL, PLAIN

from app.brickwork.bonds import BONDS
from app.brickwork.layout import lay_out
from app.brickwork.sizes import CATALOGUE
from app.lengths import Length
from app.panel.check import panel_faults
from app.panel.check_fit import MATTERS
from app.panel.edit import Edit
from app.panel.edits import EDITS, edit_from
from app.panel.faults import Refused
from app.panel.laying import CORNERS
from app.panel.values import Panel

USUAL = {
    "add_opening": {"shape": "rect", "x": "20", "y": "20", "width": "30", "height": "40"},
    "move_opening": {"opening": "W1", "dy": "5/8"},
    "place_opening": {"opening": "W1", "shape": "circle", "x": "5'", "y": "120", "radius": "18"},
    "reshape_opening": {"opening": "W1", "side": "top", "dy": "5/8"},
    "rename_opening": {"opening": "W1", "mark": "W7", "use": "window"},
    "remove_opening": {"opening": "W1"},
    "set_outline": {"width": "30'", "height": "33'"},
    "move_point": {"point": "3", "x": "190", "y": "390"},
    "move_corner": {"thing": "openings/L1", "point": "1", "x": "258", "y": "202"},
    "move_edge": {"thing": "outline", "edge": "1", "dx": "2"},
    "move_line": {"thing": "strips/R1", "dy": "2 1/4"},
    "align_openings": {"marks": "W1, V1", "line": "sill"},
    "distribute_openings": {"marks": "W1, D1, L1", "way": "across"},
    "copy_openings": {"marks": "V1", "dx": "30", "count": "1"},
    "mirror_openings": {"marks": "D1"},
    "grid_openings": {"opening": "V1", "columns": "2", "rows": "1", "across": "6"},
    "set_dimension": {"thing": "openings/W1", "dimension": "width", "length": "47"},
    "put_row": {
        "thing": "openings/W1",
        "kind": "opening",
        "mark": "W1",
        "x": "62",
        "y": "96",
        "width": "48",
        "height": "64",
    },
    "put_table": {"table": "opening\tW1\twindow\trect\t61\t96\t48\t64"},
    "move_zone": {"zone": "S1", "dy": "1"},
    "set_rise": {"opening": "A1", "rise": "9"},
    "place_fixing": {"fixing": "0", "line": "90,0; 90,300", "by": "nails"},
    "add_point": {"edge": "1"},
    "remove_point": {"point": "4"},
    "set_panel": {"mark": "N9", "thickness": "8", "base": "12'"},
    "set_margin": {"margin": "1/2"},
    "set_edge": {"edge": "0", "treatment": "flush"},
    "set_brickwork": {"part": "field", "size": "modular", "bond": "flemish"},
    "set_origin": {"part": "S1", "x": "4", "y": "8"},
    "add_zone": {"shape": "band", "course": "6", "courses": "3", "size": "modular", "bond": "soldier"},
    "place_zone": {"zone": "S1", "shape": "rect", "x": "50", "y": "160", "width": "70", "height": "8"},
    "remove_zone": {"zone": "S1"},
    "soldier_band": {"opening": "A1"},
    "add_strip": {"line": "0,40; 360,40", "width": "3/4"},
    "place_strip": {"strip": "R1", "line": "0,188; 360,188", "width": "1"},
    "remove_strip": {"strip": "R1"},
    "add_plate": {"shape": "rect", "x": "10", "y": "20", "width": "8", "height": "8"},
    "place_plate": {"plate": "P1", "shape": "rect", "x": "318", "y": "20", "width": "14", "height": "12"},
    "move_plate": {"plate": "P1", "dy": "4"},
    "remove_plate": {"plate": "P1"},
    "add_fixing": {"line": "90,0; 90,300", "by": "tape"},
    "add_fixings": {"lines": "90,0; 90,300 | 0,100; 360,100", "by": "tape"},
    "remove_fixing": {"fixing": "0"},
    "set_limits": {"smallest_cut": "3/8", "least_piece": "2"},
    "set_fit": {"courses": "yes", "matter_heads": "required", "matter_zones": "free"},
    "release_panel": {},
    "join_wall": {},
    "set_side": {"opening": "W1", "side": "left", "treatment": "return", "depth": "3 5/8"},
    "accept_finding": {"code": "small-piece", "about": "D1 left", "by": "A. Mason", "reason": "Behind the downpipe."},
    "withdraw_acceptance": {"code": "missed-head", "about": "W1 head"},
    "ask_question": {"text": "May D1 move 2 in to the right?"},
    "remove_question": {"question": "Q1"},
    "raise_zone": {"zone": "S1"},
    "lower_zone": {"zone": "B1"},
    "move_openings": {"marks": "W1, V1", "dx": "1"},
    "resize_openings": {"marks": "W1, D1", "side": "head", "by": "2"},
    "set_laying": {"corner": "bed upper left", "direction": "up"},
    "set_casting": {"cast_on": "2026-12-01", "placed": "yes"},
}

LENGTH_FIELDS = ("x", "y", "width", "height", "radius", "rise", "dx", "dy", "thickness", "base", "margin", "depth")
lengths = st.integers(-4, 800).map(lambda half: str(half / 2)) | st.sampled_from(
    ["", "0", "-3", "12'-6 3/8\"", "3810 mm", "8", "7.625", "1e9", "x", "12'14\""]
)
marks = st.sampled_from(
    ["W1", "D1", "V1", "L1", "A1", "O1", "R1", "S1", "B1", "Z1", "field", "", "N1", "W" * 61, "\x00"]
)
texts = st.sampled_from(["small-piece", "missed-head", "W1 head", "D1 left", "", "\x00", "two\nlines", "w" * 601])
numbers = st.sampled_from(["0", "1", "2", "3", "4", "5", "-1", "", "1.5", "999999999", "99999999999"])
pairs = st.lists(st.tuples(lengths, lengths).map(", ".join), max_size=6).map("; ".join)
flags = st.sampled_from(["yes", "no", "on", "", "maybe"])
points = pairs | st.sampled_from(
    ["0,0; 200,0; 200,240; 0,240", "0,0; 360,0; 360,300; 0,300", "0,0;9,9;9,0;0,9", "1", ","]
)
FIELDS = {
    **dict.fromkeys((*LENGTH_FIELDS, "smallest_cut", "least_piece"), lengths),
    **dict.fromkeys(("opening", "strip", "zone", "plate", "part", "mark"), marks),
    **dict.fromkeys(("edge", "point", "fixing", "course", "courses"), numbers),
    **dict.fromkeys(("points", "line"), points),
    "lines": st.lists(points, max_size=3).map(" | ".join),
    **dict.fromkeys(("code", "about", "reason", "text"), texts),
    **dict.fromkeys(("courses", "heads", "closers"), flags | numbers),
    "placed": flags,
    "line": points | st.sampled_from(["left", "sill", "middle", "edge"]),
    "way": st.sampled_from(["across", "up", "down", ""]),
    "count": numbers,
    "columns": numbers,
    "rows": numbers,
    "axis": lengths,
    "across": lengths,
    "up": lengths,
    "dimension": st.sampled_from(["width", "height", "left", "right", "foot", "head", "depth"]),
    "length": lengths,
    "kind": st.sampled_from(["opening", "zone", "strip", "fixing", "roof", ""]),
    "more": points | lengths | st.sampled_from(["6, 3", "6"]),
    "table": st.sampled_from(["", "opening\tW1\t\trect\t1\t2\t3\t4", "roof", "strip\tR1\t\tline\t\t\t1\t\t0,9; 9,9"]),
    "thing": st.sampled_from(
        ["outline", "openings/L1", "openings/W1", "strips/R1", "fixings/0", "fixings/x", "zones/S1", "x/", ""]
    ),
    "cast_on": st.sampled_from(["2026-12-01", "2026-02-30", "20261201", "Monday", "", "9" * 70]),
    "corner": st.sampled_from([*CORNERS, "bed left", ""]),
    "direction": st.sampled_from(["across", "up", "down", ""]),
    **dict.fromkeys(
        [f"matter_{kind}" for kind in MATTERS], st.sampled_from(["required", "wanted", "free", "maybe", ""])
    ),
    "question": st.sampled_from(["Q1", "Q2", ""]),
    "marks": st.lists(marks, max_size=3).map(", ".join),
    "shape": st.sampled_from(["rect", "circle", "arch", "polygon", "band", "blob", ""]),
    "side": st.sampled_from(["left", "right", "top", "bottom", "top left", "bottom right", "head", "sill", "middle"]),
    "treatment": st.sampled_from(["margin", "flush", "return", "mitre"]),
    "size": st.sampled_from(["modular", "norman", "uk 215x65", "modulr"]),
    "bond": st.sampled_from([*BONDS, "flemsh"]),
    "use": st.sampled_from(["window", "door", "vent", "louver", "hatch", ""]),
    "by": st.sampled_from(["glue", "tape", "nails", ""]) | lengths,
}
wild_forms = st.fixed_dictionaries({}, optional=FIELDS)


@st.composite
def steps(draw: st.DrawFn) -> tuple[str, dict[str, str]]:
    """An edit and its form: mostly the usual one with a field or two typed anew, sometimes anything at all."""
    name = draw(st.sampled_from(sorted(EDITS)))
    if draw(st.integers(0, 4)) == 0:
        return name, draw(wild_forms)
    anew = draw(st.sets(st.sampled_from(sorted(USUAL[name])), max_size=2)) if USUAL[name] else set()
    return name, {**USUAL[name], **{field: draw(FIELDS[field]) for field in sorted(anew)}}


def faults_of(step: Callable[[], object]) -> tuple[str, ...]:
    """Paths of the faults with which a step is refused; none when it is not."""
    try:
        step()
    except Refused as refused:
        return tuple(fault.path for fault in refused.faults)
    return ()


def made(panel: Panel, name: str, form: dict[str, str]) -> Panel:
    """The panel after an edit, or the panel itself where the edit is refused."""
    unread = faults_of(lambda: edit_from(name, form, "in", CATALOGUE, BONDS))
    if unread:
        assert {*unread} <= {*FIELDS}
        return panel
    edit = edit_from(name, form, "in", CATALOGUE, BONDS)
    assert edit.label(panel)
    refused = faults_of(lambda: edit.apply(panel))
    assert bool(refused) == bool(edit.why_not(panel))
    return panel if refused else edit.apply(panel)


@given(st.sampled_from([PLAIN, FULL]), st.lists(steps(), min_size=1, max_size=8))
@settings(max_examples=300, deadline=None)
def test_any_run_of_edits_is_refused_or_leaves_a_panel_without_faults(panel, run):
    for name, form in run:
        before = repr(panel)
        after = made(panel, name, form)
        assert repr(panel) == before
        assert panel_faults(after, CATALOGUE, BONDS) == ()
        panel = after


BEFORE = {"join_wall": replace(FULL, released=True)}
"""What an edit changes where that is not the full panel."""


def usual(name: str) -> Edit:
    return edit_from(name, USUAL[name], "in", CATALOGUE, BONDS)


@pytest.mark.parametrize("name", sorted(EDITS))
def test_every_edit_can_be_made_from_a_form_and_changes_the_panel(name):
    edit, panel = usual(name), BEFORE.get(name, FULL)
    before = repr(panel)
    after = edit.apply(panel)
    assert after != panel
    assert repr(panel) == before
    assert edit.why_not(panel) is None
    assert lay_out(after, CATALOGUE).whole > 0


@pytest.mark.parametrize("name", sorted(name for name in EDITS if USUAL[name]))
def test_every_edit_with_fields_shows_all_faults_of_a_form_beside_their_fields(name):
    typed = dict.fromkeys(USUAL[name], "\x00 no")
    with pytest.raises(Refused) as refused:
        edit_from(name, typed, "in", CATALOGUE, BONDS).apply(FULL)
    paths = {fault.path for fault in refused.value.faults}
    assert paths
    assert paths <= {*typed, "openings[0].mark", "openings[5].mark"}


@pytest.mark.parametrize("name", sorted(EDITS))
def test_every_edit_is_frozen_and_named_after_its_file(name):
    edit = usual(name)
    assert type(edit).__module__ == f"app.panel.edits.{name}"
    for field in fields(edit):
        with pytest.raises(AttributeError):
            setattr(edit, field.name, None)
    assert edit == usual(name)


def test_an_unknown_edit_is_refused_with_the_nearest_name():
    with pytest.raises(Refused) as refused:
        edit_from("move_opning", {}, "in")
    (fault,) = refused.value.faults
    assert fault.path == "edit"
    assert "the nearest is move_opening" in fault.expected


@given(st.integers(-(10**9), 10**9), st.integers(-(10**9), 10**9))
def test_moving_there_and_back_gives_the_same_panel(dx, dy):
    there = EDITS["move_opening"]("W1", Length(dx), Length(dy))
    back = EDITS["move_opening"]("W1", Length(-dx), Length(-dy))
    if there.why_not(FULL) is None:
        assert back.apply(there.apply(FULL)) == FULL
