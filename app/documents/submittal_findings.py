"""Open findings of a submittal as rows of words: those that say the same of several things are one row."""

import re
from collections.abc import Iterable, Sequence
from itertools import groupby

from app.brickwork.findings import Finding
from app.documents.submittal_schedules import Row, about_words
from app.drawing.lettering import with_fractions

_PLACES = 3
_COURSE = re.compile(r"course (-?\d+)")
_NAMED = (re.compile(r"^Pier (from .+?):"), re.compile(r"^Piece (.+?) long in "))
"""What a text says its finding is about, where that is not its stable name."""

_SLOT = "\0"


def finding_rows(findings: Iterable[Finding], unit: str) -> list[Row]:
    """One row for findings that say the same but for course and what they are about: how many, where the first are.

    Places in the face frame, lengths in words in `unit`, "in" or "mm"; no row for a face without findings.
    """
    alike: dict[tuple[str, str, str], list[tuple[Finding, str]]] = {}
    for finding in findings:
        text, named = _parted(finding)
        said = _COURSE.sub("course #", text)
        alike.setdefault((finding.severity, finding.code, said), []).append((finding, named))
    return [_row(severity, text, rows, unit) for (severity, _, text), rows in alike.items()]


def _parted(finding: Finding) -> tuple[str, str]:
    """The text with a slot for what it is about, and what fills it; a text that names nothing has none."""
    text, about = finding.text, finding.about
    if about and text.lower().startswith(f"{about.lower()} "):
        return _SLOT + text[len(about) :], about
    for pattern in _NAMED:
        if found := pattern.match(text):
            return text[: found.start(1)] + _SLOT + text[found.end(1) :], found[1]
    return text, ""


def _row(severity: str, text: str, rows: Sequence[tuple[Finding, str]], unit: str) -> Row:
    findings = [finding for finding, _ in rows]
    courses = sorted({int(found) for finding in findings for found in _COURSE.findall(finding.text)})
    said = _filled(text, list(dict.fromkeys(named for _, named in rows))).replace("course #", runs_in_words(courses))
    return {
        "text": with_fractions(f"{severity.capitalize()}: {said}"),
        "count": str(len(rows)),
        "where": _where(findings, unit),
    }


def _filled(text: str, names: Sequence[str]) -> str:
    """At the head of a sentence several are told of one by one: "Each of sill W1, W2 stands"."""
    words = _listed(names)
    if not text.startswith(_SLOT):
        return text.replace(_SLOT, words)
    return text.replace(_SLOT, f"Each of {words}" if len(names) > 1 else f"{words[:1].upper()}{words[1:]}")


def _listed(names: Sequence[str]) -> str:
    """Names one after another, a first word that several share said once: "sill W1, W2, head W3"."""
    parts = [name.partition(" ") if name[:1].isalpha() else (name, "", "") for name in names]
    runs = ((first, [rest for _, _, rest in run]) for first, run in groupby(parts, key=lambda part: part[0]))
    return ", ".join(f"{first} {', '.join(rest)}" if all(rest) else first for first, rest in runs)


def runs_in_words(courses: Sequence[int]) -> str:
    """Ascending course numbers with neighbours run together, "courses 3 to 7, 9"; "" for none."""
    runs: list[list[int]] = []
    for course in courses:
        if runs and course == runs[-1][-1] + 1:
            runs[-1].append(course)
        else:
            runs.append([course])
    words = ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 1 else str(run[0]) for run in runs)
    return f"course{'s' if len(courses) > 1 else ''} {words}" if courses else ""


def _where(alike: Sequence[Finding], unit: str) -> str:
    shown = [f"x {about_words(one.x, unit)}, y {about_words(one.y, unit)}" for one in alike[:_PLACES]]
    more = len(alike) - len(shown)
    return "; ".join(shown) + (f"; and {more} more" if more else "")
