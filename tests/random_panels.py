"""Random panels for the laws, as project-file dictionaries, so that a failing one can be read and kept as a case.

All numbers are sixteenths of an inch, as people draw; panels are small, so that hundreds of them are quick.
"""

import re
from math import cos, pi, sin
from typing import Any

import shapely
from hypothesis import strategies as st

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.documents.project_file import read_panel
from app.panel.faults import Refused

Document = dict[str, Any]


def inches(low: float, high: float) -> st.SearchStrategy[float]:
    """A whole number of sixteenths."""
    return st.integers(int(low * 16), int(high * 16)).map(lambda sixteenths: sixteenths / 16)


@st.composite
def panels(draw: st.DrawFn, zones: int = 2, bonds: tuple[str, ...] = tuple(BONDS)) -> Document:
    """A panel with any outline, openings, strip, plate, and up to `zones` zones."""
    width, height = draw(inches(24, 60)), draw(inches(16, 44))
    optional = {
        "margin": draw(st.none() | inches(0, 1.5)),
        "smallest_cut": draw(st.none() | inches(0.125, 1)),
        "least_piece": draw(st.none() | inches(1, 5)),
        "strips": draw(st.lists(_strip(width, height), max_size=1)),
        "plates": draw(st.lists(_rect(width, height, 1).map(lambda rect: {"mark": "P", **rect}), max_size=1)),
    }
    document = {
        "mark": "random",
        "thickness": 7.25,
        "outline": draw(_outline(width, height)),
        "openings": _marked("W", draw(st.lists(_opening(width, height), max_size=3))),
        "zones": _marked("Z", draw(st.lists(_zone(width, height), max_size=zones))),
        "field": draw(_brickwork(bonds)),
        **{key: value for key, value in optional.items() if value is not None},
    }
    return _sound(document)


def _sound(document: Document) -> Document:
    """The document less the openings, strips, plates and zones that the reader refuses (overlapping, off the panel)."""
    try:
        read_panel(document)
    except Refused as refused:
        places = {(name, int(n)) for fault in refused.faults for name, n in re.findall(r"^(\w+)\[(\d+)\]", fault.path)}
        if not places:
            raise
        kept = {
            name: [item for k, item in enumerate(document[name]) if (name, k) not in places]
            for name in {name for name, _ in places}
        }
        return _sound({**document, **kept})
    return document


def _marked(letter: str, items: list[Document]) -> list[Document]:
    return [{"mark": f"{letter}{k + 1}", **item} for k, item in enumerate(items)]


def _brickwork(bonds: tuple[str, ...]) -> st.SearchStrategy[Document]:
    origin = st.tuples(inches(-20, 20), inches(-20, 20)).map(list)
    return st.fixed_dictionaries(
        {"size": st.sampled_from(sorted(CATALOGUE)), "bond": st.sampled_from(bonds)}, optional={"origin": origin}
    )


def _outline(width: float, height: float) -> st.SearchStrategy[list[list[float]]]:
    return st.one_of(_gable(width, height), _stepped(width, height), _slanted(width, height), star(width, height))


@st.composite
def _gable(draw: st.DrawFn, width: float, height: float) -> list[list[float]]:
    peak, left, right = draw(inches(0, width)), draw(inches(4, height)), draw(inches(4, height))
    return [[0, 0], [width, 0], [width, right], [peak, height + 6], [0, left]]


@st.composite
def _stepped(draw: st.DrawFn, width: float, height: float) -> list[list[float]]:
    step, shoulder = draw(inches(4, width - 4)), draw(inches(4, height))
    return [[0, 0], [width, 0], [width, shoulder], [step, shoulder], [step, height + 4], [0, height + 4]]


@st.composite
def _slanted(draw: st.DrawFn, width: float, height: float) -> list[list[float]]:
    a, b, c, d = (draw(inches(0, 7)) for _ in range(4))
    return [[a, 0], [width, b], [width - c, height], [0, height - d]]


@st.composite
def star(draw: st.DrawFn, width: float, height: float) -> list[list[float]]:
    """A simple polygon around its middle, with any number of re-entrant corners."""
    count = draw(st.integers(3, 8))
    reach = [draw(st.integers(4, 10)) / 10 for _ in range(count)]
    turn = draw(st.integers(0, 15)) / 16
    angles = [2 * pi * (k + turn) / count for k in range(count)]
    points = [
        [round(8 * width * (1 + r * cos(a))) / 16, round(8 * height * (1 + r * sin(a))) / 16]
        for r, a in zip(reach, angles, strict=True)
    ]
    if not shapely.Polygon(points).is_valid:
        points = [[0, 0], [width, 0], [width, height], [0, height]]
    left, bottom = (min(values) for values in zip(*points, strict=True))
    return [[x - left, y - bottom] for x, y in points]


@st.composite
def _rect(draw: st.DrawFn, width: float, height: float, least: float = 4) -> Document:
    x, y = draw(inches(-4, width - 6)), draw(inches(-4, height - 6))
    return {"rect": [x, y, draw(inches(least, 24)), draw(inches(least, 24))]}


@st.composite
def _circle(draw: st.DrawFn, width: float, height: float) -> Document:
    return {"circle": [draw(inches(0, width)), draw(inches(0, height)), draw(inches(0.5, 9))]}


@st.composite
def _arch(draw: st.DrawFn, width: float, height: float) -> Document:
    x, y, wide, springing = draw(inches(0, width)), draw(inches(0, height)), draw(inches(6, 16)), draw(inches(2, 12))
    rise = draw(inches(0.5, wide / 2))
    return {"arch": [x, y, wide, springing + rise, rise]}


@st.composite
def _polygon(draw: st.DrawFn, width: float, height: float) -> Document:
    dx, dy = draw(inches(0, width - 12)), draw(inches(0, height - 12))
    return {"polygon": [[x + dx, y + dy] for x, y in draw(star(20, 16))]}


def _opening(width: float, height: float) -> st.SearchStrategy[Document]:
    return st.one_of(_rect(width, height), _circle(width, height), _polygon(width, height), _arch(width, height))


@st.composite
def _strip(draw: st.DrawFn, width: float, height: float) -> Document:
    left, right = draw(inches(0, height)), draw(inches(0, height))
    return {"mark": "R1", "line": [[0, left], [width, right]], "width": draw(inches(0.5, 2))}


@st.composite
def _zone(draw: st.DrawFn, width: float, height: float) -> Document:
    band = st.tuples(st.integers(0, 8), st.integers(1, 5)).map(lambda c: {"band": {"course": c[0], "courses": c[1]}})
    region = draw(st.one_of(_rect(width, height), _polygon(width, height), band))
    return {**region, **draw(_brickwork(tuple(BONDS)))}
