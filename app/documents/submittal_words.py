"""Words of a submittal that stand on more than one of its sheets."""

from collections.abc import Mapping

from app.documents.accepted import open_findings
from app.documents.panel_results import Issue, PanelResults
from app.drawing.lettering import lettered
from app.lengths import Length
from app.panel.project import Project
from app.site.cautions import DEFERENCE, OUTSIDE

PURPOSE = (
    "Submitted for approval: the thin-brick face of the panels listed, as it will be cast face down in liner sheets:"
    " layout, trimmed pieces, liner sheets in laying order, checkpoints of the tape, and the order of material."
)

READ_WITH = "The contract drawings and specifications, which govern where they differ from these sheets."

NOMINAL = (
    "Elevations show the finished face seen from outside; bed views show the back, mirrored. Running dimensions start"
    " from one datum; each is rounded by itself and never summed."
)

TICK_WORDS = {"in": "the nearest 1/16 in", "mm": "the nearest millimetre"}

COUNTED = ("whole", "trimmed", "small", "sheets", "findings")

LIMITS = (DEFERENCE, OUTSIDE)
"""Said above the cautions."""

COVER_LIMITS = f"{OUTSIDE} Cautions for each task are on the last sheet; local codes and the safety officer govern."


def counts(results: PanelResults) -> dict[str, int]:
    """A panel's numbers, each from its layout, sheet plan or open findings."""
    layout, still = results.layout, len(open_findings(results.findings, results.panel.accepted))
    numbers = (layout.whole, len(layout.trims), layout.small, results.cutting.used, still)
    return dict(zip(COUNTED, numbers, strict=True))


def in_words(numbers: Mapping[str, int]) -> dict[str, str]:
    """Numbers with their thousands apart."""
    return {name: f"{number:,}" for name, number in numbers.items()}


def counted(results: PanelResults) -> str:
    """The same numbers as one line."""
    number = in_words(counts(results))
    return (
        f"Whole {number['whole']}, trimmed {number['trimmed']}, of these small {number['small']};"
        f" liner sheets {number['sheets']}"
    )


def size_words(width: float | Length, height: float | Length, unit: str) -> str:
    """Width x height as lettered; inches or lengths in, words in `unit`."""
    sides = (side.inches if isinstance(side, Length) else side for side in (width, height))
    return " x ".join(lettered(side, unit) for side in sides)


def issue_data(issue: Issue) -> dict[str, str | int]:
    """What the title block of every sheet says of the issue."""
    day = issue.date
    return {
        "owner": issue.owner,
        "creator": issue.creator,
        "identification": issue.identification,
        "revision": issue.revision,
        "date": day.isoformat(),
        "year": day.year,
        "month": day.month,
        "day": day.day,
    }


def about(project: Project, issue: Issue) -> list[dict[str, str]]:
    """Lines of the cover: what the set is for and how it is to be read."""
    day, unit = project.day, project.temperature_unit
    return [
        {"label": label, "value": value}
        for label, value in (
            ("Purpose", PURPOSE),
            ("Read with", READ_WITH),
            ("Views", NOMINAL),
            ("Limits", COVER_LIMITS),
            ("Bed temperature", f"{day.bed_low:g} to {day.bed_high:g} degrees {unit}, as expected while laying"),
            ("Walls", ", ".join(wall.mark for wall in project.walls) or "None"),
            ("Issue", f"Revision {issue.revision}, {issue.date.isoformat()}"),
        )
    ]
