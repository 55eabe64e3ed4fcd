"""A project file goes in and comes out the same; what a project holds is changed one revision at a time."""

import json
from copy import deepcopy

import pytest

from app.storage import panels, projects, reading, writing
from app.storage.errors import MarkTaken, NotFound
from app.workflow.projects import (
    add_panel,
    add_wall,
    create_project,
    project_file,
    put_back_panel,
    remove_panel,
    rename_panel,
    reorder_panels,
    update_settings,
)
from app.workflow.refusals import CommandReused, ProjectStale, Stale

FILE = {
    "format": "castcourse-project/1",
    "name": "Quay store – Lagerhaus №3",
    "length_unit": "in",
    "sizes": [{"name": "modular", "length": 7.625, "height": '2 1/4"', "courses": 3, "per": 8.0}],
    "walls": [
        {"mark": "North", "datum": 0, "panels": [{"mark": "N1", "base": "1'-6\""}, {"mark": "N2"}, {"mark": "N3"}]},
        {"panels": [], "mark": "East", "joint": 0.75},
    ],
    "day": {"bed_low": 55, "bed_high": 105},
}


class House:
    """One project on the real database; each call is one transaction."""

    def __init__(self, engine, now):
        self.engine, self.now = engine, now
        self.ids = self.do(create_project, deepcopy(FILE), now)
        self.north, self.east = (wall.wall for wall in self.ids.walls)
        self.n1, self.n2, self.n3 = self.ids.walls[0].panels

    def do(self, change, *given, **named):
        with writing(self.engine) as session:
            return change(session, *given, **named)

    def file(self):
        with reading(self.engine) as session:
            return project_file(session, self.ids.project)

    def marks(self):
        return [[panel["mark"] for panel in wall["panels"]] for wall in self.file()["walls"]]

    def revision(self):
        with reading(self.engine) as session:
            return projects.find(session, self.ids.project).revision


@pytest.fixture
def house(engine, now):
    return House(engine, now)


@pytest.mark.parametrize(
    "file",
    [
        FILE,
        {"walls": [], "name": "Grain hall"},
        {"name": "Grain hall"},
        {"walls": [{"mark": "North"}], "name": "Grain hall"},
        {"name": "é\u2028\U0001f9f1", "walls": [{"panels": [{"mark": "N1", "margin": 1e-7, "base": 10**20}]}]},
    ],
    ids=["whole", "no walls", "no key for walls", "no key for panels", "odd text and numbers"],
)
def test_a_project_file_comes_out_as_it_went_in(engine, now, file):
    with writing(engine) as session:
        ids = create_project(session, deepcopy(file), now)
    with reading(engine) as session:
        assert json.dumps(project_file(session, ids.project)) == json.dumps(file)


def test_ids_stand_in_the_order_of_the_file_and_cannot_be_guessed(house):
    with reading(house.engine) as session:
        found = [panels.find(session, each).mark for wall in house.ids.walls for each in wall.panels]
    assert found == ["N1", "N2", "N3"]
    every = [house.ids.project, house.north, house.east, house.n1, house.n2, house.n3]
    assert len(set(every)) == 6
    assert all(len(bytes.fromhex(each)) == 8 for each in every)


def test_a_file_that_fails_midway_leaves_nothing(engine, now):
    file = deepcopy(FILE)
    file["walls"][0]["panels"][2]["base"] = float("inf")
    with pytest.raises(ValueError, match="not JSON compliant"), writing(engine) as session:
        create_project(session, file, now)
    with reading(engine) as session:
        assert projects.list_all(session) == ()


def test_a_panel_is_added_last_or_where_it_is_asked_for(house):
    house.do(add_panel, house.north, {"mark": "N4"}, house.now)
    house.do(add_panel, house.north, {"mark": "N0"}, house.now, position=0)
    house.do(add_panel, house.east, {"mark": "E1"}, house.now)
    assert house.marks() == [["N0", "N1", "N2", "N3", "N4"], ["E1"]]
    assert house.revision() == 4


def test_a_panel_sent_twice_is_added_once(house):
    first = house.do(add_panel, house.north, {"mark": "N4"}, house.now, panel_id="made-by-client")
    assert house.do(add_panel, house.north, {"mark": "N4"}, house.now, panel_id="made-by-client") == first
    assert (house.marks()[0], house.revision()) == (["N1", "N2", "N3", "N4"], 2)
    with pytest.raises(CommandReused):
        house.do(add_panel, house.north, {"mark": "N5"}, house.now, panel_id="made-by-client")


def test_a_mark_is_given_once_in_a_project(house):
    with pytest.raises(MarkTaken, match="found N2"):
        house.do(add_panel, house.east, {"mark": "N2"}, house.now)
    with pytest.raises(MarkTaken):
        house.do(add_wall, house.ids.project, {"mark": "South", "panels": [{"mark": "N1"}]}, house.now)
    assert (house.marks(), house.revision()) == ([["N1", "N2", "N3"], []], 1)


def test_a_removed_panel_is_gone_from_the_file_and_can_be_put_back(house):
    house.do(remove_panel, house.n2, base_revision=1, now=house.now)
    assert house.marks()[0] == ["N1", "N3"]
    with pytest.raises(NotFound):
        house.do(remove_panel, house.n2, base_revision=1, now=house.now)
    house.do(put_back_panel, house.n2, house.now)
    assert (house.file(), house.revision()) == (FILE, 3)


def test_a_panel_whose_mark_was_given_away_is_not_put_back(house):
    house.do(remove_panel, house.n2, base_revision=1, now=house.now)
    house.do(add_panel, house.east, {"mark": "N2"}, house.now)
    with pytest.raises(MarkTaken):
        house.do(put_back_panel, house.n2, house.now)
    assert house.marks() == [["N1", "N3"], ["N2"]]


def rename(house, mark, base=1, command_id="a"):
    return house.do(
        rename_panel, house.n1, mark, base_revision=base, command_id=command_id, person="office", now=house.now
    )


def test_a_panel_changed_since_is_not_removed_unseen(house):
    rename(house, "N9")
    with pytest.raises(Stale, match="mark changed from N1 to N9"):
        house.do(remove_panel, house.n1, base_revision=1, now=house.now)
    assert house.marks()[0] == ["N9", "N2", "N3"]


def test_a_new_mark_is_an_edit_in_the_log(house):
    saved = rename(house, "N9")
    assert (saved.revision, saved.undo_label, saved.document) == (2, "mark N9", {"mark": "N9", "base": "1'-6\""})
    assert rename(house, "N9") == saved
    with pytest.raises(Stale):
        rename(house, "N8", command_id="b")
    with pytest.raises(MarkTaken):
        rename(house, "N2", base=2, command_id="c")


def test_panels_stand_in_the_order_asked_for(house):
    house.do(reorder_panels, house.north, [house.n3, house.n1, house.n2], house.now)
    assert (house.marks()[0], house.revision()) == (["N3", "N1", "N2"], 2)
    house.do(reorder_panels, house.north, [house.n3, house.n1, house.n2], house.now)
    assert house.revision() == 2


@pytest.mark.parametrize("places", [[0, 1], [0, 1, 1], [0, 1, 2, 2], []])
def test_an_order_that_names_other_panels_than_the_wall_has_is_refused(house, places):
    named = [(house.n1, house.n2, house.n3)[place] for place in places]
    with pytest.raises(ProjectStale, match="expected each of the 3 of wall North"):
        house.do(reorder_panels, house.north, named, house.now)
    assert house.file() == FILE


def test_a_wall_is_added_behind_the_others(house):
    south = {"panels": [{"mark": "S1"}], "mark": "South", "datum": 4}
    ids = house.do(add_wall, house.ids.project, south, house.now)
    assert (house.file(), house.revision()) == (FILE | {"walls": [*FILE["walls"], south]}, 2)
    assert len(ids.panels) == 1


def test_a_first_wall_is_added_to_a_file_without_any(engine, now):
    with writing(engine) as session:
        ids = create_project(session, {"name": "Grain hall"}, now)
        add_wall(session, ids.project, {"mark": "North"}, now)
    with reading(engine) as session:
        assert project_file(session, ids.project) == {"name": "Grain hall", "walls": [{"mark": "North"}]}


def test_settings_are_replaced_whole_and_walls_stay(house):
    settings = {key: value for key, value in FILE.items() if key not in ("walls", "day")} | {"name": "Rope loft"}
    changed = house.do(update_settings, house.ids.project, settings, base_revision=1, now=house.now)
    assert (changed.revision, changed.name) == (2, "Rope loft")
    assert house.file() == settings | {"walls": FILE["walls"]}
    assert house.do(update_settings, house.ids.project, settings, base_revision=2, now=house.now).revision == 2


def test_settings_on_an_old_revision_are_refused(house):
    house.do(add_panel, house.east, {"mark": "E1"}, house.now)
    with pytest.raises(ProjectStale, match="found revision 2, expected revision 1"):
        house.do(update_settings, house.ids.project, {"name": "Rope loft"}, base_revision=1, now=house.now)
    assert house.file()["name"] == FILE["name"]


def test_projects_are_listed_with_their_panels_and_the_last_change_first(house):
    other = house.do(create_project, {"name": "Grain hall"}, house.now.replace(hour=11))
    house.do(
        rename_panel, house.n1, "N9", base_revision=1, command_id="a", person="office", now=house.now.replace(hour=12)
    )
    house.do(remove_panel, house.n2, base_revision=1, now=house.now)
    with reading(house.engine) as session:
        lines = projects.list_all(session)
    assert [(line.id, line.panels, line.updated_at.hour) for line in lines] == [
        (house.ids.project, 2, 12),
        (other.project, 0, 11),
    ]


def test_a_deleted_project_takes_everything_with_it(house):
    rename(house, "N9")
    house.do(projects.delete, house.ids.project)
    with house.engine.connect() as connection:
        left = [
            connection.exec_driver_sql(f"SELECT count(*) FROM {name}").scalar() for name in ("wall", "panel", "command")
        ]
    assert left == [0, 0, 0]
    with pytest.raises(NotFound):
        house.file()
