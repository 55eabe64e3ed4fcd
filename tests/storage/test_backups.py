"""A copy counts only when it is whole; putting one back loses nothing."""

import shutil
import sqlite3
import threading
from contextlib import closing

import pytest

from app.storage import backup, open_database, projects, reading, restore, writing
from app.storage.errors import BackupFailed


def names(engine):
    with reading(engine) as session:
        return sorted(line.name for line in projects.list_all(session))


def names_in(path):
    with closing(sqlite3.connect(path)) as connection:
        return sorted(name for (name,) in connection.execute("SELECT name FROM project"))


def add(engine, name, now):
    with writing(engine) as session:
        projects.insert(session, name, {"name": name}, now)


def test_a_backup_holds_what_a_plain_copy_of_the_file_does_not(engine, database, tmp_path, now):
    with engine.connect() as connection:
        connection.connection.driver_connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    for count in range(20):
        add(engine, f"Store {count:02}", now)
    plain = shutil.copy(database, tmp_path / "plain.copy")
    copy = backup(engine, tmp_path / "copy.sqlite3")
    assert names_in(copy) == names(engine)
    assert names_in(plain) == []


def test_a_backup_taken_while_another_writes_restores_to_one_moment(engine, tmp_path, now):
    done, went_on = threading.Event(), threading.Semaphore(0)

    def keep_writing():
        count = 0
        while not done.is_set():
            with writing(engine) as session:
                projects.insert(session, f"{count:05} left", {}, now)
                projects.insert(session, f"{count:05} right", {}, now)
            count += 1
            went_on.release()

    writer = threading.Thread(target=keep_writing, daemon=True)
    writer.start()
    copies = []
    for count in range(8):
        assert went_on.acquire(timeout=10)
        copies.append(backup(engine, tmp_path / f"copy-{count}.sqlite3"))
    done.set()
    writer.join(timeout=10)
    assert len(names_in(copies[-1])) > len(names_in(copies[0])) > 0
    for place, copy in enumerate(copies):
        target = tmp_path / f"restored-{place}.sqlite3"
        assert restore(copy, target) is None
        found = names_in(target)
        assert found == sorted(f"{count:05} {side}" for count in range(len(found) // 2) for side in ("left", "right"))


def test_a_backup_leaves_one_file_and_replaces_an_older_one(engine, tmp_path, now):
    copy = backup(engine, tmp_path / "copies.sqlite3")
    add(engine, "Quay store", now)
    assert names_in(backup(engine, copy)) == ["Quay store"]
    assert sorted(path.name for path in tmp_path.glob("copies*")) == ["copies.sqlite3"]


def test_a_backup_over_the_database_itself_is_refused(engine, database):
    with pytest.raises(BackupFailed, match="the database itself"):
        backup(engine, database)


def test_a_backup_into_no_folder_is_refused(engine, tmp_path):
    with pytest.raises(BackupFailed, match="no folder"):
        backup(engine, tmp_path / "no" / "copy.sqlite3")


def test_restoring_under_a_running_server_is_seen_by_it_and_keeps_what_was_there(engine, database, tmp_path, now):
    add(engine, "Quay store", now)
    copy = backup(engine, tmp_path / "monday.sqlite3")
    add(engine, "Grain hall", now)
    kept = restore(copy, database)
    assert names(engine) == ["Quay store"]
    assert names_in(kept) == ["Grain hall", "Quay store"]
    add(engine, "Rope loft", now)
    assert names(engine) == ["Quay store", "Rope loft"]


def test_restoring_over_a_damaged_file_sets_it_aside(engine, database, tmp_path, now):
    add(engine, "Quay store", now)
    copy = backup(engine, tmp_path / "monday.sqlite3")
    engine.dispose()
    database.write_bytes(b"rubble" * 1000)
    kept = restore(copy, database)
    assert kept.read_bytes() == b"rubble" * 1000
    again = open_database(database)
    assert names(again) == ["Quay store"]
    again.dispose()


@pytest.mark.parametrize("content", [b"", b"rubble" * 1000, b"SQLite format 3\x00" + b"rubble" * 1000])
def test_what_is_no_sound_copy_is_not_restored(engine, database, tmp_path, content, now):
    add(engine, "Quay store", now)
    wrong = tmp_path / "wrong.sqlite3"
    wrong.write_bytes(content)
    with pytest.raises(BackupFailed, match="expected a sound copy"):
        restore(wrong, database)
    assert names(engine) == ["Quay store"]


def test_somebody_elses_database_is_not_restored(engine, database, tmp_path):
    other = tmp_path / "other.sqlite3"
    with closing(sqlite3.connect(other)) as connection:
        connection.execute("CREATE TABLE tides (at TEXT)")
    with pytest.raises(BackupFailed, match="no table of projects"):
        restore(other, database)
    assert names(engine) == []
