"""Findings that somebody has accepted, told apart from those that are open."""

from collections.abc import Iterable, Sequence

from app.brickwork.findings import Finding
from app.panel.values import Accepted


def open_findings(findings: Iterable[Finding], accepted: Sequence[Accepted]) -> tuple[Finding, ...]:
    """Those that nobody has accepted, in their order."""
    return tuple(one for one in findings if acceptance_of(one, accepted) is None)


def acceptance_of(finding: Finding, accepted: Sequence[Accepted]) -> Accepted | None:
    """Who accepted it and why; None for an open one."""
    return next((one for one in accepted if (one.code, one.about) == (finding.code, finding.about)), None)


def accepted_findings(one: Accepted, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """What one acceptance covers just now; none where the finding is gone."""
    return tuple(found for found in findings if acceptance_of(found, (one,)))
