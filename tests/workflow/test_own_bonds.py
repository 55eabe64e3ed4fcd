"""A bond of the project's own can be chosen in any edit, and only with brick that it covers the face with."""

from uuid import uuid4

import pytest

from app.panel.faults import Refused
from app.storage import reading, writing
from app.workflow.loading import checking, load_panel, load_project
from app.workflow.panel_edits import AskedEdit, edit_panel
from app.workflow.projects import create_project, project_file

# A third of a head module is the gauge of modular brick (8 in.), not of norman brick (12 in.): arithmetic.
BOND = {
    "name": "third",
    "cells": [{"kind": "stretcher", "at": [0, 0]}],
    "across": ["P", 0],
    "up": ["1/2 P", "1/3 P"],
}
FILE = {
    "format": "castcourse-project/1",
    "name": "Own bond",
    "length_unit": "in",
    "temperature_unit": "F",
    "bonds": [BOND],
    "walls": [
        {
            "mark": "A",
            "panels": [
                {
                    "mark": "A1",
                    "thickness": 7.25,
                    "outline": [[0, 0], [120, 0], [120, 96], [0, 96]],
                    "field": {"size": "modular", "bond": "running"},
                }
            ],
        }
    ],
}


@pytest.fixture
def ids(engine, now):
    with writing(engine) as session:
        return create_project(session, FILE, now)


def choose(engine, now, panel_id: str, size: str, bond: str, on_top: bool = False) -> None:
    with writing(engine) as session:
        loaded = load_panel(session, panel_id)
        values = {"part": "field", "size": size, "bond": bond}
        asked = AskedEdit("set_brickwork", values, loaded.revision, uuid4().hex, "mason", on_top)
        edit_panel(session, loaded, asked, now)


@pytest.mark.parametrize("on_top", [False, True])
def test_an_own_bond_is_chosen_kept_and_loaded_again(engine, now, ids, on_top):
    panel_id = ids.walls[0].panels[0]
    choose(engine, now, panel_id, "modular", "third", on_top)
    with reading(engine) as session:
        assert load_panel(session, panel_id).panel.field.bond == "third"
        assert load_project(session, ids.project).panels[0].panel.field.bond == "third"
        assert project_file(session, ids.project)["bonds"] == [BOND]


def test_an_own_bond_with_brick_that_leaves_holes_is_refused_and_nothing_is_saved(engine, now, ids):
    panel_id = ids.walls[0].panels[0]
    with pytest.raises(Refused) as refused:
        choose(engine, now, panel_id, "norman", "third")
    (fault,) = refused.value.faults
    assert fault.path == "field.bond"
    assert "with brick norman" in fault.found
    with reading(engine) as session:
        assert load_panel(session, panel_id).revision == 1


def test_a_document_with_such_brick_is_refused_as_well(engine, ids):
    document = FILE["walls"][0]["panels"][0]
    with reading(engine) as session:
        check = checking(session, ids.project)
        check(document | {"field": {"size": "modular", "bond": "third"}})
        with pytest.raises(Refused):
            check(document | {"field": {"size": "norman", "bond": "third"}})
