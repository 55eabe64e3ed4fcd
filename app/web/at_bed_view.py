"""What the office sees of the bed: progress of every panel, and the records of one."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from app.drawing.lettering import with_fractions
from app.drawing.views.readings import reading_history
from app.liner.readings_values import KINDS
from app.panel.record import Record
from app.site.before import BEFORE, SIGN_OFFS
from app.web.inline_drawing import InlineDrawing, inline_drawing
from app.web.page_links import PageLink, panel_links, panel_path, project_path
from app.web.pages import Page
from app.web.words import at, counted
from app.workflow.bed_records import BedWork, JudgedReading
from app.workflow.compute import Computed
from app.workflow.loading import LoadedPanel, LoadedProject

NAMES = {item.key: item.name for item in BEFORE} | {each.key: each.who for each in SIGN_OFFS}
VERDICTS: dict[str, str] = {str(kind): words for kind, words in KINDS.items()}
CONCRETE = {"begun": "concrete begun", "placed": "concrete placed"}
WAYS = {"x": "along", "y": "up"}


@dataclass(frozen=True, slots=True)
class Bar:
    """How much of something is done; `words` say it."""

    name: str
    done: int
    whole: int
    words: str


@dataclass(frozen=True, slots=True)
class PanelProgress:
    mark: str
    address: str
    cast_on: str
    rev: str
    state: str
    is_right: bool
    bars: tuple[Bar, ...]
    trouble: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProgressPage(Page):
    """Panels by casting day, those without one last; `next_day` and what its panels still lack."""

    name: str
    now: str
    next_day: str
    lacks: tuple[str, ...]
    panels: tuple[PanelProgress, ...]


@dataclass(frozen=True, slots=True)
class ReadingRow:
    mark: str
    read: str
    warmth: str
    rev: str
    verdict: str
    is_right: bool
    instruction: str
    notes: tuple[str, ...]
    by: str


@dataclass(frozen=True, slots=True)
class FindingRow:
    text: str
    by: str
    photo: str


@dataclass(frozen=True, slots=True)
class LogRow:
    received: str
    by: str
    words: str
    rev: str


@dataclass(frozen=True, slots=True)
class Plot:
    caption: str
    drawing: InlineDrawing


@dataclass(frozen=True, slots=True, kw_only=True)
class BedRecordsPage(Page):
    mark: str
    links: tuple[PageLink, ...]
    progress: PanelProgress
    readings: tuple[ReadingRow, ...]
    plots: tuple[Plot, ...]
    findings: tuple[FindingRow, ...]
    log: tuple[LogRow, ...]


def progress_page(loaded: LoadedProject, works: Mapping[str, BedWork | None]) -> ProgressPage:
    """Every panel; what keeps concrete away from those of the next casting day."""
    panels = sorted(loaded.panels, key=lambda panel: (panel.panel.cast_on is None, panel.panel.cast_on or ""))
    waiting = [panel for panel in panels if panel.panel.cast_on and not _is_cast(works[panel.id])]
    day = waiting[0].panel.cast_on if waiting else ""
    lacks = [words for panel in waiting if panel.panel.cast_on == day for words in _lacks(panel, works[panel.id])]
    return ProgressPage(
        title=f"At the bed, {loaded.project.name}",
        path=project_path(loaded.id, loaded.project.name, "At the bed"),
        name=loaded.project.name,
        now=f"/projects/{loaded.id}/at-bed/now",
        next_day=day or "",
        lacks=tuple(lacks),
        panels=tuple(_panel(panel, works[panel.id]) for panel in panels),
    )


def bed_records_page(
    loaded: LoadedPanel, work: BedWork | None, readings: Sequence[JudgedReading], computed: Computed
) -> BedRecordsPage:
    """The records of one panel, none for one that was never released; what is newest stands first."""
    return BedRecordsPage(
        title=f"{loaded.panel.mark} at the bed",
        path=panel_path(loaded, "At the bed"),
        mark=loaded.panel.mark,
        links=panel_links(loaded.id, loaded.panel.mark, "At the bed"),
        progress=_panel(loaded, work),
        readings=tuple(_reading(one) for one in reversed(readings)),
        plots=tuple(_plots(loaded, work, readings, computed)) if work else (),
        findings=tuple(_finding(record, work) for record in reversed(work.progress.findings)) if work else (),
        log=tuple(_log(work)) if work else (),
    )


def _is_cast(work: BedWork | None) -> bool:
    concrete = work.progress.concrete if work else None
    return concrete is not None and concrete.body["state"] == "placed"


def _lacks(panel: LoadedPanel, work: BedWork | None) -> Iterator[str]:
    mark = panel.panel.mark
    if work is None:
        yield f"{mark}: not released yet"
        return
    if work.lacks:
        yield f"{mark}: {', '.join(work.lacks)}"
    for record in work.progress.findings:
        yield f"{mark}: told from the bed, {record.body['text']} ({record.body['by']})"


def _panel(panel: LoadedPanel, work: BedWork | None) -> PanelProgress:
    mark, cast_on = panel.panel.mark, panel.panel.cast_on or ""
    if work is None:
        return PanelProgress(mark, f"/panels/{panel.id}/releases", cast_on, "", "not released", False, (), ())
    return PanelProgress(
        mark=mark,
        address=f"/panels/{panel.id}/at-bed",
        cast_on=cast_on,
        rev=f"rev {work.newest.letter}",
        state=_state(work),
        is_right=_is_cast(work) or not work.lacks,
        bars=(
            _bar("Sheets", work.laid, work.sheets),
            _bar("Brick", work.placed, work.steps),
            _bar("Readings in band", work.held, work.points),
            _bar("List", work.ticked, work.items),
            _bar("Signed", work.signed, len(SIGN_OFFS)),
            _bar("Wash", work.washed, work.wash),
        ),
        trouble=tuple(_trouble(work)),
    )


def _state(work: BedWork) -> str:
    concrete = work.progress.concrete
    if work.newest.hold:
        return f"on hold: {work.newest.hold.why}"
    if concrete is not None:
        return CONCRETE[concrete.body["state"]]
    if work.signed == len(SIGN_OFFS):
        return "signed by two, concrete may come"
    return "being laid" if work.stored else "nothing recorded yet"


def _trouble(work: BedWork) -> Iterator[str]:
    last = {record.body["checkpoint"]: record for record in work.progress.readings}
    off = [f"{mark} {VERDICTS[record.body['verdict']].lower()}" for mark, record in last.items() if _is_off(record)]
    if off:
        yield f"off: {', '.join(off)}"
    if work.progress.findings:
        yield counted(len(work.progress.findings), "finding from the bed", "findings from the bed")
    older = sum(record.release != work.newest.id for record in work.progress.sheets.values())
    if older:
        yield f"{counted(older, 'sheet')} laid by an earlier release"


def _is_off(record: Record) -> bool:
    return record.body["verdict"] in VERDICTS and record.body["verdict"] != "hold"


def _bar(name: str, done: int, whole: int) -> Bar:
    return Bar(name, done, max(1, whole), f"{done:,} of {whole:,}")


def _reading(one: JudgedReading) -> ReadingRow:
    body, verdict = one.record.body, one.verdict
    notes = []
    if one.is_moved:
        notes.append("this checkpoint has moved since")
    if one.differs:
        notes.append("differs from the reading before by more than its band")
    if verdict and verdict.kind != body["verdict"]:
        notes.append(f"the tablet said {body['verdict']}")
    warmth = f"bed {body['bed']}" if body["bed"] else "bed not taken"
    return ReadingRow(
        mark=body["checkpoint"],
        read=with_fractions(body["reading"]),
        warmth=warmth + (f", tape {body['tape']}" if body["tape"] else ""),
        rev=f"rev {one.rev}",
        verdict=KINDS[verdict.kind] if verdict else "no length",
        is_right=verdict is not None and verdict.kind == "hold",
        instruction=with_fractions(f"{verdict.said} {verdict.instruction}") if verdict else "",
        notes=tuple(notes),
        by=f"{body['by']}, {one.record.at[11:16]} by the tablet",
    )


def _plots(loaded: LoadedPanel, work: BedWork, readings: Sequence[JudgedReading], computed: Computed) -> Iterator[Plot]:
    """Readings on the newest release that still stands as drawn; one plot an axis that was read."""
    panel, project = computed.layout.panel, loaded.project
    marks = {point.mark for point in computed.drift.checkpoints}
    told = [one.verdict for one in readings if one.verdict and not one.is_moved and one.verdict.mark in marks]
    for axis in ("x", "y"):
        if not any(verdict.axis == axis for verdict in told):
            continue
        caption = f"Readings {WAYS[axis]} the panel, rev {work.newest.letter}"
        drawn = reading_history(
            computed.drift,
            axis,
            told,
            reach=panel.width if axis == "x" else panel.height,
            unit=project.length_unit,
            degree=project.temperature_unit,
            title=caption,
        )
        yield Plot(caption, inline_drawing(drawn, caption))


def _finding(record: Record, work: BedWork) -> FindingRow:
    photo = f"/api/field/records/{record.id}/photo" if record.id in work.photos else ""
    return FindingRow(record.body["text"], f"{record.body['by']}, at {record.body['about'].replace('-', ' ')}", photo)


def _log(work: BedWork) -> Iterator[LogRow]:
    by_id = {one.record.id: one.record for one in work.stored}
    for one in sorted(work.stored, key=lambda each: -each.arrival):
        record = one.record
        rev = work.revs[record.release]
        yield LogRow(at(one.received_at), record.body.get("by", ""), record_words(record, by_id), f"rev {rev}")


def record_words(record: Record, by_id: Mapping[str, Record]) -> str:
    """A record in a short sentence."""
    body = record.body
    if record.kind == "withdraw":
        taken = by_id.get(record.corrects or "")
        return f"took back: {record_words(taken, {})}" if taken else "took back a record"
    words = {
        "sheet": lambda: f"sheet {body['sheet']} {body['state']}",
        "reading": lambda: f"{body['checkpoint']} read {with_fractions(body['reading'])}, {body['verdict']}",
        "brick": lambda: f"{body['step']} {body['state']}",
        "check": lambda: f"{NAMES.get(body['item'], body['item'])}: {body['state']}",
        "sign": lambda: f"signed as {NAMES.get(body['role'], body['role']).lower()}",
        "concrete": lambda: f"concrete {body['state']}",
        "strip": lambda: f"{body['step']} {body['state']}",
        "finding": lambda: f"found: {body['text']}",
    }
    return words[record.kind]()
