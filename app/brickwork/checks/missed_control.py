"""Heads and sills that no course meets, so that a course is ripped along them."""

from collections.abc import Iterator

from app.brickwork.findings import Finding
from app.brickwork.fit_grids import course_grid
from app.brickwork.fit_lines import Grid1, Outcome
from app.brickwork.layout import Layout
from app.lengths import format_length
from app.panel.shapes import Arch, Circle
from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding a level head or sill that cuts bricks in height; none in a bond whose courses are not all one height.

    Brick starts one margin above a head and stops one margin below a sill. Where it stops within a bed joint
    no brick is cut, and nothing is found; one that is required is the matter of `required_missed`.
    """
    grid = course_grid(layout.bond, layout.size, layout.origin)
    if not layout.panel.openings or not isinstance(grid, Grid1):
        return
    names = set(_level_names(layout.panel))
    for outcome in layout.states.vertical:
        control = outcome.control
        if control.name in names and control.matter != "required" and outcome.cut > TOLERANCE:
            yield _finding(outcome, grid, layout, unit)


def _level_names(panel: Panel) -> Iterator[str]:
    """Heads and sills that run level: a circle has neither, an arch has a sill."""
    for opening in panel.openings:
        if not isinstance(opening.shape, Circle):
            yield f"sill {opening.mark}"
        if not isinstance(opening.shape, Circle | Arch):
            yield f"head {opening.mark}"


def _finding(outcome: Outcome, grid: Grid1, layout: Layout, unit: str) -> Finding:
    control, off = outcome.control, outcome.off
    what = control.name.partition(" ")[0]
    way = "higher" if off > 0 else "lower"
    by = format_length(abs(off), unit, 16 if abs(off) >= 1 / 16 else 64)
    rip = format_length(outcome.cut, unit)
    makes = "leaves a sliver as joint" if outcome.cut < layout.smallest_cut - TOLERANCE else "rips a course"
    nearest = format_length(outcome.nearest, unit)
    text = (
        f"{control.name[0].upper()}{control.name[1:]} stands {by} off the courses and {makes}, {rip} of"
        f" {format_length(grid.unit, unit)} high; {by} {way}, at {nearest}, it would course."
    )
    return Finding(f"missed-{what}", "warning", control.x, control.y, text, control.name)
