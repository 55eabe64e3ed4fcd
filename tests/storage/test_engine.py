"""Every connection keeps the settings that safety rests on; a file that is not sound is refused by name."""

import os
import sqlite3
import threading
from contextlib import closing

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from app.storage import backup, migrate, open_database, projects, reading, writing
from app.storage.errors import (
    DamagedDatabase,
    DatabaseBusy,
    DatabaseRefused,
    DiskFull,
    NotFound,
    ReadingOnly,
    WrongSettings,
)

SETTINGS = {"busy_timeout": 5000, "journal_mode": "wal", "synchronous": 2, "foreign_keys": 1}


def settings_of(connection):
    return {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in SETTINGS}


def test_every_connection_has_the_safe_settings(engine):
    with engine.connect() as first, engine.connect() as second, engine.connect() as third:
        assert [settings_of(each) for each in (first, second, third)] == [SETTINGS] * 3


def test_a_setting_that_does_not_take_is_refused(monkeypatch, tmp_path):
    monkeypatch.setattr("app.storage.engine._SETTINGS", SETTINGS | {"page_size": 1})
    with pytest.raises(WrongSettings, match="page_size: found 4096, expected 1"):
        open_database(tmp_path / "a.sqlite3")


@pytest.mark.usefixtures("engine")
def test_an_address_and_a_path_open_the_same_file(database):
    again = open_database(f"sqlite:///{database}")
    with reading(again) as session:
        assert projects.list_all(session) == ()
    again.dispose()


@pytest.mark.parametrize("name", ["a b.sqlite3", "50%.sqlite3", "a?b#c.sqlite3", "été.sqlite3"])
def test_any_file_name_will_do(tmp_path, name):
    engine = open_database(tmp_path / name)
    migrate(engine)
    engine.dispose()
    assert (tmp_path / name).stat().st_size > 0


@pytest.mark.parametrize("where", ["postgresql://host/db", "sqlite://", "sqlite:///no/such/folder/a.sqlite3"])
def test_what_is_no_file_is_refused(where):
    with pytest.raises(DatabaseRefused, match=r"found .* expected"):
        open_database(where)


def test_a_folder_is_refused(tmp_path):
    with pytest.raises(DatabaseRefused, match="which is no file"):
        open_database(tmp_path)


def damage(path, how):
    if how == "not a database":
        path.write_bytes(b"Quay store, panels N1 to N6\n" * 400)
    elif how == "cut short":
        os.truncate(path, 4096 * 3)
    elif how == "emptied":
        os.truncate(path, 0)
    else:
        with path.open("r+b") as file:
            file.seek(4096)
            file.write(os.urandom(4096 * 6))


def close_wholly(engine):
    with engine.connect() as connection:
        connection.exec_driver_sql("SELECT 1")
    engine.dispose()
    with closing(sqlite3.connect(engine.url.database)) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


@pytest.mark.parametrize("how", ["not a database", "cut short", "emptied", "overwritten"])
def test_a_damaged_file_is_refused_by_name_of_the_newest_good_backup(engine, database, tmp_path, how):
    older, newer, bad = (tmp_path / name for name in ("monday.sqlite3", "tuesday.sqlite3", "wednesday.sqlite3"))
    for place, copy in enumerate((older, newer, bad)):
        backup(engine, copy)
        os.utime(copy, (1_000_000 + place, 1_000_000 + place))
    damage(bad, "overwritten")
    close_wholly(engine)
    damage(database, how)
    with pytest.raises(DamagedDatabase, match=r"newest good backup: .*tuesday\.sqlite3") as refused:
        open_database(database)
    assert refused.value.newest_backup == newer


def test_a_damaged_file_alone_is_refused_too(engine, database):
    close_wholly(engine)
    damage(database, "overwritten")
    with pytest.raises(DamagedDatabase, match="no good backup beside it"):
        open_database(database)


def test_what_is_written_while_reading_is_refused(engine, now):
    with reading(engine) as session, pytest.raises(ReadingOnly):
        projects.insert(session, "Quay store", {}, now)


def test_a_block_that_fails_writes_nothing(engine, now):
    def block():
        with writing(engine) as session:
            projects.insert(session, "Quay store", {}, now)
            projects.find_wall(session, "none")

    with pytest.raises(NotFound):
        block()
    with reading(engine) as session:
        assert projects.list_all(session) == ()


def test_a_reader_sees_one_moment_while_another_writes(engine, now):
    with reading(engine) as reader:
        assert projects.list_all(reader) == ()
        with writing(engine) as writer:
            projects.insert(writer, "Quay store", {}, now)
        assert projects.list_all(reader) == ()
    with reading(engine) as reader:
        assert len(projects.list_all(reader)) == 1


def test_a_writer_waits_for_the_writer_before_it(engine, now):
    begun, order = threading.Event(), []

    def second():
        begun.wait(timeout=10)
        with writing(engine) as session:
            order.append(len(projects.list_all(session)))

    waiting = threading.Thread(target=second)
    waiting.start()
    with writing(engine) as session:
        projects.insert(session, "Quay store", {}, now)
        begun.set()
        waiting.join(0.2)
        order.append("first")
    waiting.join(timeout=10)
    assert order == ["first", 1]


def test_a_database_held_too_long_is_busy_by_name(engine, database, now):
    with closing(sqlite3.connect(database, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with engine.connect() as connection:
            connection.connection.driver_connection.execute("PRAGMA busy_timeout = 50")
        with pytest.raises(DatabaseBusy), writing(engine) as session:
            projects.insert(session, "Quay store", {}, now)


def test_a_full_disk_is_named_and_leaves_nothing_half_written(engine, now):
    def limit(pages):
        with engine.connect() as connection:
            connection.connection.driver_connection.execute(f"PRAGMA max_page_count = {pages}")

    limit(1)
    with pytest.raises(DiskFull), writing(engine) as session:
        projects.insert(session, "Quay store", {"note": "x" * 100_000}, now)
    limit(1_000_000)
    with reading(engine) as session:
        assert projects.list_all(session) == ()


@pytest.mark.parametrize(
    ("wrong", "named"),
    [
        ({"document": "{"}, "document_is_json"),
        ({"revision": 0}, "revision_from_one"),
        ({"position": -1}, "position_from_zero"),
        ({"position": "first"}, "cannot store TEXT value in INTEGER column"),
        ({"wall_id": "none"}, "FOREIGN KEY"),
        ({"mark": None}, "NOT NULL"),
    ],
)
def test_the_database_itself_refuses_a_wrong_row(engine, now, wrong, named):
    with writing(engine) as session:
        wall = projects.insert_wall(session, projects.insert(session, "Quay store", {}, now).id, "North", {})
    right = {"id": "a", "wall_id": wall.id, "position": 0, "mark": "N1", "document": "{}", "revision": 1}
    insert = text(
        "INSERT INTO panel (id, wall_id, position, mark, document, revision, updated_at) "
        "VALUES (:id, :wall_id, :position, :mark, :document, :revision, 'now')"
    )
    with engine.connect() as connection:
        with pytest.raises(IntegrityError, match=named):
            connection.execute(insert, right | wrong)
        connection.execute(insert, right)
