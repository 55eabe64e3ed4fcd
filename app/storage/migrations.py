"""Bringing a database to the newest form: a backup first, then every step in one transaction."""

import sqlite3
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, inspect

from app.storage.backups import backup, free_name
from app.storage.engine import BEGIN, file_of
from app.storage.errors import DamagedDatabase, NewerDatabase

_SETTINGS = Path(__file__).parents[2] / "pyproject.toml"


def migrate(engine: Engine, settings: Path = _SETTINGS) -> Path | None:
    """Brings the database to the newest form in one transaction; returns the backup made before, if one was.

    `settings` is the file whose `[tool.alembic]` says where the migrations are.
    """
    config = Config(toml_file=settings)
    if _is_newest(engine, config):
        return None
    kept = _backup_before(engine)
    with engine.execution_options(**{BEGIN: "IMMEDIATE"}).connect() as connection:
        driver = connection.connection.driver_connection
        assert isinstance(driver, sqlite3.Connection)
        # Rebuilding a table would empty its children; the setting has no effect inside a transaction.
        driver.execute("PRAGMA foreign_keys = OFF")
        try:
            _upgrade(connection, config)
        finally:
            driver.execute("PRAGMA foreign_keys = ON")
    return kept


def _upgrade(connection: Connection, config: Config) -> None:
    config.attributes["connection"] = connection
    with connection.begin():
        command.upgrade(config, "head")
        orphan = connection.exec_driver_sql("PRAGMA foreign_key_check").first()
        if orphan:
            raise DamagedDatabase(file_of(connection.engine), f"a row of {orphan[0]} without its parent", None)


def _is_newest(engine: Engine, config: Config) -> bool:
    with engine.connect() as connection:
        found = MigrationContext.configure(connection).get_current_revision()
    scripts = ScriptDirectory.from_config(config)
    known = {script.revision for script in scripts.walk_revisions()}
    if found is not None and found not in known:
        raise NewerDatabase(
            f"{file_of(engine)}: found form {found}, expected at most {scripts.get_current_head()}; "
            "a later version of the program has opened it"
        )
    return found == scripts.get_current_head()


def _backup_before(engine: Engine) -> Path | None:
    if not inspect(engine).get_table_names():
        return None
    return backup(engine, free_name(file_of(engine), "backup-before-migration"))
