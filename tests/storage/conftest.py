"""A real database file, migrated and empty."""

from datetime import UTC, datetime

import pytest

from app.storage import migrate, open_database

NOW = datetime(2031, 5, 6, 10, 42, 7, tzinfo=UTC)


@pytest.fixture
def now():
    return NOW


@pytest.fixture
def database(tmp_path):
    return tmp_path / "castcourse.sqlite3"


@pytest.fixture
def engine(database):
    engine = open_database(database)
    migrate(engine)
    yield engine
    engine.dispose()
