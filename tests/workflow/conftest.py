"""A real database file with one panel, and people who edit it."""

import shutil
from copy import deepcopy
from datetime import UTC, datetime
from uuid import uuid4

import pytest

from app.storage import backup, migrate, open_database, panels, reading, writing
from app.workflow.editing import save, save_on_top
from app.workflow.projects import create_project
from app.workflow.undoing import redo, undo

NOW = datetime(2031, 5, 6, 10, 42, 7, tzinfo=UTC)


@pytest.fixture
def now():
    return NOW


@pytest.fixture
def database(tmp_path):
    return tmp_path / "castcourse.sqlite3"


@pytest.fixture(scope="session")
def migrated(tmp_path_factory):
    engine = open_database(tmp_path_factory.mktemp("migrated") / "a.sqlite3")
    migrate(engine)
    copy = backup(engine, tmp_path_factory.mktemp("copy") / "a.sqlite3")
    engine.dispose()
    return copy


@pytest.fixture
def engine(database, migrated):
    shutil.copy(migrated, database)
    engine = open_database(database)
    yield engine
    engine.dispose()


PANEL = {
    "mark": "N1",
    "thickness": 7.25,
    "outline": [[0, 0], [360, 0], [360, 384], [0, 384]],
    "margin": 0.375,
    "openings": [
        {"mark": "W1", "use": "window", "rect": [60, 96, 48, 64]},
        {"mark": "W2", "use": "window", "rect": [200, 96, 48, 64]},
    ],
    "field": {"size": "modular", "bond": "running", "origin": [0.375, 0.375]},
}


class Editor:
    """One person at one panel: each call is one transaction on the real database."""

    def __init__(self, engine, panel_id, person="office"):
        self.engine, self.panel_id, self.person = engine, panel_id, person

    def now_shown(self):
        with reading(self.engine) as session:
            return panels.find(session, self.panel_id)

    def save(self, document, *, base=None, command_id=None, label="edit", on_top=False):
        asked = self._asked(base, command_id) | {"label": label, "document": document}
        with writing(self.engine) as session:
            return save_on_top(session, **asked, check=nothing_wrong) if on_top else save(session, **asked)

    def change(self, **replaced):
        return self.save(self.now_shown().document | replaced, label=", ".join(replaced))

    def undo(self, *, base=None, command_id=None, check=None):
        return self._step(undo, base, command_id, check)

    def redo(self, *, base=None, command_id=None, check=None):
        return self._step(redo, base, command_id, check)

    def _step(self, step, base, command_id, check):
        with writing(self.engine) as session:
            return step(session, **self._asked(base, command_id), check=check or nothing_wrong)

    def _asked(self, base, command_id):
        base_revision = self.now_shown().revision if base is None else base
        asked = {"panel_id": self.panel_id, "person": self.person, "now": NOW, "base_revision": base_revision}
        return asked | {"command_id": str(uuid4()) if command_id is None else command_id}


def nothing_wrong(_document):
    """The check of a caller that finds every document right."""


def new_panel(engine, document=PANEL):
    units = {"length_unit": "in", "temperature_unit": "F"}
    walls = [{"mark": "North", "datum": 0, "joint": 0.75, "panels": [document]}]
    file = {"format": "castcourse-project/1", "name": "Quay store", **units, "walls": walls}
    with writing(engine) as session:
        return create_project(session, file, NOW).walls[0].panels[0]


@pytest.fixture
def panel():
    return deepcopy(PANEL)


@pytest.fixture
def office(engine):
    editor = Editor(engine, new_panel(engine))
    yield editor
    editor.engine.dispose()


@pytest.fixture
def neighbour(office):
    return Editor(office.engine, office.panel_id, "neighbour")


@pytest.fixture
def another_editor():
    return lambda engine: Editor(engine, new_panel(engine))
