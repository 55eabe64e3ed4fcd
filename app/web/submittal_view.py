"""What the Submittal screen shows: the parts to choose from, and how far one is that is being made."""

from dataclasses import dataclass

from app.documents.submittal_parts import APPROVAL, PARTS, SETS
from app.drawing.scales import SHEETS
from app.web.page_links import project_path
from app.web.pages import Page, Step
from app.web.words import counted
from app.workflow.issuing import USUAL_SHEET
from app.workflow.jobs import Job
from app.workflow.loading import LoadedProject

LEAD = "A PDF, set sheet by sheet with frame and title block; drawings at true scale. Cover, index and cautions always."

SET_NAMES = {"approval": "For approval", "shop": "Shop sheets"}

SET_WORDS = {
    "approval": "What an architect needs to see: elevations, schedules, findings, order.",
    "shop": "For those who cut and lay. They need not go to the architect.",
}


@dataclass(frozen=True, slots=True)
class PartChoice:
    """One part to choose; its title, and behind a colon what is in it."""

    name: str
    title: str
    words: str
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class SetChoice:
    """Parts that usually go together."""

    name: str
    words: str
    parts: tuple[PartChoice, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SubmittalChoice(Page):
    lead: str
    address: str
    facts: str
    sets: tuple[SetChoice, ...]
    sheets: tuple[tuple[str, bool], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SubmittalMaking(Page):
    """`words` say how far it is; `file` is its address once it is ready, `trouble` why it never will be."""

    address: str
    now: str
    done: int
    steps: int
    words: str
    file: str
    file_name: str
    trouble: str


def choice_of(loaded: LoadedProject) -> SubmittalChoice:
    """The page as it begins: what goes to an architect is chosen, on the usual sheet."""
    usual = USUAL_SHEET[loaded.project.length_unit]
    return SubmittalChoice(
        title=f"Submittal, {loaded.project.name}",
        path=project_path(loaded.id, loaded.project.name, "Submittal"),
        lead=LEAD,
        address=_address(loaded),
        facts=counted(len(loaded.panels), "panel"),
        sets=tuple(_set(name) for name in SETS),
        sheets=tuple((name, name == usual) for name in SHEETS),
    )


def making_of(loaded: LoadedProject, job: Job[bytes]) -> SubmittalMaking:
    """One that is being made, or is ready."""
    address = f"{_address(loaded)}/{job.id}"
    return SubmittalMaking(
        title=f"Submittal, {loaded.project.name}",
        path=project_path(loaded.id, loaded.project.name, Step("Submittal", _address(loaded)), "Making"),
        address=_address(loaded),
        now="" if job.is_over else f"{address}/now",
        done=job.done,
        steps=max(1, job.steps),
        words=_words(job),
        file=f"{address}/file.pdf" if job.made else "",
        file_name=f"{loaded.project.name}, submittal.pdf",
        trouble=job.trouble,
    )


def _words(job: Job[bytes]) -> str:
    if job.made:
        return f"Ready: {len(job.made) / 1e6:.1f} MB."
    if job.trouble:
        return "Not made."
    return f"{job.done} of {job.steps} steps done." if job.steps else "Waiting for its turn, or computing panels."


def _set(name: str) -> SetChoice:
    parts = (part for part in PARTS if part in SETS[name])
    return SetChoice(SET_NAMES[name], SET_WORDS[name], tuple(_part(part) for part in parts))


def _part(name: str) -> PartChoice:
    title, _, words = PARTS[name].partition(": ")
    return PartChoice(name, title, words, name in APPROVAL)


def _address(loaded: LoadedProject) -> str:
    return f"/projects/{loaded.id}/submittal"
