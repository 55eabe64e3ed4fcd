"""Two hundred edits, undos, redos and reloads: the panel is its start and its log, and all can be taken back."""

import random
from uuid import uuid4

import pytest

from app.panel.faults import Refused
from app.panel.things import apply_changes, from_json
from app.storage import commands, open_database, reading, writing
from app.workflow.loading import checking, load_panel
from app.workflow.panel_edits import AskedEdit, edit_panel
from app.workflow.projects import create_project
from app.workflow.refusals import UndoRefused
from app.workflow.undoing import redo, undo

STEPS = 200
FILE = {"format": "castcourse-project/1", "name": "Steps", "length_unit": "in", "temperature_unit": "F"}


def edits(chance: random.Random) -> tuple[str, dict[str, str]]:
    """One edit as a form or a gesture asks for it; some cannot be made."""
    mark = chance.choice(["W1", "W2", "W3"])
    by = {"dx": str(chance.randint(-9, 9) / 4), "dy": str(chance.randint(-9, 9) / 4)}
    place = {"x": str(chance.randint(5, 200)), "y": str(chance.randint(5, 200))}
    return chance.choice(
        [
            ("move_opening", {"opening": mark, **by}),
            ("add_opening", {"shape": "rect", "use": "window", "width": "20", "height": "30", **place}),
            ("remove_opening", {"opening": mark}),
            ("reshape_opening", {"opening": mark, "side": "top", "dy": by["dy"]}),
            ("set_margin", {"margin": str(chance.randint(1, 8) / 8)}),
            ("add_strip", {"line": f"0, {place['y']}; 360, {place['y']}", "width": "3/4"}),
            ("remove_strip", {"strip": "R1"}),
            ("set_brickwork", {"part": "field", "size": "modular", "bond": chance.choice(["running", "flemish"])}),
            ("move_point", {"point": "2", "x": str(chance.randint(340, 380)), "y": "384"}),
        ]
    )


class Desk:
    """One or two people at one panel of a real database."""

    def __init__(self, database, panel_id: str, now) -> None:
        self.database, self.panel_id, self.now = database, panel_id, now
        self.engine = open_database(database)

    def reload(self) -> None:
        self.engine.dispose()
        self.engine = open_database(self.database)

    def loaded(self):
        with reading(self.engine) as session:
            return load_panel(session, self.panel_id)

    def edit(self, person: str, name: str, values: dict[str, str]) -> None:
        with writing(self.engine) as session:
            loaded = load_panel(session, self.panel_id)
            asked = AskedEdit(name, values, loaded.revision, uuid4().hex, person)
            edit_panel(session, loaded, asked, self.now)

    def step(self, kind, person: str) -> None:
        with writing(self.engine) as session:
            loaded = load_panel(session, self.panel_id)
            check = checking(session, loaded.project_id)
            base = {"command_id": uuid4().hex, "base_revision": loaded.revision}
            kind(session, self.panel_id, person=person, now=self.now, check=check, **base)

    def log(self):
        with reading(self.engine) as session:
            return tuple(reversed(commands.since(session, self.panel_id, 0)))


@pytest.fixture
def desk(engine, database, panel, now):
    file = FILE | {"walls": [{"mark": "A", "datum": 0, "joint": 0.75, "panels": [panel]}]}
    with writing(engine) as session:
        panel_id = create_project(session, file, now).walls[0].panels[0]
    made = Desk(database, panel_id, now)
    yield made
    made.engine.dispose()


def tried(act, *asked) -> bool:
    try:
        act(*asked)
    except (Refused, UndoRefused):
        return False
    return True


def walk(desk: Desk, chance: random.Random, people: list[str]) -> int:
    """The steps, each of which may be refused; how many were made."""
    made = 0
    for _ in range(STEPS):
        person, what = chance.choice(people), chance.random()
        if what < 0.2:
            made += tried(desk.step, undo, person)
        elif what < 0.3:
            made += tried(desk.step, redo, person)
        elif what < 0.35:
            desk.reload()
        else:
            made += tried(desk.edit, person, *edits(chance))
    return made


def replayed(start, log):
    document = start
    for command in log:
        document = apply_changes(document, from_json(command.before, command.after))
    return document


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("people", [["office"], ["office", "neighbour"]], ids=["alone", "together"])
def test_two_hundred_steps_are_the_start_and_the_log(desk, people: list[str], seed: int) -> None:
    start = desk.loaded().document
    assert walk(desk, random.Random(seed), people) > STEPS / 3
    end, log = desk.loaded(), desk.log()
    assert replayed(start, log) == end.document
    assert [command.revision for command in log] == list(range(2, end.revision + 1))


@pytest.mark.parametrize("seed", [4, 5, 6])
def test_undo_of_all_two_hundred_steps_is_the_start(desk, seed: int) -> None:
    start = desk.loaded().document
    walk(desk, random.Random(seed), ["office"])
    desk.reload()
    while tried(desk.step, undo, "office"):
        pass
    assert desk.loaded().document == start
