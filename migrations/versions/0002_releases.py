"""Releases: frozen panels, their parts, and notices on them; none of these rows is ever altered."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

TABLES = {
    "release": "id = NEW.id OR (panel_id = NEW.panel_id AND number = NEW.number)",
    "release_part": "release_id = NEW.release_id AND name = NEW.name",
    "release_notice": "id = NEW.id",
}
"""Each table, and which row a new one would take the place of: INSERT OR REPLACE passes by a trigger on DELETE."""


def text(name: str, *, nullable: bool = False) -> sa.Column:
    return sa.Column(name, sa.Text, nullable=nullable)


def number(name: str, *, primary_key: bool = False) -> sa.Column:
    return sa.Column(name, sa.Integer, nullable=False, primary_key=primary_key)


def parent(name: str, column: str, *, primary_key: bool = False) -> sa.Column:
    return sa.Column(name, sa.Text, sa.ForeignKey(column), nullable=False, primary_key=primary_key)


def upgrade() -> None:
    make_releases()
    make_parts()
    make_notices()
    for table, same in TABLES.items():
        op.execute(
            f"CREATE TRIGGER {table}_stays_insert BEFORE INSERT ON {table} "
            f"WHEN EXISTS (SELECT 1 FROM {table} WHERE {same}) "
            "BEGIN SELECT RAISE(ABORT, 'what was released is never altered'); END"
        )
        for change in ("UPDATE", "DELETE"):
            op.execute(
                f"CREATE TRIGGER {table}_stays_{change.lower()} BEFORE {change} ON {table} "
                "BEGIN SELECT RAISE(ABORT, 'what was released is never altered'); END"
            )


def make_releases() -> None:
    op.create_table(
        "release",
        sa.Column("id", sa.Text, primary_key=True, nullable=False),
        parent("panel_id", "panel.id"),
        *(number("number"), text("mark"), number("revision"), text("person"), text("why"), text("at")),
        *(text("engine"), text("inputs_digest"), text("previous"), text("parts"), text("digest")),
        sa.CheckConstraint("number >= 1", name="number_from_one"),
        sa.CheckConstraint("revision >= 1", name="revision_from_one"),
        sa.CheckConstraint("length(person) > 0 AND length(why) > 0", name="person_and_why_given"),
        sa.CheckConstraint('json_valid("parts")', name="parts_is_json"),
        sa.CheckConstraint("length(digest) = 71", name="digest_is_named"),
        sa.UniqueConstraint("panel_id", "number", name="one_release_a_number"),
        sqlite_strict=True,
    )


def make_parts() -> None:
    op.create_table(
        "release_part",
        parent("release_id", "release.id", primary_key=True),
        sa.Column("name", sa.Text, primary_key=True, nullable=False),
        sa.Column("content", sa.LargeBinary, nullable=False),
        sqlite_strict=True,
    )


def make_notices() -> None:
    op.create_table(
        "release_notice",
        number("id", primary_key=True),
        parent("release_id", "release.id"),
        *(text("kind"), text("person"), text("why"), text("at")),
        sa.CheckConstraint("kind IN ('hold', 'go on')", name="kind_is_known"),
        sa.CheckConstraint("length(person) > 0 AND length(why) > 0", name="person_and_why_given"),
        sqlite_strict=True,
    )
    op.create_index("notice_of_release", "release_notice", ["release_id", "id"])


def downgrade() -> None:
    for table in reversed(list(TABLES)):
        op.drop_table(table)
