"""Accounts, their sessions, and the log of who did what, which is never altered."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

ROLES = "role IN ('owner', 'detailer', 'manager', 'foreman', 'viewer')"


def text(name: str, *, nullable: bool = False) -> sa.Column:
    return sa.Column(name, sa.Text, nullable=nullable)


def key() -> sa.Column:
    return sa.Column("id", sa.Text, primary_key=True, nullable=False)


def upgrade() -> None:
    make_accounts()
    make_sessions()
    make_audit()


def make_accounts() -> None:
    op.create_table(
        "account",
        *(key(), text("name"), text("folded"), text("role"), text("password_hash"), text("created_at")),
        text("disabled_at", nullable=True),
        sa.CheckConstraint(ROLES, name="role_is_known"),
        sa.CheckConstraint("length(name) BETWEEN 1 AND 40", name="name_given"),
        sa.CheckConstraint("password_hash LIKE '$argon2id$%'", name="password_is_hashed"),
        sa.UniqueConstraint("folded", name="one_account_a_name"),
        sqlite_strict=True,
    )


def make_sessions() -> None:
    parent = sa.Column("account_id", sa.Text, sa.ForeignKey("account.id", ondelete="CASCADE"), nullable=False)
    op.create_table(
        "sign_in",
        *(key(), parent, text("token_hash"), text("device"), text("created_at"), text("last_used_at")),
        *(text("expires_at"), text("ended_at", nullable=True)),
        sa.CheckConstraint("length(token_hash) = 64", name="token_is_hashed"),
        sa.UniqueConstraint("token_hash", name="one_session_a_token"),
        sqlite_strict=True,
    )
    op.create_index("sign_in_of_account", "sign_in", ["account_id"])


def make_audit() -> None:
    op.create_table(
        "audit",
        sa.Column("id", sa.Integer, primary_key=True, nullable=False),
        *(text("at"), text("who"), text("what"), text("about")),
        sqlite_strict=True,
    )
    op.execute(
        "CREATE TRIGGER audit_stays_insert BEFORE INSERT ON audit WHEN EXISTS (SELECT 1 FROM audit WHERE id = NEW.id) "
        "BEGIN SELECT RAISE(ABORT, 'the log of who did what is never altered'); END"
    )
    for change in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER audit_stays_{change.lower()} BEFORE {change} ON audit "
            "BEGIN SELECT RAISE(ABORT, 'the log of who did what is never altered'); END"
        )


def downgrade() -> None:
    for table in ("audit", "sign_in", "account"):
        op.drop_table(table)
