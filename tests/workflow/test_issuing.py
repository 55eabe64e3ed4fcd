"""Drawings go into files whose names differ, whatever the marks."""

import json
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from broken_files import SOUND

from app.storage import reading, writing
from app.workflow.issuing import VIEWS, drawing_files
from app.workflow.loading import LoadedProject, load_project
from app.workflow.opening import open_data
from app.workflow.projects import create_project


def stored(folder: Path, marks: tuple[str, str], **settings: Any) -> LoadedProject:
    file = json.loads(json.dumps(SOUND)) | settings
    for panel, mark in zip(file["walls"][0]["panels"], marks, strict=True):
        panel["mark"] = mark
    engine = open_data(folder / "castcourse.sqlite3")
    with writing(engine) as session:
        project = create_project(session, file, datetime.now(UTC)).project
    with reading(engine) as session:
        loaded = load_project(session, project)
    engine.dispose()
    return loaded


@pytest.mark.parametrize(
    ("marks", "names"),
    [
        (("N1", "N2"), ("N1", "N2")),
        (("N/1", "N 1"), ("N_1", "N_1_2")),
        (("n1", "N1"), ("n1", "N1_2")),
        (("../..", "?"), ("panel", "panel_2")),
        (("Süd", "Süd."), ("Süd", "Süd_2")),
    ],
)
def test_file_names_come_from_the_marks_and_differ(marks, names, tmp_path):
    files = drawing_files(stored(tmp_path, marks))
    always = [view for view in VIEWS if view not in ("returns", "colours")]
    assert [file for file in files if "-returns" not in file] == [
        f"{name}-{view}.svg" for name in names for view in always
    ]
    assert [file for file in files if "-returns" in file] == [f"{names[0]}-returns.svg"]


def test_brick_of_several_colours_has_a_drawing_of_them(tmp_path):
    colours = [{"name": "red", "percent": 60}, {"name": "grey", "percent": 40}]
    files = drawing_files(stored(tmp_path, ("N1", "N2"), blend={"colours": colours, "cluster": 6}))
    assert [file for file in files if "-colours" in file] == ["N1-colours.svg", "N2-colours.svg"]
    assert "A red, 60 %" in files["N1-colours.svg"]
