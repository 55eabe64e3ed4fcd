"""What the Liner screen of a panel shows, made from one panel of one moment."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from app.drawing.views import sheets_to_cut
from app.drawing.views.sheets import WORDS
from app.liner.offcut_values import CuttingPlan
from app.liner.stack_words import piece_words, run_words, stack_words
from app.liner.work_values import SheetWork
from app.panel.laying import CORNERS, DIRECTIONS, Laying
from app.site.cautions import Task
from app.web.caution_list import Cautions, cautions_of
from app.web.inline_drawing import InlineDrawing
from app.web.liner_drawings import cut_drawing, plan_drawing
from app.web.liner_words import (
    cut_list_words,
    cut_words,
    edge_words,
    fix_words,
    flange_words,
    hold_words,
    lap_words,
    proof_words,
    saved_words,
    tape_words,
)
from app.web.page_links import PageLink, panel_links, panel_path
from app.web.pages import Page
from app.web.words import at, sized
from app.workflow.compute import Computed
from app.workflow.loading import LoadedPanel

TASKS: tuple[Task, ...] = ("walking on the bed", "cutting liner", "fixing liner")

CORNER_WORDS = {corner: f"{corner.removeprefix('bed ')} of the bed" for corner in CORNERS}
FIXED = {"wind": "Fix when windy", "swing": "Fix when the temperature swings far"}

DIRECTION_WORDS = {"across": "in rows across, from the foot or the top", "up": "in columns, from one side"}


@dataclass(frozen=True, slots=True)
class Count:
    """A figure with its name, and what is to be said of it."""

    name: str
    figure: str
    words: str


@dataclass(frozen=True, slots=True)
class StackRow:
    """Sheets that are cut alike."""

    mark: str
    words: str
    kind: str
    pieces: tuple[str, ...]
    cuts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LaidNotice:
    """What the last change of the laying was, and the values that undo it; or why it was not made."""

    words: str
    is_refused: bool
    corner: str = ""
    direction: str = ""


@dataclass(frozen=True, slots=True)
class LinerResults:
    """All that follows from how the sheets are laid; `holding` says it of laps, flanges, tape, bricks and edges."""

    address: str
    revision: int
    saved: str
    counts: tuple[Count, ...]
    drawing: InlineDrawing
    key: str
    cut_facts: str
    whole: str
    cut_key: tuple[str, ...]
    cuts: InlineDrawing | None
    stacks: tuple[StackRow, ...]
    holding: tuple[str, ...]
    notice: LaidNotice | None


@dataclass(frozen=True, slots=True)
class LayingForm:
    """Where laying can start and how it can go on, in words, and what is chosen."""

    chosen: Laying
    corners: Mapping[str, str]
    directions: Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class LinerPage(Page):
    address: str
    mark: str
    lead: str
    links: tuple[PageLink, ...]
    form: LayingForm
    results: LinerResults
    cautions: Cautions


@dataclass(frozen=True, slots=True)
class LinerPart:
    """The part that a change of the laying repaints; `form` has the choices where they must follow too."""

    results: LinerResults
    form: LayingForm | None = None


def page_of(loaded: LoadedPanel, computed: Computed, notice: LaidNotice | None) -> LinerPage:
    """The page of one panel."""
    panel, project = loaded.panel, loaded.project
    return LinerPage(
        title=f"Liner of {panel.mark}",
        path=panel_path(loaded, "Liner"),
        address=f"/panels/{loaded.id}/liner",
        mark=panel.mark,
        lead=f"{sized(panel.width, panel.height, project.length_unit)}, wall {loaded.wall.mark}",
        links=panel_links(loaded.id, panel.mark, "Liner"),
        form=form_of(loaded),
        results=results_of(loaded, computed, notice),
        cautions=cautions_of(*TASKS),
    )


def form_of(loaded: LoadedPanel) -> LayingForm:
    """The choices of how the sheets are laid."""
    return LayingForm(loaded.panel.laying, CORNER_WORDS, DIRECTION_WORDS)


def results_of(loaded: LoadedPanel, computed: Computed, notice: LaidNotice | None) -> LinerResults:
    """What the screen shows of the sheets as they are laid now."""
    unit, cutting, work = computed.unit, computed.cutting, computed.sheet_work
    return LinerResults(
        address=f"/panels/{loaded.id}/liner",
        revision=loaded.revision,
        saved=f"Saved {at(loaded.saved_at)}, rev {loaded.revision}",
        counts=_counts(cutting),
        drawing=plan_drawing(computed),
        key=WORDS,
        cut_facts=cut_list_words(work.cut_list),
        whole=f"Whole: {run_words(work.cut_list.whole)}." if work.cut_list.whole else "",
        cut_key=(f"{sheets_to_cut.WORDS}. {sheets_to_cut.COUNTED}", f"{sheets_to_cut.READ} {sheets_to_cut.CAUTION}"),
        cuts=cut_drawing(computed),
        stacks=_stacks(work, unit),
        holding=tuple(filter(None, _holding(computed))),
        notice=notice,
    )


def changed_notice(before: Laying, now: Laying) -> LaidNotice | None:
    """What was changed and what would undo it; None for nothing."""
    if before == now or before.corner not in CORNERS or before.direction not in DIRECTIONS:
        return None
    words = f"Laid from {CORNER_WORDS[now.corner]} {DIRECTION_WORDS[now.direction].partition(',')[0]};"
    words += f" before from {CORNER_WORDS[before.corner]} {DIRECTION_WORDS[before.direction].partition(',')[0]}."
    return LaidNotice(words, False, before.corner, before.direction)


def _counts(cutting: CuttingPlan) -> tuple[Count, ...]:
    return (
        Count("On the bed", f"{cutting.placed:,}", "places, numbered in laying order"),
        Count("To unpack", f"{cutting.used:,}", proof_words(cutting)),
        Count("Fewest there can be", f"{cutting.bound:,}", f"by area alone {cutting.area_bound:,}"),
        Count("One for each place", f"{cutting.naive:,}", saved_words(cutting)),
    )


def _stacks(work: SheetWork, unit: str) -> tuple[StackRow, ...]:
    kinds = {(stack.size, stack.bond) for stack in work.stacks}
    return tuple(
        StackRow(
            mark=stack.mark,
            words=stack_words(stack),
            kind=f"{stack.size}, {stack.bond}" if len(kinds) > 1 else "",
            pieces=piece_words(stack),
            cuts=cut_words(stack, unit),
        )
        for stack in work.stacks
    )


def _holding(computed: Computed) -> Iterator[str]:
    """Sentences, some empty."""
    work, unit = computed.sheet_work, computed.unit
    yield lap_words(computed.plan, work.laps, unit)
    yield flange_words(work)
    yield tape_words(work, unit)
    yield hold_words(work.hold_downs)
    for when, name in FIXED.items():
        words = fix_words(work.fixes, when)
        yield f"{name}: {words}." if words else ""
    yield edge_words(work.edge_pieces, unit)
