"""Releases: frozen with all that was computed, never altered, proven whole."""

import json
import sqlite3
import zlib
from contextlib import closing
from datetime import timedelta

import pytest
from sqlalchemy.exc import IntegrityError

from app.panel.release import letter_of
from app.storage import reading, releases, writing
from app.workflow.refusals import NotReleased
from app.workflow.release_differences import differences
from app.workflow.releasing import INPUTS, freeze, release, rendered_again, set_notice, verify

WHY = "For casting"


def released(office, now, why=WHY):
    with reading(office.engine) as session:
        frozen = freeze(session, office.panel_id)
    with writing(office.engine) as session:
        return release(session, frozen, why=why, person="Detailer", now=now)


def rows(office):
    with reading(office.engine) as session:
        return releases.of_panel(session, office.panel_id)


def test_a_release_is_rendered_again_byte_by_byte(office, now):
    row = released(office, now)
    with reading(office.engine) as session:
        held = releases.contents(session, row.id)
        assert verify(session, row) == ()
    assert rendered_again(held[INPUTS]) == held
    assert {"elevation.svg", "bed.svg", "sheets.svg", "story-pole.svg", "results.json"} <= set(held)


def test_later_edits_leave_a_release_as_it_is(office, now):
    row = released(office, now)
    office.change(openings=[{"mark": "W1", "use": "window", "rect": [62, 96, 48, 64]}])
    with reading(office.engine) as session:
        held = releases.contents(session, row.id)
        assert json.loads(held[INPUTS])["project"]["walls"][0]["panels"][0]["openings"][0]["rect"][0] == 60
        assert verify(session, row) == ()


def test_the_next_release_names_the_one_before_and_supersedes_it(office, now):
    first = released(office, now)
    office.change(margin=0.5)
    second = released(office, now + timedelta(hours=1))
    assert (first.letter, second.letter, second.head.previous) == ("A", "B", first.digest)
    assert [(row.letter, row.is_newest) for row in rows(office)] == [("B", True), ("A", False)]


def test_nothing_new_is_not_released(office, now):
    released(office, now)
    with pytest.raises(NotReleased, match="nothing new since rev A"):
        released(office, now)
    assert len(rows(office)) == 1


def test_what_changed_while_it_was_computed_is_not_released(office, now):
    with reading(office.engine) as session:
        frozen = freeze(session, office.panel_id)
    office.change(margin=0.5)
    with pytest.raises(NotReleased, match="found revision 2"), writing(office.engine) as session:
        release(session, frozen, why=WHY, person="Detailer", now=now)
    assert rows(office) == ()


@pytest.mark.parametrize("why", ["", "x" * 401])
def test_a_reason_is_asked_for(office, now, why):
    with pytest.raises(NotReleased, match="a reason of 1 to 400 characters"):
        released(office, now, why)


def test_open_errors_block_and_accepted_ones_go_along(office, now):
    low = {"mark": "W1", "use": "window", "rect": [60, 97, 48, 63]}
    office.change(openings=[low], fit={"courses": False, "heads": False, "matter": {"sills": "required"}})
    with pytest.raises(NotReleased) as refused:
        released(office, now)
    fault = refused.value.faults[0]
    assert fault.expected == "no error that is open: mend it, or accept it by name and reason"
    about = "sill W1"
    seen = {"by": "Architect", "reason": "seen on the mock-up"}
    office.change(accepted=[{"code": "required-missed", "about": about, **seen}])
    assert released(office, now).letter == "A"


@pytest.mark.parametrize("table", ["release", "release_part", "release_notice"])
@pytest.mark.parametrize(
    "change", ["UPDATE {} SET release_id = 'x'", "DELETE FROM {}", "INSERT OR REPLACE INTO {0} SELECT * FROM {0}"]
)
def test_the_database_itself_refuses_to_alter_a_release(office, now, database, table, change):
    row = released(office, now)
    with writing(office.engine) as session:
        set_notice(session, row.id, "hold", why="crane is late", person="Detailer", now=now)
    change = change.replace("release_id", "id") if table == "release" else change
    with closing(sqlite3.connect(database)) as connection, pytest.raises(sqlite3.IntegrityError, match="never altered"):
        connection.execute(change.format(table))


def test_a_released_panel_stays_with_its_project(office, now):
    released(office, now)
    with pytest.raises(IntegrityError), writing(office.engine) as session:
        session.connection().exec_driver_sql("DELETE FROM project")


@pytest.mark.parametrize("place", [0, 100, -1])
def test_a_changed_byte_in_the_store_is_found(office, now, database, place):
    row = released(office, now)
    for name in row.head.parts:
        change_a_byte(database, row.id, name, place)
        with reading(office.engine) as session:
            faults = verify(session, row)
        assert len(faults) == 1
        assert faults[0].startswith(f"{name}: found ")
        change_a_byte(database, row.id, name, place)
    with reading(office.engine) as session:
        assert verify(session, row) == ()


@pytest.mark.parametrize(("column", "value"), [("why", "For nothing"), ("person", "Nobody"), ("revision", 7)])
def test_a_changed_head_is_found(office, now, database, column, value):
    row = released(office, now)
    with unlocked(database) as connection:
        connection.execute(f"UPDATE release SET {column} = ?", (value,))
    with reading(office.engine) as session:
        assert verify(session, releases.find(session, row.id))[-1].startswith("head: found digest sha256:")


def test_a_part_that_is_gone_is_found(office, now, database):
    row = released(office, now)
    with unlocked(database) as connection:
        connection.execute("DELETE FROM release_part WHERE name = 'bed.svg'")
    with reading(office.engine) as session:
        assert verify(session, row)[0].startswith("bed.svg: found nothing that can be read, expected SHA-256 ")


def test_differences_are_told_of_panel_wall_and_project(office, now):
    first = released(office, now)
    office.change(margin=0.5, openings=[{"mark": "W1", "use": "window", "rect": [64, 96, 48, 64]}])
    second = released(office, now)
    with reading(office.engine) as session:
        found = differences(session, second, first)
    assert found.words == (
        "margin changed from 0.375 to 0.5",
        "W1 moved from 60, 96 to 64, 96",
        "opening W2 removed",
    )


def test_hold_and_go_on_are_notes_beside_the_release(office, now):
    row = released(office, now)
    with writing(office.engine) as session:
        held = set_notice(session, row.id, "hold", why="wrong liner came", person="Manager", now=now)
    assert (held.hold.why, held.digest, held.head) == ("wrong liner came", row.digest, row.head)
    with pytest.raises(NotReleased, match="found on hold"), writing(office.engine) as session:
        set_notice(session, row.id, "hold", why="again", person="Manager", now=now)
    with writing(office.engine) as session:
        assert set_notice(session, row.id, "go on", why="right one is here", person="Manager", now=now).hold is None


def test_letters_leave_out_those_that_are_misread():
    """ASME Y14.35 leaves out I, O, Q, S, X and Z (from memory); after Y comes AA."""
    assert [letter_of(k) for k in (1, 8, 9, 20, 21, 40, 41)] == ["A", "H", "J", "Y", "AA", "AY", "BA"]


def change_a_byte(database, release_id, name, place):
    """Flips every bit of one byte as it lies in the store, packed."""
    with unlocked(database) as connection:
        found = connection.execute("SELECT content FROM release_part WHERE name = ?", (name,)).fetchone()[0]
        content = bytearray(found)
        content[place] ^= 0xFF
        connection.execute(
            "UPDATE release_part SET content = ? WHERE release_id = ? AND name = ?", (bytes(content), release_id, name)
        )


class unlocked:  # noqa: N801 - read as a word in `with`
    """The database as somebody has it who took the triggers away."""

    def __init__(self, database):
        self.connection = sqlite3.connect(database)

    def __enter__(self):
        for name in self.connection.execute("SELECT name FROM sqlite_schema WHERE type = 'trigger'").fetchall():
            self.connection.execute(f"DROP TRIGGER {name[0]}")
        return self.connection

    def __exit__(self, *_):
        self.connection.commit()
        self.connection.close()


def test_parts_are_packed(office, now, database):
    row = released(office, now)
    with closing(sqlite3.connect(database)) as connection:
        content = connection.execute("SELECT content FROM release_part WHERE name = 'results.json'").fetchone()[0]
    assert json.loads(zlib.decompress(content))["panel"] == "N1"
    assert row.head.mark == "N1"
