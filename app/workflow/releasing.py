"""Releases: a panel frozen with all that was computed for it, so that what was released can be shown for ever."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from app.brickwork.findings import Finding
from app.documents.accepted import open_findings
from app.documents.bed_set import BedInputs, bed_set
from app.documents.digest import ENGINE, panel_digest
from app.documents.project_file import read_stored
from app.documents.results import layout_result
from app.panel.faults import Fault
from app.panel.project import Project, Wall
from app.panel.release import ReleaseHead, faults_of, part_digest
from app.panel.values import Panel
from app.storage import Session, audit, releases
from app.storage.releases import NoticeKind, StoredRelease
from app.storage.text import time_text
from app.workflow.compute import compute
from app.workflow.issuing import panel_drawings
from app.workflow.loading import LoadedPanel, load_panel, panel_inputs
from app.workflow.refusals import NotReleased

Parts = dict[str, bytes]

INPUTS = "inputs.json"
RESULTS = "results.json"
BED = "bed.json"
LONGEST_WHY = 400


@dataclass(frozen=True, slots=True)
class Frozen:
    """A panel at one moment with its parts, computed outside of any transaction, not yet released."""

    panel_id: str
    mark: str
    revision: int
    inputs_digest: str
    parts: Parts


def blocking(findings: Iterable[Finding], panel: Panel) -> tuple[Finding, ...]:
    """Findings that keep a panel from being released: errors that nobody has accepted."""
    return tuple(one for one in open_findings(findings, panel.accepted) if one.severity == "error")


def freeze(session: Session, panel_id: str) -> Frozen:
    """The panel as it is now with everything computed for it; raises NotReleased for one with open errors, NotFound."""
    loaded, inputs = load_panel(session, panel_id), panel_inputs(session, panel_id)
    blocked = blocking(compute(loaded.project, loaded.wall, loaded.panel).findings, loaded.panel)
    if blocked:
        expected = "no error that is open: mend it, or accept it by name and reason"
        raise NotReleased([Fault(f"panel {loaded.panel.mark}", finding.text, expected) for finding in blocked])
    digest = panel_digest(loaded.project, loaded.wall, loaded.panel)
    return Frozen(panel_id, loaded.panel.mark, loaded.revision, digest, parts_of(inputs, loaded.panel.mark))


def release(session: Session, frozen: Frozen, *, why: str, person: str, now: datetime) -> StoredRelease:
    """Makes a frozen panel the next release, in a session of `writing`.

    Raises NotReleased without a reason, for a panel that was changed since it was frozen, and for one that has nothing
    new since its last release.
    """
    if not 1 <= len(why) <= LONGEST_WHY:
        raise NotReleased([Fault("why", f"{len(why)} characters", f"a reason of 1 to {LONGEST_WHY} characters")])
    loaded, last = load_panel(session, frozen.panel_id), releases.newest_of_panel(session, frozen.panel_id)
    _refuse_changed(loaded, frozen)
    _refuse_nothing_new(frozen, last)
    head = ReleaseHead(
        panel_id=frozen.panel_id,
        mark=frozen.mark,
        number=last.head.number + 1 if last else 1,
        revision=frozen.revision,
        person=person,
        why=why,
        at=time_text(now),
        engine=ENGINE,
        inputs_digest=frozen.inputs_digest,
        previous=last.digest if last else "",
        parts={name: part_digest(content) for name, content in frozen.parts.items()},
    )
    made = releases.insert(session, head, frozen.parts)
    audit.note(session, person, f"released as rev {made.letter}", frozen.mark, now)
    return made


def set_notice(
    session: Session, release_id: str, kind: NoticeKind, *, why: str, person: str, now: datetime
) -> StoredRelease:
    """Holds a release or lets it go on; raises NotReleased without a reason, or where it stands so already."""
    found = releases.find(session, release_id)
    if not 1 <= len(why) <= LONGEST_WHY:
        raise NotReleased([Fault("why", f"{len(why)} characters", f"a reason of 1 to {LONGEST_WHY} characters")])
    if (kind == "hold") == (found.hold is not None):
        stands = "on hold" if found.hold else "not on hold"
        raise NotReleased([Fault(f"rev {found.letter}", stands, "the other")])
    audit.note(session, person, f"{kind}, rev {found.letter}", found.head.mark, now)
    return releases.add_notice(session, release_id, kind, person, why, now)


def verify(session: Session, stored: StoredRelease) -> tuple[str, ...]:
    """What is no longer as it was released, in words; nothing for a release that is whole."""
    return faults_of(stored.head, stored.digest, releases.contents(session, stored.id))


def parts_of(inputs: Mapping[str, Any], mark: str) -> Parts:
    """Inputs, results and drawings of a panel as files; the same bytes for the same inputs and engine."""
    project, wall, panel = _values(inputs, mark)
    done = compute(project, wall, panel)
    results = layout_result(
        project, wall, panel, done.layout, done.plan, done.cutting, done.drift, done.takeoff, done.saw
    )
    parts = done.layout, done.plan, done.drift, done.sheet_work, done.face, done.takeoff, done.findings
    bed = bed_set(BedInputs(project, wall, panel, *parts))
    drawings = {f"{name}.svg": svg.encode() for name, svg in panel_drawings(project, wall, panel)}
    return {INPUTS: _json({"project": inputs, "panel": mark}), RESULTS: _json(results), BED: _json(bed), **drawings}


def rendered_again(inputs: bytes) -> Parts:
    """The parts of a release made once more from its inputs by the engine of today."""
    given = given_of(inputs)
    return parts_of(given["project"], given["panel"])


def released_values(inputs: bytes) -> tuple[Project, Wall, Panel]:
    """The panel of a release in its wall and project, as values."""
    given = given_of(inputs)
    return _values(given["project"], given["panel"])


def given_of(inputs: bytes) -> dict[str, Any]:
    """The inputs of a release: `project`, a project file with one wall, and `panel`, a mark in it."""
    given: dict[str, Any] = json.loads(inputs)
    return given


def _values(inputs: Mapping[str, Any], mark: str) -> tuple[Project, Wall, Panel]:
    project = read_stored(dict(inputs))
    wall = project.walls[0]
    return project, wall, next(panel for panel in wall.panels if panel.mark == mark)


def _refuse_changed(loaded: LoadedPanel, frozen: Frozen) -> None:
    if panel_digest(loaded.project, loaded.wall, loaded.panel) != frozen.inputs_digest:
        expected = f"revision {frozen.revision}, which was computed; release it again"
        found = f"revision {loaded.revision}, or another wall or project setting"
        raise NotReleased([Fault(f"panel {frozen.mark}", found, expected)])


def _refuse_nothing_new(frozen: Frozen, last: StoredRelease | None) -> None:
    if last and last.head.inputs_digest == frozen.inputs_digest and last.head.engine == ENGINE:
        raise NotReleased([Fault(f"panel {frozen.mark}", f"nothing new since rev {last.letter}", "a change")])


def _json(value: Any) -> bytes:
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode()
