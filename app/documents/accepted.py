"""Findings that somebody has accepted, told apart from those that are open."""

from collections.abc import Iterable, Sequence

from app.brickwork.findings import Finding
from app.panel.values import Accepted


def open_findings(findings: Iterable[Finding], accepted: Sequence[Accepted]) -> tuple[Finding, ...]:
    """Those that nobody has accepted, in their order."""
    taken = {(one.code, one.about) for one in accepted}
    return tuple(one for one in findings if (one.code, one.about) not in taken)


def accepted_findings(one: Accepted, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """What one acceptance covers just now; none where the finding is gone."""
    return tuple(found for found in findings if (found.code, found.about) == (one.code, one.about))
