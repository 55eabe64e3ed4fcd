"""Findings by kind: the open ones, each with its place in the drawing, and those that somebody has accepted."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.brickwork.findings import Finding
from app.documents.accepted import accepted_findings, open_findings
from app.panel.values import Accepted
from app.web.words import counted

SHOWN = 6
"""Of each kind, until all are asked for: a large face has hundreds."""

NAMES = {
    "small-piece": "small piece",
    "left-out": "sliver left as joint",
    "liner-drift": "place where liner drifts too far",
    "liner-bare": "strip without liner",
    "liner-flange": "strip on a flange alone",
    "empty-zone": "zone without brick",
    "zone-outside": "zone outside the brick field",
    "zone-seam": "seam of a zone that cuts bricks",
    "lap": "place where head joints line up",
    "broken-bond": "jamb that breaks the bond",
    "unsymmetrical-pier": "pier with unlike ends",
    "missed-head": "head off the courses",
    "missed-sill": "sill off the courses",
    "joint-range": "joint out of range",
    "off-neighbour": "course line off the neighbour's",
    "cut-at-return": "return with cut corner units",
    "bare-at-return": "return with bare courses",
    "two-returns": "brick that reaches two returns",
    "fit-not-offered": "fit that the bond does not offer",
    "required-missed": "required line that is missed",
}
PLURALS = {
    "liner-drift": "places where liner drifts too far",
    "liner-bare": "strips without liner",
    "liner-flange": "strips on flanges alone",
    "left-out": "slivers left as joint",
    "empty-zone": "zones without brick",
    "zone-outside": "zones outside the brick field",
    "zone-seam": "seams of zones that cut bricks",
    "lap": "places where head joints line up",
    "broken-bond": "jambs that break the bond",
    "unsymmetrical-pier": "piers with unlike ends",
    "missed-head": "heads off the courses",
    "missed-sill": "sills off the courses",
    "joint-range": "joints out of range",
    "off-neighbour": "course lines off the neighbour's",
    "cut-at-return": "returns with cut corner units",
    "bare-at-return": "returns with bare courses",
    "two-returns": "bricks that reach two returns",
    "fit-not-offered": "fits that the bond does not offer",
    "required-missed": "required lines that are missed",
}


BY_WEIGHT = (
    "required-missed",
    "missed-head",
    "missed-sill",
    "joint-range",
    "lap",
    "zone-seam",
    "broken-bond",
    "off-neighbour",
    "fit-not-offered",
    "cut-at-return",
    "bare-at-return",
    "two-returns",
    "empty-zone",
    "zone-outside",
    "liner-drift",
    "liner-bare",
    "small-piece",
    "unsymmetrical-pier",
    "liner-flange",
    "left-out",
)
"""Kinds as they are shown, below those that hold errors: what is seen from the street first."""


@dataclass(frozen=True, slots=True)
class FindingRow:
    """One finding and its place, inches with y up; one that is about nothing nameable cannot be accepted."""

    code: str
    about: str
    text: str
    x: float
    y: float
    severity: str = ""


@dataclass(frozen=True, slots=True)
class FindingLine:
    """Findings of one kind about one thing, in the same words, at all of their places."""

    row: FindingRow
    at: tuple[tuple[float, float], ...]

    @property
    def text(self) -> str:
        return self.row.text if len(self.at) == 1 else f"{self.row.text.removesuffix('.')}, {len(self.at)} times."

    @property
    def places(self) -> str:
        """`x y x y`, as the drawing's script takes them."""
        return " ".join(f"{x} {y}" for x, y in self.at)


@dataclass(frozen=True, slots=True)
class FindingGroup:
    code: str
    words: str
    first: tuple[FindingLine, ...]
    more: int


@dataclass(frozen=True, slots=True)
class AcceptedRow:
    """Who accepted what and why; `places` are the findings that it covers just now."""

    code: str
    about: str
    words: str
    by: str
    reason: str
    places: tuple[FindingRow, ...]


@dataclass(frozen=True, slots=True)
class Findings:
    open: int
    groups: tuple[FindingGroup, ...]
    accepted: tuple[AcceptedRow, ...]


def findings_part(found: Sequence[Finding], accepted: Sequence[Accepted], whole: str = "") -> Findings:
    """Groups by weight, those that hold errors first, the one called `whole` with all of its findings."""
    still = [_row(one) for one in open_findings(found, accepted)]
    kinds: dict[str, list[FindingRow]] = {}
    for row in still:
        kinds.setdefault(row.code, []).append(row)
    groups = tuple(
        _group(code, kinds[code], code == whole) for code in sorted(kinds, key=lambda code: _weight(kinds[code]))
    )
    return Findings(len(still), groups, tuple(_accepted(one, found) for one in accepted))


def _row(one: Finding) -> FindingRow:
    return FindingRow(one.code, one.about, one.text, round(one.x, 4), round(one.y, 4), one.severity)


def _weight(rows: Sequence[FindingRow]) -> tuple[bool, int]:
    """Smaller is shown first; a kind without a weight of its own comes last."""
    code, errs = rows[0].code, any(row.severity == "error" for row in rows)
    return not errs, BY_WEIGHT.index(code) if code in BY_WEIGHT else len(BY_WEIGHT)


def _group(code: str, rows: Sequence[FindingRow], whole: bool) -> FindingGroup:
    lines = _lines(rows)
    shown = len(lines) if whole else SHOWN
    words = counted(len(rows), _name(code), PLURALS.get(code))
    return FindingGroup(code, words.capitalize(), lines[:shown], max(0, len(lines) - shown))


def _lines(rows: Sequence[FindingRow]) -> tuple[FindingLine, ...]:
    same: dict[tuple[str, str], list[FindingRow]] = {}
    for row in rows:
        same.setdefault((row.text, row.about), []).append(row)
    return tuple(FindingLine(alike[0], tuple((row.x, row.y) for row in alike)) for alike in same.values())


def _accepted(one: Accepted, found: Sequence[Finding]) -> AcceptedRow:
    places = tuple(map(_row, accepted_findings(one, found)))
    words = f"{_name(one.code).capitalize()}: {one.about}"
    if not places:
        words += ", no longer found"
    elif len(places) > 1:
        words += f", {len(places)} places"
    return AcceptedRow(one.code, one.about, words, one.by, one.reason, places)


def _name(code: str) -> str:
    return NAMES.get(code, code.replace("-", " "))
