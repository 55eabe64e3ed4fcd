"""Releases: written once, read for ever. The database itself refuses to alter one."""

import zlib
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from sqlalchemy import func
from sqlmodel import Session, col, select

from app.panel.release import ReleaseHead, release_digest
from app.storage.errors import NotFound
from app.storage.tables import Panel, Release, ReleaseNotice, ReleasePart, Wall
from app.storage.text import json_text, json_value, moment, new_id, time_text

NoticeKind = Literal["hold", "go on"]
_PACKED = 6


@dataclass(frozen=True, slots=True)
class StoredNotice:
    """A hold on a release, or the end of one."""

    kind: str
    person: str
    why: str
    at: datetime


@dataclass(frozen=True, slots=True)
class StoredRelease:
    """A release without the content of its parts; `is_newest` of its panel, `notices` the newest last."""

    id: str
    head: ReleaseHead
    digest: str
    is_newest: bool
    notices: tuple[StoredNotice, ...]

    @property
    def panel_id(self) -> str:
        return self.head.panel_id

    @property
    def at(self) -> datetime:
        return moment(self.head.at)

    @property
    def letter(self) -> str:
        return self.head.letter

    @property
    def hold(self) -> StoredNotice | None:
        """The hold that is on it now."""
        last = self.notices[-1] if self.notices else None
        return last if last and last.kind == "hold" else None


def insert(session: Session, head: ReleaseHead, contents: Mapping[str, bytes]) -> StoredRelease:
    """A release with its parts; the caller has numbered it in this transaction."""
    row = Release(
        id=new_id(),
        panel_id=head.panel_id,
        number=head.number,
        mark=head.mark,
        revision=head.revision,
        person=head.person,
        why=head.why,
        at=head.at,
        engine=head.engine,
        inputs_digest=head.inputs_digest,
        previous=head.previous,
        parts=json_text(dict(head.parts)),
        digest=release_digest(head),
    )
    session.add(row)
    session.flush()
    for name, content in contents.items():
        session.add(ReleasePart(release_id=row.id, name=name, content=zlib.compress(content, _PACKED)))
    session.flush()
    return find(session, row.id)


def find(session: Session, release_id: str) -> StoredRelease:
    row = session.get(Release, release_id)
    if row is None:
        raise NotFound("release", release_id)
    return _stored(session, [row])[0]


def project_of(session: Session, release_id: str) -> str:
    """The project of the release's panel, also of one that was removed; raises NotFound."""
    held = select(Wall.project_id).join(Panel).join(Release).where(Release.id == release_id)
    found = session.exec(held).first()
    if found is None:
        raise NotFound("release", release_id)
    return found


def of_panel(session: Session, panel_id: str) -> tuple[StoredRelease, ...]:
    """Every release of a panel, the newest first."""
    rows = select(Release).where(Release.panel_id == panel_id).order_by(col(Release.number).desc())
    return _stored(session, session.exec(rows).all())


def newest_of_panel(session: Session, panel_id: str) -> StoredRelease | None:
    return next(iter(of_panel(session, panel_id)), None)


def newest_of_project(session: Session, project_id: str) -> dict[str, StoredRelease]:
    """The newest release of each panel of a project that has one, by the panel's id."""
    last = select(func.max(Release.number)).where(Release.panel_id == Panel.id).correlate(Panel).scalar_subquery()
    rows = select(Release).join(Panel).join(Wall).where(Wall.project_id == project_id, Release.number == last)
    return {release.panel_id: release for release in _stored(session, session.exec(rows).all())}


def every(session: Session) -> tuple[StoredRelease, ...]:
    """All releases of the database, panel by panel, the oldest first."""
    return _stored(session, session.exec(select(Release).order_by(Release.panel_id, col(Release.number))).all())


def part(session: Session, release_id: str, name: str) -> bytes:
    """One part as it was released; raises NotFound for one that is not there or cannot be unpacked."""
    row = session.get(ReleasePart, (release_id, name))
    content = _unpacked(row.content) if row else None
    if content is None:
        raise NotFound("part of this release", name)
    return content


def contents(session: Session, release_id: str) -> dict[str, bytes | None]:
    """Every part by name; None for one that cannot be unpacked."""
    rows = session.exec(select(ReleasePart).where(ReleasePart.release_id == release_id))
    return {row.name: _unpacked(row.content) for row in rows}


def add_notice(
    session: Session, release_id: str, kind: NoticeKind, person: str, why: str, now: datetime
) -> StoredRelease:
    """A hold, or its end, beside the release, which stays as it is."""
    find(session, release_id)
    session.add(ReleaseNotice(release_id=release_id, kind=kind, person=person, why=why, at=time_text(now)))
    session.flush()
    return find(session, release_id)


def _unpacked(content: bytes) -> bytes | None:
    with suppress(zlib.error):
        return zlib.decompress(content)
    return None


def _stored(session: Session, rows: Sequence[Release]) -> tuple[StoredRelease, ...]:
    notices = _notices(session, [row.id for row in rows])
    newest = _newest(session, {row.panel_id for row in rows})
    return tuple(
        StoredRelease(
            id=row.id,
            head=_head(row),
            digest=row.digest,
            is_newest=row.number == newest[row.panel_id],
            notices=tuple(notices.get(row.id, ())),
        )
        for row in rows
    )


def _head(row: Release) -> ReleaseHead:
    return ReleaseHead(
        panel_id=row.panel_id,
        mark=row.mark,
        number=row.number,
        revision=row.revision,
        person=row.person,
        why=row.why,
        at=row.at,
        engine=row.engine,
        inputs_digest=row.inputs_digest,
        previous=row.previous,
        parts=json_value(row.parts),
    )


def _newest(session: Session, panel_ids: set[str]) -> dict[str, int]:
    numbers = select(Release.panel_id, func.max(Release.number)).where(col(Release.panel_id).in_(panel_ids))
    return dict(session.exec(numbers.group_by(col(Release.panel_id))).all())


def _notices(session: Session, release_ids: Sequence[str]) -> dict[str, list[StoredNotice]]:
    rows = select(ReleaseNotice).where(col(ReleaseNotice.release_id).in_(release_ids))
    found: dict[str, list[StoredNotice]] = {}
    for row in session.exec(rows.order_by(col(ReleaseNotice.id))):
        found.setdefault(row.release_id, []).append(StoredNotice(row.kind, row.person, row.why, moment(row.at)))
    return found
