"""Parts of a project file with one thing wrong inside: fit, sides of openings, acceptance, questions, own bonds."""

from typing import Any

P = "walls[0].panels[0]"

BOND: dict[str, Any] = {
    "name": "half lap",
    "cells": [{"kind": "stretcher", "at": [0, 0]}, {"kind": "stretcher", "at": ["1/2 P", "G"]}],
    "across": ["P", 0],
    "up": [0, "2 G"],
}
CELL: dict[str, Any] = BOND["cells"][0]
SIDE = {"side": "left", "treatment": "return", "depth": 3.625}
ACCEPTED = {"code": "missed-head", "about": "W1 head", "by": "A. Mason", "reason": "The lintel covers it."}
WITHOUT_REASON = {"code": "missed-head", "about": "W1 head", "by": "A. Mason"}
QUESTION = {"mark": "Q1", "text": "May W1 be 4 in higher?"}

COLOUR = {"name": "red", "percent": 60}
DELIVERY = {"day": "2026-12-01", "item": "Brick", "count": 900}

INSIDE: list[tuple[str, str, str, Any, str, str]] = [
    (
        "matter unknown",
        f"{P}.fit",
        ".matter.heads",
        {"matter": {"heads": "requird"}},
        "'requird'",
        "the nearest is required",
    ),
    (
        "matter of an unknown thing",
        f"{P}.fit",
        ".matter.doors",
        {"matter": {"doors": "free"}},
        "key 'doors'",
        "only keys of what matters",
    ),
    ("released by a word", f"{P}.released", "", "yes", "the text 'yes'", "true or false"),
    ("accepted by nobody", f"{P}.accepted", "[0].by", [ACCEPTED | {"by": " "}], "' '", "the name of who accepts it"),
    ("accepted without a reason", f"{P}.accepted", "[0].reason", [WITHOUT_REASON], "nothing", "no default"),
    (
        "reason of a page",
        f"{P}.accepted",
        "[0].reason",
        [ACCEPTED | {"reason": "w" * 301}],
        "301 characters",
        "at most 300",
    ),
    ("reason of two lines", f"{P}.accepted", "[0].reason", [ACCEPTED | {"reason": "a\nb"}], "'a\\nb'", "on one line"),
    (
        "accepted twice",
        f"{P}.accepted",
        "[1]",
        [ACCEPTED, ACCEPTED | {"by": "B"}],
        "again, as in accepted[0]",
        "accepted once",
    ),
    ("corner unknown", f"{P}.laying", ".corner", {"corner": "bed left"}, "'bed left'", "bed lower left"),
    ("direction unknown", f"{P}.laying", ".direction", {"direction": "down"}, "'down'", "one of across, up"),
    ("colours short of 100", "blend", ".colours", {"colours": [COLOUR]}, "60 percent", "100 percent"),
    ("delivery of nothing", "deliveries", "[0].count", [DELIVERY | {"count": 0}], "0", "1 or more"),
    (
        "question of a page",
        f"{P}.questions",
        "[0].text",
        [QUESTION | {"text": "w" * 601}],
        "601 characters",
        "at most 600",
    ),
    (
        "question of a bell",
        f"{P}.questions",
        "[0].text",
        [QUESTION | {"text": "a\x07"}],
        "'a\\x07'",
        "signs that print",
    ),
    (
        "two questions of one mark",
        f"{P}.questions",
        "[1].mark",
        [QUESTION, QUESTION],
        "'Q1' again",
        "no other of the questions",
    ),
    (
        "side unknown",
        f"{P}.openings[0].sides",
        "[0].side",
        [SIDE | {"side": "top"}],
        "'top'",
        "one of left, right, head, sill",
    ),
    ("side twice", f"{P}.openings[0].sides", "[1].side", [SIDE, SIDE], "left again", "every side at most once"),
    (
        "return over a head",
        f"{P}.openings[0].sides",
        "[0].treatment",
        [SIDE | {"side": "head"}],
        "which is level",
        "an upright edge only",
    ),
    (
        "return of the left too deep",
        f"{P}.openings[0].sides",
        "[0].depth",
        [SIDE | {"depth": 8}],
        '8"',
        "the panel thickness",
    ),
    (
        "bond of a number",
        "bonds",
        "[0].across[0]",
        [BOND | {"across": [1, "0"]}],
        "the number 1",
        "a sum of modules as text",
    ),
    (
        "bond of one coordinate",
        "bonds",
        "[0].up",
        [BOND | {"up": ["2 G"]}],
        "a list of 1",
        "a list of 2 sums of modules",
    ),
    ("bond of unknown modules", "bonds", "[0].up[1]", [BOND | {"up": ["0", "2 Q"]}], "Q", "for example"),
    (
        "bond of unknown units",
        "bonds",
        "[0].cells[0].kind",
        [BOND | {"cells": [CELL | {"kind": "strecher"}]}],
        "'strecher'",
        "is stretcher",
    ),
    ("bond without cells", "bonds", "[0].cells", [BOND | {"cells": []}], "no cells", "at least one cell"),
    ("bond with a hole", "bonds", "[0].cells", [BOND | {"cells": [CELL]}], "a hole of", "without a gap"),
    ("bond with an overlap", "bonds", "[0].cells[1]", [BOND | {"up": ["0", "G"]}], "an overlap", "do not overlap"),
    ("bond of a known name", "bonds", "[0].name", [BOND | {"name": "running"}], "'running'", "no built-in bond has"),
    ("bond turned too far", "bonds", "[0].turn", [BOND | {"turn": 720}], "720", "a turn in degrees"),
    (
        "two bonds of one name",
        "bonds",
        "[1].name",
        [BOND, BOND],
        "'half lap' again, as in bonds[0]",
        "no other bond has",
    ),
]
"""Name, place, where in the value that is put there the fault is, the value, pieces of found and expected."""
