"""Projects, walls, panels, the log of commands, share links."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def text(name: str, *, nullable: bool = False) -> sa.Column:
    return sa.Column(name, sa.Text, nullable=nullable)


def number(name: str) -> sa.Column:
    return sa.Column(name, sa.Integer, nullable=False)


def key() -> sa.Column:
    return sa.Column("id", sa.Text, primary_key=True, nullable=False)


def parent(name: str, column: str, *, nullable: bool = False) -> sa.Column:
    return sa.Column(name, sa.Text, sa.ForeignKey(column, ondelete="CASCADE"), nullable=nullable)


def is_json(column: str) -> sa.CheckConstraint:
    return sa.CheckConstraint(f'json_valid("{column}")', name=f"{column}_is_json")


def from_one() -> sa.CheckConstraint:
    return sa.CheckConstraint("revision >= 1", name="revision_from_one")


def from_zero() -> sa.CheckConstraint:
    return sa.CheckConstraint("position >= 0", name="position_from_zero")


def upgrade() -> None:
    make_projects()
    make_walls()
    make_panels()
    make_commands()
    make_shares()


def make_projects() -> None:
    op.create_table(
        "project",
        *(key(), text("name"), text("settings"), number("revision"), text("created_at"), text("updated_at")),
        *(is_json("settings"), from_one()),
        sqlite_strict=True,
    )


def make_walls() -> None:
    op.create_table(
        "wall",
        *(key(), parent("project_id", "project.id"), number("position"), text("mark"), text("settings")),
        *(is_json("settings"), from_zero()),
        sqlite_strict=True,
    )
    op.create_index("wall_in_project", "wall", ["project_id", "position"])


def make_panels() -> None:
    op.create_table(
        "panel",
        *(key(), parent("wall_id", "wall.id"), number("position"), text("mark"), text("document")),
        *(number("revision"), text("updated_at"), text("removed_at", nullable=True)),
        *(is_json("document"), from_one(), from_zero()),
        sqlite_strict=True,
    )
    op.create_index("panel_in_wall", "panel", ["wall_id", "position"])


def make_commands() -> None:
    op.create_table(
        "command",
        *(key(), parent("panel_id", "panel.id"), text("person"), text("label")),
        *(number("base_revision"), number("revision"), text("before"), text("after"), text("kind")),
        *(parent("target", "command.id", nullable=True), text("request"), text("at")),
        sa.CheckConstraint("kind IN ('edit', 'undo', 'redo')", name="kind_is_known"),
        sa.CheckConstraint("(kind = 'edit') = (target IS NULL)", name="only_undo_and_redo_have_a_target"),
        sa.CheckConstraint("revision > base_revision AND base_revision >= 1", name="revision_follows_base"),
        sa.CheckConstraint("length(id) BETWEEN 1 AND 64 AND length(person) > 0", name="id_and_person_given"),
        *(is_json("before"), is_json("after")),
        sa.UniqueConstraint("panel_id", "revision", name="one_command_a_revision"),
        sqlite_strict=True,
    )
    op.create_index("command_of_person", "command", ["panel_id", "person", "revision"])
    op.create_index("command_of_target", "command", ["target"])


def make_shares() -> None:
    op.create_table(
        "share",
        *(key(), parent("project_id", "project.id"), parent("panel_id", "panel.id", nullable=True)),
        *(text("token_hash"), text("rights"), text("created_at"), text("expires_at", nullable=True)),
        *(text("revoked_at", nullable=True), text("last_used_at", nullable=True)),
        sa.CheckConstraint("rights IN ('view', 'record')", name="rights_are_known"),
        sa.CheckConstraint("length(token_hash) = 64", name="token_is_hashed"),
        sa.UniqueConstraint("token_hash", name="one_share_a_token"),
        sqlite_strict=True,
    )
    op.create_index("share_of_project", "share", ["project_id"])


def downgrade() -> None:
    for table in ("share", "command", "panel", "wall", "project"):
        op.drop_table(table)
