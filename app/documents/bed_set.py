"""Everything that the bed page shows of one panel, as one JSON value: frozen with a release, read without the engine.

Places are inches in the bed frame with y down from the panel's top edge, as the drawing's own coordinates.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import asdict, dataclass, replace
from functools import cached_property
from hashlib import sha256
from typing import Any

from app.brickwork.blend import colours_of
from app.brickwork.bond import KINDS
from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.documents.accepted import open_findings
from app.drawing.drawing import Drawing
from app.drawing.layers.blend import LETTERS
from app.drawing.lettering import lettered
from app.drawing.scales import Scale
from app.drawing.scene import Scene
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.views.assemble import AROUND, assemble
from app.drawing.views.bed import WORDS
from app.lengths import format_length
from app.liner.drift_words import hook_words
from app.liner.knife_words import line_words
from app.liner.readings_ahead import joints_ahead
from app.liner.values import Checkpoint, Drift, Sheet, SheetPlan
from app.liner.work_values import SheetWork
from app.order.values import Takeoff
from app.order.work import FaceWork
from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.site.lane_values import Lanes
from app.site.lanes import lanes
from app.site.placing import PlacingStep, placing
from app.site.pour import pour
from app.site.pour_values import CUBIC_INCHES_PER_CUBIC_YARD, CUBIC_METRES_PER_CUBIC_INCH, Pour
from app.site.strip import strip_steps

FORMAT = "castcourse-bed/1"

PAPER_MM = (150.0, 110.0)
"""The drawing is made as if for this much paper, so that its letters read well on a tablet in the sun."""

MARGINS = replace(AROUND, bottom=34.0)

LAYERS = (
    "concrete",
    "sheet_grounds",
    "sheets",
    "brick",
    "cuts",
    "letters",
    "small",
    "lanes",
    "openings",
    "pour",
    "outline",
    "sheet_numbers",
    "pole",
    "tape",
    "dimensions",
    "checkpoints",
    "orientation",
)
"""From the lowest up; which of them a task shows is the page's business."""


@dataclass(frozen=True)
class BedInputs:
    """One panel's results as the bed page needs them."""

    project: Project
    wall: Wall
    panel: Panel
    layout: Layout
    plan: SheetPlan
    drift: Drift
    work: SheetWork
    face: FaceWork
    takeoff: Takeoff
    findings: tuple[Finding, ...]

    @cached_property
    def lanes(self) -> Lanes:
        """Where one walks and kneels while brick is set."""
        return lanes(self.layout)

    @cached_property
    def pour(self) -> Pour:
        """How the concrete is placed and vibrated."""
        return pour(self.layout, unit=self.project.length_unit)


def bed_set(of: BedInputs) -> dict[str, Any]:
    """The value; lists are empty for a panel without brick."""
    project, panel = of.project, of.panel
    drawn = _drawing(of)
    return {
        "format": FORMAT,
        "mark": panel.mark,
        "wall": of.wall.mark,
        "project": project.name,
        "unit": project.length_unit,
        "degree": project.temperature_unit,
        "day": {"low": project.day.bed_low, "high": project.day.bed_high},
        "reference": project.liner.reference_temperature,
        "size": _size(panel, project),
        "extent": {"width": round(panel.width, 3), "height": round(panel.height, 3)},
        "picture": _picture(drawn),
        "tapes": [{"axis": axis, "words": hook_words(panel.laying, axis)} for axis in ("x", "y")],
        "lines": list(_lines(of)),
        "sheets": list(_sheets(of)),
        "checkpoints": [_checkpoint(of, point) for point in of.drift.checkpoints],
        "bricks": _bricks(of.layout),
        "colours": _colours(of),
        "placing": [_placing_step(step) for step in placing(of.face, of.lanes, project.length_unit).steps],
        "pour": list(_pour_words(of.pour, project.length_unit)),
        "pour_findings": [finding.text for finding in of.pour.findings],
        "strip": [asdict(step) for step in strip_steps(of.takeoff)],
        "findings": [finding.text for finding in open_findings(of.findings, panel.accepted)],
    }


def _size(panel: Panel, project: Project) -> str:
    width, height, thickness = (_said(one, project) for one in (panel.width, panel.height, panel.thickness))
    return f"{width} x {height}, {thickness} thick"


def _said(length: Any, project: Project) -> str:
    return format_length(length, project.length_unit).removeprefix("≈ ")


def _drawing(of: BedInputs) -> Drawing:
    panel = of.layout.panel
    room = (PAPER_MM[0] - MARGINS.left - MARGINS.right, PAPER_MM[1] - MARGINS.bottom - MARGINS.top)
    scale = Scale(max(panel.width * 25.4 / room[0], panel.height * 25.4 / room[1]), "to fit")
    unit = of.project.length_unit
    title = f"{panel.mark}, bed view"
    scene = Scene(of.layout, "bed", scale, of.plan, of.drift, unit, title, WORDS, of.work)
    scene = replace(scene, lanes=of.lanes, pour=of.pour)
    return replace(assemble(scene, LAYERS), margins=MARGINS)


def _picture(drawn: Drawing) -> dict[str, Any]:
    return {
        "view_box": " ".join(f"{side:.4f}" for side in drawn.view_box),
        "close": _close(drawn),
        "patterns": svg_patterns(drawn.scale),
        "layers": [{"name": name, "markup": markup} for name, markup in svg_layers(drawn).items()],
    }


def _close(drawn: Drawing) -> str:
    """The view without pole and tape: the panel and what stands right around it."""
    side, over = 10.0 * drawn.scale.inches_per_mm, 13.0 * drawn.scale.inches_per_mm
    box = (-side, -over, drawn.width + 2 * side, drawn.height + 2 * over)
    return " ".join(f"{each:.4f}" for each in box)


def _lines(of: BedInputs) -> Iterator[dict[str, str]]:
    """Control lines to chalk, each with its running dimension from the hook of its tape."""
    for point in of.drift.checkpoints:
        if point.control:
            at = lettered(point.nominal, of.project.length_unit).removeprefix("≈ ")
            yield {"axis": point.axis, "mark": point.mark, "what": point.control, "at": at}


def _sheets(of: BedInputs) -> Iterator[dict[str, Any]]:
    panel, unit = of.layout.panel, of.project.length_unit
    told = dict(_cut_words(of.work, unit))
    for sheet in of.plan.sheets:
        path = _path([*sheet.trim, *sheet.holes], panel.width, panel.height)
        mark, words = told.get(sheet.number, ("", ()))
        yield {
            "mark": sheet.mark,
            "number": sheet.number,
            "kind": "cut" if sheet.is_trimmed else "whole",
            "stack": mark,
            "words": list(words),
            "path": path,
            "at": _middle(sheet, panel.width, panel.height),
            "key": sha256(path.encode()).hexdigest()[:16],
        }


def _cut_words(work: SheetWork, unit: str) -> Iterator[tuple[int, tuple[str, tuple[str, ...]]]]:
    """By the number of each cut sheet: the stack it comes from, and its cuts in words."""
    for stack in work.cut_list.stacks:
        words = tuple(dict.fromkeys(line_words(line, unit) for line in stack.lines))
        for number in stack.sheets:
            yield number, (stack.mark, words)


def _path(rings: Iterable[Any], width: float, height: float) -> str:
    parts = []
    for ring in rings:
        points = " ".join(f"{width - x:.3f},{height - y:.3f}" for x, y in ring)
        parts.append(f"M{points}Z")
    return "".join(parts)


def _middle(sheet: Sheet, width: float, height: float) -> list[float]:
    points = [point for ring in sheet.trim for point in ring] or list(sheet.outline)
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return [round(width - (min(xs) + max(xs)) / 2, 3), round(height - (min(ys) + max(ys)) / 2, 3)]


def _checkpoint(of: BedInputs, point: Checkpoint) -> dict[str, Any]:
    ahead = joints_ahead(of.layout, of.project.liner, of.drift, point)
    unit = of.project.length_unit
    return {
        **asdict(point),
        "at": lettered(point.nominal, unit).removeprefix("≈ "),
        "ahead": {**asdict(ahead), "line": ahead.line, "at": format_length(ahead.nominal, unit).removeprefix("≈ ")},
        "place": _checkpoint_place(of, point),
    }


def _checkpoint_place(of: BedInputs, point: Checkpoint) -> list[float]:
    """The checkpoint's line in the drawing's coordinates: an x for one along, a y for one up."""
    panel = of.layout.panel
    return (
        [round(panel.width - point.position, 3), 0.0]
        if point.axis == "x"
        else [0.0, round(panel.height - point.position, 3)]
    )


def _bricks(layout: Layout) -> list[Mapping[str, Any]]:
    """How many pieces of each kind are whole and trimmed; kinds that are not there are left out."""
    units = layout.units
    rows: list[Mapping[str, Any]] = []
    for code, kind in enumerate(KINDS):
        is_kind = units.kind == code
        whole, trimmed = int((is_kind & ~units.is_trimmed).sum()), int((is_kind & units.is_trimmed).sum())
        if whole or trimmed:
            rows.append({"kind": kind, "whole": whole, "trimmed": trimmed})
    return rows


def _placing_step(step: PlacingStep) -> dict[str, Any]:
    """One step with what is set in it, kind by kind, whole and cut."""
    told = [
        f"{count.pieces} {count.kind}{f' {count.colour}' if count.colour else ''}"
        + (f", {count.cut} of them cut" if count.cut else "")
        for count in step.counts
    ]
    title = f"{'Strip' if step.sort == 'strip' else 'Lane'} {step.mark}"
    return {"name": step.mark, "title": title, "words": step.words, "counts": told, "pieces": step.pieces}


def _pour_words(of: Pour, unit: str) -> Iterator[str]:
    """First drop, bands, passes, depth of the head: in the order in which they are asked for."""
    yield from (drop.words for drop in of.drops)
    if of.bands:
        yield f"{_counted(len(of.bands), 'band')}, in the order of their numbers: let the stream fall on covered area."
    if of.depth is not None:
        across, up = (format_length(step, unit).removeprefix("≈ ") for step in of.step)
        depth = format_length(of.depth, unit).removeprefix("≈ ")
        yield f"Head {depth} below the surface, no deeper; {of.insertions:,} insertions, {across} across by {up} up."
    if of.volume:
        yards, metres = of.volume / CUBIC_INCHES_PER_CUBIC_YARD, of.volume * CUBIC_METRES_PER_CUBIC_INCH
        yield f"Net concrete {yards:.1f} cubic yards ({metres:.1f} m³), for information."


def _counted(number: int, noun: str) -> str:
    return f"{number:,} {noun}{'' if number == 1 else 's'}"


def _colours(of: BedInputs) -> list[Mapping[str, Any]]:
    """How many pieces of each colour of the blend; nothing where there is one colour."""
    blend = of.project.blend
    if len(blend.colours) < 2:
        return []
    found = colours_of(of.layout, blend)
    return [
        {"letter": LETTERS[k], "name": colour.name, "pieces": int((found == k).sum())}
        for k, colour in enumerate(blend.colours)
    ]
