"""What a project file holds survives: read and written, key order and every length as typed."""

import json
from copy import deepcopy
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from broken_files import SOUND
from drawn_files import panel_documents, project_documents
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapes import CASES, SHAPES, document

from app.documents.kinds import write_length
from app.documents.project_file import read_panel, read_project, read_text, write_panel, write_project
from app.lengths import Length
from app.panel.faults import Fault, Refused
from app.panel.own_bond import OwnBond, OwnCell
from app.panel.project import Liner, Project
from app.panel.values import Accepted, Fit, Matter, Opening, Question, Side

RANDOM = settings(deadline=None, suppress_health_check=list(HealthCheck))
DEMO = Path(__file__).parents[2] / "demo_data"
PLAIN = {"mark": "N1", "thickness": 7.25, "outline": [[0, 0], [120, 0], [120, 96], [0, 96]]}
FILES = sorted([*CASES.glob("*.json"), *DEMO.glob("*.json")])


def same_text(one: Any, other: Any) -> bool:
    """Equal to the letter: key order, 12 and 12.0."""
    return json.dumps(one) == json.dumps(other)


@RANDOM
@given(panel_documents())
def test_a_panel_written_over_its_own_document_is_that_document_to_the_letter(said):
    assert same_text(write_panel(read_panel(said), "in", like=said), said)


@RANDOM
@given(panel_documents("mm"))
def test_a_panel_written_without_a_document_reads_back_equal(said):
    panel = read_panel(said, "mm")
    assert read_panel(write_panel(panel, "mm"), "mm") == panel


@RANDOM
@given(panel_documents("mm"))
def test_a_panel_reads_back_equal_in_the_other_unit(said):
    panel = read_panel(said, "mm")
    assert read_panel(write_panel(panel, "in"), "in") == panel


@RANDOM
@given(project_documents())
def test_a_project_written_over_its_own_file_is_that_file_to_the_letter(said):
    project = read_project(said)
    assert same_text(write_project(project, like=said), said)
    assert read_project(write_project(project)) == project


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_import_export_import_gives_the_same_file(path):
    said = read_text(path.read_bytes())
    project = read_project(said)
    assert same_text(write_project(project, like=said), said)
    assert read_project(write_project(project)) == project


@pytest.mark.parametrize("shape", SHAPES)
def test_every_example_survives(shape):
    said = document(shape)
    panel = read_panel(said)
    assert same_text(write_panel(panel, "in", like=said), said)
    assert read_panel(write_panel(panel, "in")) == panel


BOND = {
    "name": "half lap",
    "cells": [{"kind": "stretcher", "at": [0, "0"]}, {"at": ["1/2 P", "G"], "kind": "stretcher"}],
    "across": ["P", 0],
    "up": ["0", "2 G"],
}
EVERY_KEY = {
    **PLAIN,
    "edges": [{"edge": 1, "treatment": "return", "depth": 3.625}],
    "openings": [
        {
            "mark": "W1",
            "rect": [24, 24, 30, 40],
            "sides": [
                {"side": "left", "treatment": "return", "depth": "3 5/8"},
                {"side": "head", "treatment": "flush"},
                {"side": "sill", "treatment": "margin", "margin": 0.5},
            ],
        }
    ],
    "field": {"size": "modular", "bond": "half lap"},
    "zones": [{"mark": "S1", "rect": [60, 60, 40, 16], "size": "norman", "bond": "half lap"}],
    "fit": {
        "courses": True,
        "heads": True,
        "closers": True,
        "matter": {
            "heads": "required",
            "sills": "free",
            "jambs": "required",
            "edges": "free",
            "strips": "free",
            "zones": "required",
        },
    },
    "released": True,
    "accepted": [{"code": "missed-head", "about": "W1 head", "by": "A. Mason", "reason": "The lintel covers it."}],
    "questions": [{"mark": "Q1", "text": "May W1 be 4 in higher?"}],
}
WITH_EVERY_KEY = {**SOUND, "bonds": [BOND], "walls": [{"mark": "A", "panels": [EVERY_KEY]}]}


def test_every_key_survives_and_means_what_it_says():
    project = read_project(WITH_EVERY_KEY)
    (panel,) = project.walls[0].panels
    assert same_text(write_project(project, like=WITH_EVERY_KEY), WITH_EVERY_KEY)
    assert read_project(write_project(project)) == project
    assert project.bonds == (
        OwnBond(
            "half lap",
            (OwnCell("stretcher", ("0", "0")), OwnCell("stretcher", ("1/2 P", "G"))),
            ("P", "0"),
            ("0", "2 G"),
        ),
    )
    assert panel.openings[0].sides == (
        Side("left", "return", Length(92_075_000)),
        Side("head", "flush"),
        Side("sill", "margin", None, Length(12_700_000)),
    )
    assert panel.fit == Fit(True, True, True, Matter("required", "free", "required", "free", "free", "required"))
    assert panel.released
    assert panel.accepted == (Accepted("missed-head", "W1 head", "A. Mason", "The lintel covers it."),)
    assert panel.questions == (Question("Q1", "May W1 be 4 in higher?"),)


def test_without_a_file_to_be_like_the_keys_come_in_their_usual_order():
    assert list(write_project(read_project(WITH_EVERY_KEY))) == [
        *["format", "name", "length_unit", "temperature_unit", "sizes", "bonds", "walls"]
    ]
    written = write_project(read_project(WITH_EVERY_KEY))["walls"][0]["panels"][0]
    assert same_text(written, {key: EVERY_KEY[key] for key in written})
    assert set(written) == set(EVERY_KEY)


def test_what_is_as_usual_is_written_only_where_it_stood():
    usual = {
        "released": False,
        "accepted": [],
        "questions": [],
        "fit": {"closers": False, "matter": {"heads": "wanted"}},
    }
    said = {**PLAIN, "field": {"size": "modular", "bond": "running"}, **usual}
    panel = read_panel(said)
    assert panel == read_panel({key: value for key, value in said.items() if key not in usual})
    assert same_text(write_panel(panel, "in", like=said), said)
    assert not {*write_panel(panel, "in")} & {*usual}


def test_keys_come_in_their_usual_order_and_defaults_are_left_out():
    panel = read_panel({"field": {"bond": "running", "size": "modular"}, "base": 0, "openings": [], **PLAIN})
    assert same_text(write_panel(panel, "in"), {**PLAIN, "field": {"size": "modular", "bond": "running"}})


def test_items_find_what_they_were_written_like_by_their_marks():
    said = SOUND["walls"][0]["panels"][0]
    panel = read_panel(said, sizes=["modular", "long"])
    first, second = panel.openings
    moved = replace(panel, openings=(second, Opening("W3", first.shape), Opening("W1", first.shape, "door")))
    written = write_panel(moved, "in", like=said)
    assert same_text(written["openings"][0], said["openings"][1])
    assert same_text(written["openings"][1], {"mark": "W3", "rect": [60, 96, 48, 64]})
    assert same_text(written["openings"][2], {**said["openings"][0], "use": "door"})
    assert same_text({**written, "openings": said["openings"]}, said)


def test_a_key_that_lost_its_value_is_gone():
    said = {**PLAIN, "margin": "3/8", "field": {"size": "modular", "bond": "running", "origin": [0, 0]}}
    panel = read_panel(said)
    bare = replace(panel, margin=None, field=replace(panel.field, origin=None))
    assert write_panel(bare, "in", like=said) == {**PLAIN, "field": {"size": "modular", "bond": "running"}}


def test_a_length_keeps_the_words_it_was_typed_in():
    panel = read_panel({**PLAIN, "thickness": "7 1/4", "field": {"size": "modular", "bond": "running"}})
    assert panel.thickness == Length(184_150_000)
    assert write_panel(panel, "in")["thickness"] == "7 1/4"


@pytest.mark.parametrize(
    ("length", "unit", "like", "said"),
    [
        (Length(25_400_000), "in", None, 1),
        (Length(25_400_000), "mm", None, 25.4),
        (Length(9_525_000), "in", None, 0.375),
        (Length(9_525_000), "in", "3/8", "3/8"),
        (Length(9_525_000), "in", "1/4", 0.375),
        (Length(9_525_000, "10"), "in", None, 0.375),
        (Length(1), "in", None, 4e-08),
        (Length(0, 0.0), "in", 0, 0.0),
    ],
)
def test_a_length_is_written_as_typed_or_else_shortest(length, unit, like, said):
    assert same_text(write_length(length, unit, like), said)


@RANDOM
@given(st.integers(-(10**12), 10**12), st.sampled_from(["in", "mm"]))
def test_every_length_reads_back_to_the_nanometre(nm, unit):
    assert Length.from_number(write_length(Length(nm), unit), unit).nm == nm


def test_a_celsius_project_has_the_liner_and_the_day_in_degrees_celsius():
    said = {**SOUND, "temperature_unit": "C", "liner": {"rows": 4}}
    del said["day"]
    project = read_project(said)
    assert project.liner == Liner(rows=4, expansion_per_degree=8.1e-5, reference_temperature=21)
    assert (project.day.bed_low, project.day.bed_high) == (13, 41)
    assert same_text(write_project(project, like=said), said)


def test_the_defaults_of_a_project_are_those_of_its_values():
    said = {key: SOUND[key] for key in ("format", "name", "length_unit", "temperature_unit")}
    assert read_project({**said, "walls": []}) == Project("Two panels", ())


_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=8,
)


def _places(value: Any, way: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [way, *(place for key, item in inner for place in _places(item, (*way, key)))]


PLACES = _places(SOUND)[1:]


def read_or_refused(said: Any) -> Project | tuple[Fault, ...]:
    try:
        return read_project(said)
    except Refused as refused:
        return refused.faults


@RANDOM
@given(st.sampled_from(PLACES), _JSON)
def test_any_value_at_any_place_is_read_or_refused(way, value):
    said = deepcopy(SOUND)
    holder: Any = said
    for step in way[:-1]:
        holder = holder[step]
    holder[way[-1]] = value
    outcome = read_or_refused(said)
    if isinstance(outcome, Project):
        assert same_text(write_project(outcome, like=said), said)
    else:
        assert all(fault.found and fault.expected and str(fault).isprintable() for fault in outcome)
