"""Whatever people do, the panel is its start and its log, and all of it can be taken back."""

from copy import deepcopy

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.panel.things import apply_changes, from_json
from app.storage import commands, open_database, reading
from app.workflow.editing import history
from app.workflow.panel_log import document_at
from app.workflow.refusals import UndoRefused


def set_key(key, value):
    return lambda document: document | {key: value}


def drop_key(key):
    return lambda document: {name: value for name, value in document.items() if name != key}


def add_opening(mark, x):
    added = {"mark": mark, "rect": [x, 12, 24, 24]}
    return lambda document: document | {"openings": [*_without(document, mark), added]}


def remove_opening(mark):
    return lambda document: document | {"openings": _without(document, mark)}


def turn_openings(document):
    return document | {"openings": list(reversed(document.get("openings", [])))}


def _without(document, mark):
    return [item for item in document.get("openings", []) if item["mark"] != mark]


MARKS = st.sampled_from(["W1", "W2", "D1"])
EDITS = st.one_of(
    st.builds(set_key, st.sampled_from(["margin", "base"]), st.integers(0, 3)),
    st.builds(drop_key, st.sampled_from(["margin", "base", "openings"])),
    st.builds(add_opening, MARKS, st.integers(0, 2)),
    st.builds(remove_opening, MARKS),
    st.just(turn_openings),
)
PEOPLE = st.sampled_from(["office", "neighbour"])
STEPS = st.lists(st.tuples(PEOPLE, EDITS | st.sampled_from(["undo", "redo", "undo", "reopen"])), max_size=8)


def take(editor, step):
    """One step; returns whether it could be made."""
    try:
        if step == "undo":
            editor.undo()
        elif step == "redo":
            editor.redo()
        else:
            editor.save(step(deepcopy(editor.now_shown().document)))
    except UndoRefused:
        return False
    return True


def replayed(start, log):
    document = start
    for command in reversed(log):
        document = apply_changes(document, from_json(command.before, command.after))
    return document


def log_of(editor):
    with reading(editor.engine) as session:
        return commands.since(session, editor.panel_id, 0)


def reopened(editor, file):
    editor.engine.dispose()
    editor.engine = open_database(file)


def run(editor, steps, file):
    """Takes the steps; returns the document that each revision was seen to have."""
    seen = {1: editor.now_shown().document}
    for person, step in steps:
        editor.person = person
        if step == "reopen":
            reopened(editor, file)
        else:
            take(editor, step)
        shown = editor.now_shown()
        assert seen.setdefault(shown.revision, shown.document) == shown.document
    return seen


LAW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@LAW
@given(steps=STEPS)
def test_the_panel_is_its_start_and_its_log(another_editor, database, office, panel, steps):
    editor = another_editor(office.engine)
    seen = run(editor, steps, database)
    office.engine, shown = editor.engine, editor.now_shown()
    assert replayed(panel, log_of(editor)) == shown.document
    assert [command.revision for command in log_of(editor)] == list(range(shown.revision, 1, -1))
    with reading(editor.engine) as session:
        assert {revision: document_at(session, shown, revision) for revision in seen} == seen


@LAW
@given(steps=STEPS.map(lambda steps: [("office", step) for _, step in steps]))
def test_undo_of_all_is_the_start_and_redo_of_all_is_the_end(another_editor, database, office, panel, steps):
    editor = another_editor(office.engine)
    run(editor, steps, database)
    while take(editor, "redo"):
        pass
    end = editor.now_shown().document
    with reading(editor.engine) as session:
        standing = [row for row in history(session, editor.panel_id) if row.kind == "edit" and not row.undone]
    undone = sum(1 for _ in iter(lambda: take(editor, "undo"), False))
    assert (undone, editor.now_shown().document) == (len(standing), panel)
    reopened(editor, database)
    office.engine = editor.engine
    redone = sum(1 for _ in iter(lambda: take(editor, "redo"), False))
    assert (redone, editor.now_shown().document) == (undone, end)
