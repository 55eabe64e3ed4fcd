"""Saving: no write goes over another unseen, and the same command is the same answer."""

from datetime import UTC, datetime
from uuid import uuid4

import pytest

from app.panel.things import changes
from app.storage import open_database, reading, writing
from app.storage.errors import MarkTaken, NotFound
from app.storage.panels import find
from app.workflow.editing import history, save_on_top
from app.workflow.projects import add_panel
from app.workflow.refusals import BadCommand, CommandReused, Stale


def moved(document, mark, x):
    openings = [
        item | {"rect": [x, *item["rect"][1:]]} if item["mark"] == mark else item for item in document["openings"]
    ]
    return document | {"openings": openings}


def rows(editor):
    with reading(editor.engine) as session:
        return history(session, editor.panel_id)


def test_a_save_makes_one_revision_and_one_command(office, panel):
    saved = office.save(moved(panel, "W2", 210), label="W2 moved")
    assert (saved.revision, saved.document, list(saved.changes)) == (2, moved(panel, "W2", 210), ["openings/W2"])
    assert (saved.undo_label, saved.redo_label) == ("W2 moved", None)
    assert saved.at == datetime(2031, 5, 6, 10, 42, 7, tzinfo=UTC)
    assert office.now_shown().document == moved(panel, "W2", 210)
    assert [(row.label, row.person, row.revision, row.kind, row.undone) for row in rows(office)] == [
        ("W2 moved", "office", 2, "edit", False)
    ]


def test_a_document_is_kept_as_typed_with_its_keys_in_order(office, panel):
    typed = dict(reversed(panel.items())) | {"base": "1'-6 1/2\"", "margin": 0.5, "thickness": 7.0}
    office.save(typed)
    assert str(office.now_shown().document) == str(typed)


def test_an_edit_that_changes_nothing_makes_no_revision(office, panel):
    saved = office.save(panel)
    assert (saved.revision, saved.changes, rows(office)) == (1, {}, ())


def test_a_save_on_an_old_revision_is_stale_and_says_what_happened(office, neighbour, panel):
    neighbour.save(moved(panel, "W1", 64))
    with pytest.raises(Stale, match="found revision 2 since this change began; in between: W1 moved") as refused:
        office.save(panel | {"margin": 0.5}, base=1)
    stale = refused.value
    assert (stale.current_revision, stale.document) == (2, moved(panel, "W1", 64))
    assert stale.theirs == ("W1 moved from 60, 96 to 64, 96",)
    assert stale.mine == ("margin changed from 0.375 to 0.5",)
    assert not stale.overlap
    assert office.now_shown().revision == 2


def test_two_edits_of_one_thing_overlap(office, neighbour, panel):
    neighbour.save(moved(panel, "W1", 64))
    with pytest.raises(Stale) as refused:
        office.save(moved(panel, "W1", 72), base=1)
    assert refused.value.overlap
    with pytest.raises(Stale) as again:
        office.save(moved(panel, "W1", 72), base=1, on_top=True)
    assert again.value.overlap
    assert office.now_shown().document == moved(panel, "W1", 64)


def test_mine_goes_on_top_where_nothing_overlaps(office, neighbour, panel):
    neighbour.save(moved(panel, "W1", 64))
    neighbour.change(margin=0.5)
    saved = office.save(moved(panel, "W2", 210), base=1, on_top=True)
    assert saved.revision == 4
    assert saved.document == moved(moved(panel, "W1", 64), "W2", 210) | {"margin": 0.5}
    assert list(saved.changes) == ["openings/W2"]


def test_on_top_is_checked_as_a_whole(engine, office, neighbour, panel):
    class OpeningsOverlap(ValueError):
        """What a caller's check raises."""

    def check(document):
        raise OpeningsOverlap(document["mark"])

    neighbour.save(moved(panel, "W1", 64))
    asked = {"base_revision": 1, "command_id": str(uuid4()), "person": "office", "label": "W2 moved"}
    with pytest.raises(OpeningsOverlap), writing(engine) as session:
        save_on_top(
            session, office.panel_id, document=moved(panel, "W2", 90), now=datetime.now(UTC), check=check, **asked
        )
    assert office.now_shown().document == moved(panel, "W1", 64)


def test_dropping_mine_needs_nothing_but_the_panel_as_it_is(office, neighbour, panel):
    neighbour.change(margin=0.5)
    with pytest.raises(Stale) as refused:
        office.save(panel | {"margin": 0.25}, base=1)
    assert office.save(refused.value.document, base=refused.value.current_revision).revision == 2


@pytest.mark.parametrize("base", [0, -1, 7])
def test_a_base_that_the_panel_never_had_is_stale_and_never_goes_on_top(office, panel, base):
    for on_top in (False, True):
        with pytest.raises(Stale) as refused:
            office.save(panel | {"margin": 0.5}, base=base, on_top=on_top)
        assert refused.value.overlap
    assert office.now_shown().revision == 1


def test_the_same_command_again_gets_its_first_answer_again(office, neighbour, panel):
    first = office.save(panel | {"margin": 0.5}, base=1, command_id="a")
    neighbour.change(margin=0.25)
    office.change(thickness=8)
    assert office.save(panel | {"margin": 0.5}, base=1, command_id="a") == first
    assert office.now_shown().revision == 4


def test_the_same_command_put_on_top_gets_its_first_answer_again(office, neighbour, panel):
    neighbour.change(margin=0.5)
    first = office.save(moved(panel, "W2", 210), base=1, command_id="a", on_top=True)
    neighbour.change(margin=0.25)
    for on_top in (True, False):
        assert office.save(moved(panel, "W2", 210), base=1, command_id="a", on_top=on_top) == first


def test_a_command_id_used_for_something_else_is_refused(office, neighbour, another_editor, panel):
    office.save(panel | {"margin": 0.5}, base=1, command_id="a")
    for other in (neighbour, another_editor(office.engine)):
        with pytest.raises(CommandReused):
            other.save(panel | {"margin": 0.5}, base=1, command_id="a")
    with pytest.raises(CommandReused):
        office.save(panel | {"margin": 0.25}, base=1, command_id="a")
    with pytest.raises(CommandReused):
        office.undo(command_id="a")
    assert office.now_shown().revision == 2


@pytest.mark.parametrize("command_id", ["", "x" * 65])
def test_a_command_id_of_no_use_is_refused(office, panel, command_id):
    with pytest.raises(BadCommand, match="expected 1 to 64"):
        office.save(panel | {"margin": 0.5}, command_id=command_id)


def test_a_change_without_a_person_is_refused(office, panel):
    office.person = ""
    with pytest.raises(BadCommand, match="person"):
        office.save(panel | {"margin": 0.5})


def test_a_panel_that_is_not_there_is_not_found(office, panel):
    office.panel_id = "none"
    with pytest.raises(NotFound):
        office.save(panel, base=1)


def test_a_number_that_json_cannot_hold_is_never_stored(office, panel):
    with pytest.raises(ValueError, match="not JSON compliant"):
        office.save(panel | {"margin": float("nan")})
    assert office.now_shown().document == panel


def test_what_was_saved_is_there_after_the_database_is_opened_again(office, panel, database):
    office.save(panel | {"margin": 0.5})
    office.engine.dispose()
    again = open_database(database)
    with reading(again) as session:
        assert find(session, office.panel_id).document == panel | {"margin": 0.5}
        assert [row.revision for row in history(session, office.panel_id)] == [2]
    again.dispose()


def test_a_panel_cannot_take_the_mark_of_another(office, panel, engine):
    with writing(engine) as session:
        add_panel(session, find(session, office.panel_id).wall_id, panel | {"mark": "N2"}, datetime.now(UTC))
    with pytest.raises(MarkTaken, match="found N2"):
        office.change(mark="N2")
    assert not changes(office.now_shown().document, panel)
