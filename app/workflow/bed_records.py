"""What the bed has recorded on a panel, as the office reads it: progress, readings judged again, what differs."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import isfinite
from typing import Any

from app.lengths import LengthError, parse
from app.liner.readings import differs, judge
from app.liner.readings_ahead import joints_ahead
from app.liner.readings_values import Reading, Verdict
from app.liner.values import Checkpoint
from app.panel.record import Record
from app.panel.tolerance import TOLERANCE
from app.site.before import BEFORE, SIGN_OFFS
from app.site.progress import Arrived, Progress, progress
from app.storage import Session, records, releases
from app.storage.records import StoredRecord
from app.storage.releases import StoredRelease
from app.workflow.compute import Computed, compute
from app.workflow.releasing import BED, INPUTS, released_values

COUNTED = frozenset({"sheets-laid", "readings-in-band"})
"""Lines of the list before concrete that follow from records."""


@dataclass(frozen=True, slots=True)
class JudgedReading:
    """A reading with its verdict by the release it was made on; None for words that are no length.

    `is_moved`: its checkpoint is elsewhere in the newest release, or no longer there. `differs` from the one before it
    at this checkpoint by more than the band.
    """

    record: Record
    rev: str
    verdict: Verdict | None
    is_moved: bool
    differs: bool


@dataclass(frozen=True, slots=True)
class BedWork:
    """A panel's newest release and all that was recorded on any of its releases; `stored` in the order that counts.

    `laid`, `held` and `ticked` count against the newest release: of its `sheets`, `points` and `items`.
    """

    newest: StoredRelease
    revs: Mapping[str, str]
    progress: Progress
    stored: tuple[StoredRecord, ...]
    photos: frozenset[str]
    sheets: int
    laid: int
    points: int
    held: int
    items: int
    ticked: int
    steps: int
    placed: int
    wash: int
    washed: int

    @property
    def signed(self) -> int:
        return len(self.progress.signs)

    @property
    def lacks(self) -> tuple[str, ...]:
        """What keeps concrete away, in words; nothing once two have signed."""
        if self.signed == len(SIGN_OFFS) and self.newest.hold is None:
            return ()
        counted = (
            (self.laid, self.sheets, "sheets laid"),
            (self.placed, self.steps, "steps of brick placed"),
            (self.held, self.points, "checkpoints in their band"),
            (self.ticked, self.items, "lines of the list ticked"),
            (self.signed, len(SIGN_OFFS), "sign-offs"),
        )
        hold = (f"on hold: {self.newest.hold.why}",) if self.newest.hold else ()
        return (*hold, *(f"{done} of {whole} {what}" for done, whole, what in counted if done < whole))


@dataclass(frozen=True, slots=True)
class Given:
    """What there is to do on a release, by the names that records bear."""

    sheets: frozenset[str]
    points: frozenset[str]
    steps: frozenset[str]
    wash: frozenset[str]


_GIVEN: dict[str, Given] = {}
"""By the release's digest: it never changes, and is asked for every few seconds."""


def _given(session: Session, row: StoredRelease) -> Given:
    if row.digest not in _GIVEN:
        held: dict[str, Any] = json.loads(releases.part(session, row.id, BED))
        _GIVEN[row.digest] = Given(
            frozenset(sheet["mark"] for sheet in held["sheets"]),
            frozenset(point["mark"] for point in held["checkpoints"]),
            frozenset(step["name"] for step in held["placing"]),
            frozenset(step["key"] for step in held["strip"]),
        )
    return _GIVEN[row.digest]


def bed_work(session: Session, panel_id: str) -> BedWork | None:
    """None for a panel that was never released."""
    rows = releases.of_panel(session, panel_id)
    if not rows:
        return None
    stored = records.of_panel(session, panel_id)
    given = _given(session, rows[0])
    done = progress(Arrived(one.record, one.arrival) for one in stored)
    last = {record.body["checkpoint"]: record for record in done.readings}
    points = given.points
    items = {item.key for item in BEFORE} - COUNTED
    return BedWork(
        newest=rows[0],
        revs={row.id: row.letter for row in rows},
        progress=done,
        stored=stored,
        photos=records.with_photos(session, [one.record.id for one in stored]),
        sheets=len(given.sheets),
        laid=len(given.sheets & set(done.sheets)),
        points=len(points),
        held=sum(record.body["verdict"] == "hold" for mark, record in last.items() if mark in points),
        items=len(items),
        ticked=len(items & set(done.checks)),
        steps=len(given.steps),
        placed=len(given.steps & set(done.bricks)),
        wash=len(given.wash),
        washed=len(given.wash & set(done.steps)),
    )


def judged(session: Session, work: BedWork) -> tuple[JudgedReading, ...]:
    """Every reading that was not corrected, in the order that counts, judged again by the release it was made on."""
    computed = {row_id: _computed(session, row_id) for row_id in {one.release for one in work.progress.readings}}
    now = {point.mark: point for point in _computed(session, work.newest.id).drift.checkpoints}
    return tuple(_judged(work, computed, now))


def _computed(session: Session, release_id: str) -> Computed:
    return compute(*released_values(releases.part(session, release_id, INPUTS)))


def _judged(work: BedWork, computed: Mapping[str, Computed], now: Mapping[str, Checkpoint]) -> Iterator[JudgedReading]:
    before: dict[str, Reading] = {}
    for record in work.progress.readings:
        done = computed[record.release]
        unit, degree = done.given.length_unit, done.given.temperature_unit
        mark = record.body["checkpoint"]
        point = next((one for one in done.drift.checkpoints if one.mark == mark), None)
        reading = reading_of(record, unit)
        verdict = None
        if point and reading:
            ahead = joints_ahead(done.layout, done.given.liner, done.drift, point)
            verdict = judge(reading, point, ahead, unit, degree)
        earlier = before.get(mark)
        is_other = bool(point and reading and earlier and differs(earlier, reading, point, degree))
        yield JudgedReading(record, work.revs[record.release], verdict, _is_moved(point, now.get(mark)), is_other)
        if reading:
            before[mark] = reading


def _is_moved(then: Checkpoint | None, now: Checkpoint | None) -> bool:
    if then is None or now is None:
        return True
    return then.axis != now.axis or abs(then.nominal - now.nominal) > TOLERANCE


def reading_of(record: Record, unit: str) -> Reading | None:
    """The reading as values; None for words that are no length."""
    body = record.body
    try:
        value = parse(body["reading"], "mm" if unit == "mm" else "in").inches
    except LengthError:
        return None
    bed, tape = (_number(body[name]) for name in ("bed", "tape"))
    return Reading(body["checkpoint"], value, bed, tape)


def _number(text: str) -> float | None:
    try:
        number = float(text)
    except ValueError:
        return None
    return number if isfinite(number) else None
