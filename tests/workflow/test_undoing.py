"""Undo and redo: each person their own, kept in the log, never over another's work."""

import json

import pytest

from app.panel.things import apply_changes, from_json
from app.storage import commands, open_database, reading
from app.workflow.editing import history
from app.workflow.refusals import CommandReused, Stale, UndoRefused


def opening(panel, mark):
    return next(item for item in panel["openings"] if item["mark"] == mark)


def without(panel, mark):
    return panel | {"openings": [item for item in panel["openings"] if item["mark"] != mark]}


def test_undo_and_redo_are_revisions_like_any_other(office, panel):
    office.change(margin=0.5)
    undone = office.undo()
    assert (undone.revision, undone.document, undone.undo_label, undone.redo_label) == (3, panel, None, "margin")
    redone = office.redo()
    assert (redone.revision, redone.document) == (4, panel | {"margin": 0.5})
    assert (redone.undo_label, redone.redo_label) == ("margin", None)
    assert office.undo().document == panel
    with reading(office.engine) as session:
        rows = [(row.revision, row.kind, row.label, row.undone) for row in history(session, office.panel_id)]
    assert rows == [
        (5, "undo", "margin", False),
        (4, "redo", "margin", False),
        (3, "undo", "margin", False),
        (2, "edit", "margin", True),
    ]


def test_steps_go_back_and_forth_in_order(office, panel):
    states = [panel, *(office.change(margin=margin).document for margin in (0.5, 0.75, 1))]
    assert [office.undo().document for _ in range(3)] == states[2::-1]
    with pytest.raises(UndoRefused, match="nothing to undo"):
        office.undo()
    assert [office.redo().document for _ in range(3)] == states[1:]
    with pytest.raises(UndoRefused, match="nothing to redo"):
        office.redo()


def test_a_new_edit_leaves_nothing_to_redo(office):
    office.change(margin=0.5)
    office.undo()
    assert office.change(thickness=8).redo_label is None
    with pytest.raises(UndoRefused, match="nothing to redo"):
        office.redo()
    assert office.undo().undo_label is None


def test_each_person_undoes_their_own(office, neighbour, panel):
    office.change(margin=0.5)
    neighbour.change(thickness=8)
    assert office.undo().document == panel | {"thickness": 8}
    assert neighbour.undo().document == panel
    assert neighbour.redo().undo_label == "thickness"
    assert office.redo().document == panel | {"margin": 0.5, "thickness": 8}


def test_an_edit_by_another_person_leaves_my_redo(office, neighbour, panel):
    office.change(margin=0.5)
    office.undo()
    neighbour.change(thickness=8)
    assert office.redo().document == panel | {"margin": 0.5, "thickness": 8}


def test_undo_is_refused_when_another_has_touched_the_thing_since(office, neighbour):
    office.change(margin=0.5)
    neighbour.change(margin=0.75)
    with pytest.raises(UndoRefused) as refused:
        office.undo()
    assert refused.value.reason == "cannot undo “margin”, touched since: margin changed from 0.5 to 0.75"
    assert office.now_shown().revision == 3
    neighbour.undo()
    assert office.undo().revision == 5


def test_redo_is_refused_when_another_has_touched_the_thing_since(office, neighbour):
    office.change(margin=0.5)
    office.undo()
    neighbour.change(margin=0.75)
    with pytest.raises(UndoRefused, match="cannot redo “margin”, touched since"):
        office.redo()


def test_a_removed_opening_comes_back_beside_what_others_added(office, neighbour, panel):
    office.save(without(panel, "W1"))
    added = {"mark": "D1", "rect": [300, 0, 40, 84]}
    neighbour.save(without(panel, "W1") | {"openings": [opening(panel, "W2"), added]})
    assert office.undo().document["openings"] == [*panel["openings"], added]


def test_undo_on_an_old_revision_is_stale(office, neighbour):
    office.change(margin=0.5)
    neighbour.change(thickness=8)
    with pytest.raises(Stale) as refused:
        office.undo(base=2)
    assert refused.value.theirs == ("thickness changed from 7.25 to 8",)
    assert refused.value.mine == ("margin changed from 0.5 to 0.375",)
    assert not refused.value.overlap


def test_undo_sent_twice_goes_back_once(office):
    office.change(margin=0.5)
    office.change(margin=0.75)
    first = office.undo(base=3, command_id="a")
    assert office.undo(base=3, command_id="a") == first
    assert office.now_shown().document["margin"] == 0.5
    with pytest.raises(CommandReused):
        office.redo(base=3, command_id="a")


def test_an_undo_that_leads_to_a_wrong_panel_is_not_made(office):
    class Wrong(ValueError):
        """What a caller's check raises."""

    def check(document):
        raise Wrong(document["mark"])

    office.change(margin=0.5)
    with pytest.raises(Wrong):
        office.undo(check=check)
    assert office.now_shown().revision == 2


def test_undo_and_redo_survive_a_restart(office, panel, database):
    office.change(margin=0.5)
    office.change(margin=0.75)
    office.undo()
    office.engine.dispose()
    office.engine = open_database(database)
    assert office.redo().document == panel | {"margin": 0.75}
    assert office.undo().document == panel | {"margin": 0.5}
    office.engine.dispose()
    office.engine = open_database(database)
    assert office.undo().document == panel
    office.engine.dispose()


def test_every_command_stores_only_what_it_changed(office, panel):
    office.save(panel | {"margin": 0.5, "base": 2}, command_id="a")
    with reading(office.engine) as session:
        command = commands.find(session, "a")
    assert (command.before, command.after) == ({"margin": 0.375}, {"margin": 0.5, "base": 2})


def test_a_long_log_is_read_as_far_as_it_is_needed(office, panel):
    for count in range(60):
        office.change(margin=1 + count)
    for _ in range(55):
        office.undo()
    assert office.now_shown().document == panel | {"margin": 5}
    assert office.redo().document == panel | {"margin": 6}
    with reading(office.engine) as session:
        log = commands.since(session, office.panel_id, 0)
    document = json.loads(json.dumps(panel))
    for command in reversed(log):
        document = apply_changes(document, from_json(command.before, command.after))
    assert document == panel | {"margin": 6}
