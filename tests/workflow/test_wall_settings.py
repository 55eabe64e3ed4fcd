"""A wall's datum and joint: as typed, refused when somebody came first, laid out before they are kept."""

from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any

import pytest
from sqlalchemy import Engine

from app.panel.faults import Refused
from app.storage import Session, writing
from app.workflow.compute import compute
from app.workflow.loading import load_project
from app.workflow.projects import ProjectIds, add_wall, create_project, project_file
from app.workflow.refusals import ProjectStale
from app.workflow.wall_settings import set_wall

NOW = datetime(2026, 5, 1, 9, 0, tzinfo=UTC)


def panel(mark: str, **more: Any) -> dict[str, Any]:
    outline = [[0, 0], [96, 0], [96, 96], [0, 96]]
    return {"mark": mark, "thickness": 7.25, "outline": outline, "field": {"size": "modular", "bond": "running"}} | more


PROJECT: dict[str, Any] = {
    "format": "castcourse-project/1",
    "name": "Barn by the weir",
    "length_unit": "in",
    "temperature_unit": "F",
    "walls": [{"datum": "0'-0\"", "mark": "E", "panels": [panel("E1"), panel("E2"), panel("E3", released=True)]}],
}


@pytest.fixture
def session(engine: Engine) -> Iterator[Session]:
    with writing(engine) as opened:
        yield opened


@pytest.fixture
def ids(session: Session) -> ProjectIds:
    return create_project(session, PROJECT, NOW)


def feet(session: Session, ids: ProjectIds) -> list[float]:
    """Foot of each panel's lowest course."""
    loaded = load_project(session, ids.project)
    return [compute(loaded.project, one.wall, one.panel).layout.courses[0].bottom for one in loaded.panels]


def test_the_datum_moves_every_panel_but_a_released_one(session: Session, ids: ProjectIds) -> None:
    before = feet(session, ids)
    change = set_wall(session, ids.project, ids.walls[0].wall, {"datum": '1/2"'}, base_revision=1, now=NOW)
    assert change.revision == 2
    after = feet(session, ids)
    gauge = 8 / 3
    moved = [(high - low) % gauge for low, high in zip(before, after, strict=True)]
    assert moved == pytest.approx([0.5, 0.5, 0.0])


def test_the_values_before_put_back_restore_the_file_as_typed(session: Session, ids: ProjectIds) -> None:
    file = project_file(session, ids.project)
    wall = ids.walls[0].wall
    change = set_wall(session, ids.project, wall, {"datum": 3, "joint": '1/2"'}, base_revision=1, now=NOW)
    assert change.before == {"datum": "0'-0\"", "joint": None}
    set_wall(session, ids.project, wall, change.before, base_revision=2, now=NOW)
    assert project_file(session, ids.project) == file


def test_the_same_again_makes_no_revision(session: Session, ids: ProjectIds) -> None:
    change = set_wall(session, ids.project, ids.walls[0].wall, {"datum": "0'-0\""}, base_revision=1, now=NOW)
    assert change.revision == 1


def test_a_stale_base_overwrites_nothing(session: Session, ids: ProjectIds) -> None:
    add_wall(session, ids.project, {"mark": "N", "panels": []}, NOW)
    with pytest.raises(ProjectStale, match="found revision 2, expected revision 1"):
        set_wall(session, ids.project, ids.walls[0].wall, {"datum": 3}, base_revision=1, now=NOW)
    assert project_file(session, ids.project)["walls"][0]["datum"] == "0'-0\""


def test_a_joint_below_nothing_is_refused(session: Session, ids: ProjectIds) -> None:
    with pytest.raises(Refused, match="joint"):
        set_wall(session, ids.project, ids.walls[0].wall, {"joint": -1}, base_revision=1, now=NOW)
