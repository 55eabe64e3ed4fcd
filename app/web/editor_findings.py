"""Findings by kind: how many, and the first few in words."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.brickwork.findings import Finding
from app.web.words import counted

SHOWN = 6
NAMES = {
    "small-piece": "small piece",
    "left-out": "sliver left as joint",
    "liner-drift": "place where liner drifts too far",
}


@dataclass(frozen=True, slots=True)
class FindingGroup:
    words: str
    first: tuple[str, ...]
    more: int


@dataclass(frozen=True, slots=True)
class Findings:
    groups: tuple[FindingGroup, ...]


def findings_part(found: Sequence[Finding]) -> Findings:
    """Groups in the order in which the kinds first appear."""
    codes = dict.fromkeys(finding.code for finding in found)
    return Findings(tuple(_group(code, [finding.text for finding in found if finding.code == code]) for code in codes))


def _group(code: str, texts: list[str]) -> FindingGroup:
    name = NAMES.get(code, code.replace("-", " "))
    return FindingGroup(counted(len(texts), name).capitalize(), tuple(texts[:SHOWN]), max(0, len(texts) - SHOWN))
