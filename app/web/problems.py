"""Every way a request can fail, in one catalogue: status, title, and which error becomes which."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from app.drawing.scales import NoScaleFits
from app.lengths import LengthError
from app.panel.faults import Fault, Refused
from app.storage.errors import DatabaseBusy, DiskFull, MarkTaken, NotFound
from app.workflow.refusals import BadCommand, CommandReused, NotReleased, ProjectStale, Stale, UndoRefused


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of failure; `title` never changes from case to case (RFC 9457, section 3.1.3)."""

    code: str
    status: int
    title: str


KINDS = {
    kind.code: kind
    for kind in (
        Kind("malformed", 400, "The request cannot be read"),
        Kind("sign-in", 401, "Nobody has signed in"),
        Kind("forbidden", 403, "This may not be done from here"),
        Kind("cross-site", 403, "This request came from another site"),
        Kind("not-found", 404, "There is nothing at this address"),
        Kind("method", 405, "This address does not take this method"),
        Kind("conflict", 409, "This cannot be done as things stand"),
        Kind("stale", 412, "Someone saved this in the meantime"),
        Kind("too-large", 413, "What was sent is too large"),
        Kind("wrong-type", 415, "What was sent has another type than expected"),
        Kind("wrong-host", 421, "This server does not answer to that name"),
        Kind("refused", 422, "What was sent cannot be used"),
        Kind("reused", 422, "This command id stands for something else"),
        Kind("missing-base", 428, "The revision this change is based on is missing"),
        Kind("too-many", 429, "Too much at once"),
        Kind("failed", 500, "The server could not finish this"),
        Kind("busy", 503, "The project is being written to"),
        Kind("disk-full", 507, "The disk is full"),
    )
}


@dataclass(frozen=True, slots=True)
class Problem:
    """One failure of one request; `more` holds members of its own kind, `headers` go with the answer."""

    kind: Kind
    detail: str
    faults: tuple[Fault, ...] = ()
    more: dict[str, Any] = field(default_factory=dict)
    headers: dict[str, str] = field(default_factory=dict)

    def document(self) -> dict[str, Any]:
        """The members of `application/problem+json`."""
        faults = [{"path": fault.path, "found": fault.found, "expected": fault.expected} for fault in self.faults]
        return {
            "type": f"/problems#{self.kind.code}",
            "title": self.kind.title,
            "status": self.kind.status,
            "detail": self.detail,
            **({"faults": faults} if faults else {}),
            **self.more,
        }


class Failure(Exception):
    """Raised by a route that knows what is wrong."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        super().__init__(problem.detail)


def problem(code: str, detail: str, **more: Any) -> Problem:
    return Problem(KINDS[code], detail, more=more)


def failure(code: str, detail: str, **more: Any) -> Failure:
    return Failure(problem(code, detail, **more))


def refused(error: Refused) -> Problem:
    count = len(error.faults)
    detail = "1 thing is wrong; nothing was saved." if count == 1 else f"{count} things are wrong; nothing was saved."
    return Problem(KINDS["refused"], detail, faults=error.faults)


def stale(error: Stale) -> Problem:
    """Both sides in words, and what can be done about it."""
    return problem(
        "stale",
        str(error),
        revision=error.current_revision,
        document=error.document,
        theirs=list(error.theirs),
        mine=list(error.mine),
        choices=["drop"] if error.overlap else ["on-top", "drop"],
    )


Translate = Callable[[Any], Problem]

CATALOGUE: dict[type[Exception], Translate] = {
    Failure: lambda error: error.problem,
    Refused: refused,
    LengthError: lambda error: refused(Refused([Fault("", error.text or "nothing", f"{error}")])),
    Stale: stale,
    ProjectStale: lambda error: problem("stale", str(error)),
    CommandReused: lambda error: problem("reused", str(error)),
    BadCommand: lambda error: problem("malformed", str(error)),
    NotReleased: lambda error: Problem(KINDS["refused"], "Nothing was released.", faults=error.faults),
    UndoRefused: lambda error: problem("conflict", f"{error.reason[:1].upper()}{error.reason[1:]}."),
    NoScaleFits: lambda error: problem("conflict", f"{error}"),
    NotFound: lambda error: problem("not-found", f"There is no {error.noun} with this id."),
    MarkTaken: lambda error: refused(Refused([Fault("mark", error.mark, "a mark no other panel of this project has")])),
    DatabaseBusy: lambda _: Problem(KINDS["busy"], "Nothing was saved. Try again.", headers={"retry-after": "1"}),
    DiskFull: lambda _: problem("disk-full", "Nothing was saved. Make room and try again."),
}
"""Which error becomes which problem; the more exact class first."""
