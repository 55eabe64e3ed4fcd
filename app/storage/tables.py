"""The rows of the database. Migrations make the same tables; a test compares the two."""

from typing import Any

from sqlalchemy import CheckConstraint, ForeignKey, Index, Integer, LargeBinary, Text, UniqueConstraint
from sqlmodel import Field, SQLModel

_STRICT = {"sqlite_strict": True}


def _key() -> Any:
    return Field(primary_key=True, sa_type=Text)


def _text(*, nullable: bool = False, default: Any = ...) -> Any:
    return Field(sa_type=Text, nullable=nullable, default=default)


def _parent(column: str, *, nullable: bool = False, default: Any = ...) -> Any:
    """A reference to a row without which this one has no meaning."""
    reference = ForeignKey(column, ondelete="CASCADE")
    return Field(sa_type=Text, sa_column_args=[reference], nullable=nullable, default=default)


def _kept(column: str, *, primary_key: bool = False) -> Any:
    """A reference to a row that cannot be deleted while this one is there."""
    reference = ForeignKey(column)
    return Field(sa_type=Text, sa_column_args=[reference], nullable=False, primary_key=primary_key)


def _is_json(column: str) -> CheckConstraint:
    return CheckConstraint(f'json_valid("{column}")', name=f"{column}_is_json")


def _is_revision(column: str = "revision") -> CheckConstraint:
    return CheckConstraint(f"{column} >= 1", name=f"{column}_from_one")


class Project(SQLModel, table=True):
    """A project file's own values; `settings` is the file with its walls left empty."""

    __table_args__ = (_is_json("settings"), _is_revision(), _STRICT)
    id: str = _key()
    name: str = _text()
    settings: str = _text()
    revision: int = Field(default=1, sa_type=Integer)
    created_at: str = _text()
    updated_at: str = _text()


class Wall(SQLModel, table=True):
    """A row of panels; `settings` is the wall with its panels left empty."""

    __table_args__ = (
        _is_json("settings"),
        CheckConstraint("position >= 0", name="position_from_zero"),
        Index("wall_in_project", "project_id", "position"),
        _STRICT,
    )
    id: str = _key()
    project_id: str = _parent("project.id")
    position: int = Field(sa_type=Integer)
    mark: str = _text()
    settings: str = _text()


class Panel(SQLModel, table=True):
    """A panel as last saved; `removed_at` keeps one that was taken out, with its log."""

    __table_args__ = (
        _is_json("document"),
        _is_revision(),
        CheckConstraint("position >= 0", name="position_from_zero"),
        Index("panel_in_wall", "wall_id", "position"),
        _STRICT,
    )
    id: str = _key()
    wall_id: str = _parent("wall.id")
    position: int = Field(sa_type=Integer)
    mark: str = _text()
    document: str = _text()
    revision: int = Field(default=1, sa_type=Integer)
    updated_at: str = _text()
    removed_at: str | None = _text(nullable=True, default=None)


class Command(SQLModel, table=True):
    """One gesture on one panel. `before` and `after` hold the changed things; `request` fingerprints what was asked."""

    __table_args__ = (
        CheckConstraint("kind IN ('edit', 'undo', 'redo')", name="kind_is_known"),
        CheckConstraint("(kind = 'edit') = (target IS NULL)", name="only_undo_and_redo_have_a_target"),
        CheckConstraint("revision > base_revision AND base_revision >= 1", name="revision_follows_base"),
        CheckConstraint("length(id) BETWEEN 1 AND 64 AND length(person) > 0", name="id_and_person_given"),
        _is_json("before"),
        _is_json("after"),
        UniqueConstraint("panel_id", "revision", name="one_command_a_revision"),
        Index("command_of_person", "panel_id", "person", "revision"),
        Index("command_of_target", "target"),
        _STRICT,
    )
    id: str = _key()
    panel_id: str = _parent("panel.id")
    person: str = _text()
    label: str = _text()
    base_revision: int = Field(sa_type=Integer)
    revision: int = Field(sa_type=Integer)
    before: str = _text()
    after: str = _text()
    kind: str = _text()
    target: str | None = _parent("command.id", nullable=True, default=None)
    request: str = _text()
    at: str = _text()


class Share(SQLModel, table=True):
    """A link that opens a project or one panel without sign-in; the token itself is nowhere stored."""

    __table_args__ = (
        CheckConstraint("rights IN ('view', 'record')", name="rights_are_known"),
        CheckConstraint("length(token_hash) = 64", name="token_is_hashed"),
        UniqueConstraint("token_hash", name="one_share_a_token"),
        Index("share_of_project", "project_id"),
        _STRICT,
    )
    id: str = _key()
    project_id: str = _parent("project.id")
    panel_id: str | None = _parent("panel.id", nullable=True, default=None)
    token_hash: str = _text()
    rights: str = _text()
    created_at: str = _text()
    expires_at: str | None = _text(nullable=True, default=None)
    revoked_at: str | None = _text(nullable=True, default=None)
    last_used_at: str | None = _text(nullable=True, default=None)


class Release(SQLModel, table=True):
    """A panel frozen as a revision: who, when, why, and the digest over all of it. Triggers refuse any change."""

    __table_args__ = (
        CheckConstraint("number >= 1", name="number_from_one"),
        _is_revision(),
        CheckConstraint("length(person) > 0 AND length(why) > 0", name="person_and_why_given"),
        _is_json("parts"),
        CheckConstraint("length(digest) = 71", name="digest_is_named"),
        UniqueConstraint("panel_id", "number", name="one_release_a_number"),
        _STRICT,
    )
    id: str = _key()
    panel_id: str = _kept("panel.id")
    number: int = Field(sa_type=Integer)
    mark: str = _text()
    revision: int = Field(sa_type=Integer)
    person: str = _text()
    why: str = _text()
    at: str = _text()
    engine: str = _text()
    inputs_digest: str = _text()
    previous: str = _text()
    parts: str = _text()
    digest: str = _text()


class ReleasePart(SQLModel, table=True):
    """One part of a release by its file name: inputs, results, drawings; packed by zlib. Triggers refuse any change."""

    __tablename__ = "release_part"
    __table_args__ = (_STRICT,)
    release_id: str = _kept("release.id", primary_key=True)
    name: str = _key()
    content: bytes = Field(sa_type=LargeBinary)


class ReleaseNotice(SQLModel, table=True):
    """A hold on a release, or the end of one. Triggers refuse any change."""

    __tablename__ = "release_notice"
    __table_args__ = (
        CheckConstraint("kind IN ('hold', 'go on')", name="kind_is_known"),
        CheckConstraint("length(person) > 0 AND length(why) > 0", name="person_and_why_given"),
        Index("notice_of_release", "release_id", "id"),
        _STRICT,
    )
    id: int | None = Field(default=None, primary_key=True, sa_type=Integer)
    release_id: str = _kept("release.id")
    kind: str = _text()
    person: str = _text()
    why: str = _text()
    at: str = _text()


class Record(SQLModel, table=True):
    """What somebody recorded at the bed, as the device made it; `arrival` counts. Triggers refuse any change."""

    __table_args__ = (
        CheckConstraint("length(id) BETWEEN 1 AND 64 AND length(device) BETWEEN 1 AND 64", name="id_and_device"),
        CheckConstraint("sequence >= 1", name="sequence_from_one"),
        CheckConstraint("length(digest) = 64", name="digest_is_sha256"),
        _is_json("body"),
        UniqueConstraint("id", name="one_record_an_id"),
        Index("record_of_release", "release_id", "device", "sequence"),
        _STRICT,
    )
    arrival: int | None = Field(default=None, primary_key=True, sa_type=Integer)
    id: str = _text()
    release_id: str = _kept("release.id")
    device: str = _text()
    sequence: int = Field(sa_type=Integer)
    kind: str = _text()
    body: str = _text()
    corrects: str | None = _text(nullable=True, default=None)
    digest: str = _text()
    device_at: str = _text()
    received_at: str = _text()
    came_by: str = _text()


class RecordPhoto(SQLModel, table=True):
    """A photo of a record, as the device made it smaller. Triggers refuse any change."""

    __tablename__ = "record_photo"
    __table_args__ = (CheckConstraint("length(digest) = 64", name="digest_is_sha256"), _STRICT)
    record_id: str = _kept("record.id", primary_key=True)
    digest: str = _text()
    content: bytes = Field(sa_type=LargeBinary)
    received_at: str = _text()


class RecordRefused(SQLModel, table=True):
    """What came under the id of another record, kept beside it. Triggers refuse any change."""

    __tablename__ = "record_refused"
    __table_args__ = (
        _is_json("content"),
        UniqueConstraint("record_id", "digest", name="refused_once"),
        _STRICT,
    )
    arrival: int | None = Field(default=None, primary_key=True, sa_type=Integer)
    record_id: str = _text()
    digest: str = _text()
    content: str = _text()
    why: str = _text()
    received_at: str = _text()


class Account(SQLModel, table=True):
    """Who may sign in; `folded` is the name as it is compared, without case."""

    __table_args__ = (
        CheckConstraint("role IN ('owner', 'detailer', 'manager', 'foreman', 'viewer')", name="role_is_known"),
        CheckConstraint("length(name) BETWEEN 1 AND 40", name="name_given"),
        CheckConstraint("password_hash LIKE '$argon2id$%'", name="password_is_hashed"),
        UniqueConstraint("folded", name="one_account_a_name"),
        _STRICT,
    )
    id: str = _key()
    name: str = _text()
    folded: str = _text()
    role: str = _text()
    password_hash: str = _text()
    created_at: str = _text()
    disabled_at: str | None = _text(nullable=True, default=None)


class SignIn(SQLModel, table=True):
    """A session of an account on one device; the token itself is nowhere stored."""

    __tablename__ = "sign_in"
    __table_args__ = (
        CheckConstraint("length(token_hash) = 64", name="token_is_hashed"),
        UniqueConstraint("token_hash", name="one_session_a_token"),
        Index("sign_in_of_account", "account_id"),
        _STRICT,
    )
    id: str = _key()
    account_id: str = _parent("account.id")
    token_hash: str = _text()
    device: str = _text()
    created_at: str = _text()
    last_used_at: str = _text()
    expires_at: str = _text()
    ended_at: str | None = _text(nullable=True, default=None)


class Audit(SQLModel, table=True):
    """Who did what, beside the log of each panel. Triggers refuse any change."""

    __table_args__ = (_STRICT,)
    id: int | None = Field(default=None, primary_key=True, sa_type=Integer)
    at: str = _text()
    who: str = _text()
    what: str = _text()
    about: str = _text()
