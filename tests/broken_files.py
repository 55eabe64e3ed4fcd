"""Project files with one thing wrong each: a name, the file's bytes, and the path, found and expected of its fault."""

import json
from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass
from typing import Any

from broken_parts import INSIDE, P

SOUND: dict[str, Any] = {
    "format": "castcourse-project/1",
    "name": "Two panels",
    "length_unit": "in",
    "temperature_unit": "F",
    "sizes": [
        {"name": "long", "length": 11.5, "height": 2, "thickness": 0.5, "head_joint": 0.5, "courses": 5, "per": 12.5}
    ],
    "liner": {"columns": 6},
    "order": {"overage_percent": 5},
    "day": {"bed_low": 55, "bed_high": 105},
    "walls": [
        {
            "mark": "North",
            "panels": [
                {
                    "mark": "N1",
                    "thickness": 7.25,
                    "outline": [[0, 0], [360, 0], [360, 384], [0, 384]],
                    "edges": [{"edge": 1, "treatment": "return", "depth": 3.625}],
                    "openings": [
                        {"mark": "W1", "use": "window", "rect": [60, 96, 48, 64]},
                        {"mark": "W2", "use": "window", "rect": [200, 96, 48, 64]},
                    ],
                    "strips": [{"mark": "R1", "line": [[0, 200], [360, 200]], "width": 0.75}],
                    "field": {"size": "modular", "bond": "running"},
                    "zones": [{"mark": "S1", "rect": [52, 240, 64, 8], "size": "long", "bond": "soldier"}],
                    "fixings": [{"line": [[180, 0], [180, 384]], "by": "glue"}],
                },
                {
                    "mark": "N2",
                    "thickness": 7.25,
                    "outline": [[0, 0], [240, 0], [240, 384], [0, 384]],
                    "field": {"size": "modular", "bond": "stack"},
                },
            ],
        }
    ],
}


@dataclass(frozen=True)
class Broken:
    """A file with one thing wrong; `found` and `expected` are pieces of the words."""

    name: str
    text: bytes
    path: str
    found: str
    expected: str

    def __str__(self) -> str:
        return self.name


Way = list[str | int]


def sound_text() -> str:
    """The file that nothing is wrong with."""
    return json.dumps(SOUND)


def _holder(document: Any, way: Way) -> Any:
    for step in way[:-1]:
        document = document[step]
    return document


def _edited(way: Way, edit: Callable[[Any, Any], None]) -> bytes:
    document = deepcopy(SOUND)
    edit(_holder(document, way), way[-1])
    return json.dumps(document).encode()


def _way(path: str) -> Way:
    steps = path.replace("[", ".[").split(".")
    return [int(step[1:-1]) if step.startswith("[") else step for step in steps if step]


def put(path: str, value: Any) -> bytes:
    """The sound file with another value at a path."""
    return _edited(_way(path), lambda holder, key: holder.__setitem__(key, value))


def without(path: str) -> bytes:
    """The sound file without a key."""
    return _edited(_way(path), lambda holder, key: holder.__delitem__(key))


def _text(old: str, new: str) -> bytes:
    return sound_text().replace(old, new, 1).encode("utf-8", "surrogatepass")


_AT_ONE_PLACE: list[tuple[str, str, Any, str, str]] = [
    ("format of another program", "format", "layout/9", "the text 'layout/9'", "'castcourse-project/1'"),
    ("name a number", "name", 12, "the number 12", "a name as text"),
    ("name empty", "name", "", "an empty text", "at least one letter"),
    ("name with a bell", "name", "a\x07", "'a\\x07'", "signs that print"),
    ("unit unknown", "length_unit", "cm", "the text 'cm'", "one of in, mm"),
    ("temperature unit null", "temperature_unit", None, "null", "one of F, C"),
    ("walls an object", "walls", {}, "an object", "a list of walls"),
    ("wall a list", "walls[0]", [], "a list of 0", "a wall as an object"),
    ("wall mark true", "walls[0].mark", True, "true", "a mark as text"),
    ("joint below zero", "walls[0].joint", -0.75, "-0.75 in", "0 or more"),
    ("thickness zero", f"{P}.thickness", 0, '0"', "more than 0"),
    ("thickness of words", f"{P}.thickness", "thick", "the text 'thick', at character 1 'thick'", "a unit: ft, in, mm"),
    ("inches past 12", f"{P}.thickness", "12'14\"", "at character 4 '14\"'", "inches below 12 after feet"),
    ("comma in a length", f"{P}.openings[1].rect[2]", "12,6", "at character 3 ','", "a point before decimals"),
    ("finer than 1/64 in", f"{P}.margin", "1/128", "'1/128'", "nothing finer than 1/64 in"),
    ("length a list", f"{P}.margin", [0.375], "a list of 1", "a margin as a number (in)"),
    ("length past every limit", f"{P}.base", 1e12, "1e+12 in", "10,000 ft"),
    ("point of three", f"{P}.outline[2]", [1, 2, 3], "a list of 3", "2 lengths: x, y"),
    ("outline of two points", f"{P}.outline", [[0, 0], [9, 0]], "2 points", "at least 3 points"),
    ("outline crossing itself", f"{P}.outline", [[90, 0], [0, 90], [90, 90], [0, 0]], "crossing", "only at their ends"),
    ("outline without area", f"{P}.outline", [[0, 0], [90, 0], [50, 0]], "area of 0", "enclose an area"),
    ("panel of 120 ft", f"{P}.outline", [[0, 0], [1440, 0], [1440, 384], [0, 384]], "120'-0\"", "at most 100'-0\""),
    ("opening wholly outside", f"{P}.openings[0].rect", [900, 96, 48, 64], "75'-0\"", "partly inside the outline"),
    ("openings overlapping", f"{P}.openings[1].rect", [100, 96, 48, 64], "W2 overlapping W1", "do not overlap"),
    ("two openings of one mark", f"{P}.openings[1].mark", "W1", "'W1' again", "no other of the openings"),
    ("use a number", f"{P}.openings[0].use", 5, "the number 5", "a use as text"),
    ("edge that is not there", f"{P}.edges[0].edge", 4, "edge 4", "0 to 3"),
    ("edge of one and a half", f"{P}.edges[0].edge", 1.5, "1.5", "whole number"),
    ("treatment unknown", f"{P}.edges[0].treatment", "retrun", "'retrun'", "the nearest is return"),
    ("strip without width", f"{P}.strips[0].width", 0, '0"', "a width of more than 0"),
    ("size unknown", f"{P}.field.size", "modlar", "'modlar'", "long; the nearest is modular"),
    ("bond unknown", f"{P}.zones[0].bond", "runing", "'runing'", "the nearest is running"),
    ("zone called field", f"{P}.zones[0].mark", "field", "'field'", "another mark"),
    ("fit of words", f"{P}.fit", {"courses": "yes"}, "the text 'yes'", "true or false"),
    ("coursing below the face height", "sizes[0].per", 9, "a gauge of", 'a gauge above the face height, 2"'),
    ("no courses", "sizes[0].courses", 0, "0", "1 or more"),
    ("face length below zero", "sizes[0].length", -7.625, "-7.625 in", "at least 1 in"),
    ("liner of no columns", "liner.columns", 0, "0", "1 or more"),
    ("a bed of 900", "day.bed_high", 900, "900 degrees F", "a temperature from -60 to 250 degrees F"),
    (
        "kerf of a whole brick",
        "order.kerf",
        2,
        'a kerf of 2"',
        "less than the face height of brick 'long', 2\", so that brick is left",
    ),
    (
        "sheet longer than every panel",
        "liner.columns",
        100,
        "100 columns: a sheet of 66'-8\" x 2'-0\" in 'modular'",
        "fit on the largest panel, N1, 30'-0\" x 32'-0\"",
    ),
    ("sheet higher than every panel", "liner.rows", 145, "145 rows: a sheet of 4'-0\" x", "largest panel, N1, 30'-0\""),
    (
        "lap of half a sheet",
        "liner.lap",
        "1'",
        "a lap of 1'-0\"",
        "less than half of the shorter step from sheet to sheet, 1'-3\" for 'soldier' in 'long'",
    ),
    ("overage past 100", "order.overage_percent", 500, "500", "at most 100"),
    ("casting day of words", f"{P}.cast_on", "Monday", "the text 'Monday'", "such as 2026-12-01"),
    ("casting day that is not", f"{P}.cast_on", "2026-02-30", "the text '2026-02-30'", "a casting day"),
    ("day upside down", "day.bed_low", 120, "120 F", "at most the hottest bed, 105 F"),
    (
        "two panels of one mark",
        "walls[0].panels[1].mark",
        "N1",
        "'N1' again, as in walls[0].panels[0]",
        "no other panel",
    ),
]

_PATH_INSIDE = {
    "fit of words": f"{P}.fit.courses",
    "thickness zero": f"{P}.thickness",
}

_AS_TEXT: list[Broken] = [
    Broken("empty", b"", "line 1, column 1", "the end of the text", "JSON"),
    Broken("not JSON", b'{"format": castcourse}', "line 1, column 12", "'castcourse}'", "JSON"),
    Broken("cut off", sound_text().encode()[:200], "line 1, column 197", "'\"cou'", "JSON"),
    Broken("comma too many", b'{\n "name": "A",\n}', "line 3, column 1", "'}'", "JSON"),
    Broken(
        "not UTF-8", _text("Two panels", "X").replace(b"X", b"Caf\xe9"), "line 1, byte 48 of the file", "0xE9", "UTF-8"
    ),
    Broken("UTF-16", sound_text().encode("utf-16"), "line 1, byte 1 of the file", "0xFF", "UTF-8"),
    Broken("10 MB of nesting", b"[" * 10_000_000, "", "nested without end", "at most 32 deep"),
    Broken("nested 60 deep", b'{"name":' * 60 + b"1" + b"}" * 60, ".".join(["name"] * 33), "nested", "at most 32 deep"),
    Broken("a list", b"[]", "", "a list of 0", "a project as an object"),
    Broken("null", b"null", "", "null", "a project as an object"),
    Broken("NaN", _text('"thickness": 7.25', '"thickness": NaN'), f"{P}.thickness", "NaN", "a finite number"),
    Broken("infinity", _text('"thickness": 7.25', '"thickness": -Infinity'), f"{P}.thickness", "without end", "finite"),
    Broken("1e999", _text('"thickness": 7.25', '"thickness": 1e999'), f"{P}.thickness", "without end", "finite"),
    Broken(
        "9,000 digits",
        _text('"thickness": 7.25', '"thickness": ' + "9" * 9000),
        f"{P}.thickness",
        "without end",
        "finite",
    ),
    Broken(
        "a key twice", _text('"mark": "N1"', '"mark": "N1", "mark": "N9"'), P, "the key 'mark' twice", "every key once"
    ),
    Broken("half a character", _text("Two panels", "\\ud800"), "name", "'\\ud800'", "whole characters"),
    Broken("format missing", without("format"), "format", "nothing", "no default"),
    Broken("length unit missing", without("length_unit"), "length_unit", "nothing", "no default"),
    Broken("outline missing", without(f"{P}.outline"), f"{P}.outline", "nothing", "no default"),
    Broken("field missing", without(f"{P}.field"), f"{P}.field", "nothing", "no default"),
    Broken(
        "shape missing", without(f"{P}.openings[0].rect"), f"{P}.openings[0]", "none of rect", "one of rect, polygon"
    ),
    Broken(
        "two shapes",
        put(f"{P}.openings[0].circle", [9, 9, 4]),
        f"{P}.openings[0]",
        "rect and circle",
        "one of rect, polygon, circle, arch",
    ),
    Broken(
        "unknown key in a panel",
        put(f"{P}.opennings", []),
        f"{P}.opennings",
        "the unknown key 'opennings'",
        "the nearest is openings",
    ),
    Broken(
        "unknown key at the top", put("author", "A"), "author", "the unknown key 'author'", "only keys of a project"
    ),
]


def broken_files() -> list[Broken]:
    """Every broken file."""
    at_one_place = [
        Broken(name, put(path, value), _PATH_INSIDE.get(name, path), found, expected)
        for name, path, value, found, expected in _AT_ONE_PLACE
    ]
    inside = [
        Broken(name, put(place, value), place + within, found, expected)
        for name, place, within, value, found, expected in INSIDE
    ]
    return at_one_place + inside + _AS_TEXT
