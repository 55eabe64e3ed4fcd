"""A project's settings after import: as typed, whole or not at all, refused when somebody came first."""

from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any

import pytest
from sqlalchemy import Engine

from app.panel.faults import Refused
from app.storage import Session, reading, writing
from app.workflow.compute import compute
from app.workflow.loading import load_project
from app.workflow.project_settings import set_project, settings_of
from app.workflow.projects import ProjectIds, add_wall, create_project, project_file
from app.workflow.refusals import ProjectStale

NOW = datetime(2026, 5, 1, 9, 0, tzinfo=UTC)
OUTLINE = [[0, 0], [96, 0], [96, 96], [0, 96]]
PANEL = {"mark": "E1", "thickness": 7.25, "outline": OUTLINE, "field": {"size": "modular", "bond": "running"}}
PROJECT: dict[str, Any] = {
    "order": {"kerf": "1/8", "overage_percent": 5.0},
    "format": "castcourse-project/1",
    "name": "Barn by the weir",
    "length_unit": "in",
    "temperature_unit": "F",
    "walls": [{"mark": "E", "panels": [PANEL]}],
    "day": {"bed_low": 50},
}


@pytest.fixture
def session(engine: Engine) -> Iterator[Session]:
    with writing(engine) as opened:
        yield opened


@pytest.fixture
def ids(session: Session) -> ProjectIds:
    return create_project(session, PROJECT, NOW)


def test_sheets_follow_the_liner_that_is_set(session: Session, ids: ProjectIds) -> None:
    def placed() -> int:
        loaded = load_project(session, ids.project)
        (panel,) = loaded.panels
        return compute(loaded.project, panel.wall, panel.panel).plan.placed

    before = placed()
    set_project(session, ids.project, {"liner": {"columns": 3, "rows": 9}}, base_revision=1, now=NOW)
    assert placed() > before


def test_what_is_typed_is_kept_as_typed_and_in_its_place(session: Session, ids: ProjectIds) -> None:
    order = {"kerf": '3/32"', "overage_percent": 7.0, "bead": "6 mm"}
    change = set_project(session, ids.project, {"order": order}, base_revision=1, now=NOW)
    assert change.revision == 2
    file = project_file(session, ids.project)
    assert file == PROJECT | {"order": order}
    assert list(file) == list(PROJECT)


def test_the_groups_before_put_back_restore_the_file(session: Session, ids: ProjectIds) -> None:
    asked = {"order": None, "day": {"bed_high": 99}, "blend": {"cluster": 3}}
    change = set_project(session, ids.project, asked, base_revision=1, now=NOW)
    assert change.before == {"order": PROJECT["order"], "day": {"bed_low": 50}, "blend": None}
    set_project(session, ids.project, change.before, base_revision=2, now=NOW)
    assert project_file(session, ids.project) == PROJECT


def test_the_same_as_typed_makes_no_revision(session: Session, ids: ProjectIds) -> None:
    assert set_project(session, ids.project, {"day": {"bed_low": 50}}, base_revision=1, now=NOW).revision == 1
    assert set_project(session, ids.project, {"day": {"bed_low": 50.0}}, base_revision=1, now=NOW).revision == 2


def test_a_stale_base_overwrites_nothing(session: Session, ids: ProjectIds) -> None:
    add_wall(session, ids.project, {"mark": "N", "panels": []}, NOW)
    with pytest.raises(ProjectStale, match="found revision 2, expected revision 1"):
        set_project(session, ids.project, {"day": {"bed_low": 60}}, base_revision=1, now=NOW)
    assert settings_of(session, ids.project) == (2, {"day": {"bed_low": 50}, "order": PROJECT["order"]})


@pytest.mark.parametrize(
    ("asked", "path"),
    [
        ({"liner": {"columns": 3}, "day": {"bed_low": 900}}, "day.bed_low"),
        ({"day": {"bed_low": 60}, "walls": []}, "walls"),
        ({"day": {"bed_low": 60}, "length_unit": "mm"}, "length_unit"),
        ({"day": {"bed_low": 60}, "order": []}, "order"),
    ],
)
def test_one_fault_keeps_everything_else_out(engine: Engine, asked: dict[str, Any], path: str) -> None:
    with writing(engine) as session:
        project = create_project(session, PROJECT, NOW).project
    with pytest.raises(Refused) as caught, writing(engine) as session:
        set_project(session, project, asked, base_revision=1, now=NOW)
    assert [fault.path for fault in caught.value.faults] == [path]
    with reading(engine) as session:
        assert project_file(session, project) == PROJECT
        assert settings_of(session, project)[0] == 1
