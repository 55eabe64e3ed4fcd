"""Migrations: a backup first, one transaction, and the tables that the rows are written for."""

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import inspect
from sqlalchemy.exc import DatabaseError
from sqlmodel import SQLModel

from app.storage import migrate, open_database, panels, projects, reading, tables, writing
from app.storage.errors import DamagedDatabase, ForeignDatabase, NewerDatabase

MIGRATIONS = Path(__file__).parents[2] / "migrations"
NEWEST = max(MIGRATIONS.glob("versions/0*.py")).name[:4]
TABLES = [tables.Project, tables.Wall, tables.Panel, tables.Command, tables.Share, tables.Release]
TABLES += [tables.ReleasePart, tables.ReleaseNotice, tables.Record, tables.RecordPhoto, tables.RecordRefused]
TABLES += [tables.Account, tables.SignIn, tables.Audit]


def schema(database):
    with closing(sqlite3.connect(database)) as connection:
        return connection.execute("SELECT type, name, sql FROM sqlite_schema ORDER BY name").fetchall()


def test_migrating_again_does_nothing(engine, database, tmp_path):
    before, files = schema(database), sorted(tmp_path.iterdir())
    assert migrate(engine) is None
    assert (schema(database), sorted(tmp_path.iterdir())) == (before, files)


def test_the_tables_are_those_of_the_rows(engine):
    with engine.connect() as connection:
        assert compare_metadata(MigrationContext.configure(connection), SQLModel.metadata) == []


@pytest.mark.parametrize("row", TABLES, ids=lambda row: row.__tablename__)
def test_columns_checks_and_keys_are_those_of_the_row(engine, row):
    table, found = row.__table__, inspect(engine)
    columns = [(each["name"], str(each["type"]), each["nullable"]) for each in found.get_columns(table.name)]
    assert columns == [(each.name, str(each.type), each.nullable) for each in table.columns]
    checks = {each["name"]: each["sqltext"] for each in found.get_check_constraints(table.name)}
    assert checks == {each.name: str(each.sqltext) for each in table.constraints if hasattr(each, "sqltext")}
    keys = {(each["constrained_columns"][0], each["referred_table"]) for each in found.get_foreign_keys(table.name)}
    assert keys == {(each.parent.name, each.column.table.name) for each in table.foreign_keys}


def test_every_table_is_strict(engine):
    with engine.connect() as connection:
        rows = connection.exec_driver_sql("SELECT name, strict FROM pragma_table_list WHERE schema = 'main'")
        strict = dict(rows.all())
    assert [strict[row.__tablename__] for row in TABLES] == [1] * len(TABLES)


@pytest.fixture
def with_a_second_migration(tmp_path):
    """The project's own migrations and one more, in a folder of their own."""

    def write(*steps):
        root = tmp_path / "tree"
        shutil.copytree(MIGRATIONS, root / "migrations", ignore=shutil.ignore_patterns("__pycache__"))
        head = f"import sqlalchemy as sa\nfrom alembic import op\nrevision, down_revision = '9998', '{NEWEST}'\n"
        body = "\n    ".join(["def upgrade():", *steps])
        (root / "migrations/versions/9998_more.py").write_text(f"{head}{body}\n")
        (root / "pyproject.toml").write_text('[tool.alembic]\nscript_location = "%(here)s/migrations"\n')
        return root / "pyproject.toml"

    return write


def add_a_panel(engine, now):
    with writing(engine) as session:
        wall = projects.insert_wall(session, projects.insert(session, "Quay store", {}, now).id, "North", {})
        return panels.insert(session, wall.id, 0, {"mark": "N1"}, now)


REBUILD = "with op.batch_alter_table('wall', recreate='always') as t: t.add_column(sa.Column('note', sa.Text))"


def test_a_database_is_backed_up_before_it_is_migrated_and_keeps_its_rows(engine, now, with_a_second_migration):
    panel = add_a_panel(engine, now)
    kept = migrate(engine, with_a_second_migration(REBUILD))
    with reading(engine) as session:
        assert panels.find(session, panel.id) == panel
    assert "note" in {column["name"] for column in inspect(engine).get_columns("wall")}
    with closing(sqlite3.connect(kept)) as copy:
        assert copy.execute("SELECT id FROM panel").fetchall() == [(panel.id,)]
        assert copy.execute("SELECT version_num FROM alembic_version").fetchall() == [(NEWEST,)]
    with engine.connect() as connection:
        assert connection.exec_driver_sql("PRAGMA foreign_keys").scalar() == 1


@pytest.mark.parametrize(
    ("last_step", "trouble"),
    [("op.execute('SELECT * FROM nowhere')", "nowhere"), ("op.execute('DELETE FROM wall')", "without its parent")],
    ids=["a step that fails", "a step that leaves orphans"],
)
def test_a_migration_that_fails_changes_nothing(engine, database, now, with_a_second_migration, last_step, trouble):
    panel = add_a_panel(engine, now)
    before = schema(database)
    settings = with_a_second_migration("op.create_table('note', sa.Column('words', sa.Text))", REBUILD, last_step)
    with pytest.raises((DatabaseError, DamagedDatabase), match=trouble):
        migrate(engine, settings)
    assert schema(database) == before
    with reading(engine) as session:
        assert panels.find(session, panel.id) == panel


def test_another_programs_database_is_refused_and_left_as_it_is(database):
    with closing(sqlite3.connect(database)) as connection:
        connection.execute("CREATE TABLE tides (at TEXT)")
    before = database.read_bytes()
    with pytest.raises(ForeignDatabase, match="another program's tables"):
        open_database(database)
    assert database.read_bytes() == before


def test_a_database_of_a_later_version_is_refused(engine):
    with engine.begin() as connection:
        connection.exec_driver_sql("UPDATE alembic_version SET version_num = '9999'")
    with pytest.raises(NewerDatabase, match=f"found form 9999, expected at most {NEWEST}"):
        migrate(engine)
