"""Fit, phase and advice on B1, each against a plain way to the same answer."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, pairwise, product

import numpy as np
from bench import cases
from bench.timing import median_ms, report

from app.brickwork.advice import Advice, advise
from app.brickwork.advice_ideas import Idea
from app.brickwork.advice_openings import opening_ideas
from app.brickwork.bonds import BONDS
from app.brickwork.fit import COST_UNIT, Fitted, Limits, fit
from app.brickwork.fit_controls import course_controls
from app.brickwork.fit_grids import course_grid
from app.brickwork.fit_lines import Control, Grid1
from app.brickwork.layout import Layout, lay_out
from app.brickwork.phase import Phase, best_phase
from app.brickwork.phase_edges import edging
from app.brickwork.phase_lines import lines_of
from app.brickwork.phase_terms import Rules, costs
from app.brickwork.place import JOINT_GIVE
from app.brickwork.sizes import CATALOGUE
from app.panel.edits import edit_from
from app.panel.tolerance import TOLERANCE

ALL = 1_000_000


def courses(layout: Layout) -> tuple[tuple[Control, ...], Grid1]:
    """Control lines of the face's courses and the grid of its bed joints."""
    panel, size = layout.panel, layout.size
    grid = course_grid(layout.bond, size, layout.origin, is_pinned=True)
    if isinstance(grid, str):
        raise AssertionError(grid)
    return course_controls(panel, layout.field, size.head_joint.inches, grid), grid


def fit_by_trying(controls: tuple[Control, ...], grid: Grid1) -> tuple[int, int]:
    """Controls missed and cost in `COST_UNIT` of the best of all choices of places to meet, the origin always met.

    All controls of B1 are wanted alike.
    """
    allowed = Limits(JOINT_GIVE).allowed(grid.joint) + 1e-9
    places = [grid.origin]
    for at in sorted(control.at for control in controls):
        if all(abs(at - place) > TOLERANCE for place in places):
            places.append(at)
    weights = [sum(abs(control.at - place) <= TOLERANCE for control in controls) for place in places]
    best = (len(controls), 0)
    for size in range(len(places)):
        for others in combinations(range(1, len(places)), size):
            met = sorted([0, *others], key=places.__getitem__)
            for cost in _costs([places[k] for k in met], grid, allowed):
                best = min(best, (len(controls) - sum(weights[k] for k in met), cost))
    return best


def _costs(places: list[float], grid: Grid1, allowed: float) -> Iterator[int]:
    """The cost of every way to number the courses between the places."""
    ways = []
    for low, high in pairwise(places):
        steps = [n for n in range(1, 200) if abs(grid.change(high - low, n)) <= allowed]
        ways.append([round(n / grid.cell_steps * grid.change(high - low, n) ** 2 / COST_UNIT) for n in steps])
    return (sum(way) for way in product(*ways))


def phase(layout: Layout) -> Phase:
    """The exact search over critical offsets."""
    found = best_phase(layout.panel, layout.size, layout.bond, layout.field, layout.smallest_cut, layout.least_piece)
    if found is None:
        raise AssertionError("no phase for a level bond")
    return found


def phase_by_sweep(layout: Layout) -> float:
    """The least cost over every 1/64 in. of the whole period, across and up."""
    lines = lines_of(layout.bond, layout.size, layout.field.bounds[1], layout.field.bounds[3])
    if lines is None:
        raise AssertionError("no lines of a level bond")
    x, y = np.arange(0, lines.across, 1 / 64), np.arange(0, lines.up[1], 1 / 64)
    rules = Rules(layout.smallest_cut, layout.least_piece)
    return float(costs(edging(layout.field), lines, rules, x, y).min())


def advice(layout: Layout) -> tuple[Advice, ...]:
    """Fit, phase and advice together: advice searches the phase and lays out both fits."""
    return advise(layout, CATALOGUE, BONDS)


def opening_by_laying_all(layout: Layout) -> float:
    """The best score that any idea about openings has, every one laid out."""
    return min(_score(idea, layout) for idea in opening_ideas(layout, "in", ALL))


def _score(idea: Idea, layout: Layout) -> float:
    changed = lay_out(edit_from(idea.edit, dict(idea.values), "in").changed(layout.panel))
    small, trimmed = changed.small - layout.small, len(changed.trims) - len(layout.trims)
    return 10 * small + trimmed + 10 * (len(changed.left_out.unit) - len(layout.left_out.unit))


def same_answers(layout: Layout) -> None:
    """Raise unless the plain ways find nothing better."""
    controls, grid = courses(layout)
    found, tried = fit(controls, grid, JOINT_GIVE), fit_by_trying(controls, grid)
    if (len(found.missed), round(found.cost / COST_UNIT)) != tried:
        raise AssertionError(f"fit: {len(found.missed)} missed, cost {found.cost}; all choices: {tried}")
    if phase(layout).cost > phase_by_sweep(layout):
        raise AssertionError(f"phase: {phase(layout).cost}, the sweep {phase_by_sweep(layout)}")
    openings = [one.score for one in advice(layout) if one.edit in ("move_openings", "resize_openings")]
    if min(openings) != opening_by_laying_all(layout):
        raise AssertionError(f"advice: {min(openings)}, laying out all {opening_by_laying_all(layout)}")


def measure() -> dict[str, float]:
    """Medians in ms and the ratios to hold."""
    panel = cases.b1()
    layout = lay_out(panel)
    same_answers(layout)
    controls, grid = courses(layout)
    stretched = replace(panel, fit=replace(panel.fit, courses=True, heads=True))

    def fitted() -> Fitted:
        return fit(controls, grid, JOINT_GIVE)

    times = median_ms(
        {
            "B1 fit of the courses": (fitted, 31),
            "B1 fit of the courses, all choices": (lambda: fit_by_trying(controls, grid), 5),
            "B1 laid out": (lambda: lay_out(panel), 31),
            "B1 laid out with both fits": (lambda: lay_out(stretched), 31),
            "B1 phase": (lambda: phase(layout), 31),
            "B1 phase, sweep of 1/64 in.": (lambda: phase_by_sweep(layout), 5),
            "B1 fit + phase + advice, at most 50 ms": (lambda: advice(layout), 31),
            "B1 openings alone, every idea laid out": (lambda: opening_by_laying_all(layout), 5),
        }
    )
    return times | {
        "B1 fit, all choices / exact x": times["B1 fit of the courses, all choices"] / times["B1 fit of the courses"],
        "B1 phase, sweep / exact x": times["B1 phase, sweep of 1/64 in."] / times["B1 phase"],
        "B1 fit + phase + advice / laid out x": times["B1 fit + phase + advice, at most 50 ms"] / times["B1 laid out"],
    }


def main() -> None:
    report("fit", measure())
