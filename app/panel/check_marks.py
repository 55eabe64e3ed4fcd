"""Faults of marks and other short texts: empty, twice, too long, signs that do not print."""

from unicodedata import category

from app.panel.faults import Fault
from app.panel.values import Fixing, Opening, Panel, Plate, Question, Strip, Zone
from app.panel.wording import quoted

LONGEST_MARK = 60
FIELD = "field"
"""The field's own brickwork goes by this name, so no zone can."""

_NOT_PRINTED = ("Cc", "Cf", "Cs", "Zl", "Zp")

Marked = Opening | Strip | Plate | Zone | Question


def mark_faults(panel: Panel) -> list[Fault]:
    """Faults of the panel's mark and of the marks, uses and ways of fixing of what it holds."""
    faults = text_faults(panel.mark, "mark")
    lists: dict[str, tuple[Marked, ...]] = {
        "openings": panel.openings,
        "strips": panel.strips,
        "plates": panel.plates,
        "zones": panel.zones,
        "questions": panel.questions,
    }
    for name, items in lists.items():
        faults += _list_faults(items, name)
    faults += [fault for k, zone in enumerate(panel.zones) for fault in _reserved(zone, k)]
    for k, opening in enumerate(panel.openings):
        faults += _optional_faults(opening.use, f"openings[{k}].use")
    return faults + _by_faults(panel.fixings)


def text_faults(text: str, path: str, expected: str = "a mark", longest: int = LONGEST_MARK) -> list[Fault]:
    """Faults of one short text that must be there."""
    if not text.strip():
        return [Fault(path, quoted(text), f"{expected} of at least one letter or figure")]
    if len(text) > longest:
        return [Fault(path, f"{len(text):,} characters", f"at most {longest} characters")]
    if any(category(sign) in _NOT_PRINTED for sign in text):
        return [Fault(path, quoted(text), "only signs that print, on one line")]
    return []


def _list_faults(items: tuple[Marked, ...], name: str) -> list[Fault]:
    first: dict[str, int] = {}
    faults = []
    for k, item in enumerate(items):
        path = f"{name}[{k}].mark"
        faults += text_faults(item.mark, path)
        if item.mark.strip() and item.mark in first:
            found = f"{quoted(item.mark)} again, as in {name}[{first[item.mark]}]"
            faults.append(Fault(path, found, f"a mark that no other of the {name} has"))
        first.setdefault(item.mark, k)
    return faults


def _reserved(zone: Zone, k: int) -> list[Fault]:
    if zone.mark != FIELD:
        return []
    return [Fault(f"zones[{k}].mark", quoted(zone.mark), f"another mark: {FIELD} is the brickwork outside all zones")]


def _by_faults(fixings: tuple[Fixing, ...]) -> list[Fault]:
    return [fault for k, fixing in enumerate(fixings) for fault in _optional_faults(fixing.by, f"fixings[{k}].by")]


def _optional_faults(text: str | None, path: str) -> list[Fault]:
    return [] if text is None else text_faults(text, path, "a word, or nothing,")
