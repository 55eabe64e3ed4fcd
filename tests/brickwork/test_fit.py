"""Fit against brute force over all subsets of controls and all module counts, and against rules of the trade."""

import random
import time
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, pairwise, product
from math import ceil, floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.brickwork.fit import COST_UNIT, Limits, fit
from app.brickwork.fit_lines import Control, Grid1, outcomes
from app.brickwork.sizes import CATALOGUE
from app.brickwork.stretch import IDENTITY
from app.panel.tolerance import TOLERANCE

MODULAR = CATALOGUE["modular"]
GAUGE, HEIGHT = MODULAR.gauge, MODULAR.height.inches
COURSES = Grid1(0.0, GAUGE, 1, MODULAR.bed_joint, HEIGHT, is_pinned=True)
HALVES = Grid1(0.0, 4.0, 2, 0.375, MODULAR.length.inches)
GIVE = 1 / 32
MATTERS = ("required", "wanted", "wanted", "wanted", "free")


def random_case(draw: random.Random) -> tuple[list[Control], Grid1, float]:
    """Up to six controls within 8 ft at whole 1/64 in.; coarser where ties shall be many."""
    steps = draw.choice((1, 2, 3, 4))
    joint = draw.choice((0.375, 5 / 12, 0.25))
    step = (draw.choice((2.25, 7.625, 3.625)) + joint) / steps
    grid = Grid1(draw.choice((0.0, 1.5, -3.25)), step, steps, joint, step * steps - joint, draw.random() < 0.5)
    parts = draw.choice((1, 4, 64))
    places = [draw.randint(0, 96 * parts) / parts for _ in range(draw.randint(0, 6))]
    controls = [Control(f"c{k}", at, draw.choice(MATTERS)) for k, at in enumerate(places)]
    return controls, grid, draw.choice((0.0, 1 / 64, 1 / 32, 1 / 16, 1 / 8))


def places_of(controls: list[Control], grid: Grid1) -> list[tuple[float, tuple[int, int, int]]]:
    """Distinct places, rising, with how many controls of each matter stand there."""
    found: dict[float, list[str]] = {grid.origin: []} if grid.is_pinned else {}
    for control in controls:
        found.setdefault(control.at, []).append(control.matter)
    return [(at, tuple(m.count(w) for w in ("required", "wanted", "free"))) for at, m in sorted(found.items())]


def segment_ways(distance: float, grid: Grid1, give: float) -> list[tuple[int, int]]:
    """Every module count that keeps all joints within their limits, with its cost; straight from the definition."""
    most = min(give, grid.joint / 3)
    ways = []
    for n in range(1, ceil(distance / grid.step) + 40):
        over = distance - n * grid.step
        change = 0.0 if abs(over) <= TOLERANCE else over / n * grid.cell_steps
        if abs(change) <= most + 1e-9:
            ways.append((n, round(n / grid.cell_steps * change**2 / COST_UNIT)))
    return ways


def brute_force(controls: list[Control], grid: Grid1, give: float) -> tuple[tuple[int, ...], dict[float, int]]:
    """The least (required missed, wanted missed, cost, free missed), and the line at each met place."""
    places = places_of(controls, grid)
    best = None
    for size in range(len(places) + 1):
        for met in combinations(range(len(places)), size):
            if grid.is_pinned and all(places[k][0] != grid.origin for k in met):
                continue
            missed = [sum(places[k][1][m] for k in range(len(places)) if k not in met) for m in range(3)]
            gaps = [places[b][0] - places[a][0] for a, b in pairwise(met)]
            for ways in product(*(segment_ways(gap, grid, give) for gap in gaps)):
                key = (missed[0], missed[1], sum(cost for _, cost in ways), missed[2])
                order = [(k, n) for k, n in zip(met, (0, *(n for n, _ in ways)), strict=False)] + [(99, 0)]
                if best is None or (key, order) < best:
                    best = (key, order)
    assert best is not None
    return best[0], numbered(best[1][:-1], [at for at, _ in places], grid)


def numbered(path: list[tuple[int, int]], places: list[float], grid: Grid1) -> dict[float, int]:
    lines, line = {}, 0
    for k, steps in path:
        line += steps
        lines[places[k]] = line
    if not lines:
        return {}
    first = next(iter(lines))
    shift = -lines[grid.origin] if grid.is_pinned else floor((first - grid.origin) / grid.step + 0.5)
    return {at: line + shift for at, line in lines.items()}


def test_fit_equals_brute_force_in_cost_and_in_lines_on_500_cases():
    draw = random.Random(20_260)
    unlike_nominal = 0
    for _ in range(500):
        controls, grid, give = random_case(draw)
        fitted = fit(controls, grid, give)
        key, lines = brute_force(controls, grid, give)
        missed = [sum(each.control.matter == matter for each in fitted.missed) for matter in ("required", "wanted")]
        assert (*missed, round(fitted.cost / COST_UNIT)) == key[:3], controls
        found = [round((at - grid.origin) / grid.step) for at in fitted.stretch.nominal_knots]
        assert dict(zip(fitted.stretch.real_knots, found, strict=True)) == lines, controls
        unlike_nominal += key[2] > 0
    assert unlike_nominal > 50


cases = st.integers(0, 10**9).map(lambda number: random_case(random.Random(number)))


@given(cases)
def test_no_joint_leaves_its_range_and_no_brick_changes(case):
    controls, grid, give = case
    stretch = fit(controls, grid, give).stretch
    for k in range(-10, 60):
        cell = stretch.real(grid.line(k + grid.cell_steps)) - stretch.real(grid.line(k))
        joint = cell - grid.unit
        assert abs(joint - grid.joint) <= give + 2e-6
        assert grid.joint * 2 / 3 - 2e-6 <= joint <= grid.joint * 4 / 3 + 2e-6


@given(cases)
def test_a_met_control_has_its_line_exactly_and_a_missed_one_needs_more_than_allowed(case):
    controls, grid, give = case
    fitted = fit(controls, grid, give)
    for each in fitted.outcomes:
        real = fitted.stretch.real(grid.line(each.line))
        assert real - each.control.at == pytest.approx(each.off, abs=1e-9)
        assert each.is_met == (abs(each.off) <= TOLERANCE)
        if not each.is_met and each.control.matter != "free":
            assert each.needed > fitted.allowed


@given(cases, st.integers(-64 * 20, 64 * 20))
def test_moving_controls_and_grid_together_moves_the_fit(case, by):
    controls, grid, give = case
    shift = by / 64
    moved = [replace(each, at=each.at + shift) for each in controls]
    one, two = fit(controls, grid, give), fit(moved, replace(grid, origin=grid.origin + shift), give)
    assert two.cost == pytest.approx(one.cost, abs=1e-11)
    assert two.stretch.real_knots == pytest.approx(one.stretch.moved(shift).real_knots)
    assert len(two.missed) == len(one.missed)


def test_more_give_never_misses_more():
    draw = random.Random(7)
    for _ in range(100):
        controls, grid, _ = random_case(draw)
        missed = [
            [sum(each.control.matter == matter for each in fit(controls, grid, give).missed) for matter in MATTERS[:2]]
            for give in (0.0, 1 / 64, 1 / 32, 1 / 16)
        ]
        assert missed == sorted(missed, reverse=True)


@pytest.mark.parametrize("courses", range(6, 40))
def test_a_masonry_opening_of_whole_courses_needs_no_change(courses):
    """Heights n x 2-2/3 in. (one bed joint included) and widths n x 4 + 3/8 in. give no cut: Masonry Construction
    magazine, "Bricking around openings"."""
    sill = 10 * GAUGE - MODULAR.bed_joint
    head = sill + MODULAR.bed_joint + float(Fraction(8, 3)) * courses
    upright = fit([Control("sill", sill - HEIGHT, "required"), Control("head", head, "required")], COURSES, 0.0)
    left, right = 36.0 - 0.375, 36.0 - 0.375 + courses * 4 + 0.375
    controls = [Control("left", left - HALVES.unit, "required"), Control("right", right, "required")]
    along = fit(controls, replace(HALVES, is_pinned=True), 0.0)
    for fitted in (upright, along):
        assert fitted.missed == ()
        assert fitted.cost == 0.0
        assert fitted.stretch.real(100.0) == pytest.approx(100.0)


def test_joints_give_to_meet_a_head_half_an_inch_off():
    """1/2 in. over 32 courses is 1/64 in. a joint."""
    fitted = fit([Control("head", 32 * GAUGE + 0.5, edge=85.5)], COURSES, GIVE)
    (head,) = fitted.outcomes
    assert (head.is_met, head.line, head.off, head.nearest) == (True, 32, 0.0, 85.5)
    assert head.joint_change == pytest.approx(0.5 / 32)
    assert fitted.cost == pytest.approx(32 * (0.5 / 32) ** 2)


def test_an_impossible_required_head_is_told_with_numbers():
    """84 in. is 31-1/2 courses: half a course over the 9 up to the top needs 0.148 in. of each joint."""
    fitted = fit([Control("head", 84.0, "required", edge=83.625), Control("top", 40 * GAUGE)], COURSES, GIVE)
    (head,) = fitted.impossible
    assert head.control.name == "head"
    assert head.needed > fitted.allowed == GIVE
    assert head.needed == pytest.approx(GAUGE / 2 / 9)
    assert abs(head.off) == pytest.approx(GAUGE / 2)
    assert head.nearest == pytest.approx(83.625 + head.off)


def test_a_required_control_goes_before_any_number_of_wanted_ones():
    wanted = [Control(f"w{k}", 10 * GAUGE + k * GAUGE) for k in range(5)]
    fitted = fit([*wanted, Control("must", 10 * GAUGE + 1.25, "required")], replace(COURSES, is_pinned=False), GIVE)
    assert [each.control.name for each in fitted.outcomes if each.is_met] == ["must"]


def test_a_free_control_is_met_only_where_it_costs_nothing():
    met = fit([Control("head", 8 * GAUGE, "free")], COURSES, GIVE)
    left = fit([Control("head", 8 * GAUGE + 0.1, "free")], COURSES, GIVE)
    assert (met.missed, met.cost) == ((), 0.0)
    assert (len(left.missed), left.cost) == (1, 0.0)


def test_without_a_pin_one_control_moves_the_whole_grid_by_less_than_half_a_step():
    fitted = fit([Control("jamb", 41.0)], HALVES, GIVE)
    assert (fitted.stretch.nominal_knots, fitted.stretch.real_knots) == ((40.0,), (41.0,))
    assert fitted.stretch.real(0.0) == pytest.approx(1.0)


def test_nothing_to_meet_moves_nothing():
    assert fit([], HALVES, GIVE).stretch == IDENTITY
    assert fit([], COURSES, GIVE).stretch.is_identity


def test_controls_within_the_tolerance_are_one():
    controls = [Control("a", 8 * GAUGE), Control("b", 8 * GAUGE + 5e-7)]
    fitted = fit(controls, COURSES, 0.0)
    assert fitted.missed == ()
    assert len(fitted.stretch.real_knots) == 2


@pytest.mark.parametrize(
    ("give", "joint", "allowed"), [(1 / 32, 0.375, 1 / 32), (1, 0.375, 0.125), (1, 0.75, 0.25), (1 / 32, 0.0, 0.0)]
)
def test_a_joint_changes_within_its_give_and_its_range(give, joint, allowed):
    """A 3/8 in. joint stays between 1/4 and 1/2 in. (common practice)."""
    assert Limits(give).allowed(joint) == pytest.approx(allowed)


@pytest.mark.parametrize(
    ("control", "cut"),
    [
        (Control("head, met", 4 * GAUGE), 0.0),
        (Control("head an inch up", 4 * GAUGE + 1), HEIGHT - 1),
        (Control("head in the joint", 5 * GAUGE - 0.2), 0.0),
        (Control("sill an inch up", 4 * GAUGE + 1, ends=True), 1 - MODULAR.bed_joint),
        (Control("sill an inch down", 4 * GAUGE - 1, ends=True), HEIGHT - 1),
    ],
)
def test_a_missed_control_tells_the_rip_it_makes(control, cut):
    (outcome,) = outcomes([control], COURSES, IDENTITY)
    assert outcome.cut == pytest.approx(cut)
    assert outcome.is_met == (control.name == "head, met")


@pytest.mark.parametrize(("at", "cut"), [(40.0, 3.625), (42.0, 1.625), (38.0, 1.625)])
def test_a_jamb_tells_the_smallest_piece_of_all_courses(at, cut):
    """Running bond, modular: a half bat of 3-5/8 in. where it courses; 2 in. (nominal) pieces two inches off."""
    (outcome,) = outcomes([Control("right jamb", at)], HALVES, IDENTITY)
    assert outcome.cut == pytest.approx(cut)


@pytest.mark.quiet
def test_twenty_controls_are_fitted_in_three_milliseconds(capsys):
    draw = random.Random(3)
    controls = [Control(f"c{k}", draw.randint(0, 64 * 360) / 64) for k in range(20)]
    spent = []
    for _ in range(20):
        began = time.perf_counter()
        fit(controls, COURSES, GIVE)
        spent.append(time.perf_counter() - began)
    with capsys.disabled():
        print(f"\nfit of 20 controls: {min(spent) * 1000:.2f} ms")
    assert min(spent) < 0.003
