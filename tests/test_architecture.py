"""Arrows between rooms run down one list only, and each library stays in its rooms."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
APP = ROOT / "app"

RANK = {
    "web": 9,
    "workflow": 8,
    "documents": 7,
    "storage": 7,
    "drawing": 6,
    "site": 5,
    "order": 4,
    "liner": 3,
    "brickwork": 2,
    "panel": 1,
    "lengths": 0,
}
PURE = {"lengths", "panel", "brickwork", "liner", "order", "site", "drawing"}
FENCES = {
    "shapely": {"panel", "brickwork", "liner", "order", "site"},
    "numpy": {"panel", "brickwork", "liner", "order", "site", "drawing"},
    "highspy": {"liner"},
    "svgwrite": {"drawing"},
    "typst": {"documents"},
    "ezdxf": {"documents"},
    "xlsxwriter": {"documents"},
    "pwdlib": {"workflow"},
    "sqlmodel": {"storage"},
    "sqlalchemy": {"storage"},
    "alembic": {"storage"},
    "fastapi": {"web"},
    "starlette": {"web"},
}
FOR_TESTS = {"scipy"}
NOT_IN_PURE = {"time", "datetime", "os", "sqlite3", "random", "uuid", "socket"}


def room(path: Path) -> str:
    return path.relative_to(APP).parts[0] if len(path.relative_to(APP).parts) > 1 else ""


def imports(path: Path) -> list[str]:
    names: list[str] = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import hides its room"
            names.append(node.module or "")
    return names


FILES = sorted(path for path in APP.rglob("*.py") if room(path))


def test_every_folder_is_a_room_of_the_list() -> None:
    folders = {path.name for path in APP.iterdir() if path.is_dir() and path.name != "__pycache__"}
    assert folders == set(RANK)


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(APP)))
def test_imports_run_down_the_list(path: Path) -> None:
    here = room(path)
    for name in imports(path):
        if name.startswith("app."):
            there = name.split(".")[1]
            assert there == here or RANK.get(there, 99) < RANK[here], f"{here} must not import {name}"


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(APP)))
def test_libraries_stay_in_their_rooms(path: Path) -> None:
    here = room(path)
    for name in imports(path):
        library = name.split(".")[0]
        assert here in FENCES.get(library, RANK), f"{library} does not belong in {here}"
        assert not (here in PURE and library in NOT_IN_PURE), f"{here} is pure: no {library}"
        if library == "svgwrite":
            assert path.name == "svg.py", "svgwrite belongs in drawing/svg.py alone"
        if library == "highspy":
            assert path.name == "programs.py", "highspy belongs in liner/programs.py alone"
        assert library not in FOR_TESTS, f"{library} is there for the tests alone"
        assert library != "app" or name != "app.settings" or here == "web", f"{here} must not know the settings"


def test_lengths_uses_the_standard_library_only() -> None:
    outside = {"numpy", "shapely", "pydantic", "sqlmodel"}
    assert not {name.split(".")[0] for path in FILES if room(path) == "lengths" for name in imports(path)} & outside
