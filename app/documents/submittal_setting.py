"""The typesetter's part: some sheets of a submittal set as PDF, or only counted; it keeps nothing afterwards."""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any, cast

import font_source_sans_pro
import typst

TEMPLATES = (
    "submittal.typ",
    "submittal_cover.typ",
    "submittal_frame.typ",
    "submittal_shop.typ",
    "submittal_tables.typ",
    "submittal_walls.typ",
)

STANDARDS = ("a-2a", "ua-1")
"""For the archive (ISO 19005-2) and for readers by ear (ISO 14289-1)."""

PLAIN = ()
"""No standard: for a name in letters that the type lacks, whose empty boxes the standards forbid."""

FORGETTING = 11
"""Runs after which the typesetter lets go of what it has laid out: it keeps everything for ten more."""

_COMPILE = cast(Callable[..., bytes], typst.compile)
_QUERY = cast(Callable[..., str], typst.query)
"""They take files by name as well, which their stubs do not say."""


@dataclass(frozen=True, slots=True)
class Leaf:
    """Some sheets that are set together: their values, and their drawings as SVG by file name."""

    values: Mapping[str, Any]
    drawings: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Counted:
    """How many sheets a leaf has, and on which of them what is found by its name."""

    sheets: int
    places: Mapping[str, int]


def leaf_set(leaf: Leaf, day: date, standards: tuple[str, ...]) -> bytes | None:
    """The leaf's sheets as a PDF; None where its words need letters that the standards do not allow to lack."""
    try:
        return _COMPILE(
            _files(Leaf({**leaf.values, "is-count": False}, leaf.drawings)),
            format="pdf",
            font_paths=_fonts(),
            pdf_standards=list(standards),
            timestamp=datetime.combine(day, time(), UTC),
        )
    except typst.TypstError as refused:
        if not standards or "could not be displayed with font" not in str(refused):
            raise
        return None
    finally:
        _forget()


def leaf_counted(values: Mapping[str, Any]) -> Counted:
    """The sheets that a leaf of these values takes, its drawings left out: each of them is alone on its sheet."""
    try:
        said = _QUERY(
            _files(Leaf({**values, "is-count": True}, {})),
            "<sheet>",
            field="value",
            font_paths=_fonts(),
        )
    finally:
        _forget()
    rows = json.loads(said)
    return Counted(max((row["of"] for row in rows), default=0), {row["id"]: row["page"] for row in rows})


def _forget() -> None:
    for _ in range(FORGETTING):
        _COMPILE(b"", format="pdf", font_paths=_no_fonts())


def _files(leaf: Leaf) -> dict[str, bytes]:
    here = files("app.documents")
    parts = {name: here.joinpath(name).read_bytes() for name in TEMPLATES}
    parts |= {name: svg.encode() for name, svg in leaf.drawings.items()}
    parts["data.json"] = json.dumps(leaf.values).encode()
    return {"main.typ": parts.pop("submittal.typ"), **parts}


@cache
def _fonts() -> typst.Fonts:
    folder = str(Path(font_source_sans_pro.SourceSansPro).parent)
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[folder])


@cache
def _no_fonts() -> typst.Fonts:
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=False)
