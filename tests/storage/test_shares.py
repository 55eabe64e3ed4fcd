"""Share links: the token is given once, only its hash is kept, and a closed link is as good as none."""

from datetime import timedelta

import pytest

from app.storage import panels, projects, reading, shares, writing
from app.storage.errors import NotFound


@pytest.fixture
def project(engine, now):
    with writing(engine) as session:
        project = projects.insert(session, "Quay store", {}, now)
        wall = projects.insert_wall(session, project.id, "North", {})
        panel = panels.insert(session, wall.id, 0, {"mark": "N1"}, now)
    return project.id, panel.id


def share(engine, project, now, **more):
    with writing(engine) as session:
        return shares.create(session, *project, "view", now, **more)


def found(engine, token, at):
    with reading(engine) as session:
        return shares.find_by_token(session, token, at)


def test_a_token_opens_its_panel_and_is_nowhere_in_the_database(engine, database, project, now):
    made = share(engine, project, now)
    assert found(engine, made.token, now) == made.share
    assert (made.share.project_id, made.share.panel_id) == project
    written = b"".join(path.read_bytes() for path in database.parent.iterdir())
    assert made.token.encode() not in written
    assert made.share.id.encode() in written


def test_a_token_has_at_least_128_bits(engine, project, now):
    made = {share(engine, project, now).token for _ in range(20)}
    assert len(made) == 20
    assert min(map(len, made)) * 6 >= 128


@pytest.mark.parametrize("token", ["", "wrong", "é", "\ud800", "x" * 10_000, "'; DROP TABLE share; --"])
def test_a_wrong_token_opens_nothing(engine, project, now, token):
    share(engine, project, now)
    with pytest.raises(NotFound):
        found(engine, token, now)


def test_a_revoked_token_opens_nothing(engine, project, now):
    made = share(engine, project, now)
    with writing(engine) as session:
        shares.revoke(session, made.share.id, now)
        again = shares.revoke(session, made.share.id, now + timedelta(days=1))
    assert again.revoked_at == now
    with pytest.raises(NotFound):
        found(engine, made.token, now)


def test_a_token_opens_until_it_expires(engine, project, now):
    made = share(engine, project, now, expires_at=now + timedelta(days=7))
    assert found(engine, made.token, now + timedelta(days=7, milliseconds=-1))
    with pytest.raises(NotFound):
        found(engine, made.token, now + timedelta(days=7))


def test_a_panel_of_another_project_cannot_be_shared(engine, project, now):
    with writing(engine) as session:
        other = projects.insert(session, "Grain hall", {}, now)
    with writing(engine) as session, pytest.raises(NotFound):
        shares.create(session, other.id, project[1], "view", now)


def test_a_project_lists_its_links_and_when_they_were_used(engine, project, now):
    first = share(engine, project, now).share
    second = share(engine, (project[0], None), now + timedelta(seconds=1)).share
    with writing(engine) as session:
        shares.mark_used(session, first.id, now + timedelta(minutes=1))
    with reading(engine) as session:
        listed = shares.list_of_project(session, project[0])
    assert [each.id for each in listed] == [second.id, first.id]
    assert [each.last_used_at for each in listed] == [None, now + timedelta(minutes=1)]


def test_links_go_with_their_project(engine, project, now):
    made = share(engine, project, now)
    with writing(engine) as session:
        projects.delete(session, project[0])
    with pytest.raises(NotFound):
        found(engine, made.token, now)
