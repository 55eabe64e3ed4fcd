"""Records made at the bed, photos of them, and what was refused; none of these rows is ever altered."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

TABLES = {
    "record": "id = NEW.id OR arrival = NEW.arrival",
    "record_photo": "record_id = NEW.record_id",
    "record_refused": "arrival = NEW.arrival OR (record_id = NEW.record_id AND digest = NEW.digest)",
}
"""Each table, and which row a new one would take the place of: INSERT OR REPLACE passes by a trigger on DELETE."""


def text(name: str, *, nullable: bool = False) -> sa.Column:
    return sa.Column(name, sa.Text, nullable=nullable)


def number(name: str, *, primary_key: bool = False) -> sa.Column:
    return sa.Column(name, sa.Integer, nullable=False, primary_key=primary_key)


def upgrade() -> None:
    make_records()
    make_photos()
    make_refused()
    for table, same in TABLES.items():
        op.execute(
            f"CREATE TRIGGER {table}_stays_insert BEFORE INSERT ON {table} "
            f"WHEN EXISTS (SELECT 1 FROM {table} WHERE {same}) "
            "BEGIN SELECT RAISE(ABORT, 'a record is never altered'); END"
        )
        for change in ("UPDATE", "DELETE"):
            op.execute(
                f"CREATE TRIGGER {table}_stays_{change.lower()} BEFORE {change} ON {table} "
                "BEGIN SELECT RAISE(ABORT, 'a record is never altered'); END"
            )


def make_records() -> None:
    op.create_table(
        "record",
        number("arrival", primary_key=True),
        *(text("id"), sa.Column("release_id", sa.Text, sa.ForeignKey("release.id"), nullable=False)),
        *(text("device"), number("sequence"), text("kind"), text("body"), text("corrects", nullable=True)),
        *(text("digest"), text("device_at"), text("received_at"), text("came_by")),
        sa.CheckConstraint("length(id) BETWEEN 1 AND 64 AND length(device) BETWEEN 1 AND 64", name="id_and_device"),
        sa.CheckConstraint("sequence >= 1", name="sequence_from_one"),
        sa.CheckConstraint("length(digest) = 64", name="digest_is_sha256"),
        sa.CheckConstraint('json_valid("body")', name="body_is_json"),
        sa.UniqueConstraint("id", name="one_record_an_id"),
        sqlite_strict=True,
    )
    op.create_index("record_of_release", "record", ["release_id", "device", "sequence"])


def make_photos() -> None:
    op.create_table(
        "record_photo",
        sa.Column("record_id", sa.Text, sa.ForeignKey("record.id"), primary_key=True, nullable=False),
        *(text("digest"), sa.Column("content", sa.LargeBinary, nullable=False), text("received_at")),
        sa.CheckConstraint("length(digest) = 64", name="digest_is_sha256"),
        sqlite_strict=True,
    )


def make_refused() -> None:
    op.create_table(
        "record_refused",
        number("arrival", primary_key=True),
        *(text("record_id"), text("digest"), text("content"), text("why"), text("received_at")),
        sa.CheckConstraint('json_valid("content")', name="content_is_json"),
        sa.UniqueConstraint("record_id", "digest", name="refused_once"),
        sqlite_strict=True,
    )


def downgrade() -> None:
    for table in reversed(list(TABLES)):
        op.drop_table(table)
