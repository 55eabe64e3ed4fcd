"""The origin of lowest cost: counted as the layout itself has it, never worse than any origin on a 1/64 in. grid."""

import json
from dataclasses import replace
from itertools import pairwise
from math import ceil, floor
from pathlib import Path
from time import perf_counter
from typing import Any

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from panels import inch, points, rect
from random_panels import Document, inches
from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import Bond
from app.brickwork.bonds import BONDS
from app.brickwork.lattice import Floats, lattice
from app.brickwork.layout import Layout, lay_out
from app.brickwork.phase import Phase, best_phase, phase_cost
from app.brickwork.phase_edges import edging
from app.brickwork.phase_lines import lines_of
from app.brickwork.phase_offsets import candidates, critical_x, critical_y
from app.brickwork.phase_terms import Rules, Weights, costs
from app.brickwork.sizes import CATALOGUE
from app.documents.project_file import read_panel
from app.panel.geometry import brick_field
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Brickwork, Opening, Panel

RANDOM = settings(max_examples=100, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
MODULAR = CATALOGUE["modular"]
LEVEL = tuple(name for name, bond in BONDS.items() if lines_of(bond, MODULAR, 0, 100) is not None)
SHORT = tuple(name for name in LEVEL if not name.startswith("common"))
CASES = Path(__file__).parents[1] / "cases"


def bay(draw: st.DrawFn, x: float, width: float, height: float) -> Document | None:
    """A door or a window in a bay of the face, farther from all other edges than a unit is long; or none."""
    if draw(st.booleans()):
        return None
    left, wide = draw(inches(24, width - 40)), draw(inches(12, 16))
    bottom = draw(st.just(0.0) | inches(20, height - 44))
    return {"rect": [x + left, bottom, wide, draw(inches(12 if bottom else 20, 22))]}


@st.composite
def faces(draw: st.DrawFn, bonds: tuple[str, ...] = LEVEL) -> Document:
    """A rectangular or stepped face of up to two bays, all on the 1/16 grid, brick to the edges or a joint away."""
    width, height = draw(inches(64, 80)), draw(inches(64, 80))
    bays = draw(st.integers(1, 2))
    far = bays * width
    outline = [[0, 0], [far, 0], [far, height], [0, height]]
    if draw(st.booleans()):
        step = draw(inches(24, far - 24))
        outline = [[0, 0], [far, 0], [far, height], [step, height], [step, height + 24], [0, height + 24]]
    openings = [bay(draw, k * width, width, height) for k in range(bays)]
    return {
        "mark": "random",
        "thickness": 7.25,
        "outline": outline,
        "margin": draw(st.just(0.0) | inches(0, 1)),
        "smallest_cut": draw(inches(0.125, 1)),
        "openings": [{"mark": f"W{k}", **one} for k, one in enumerate(openings) if one is not None],
        "field": {
            "size": draw(st.sampled_from(sorted(name for name in CATALOGUE if CATALOGUE[name].length.inches < 16))),
            "bond": draw(st.sampled_from(bonds)),
            "origin": [draw(inches(-20, 20)), draw(inches(-20, 20))],
        },
    }


def searched(panel: Panel) -> tuple[BrickSize, Bond, BaseGeometry, float, float]:
    size = CATALOGUE[panel.field.size]
    smallest = panel.smallest_cut.inches if panel.smallest_cut is not None else 0.25
    least = panel.least_piece.inches if panel.least_piece is not None else size.half_bat
    return size, BONDS[panel.field.bond], brick_field(panel, size.head_joint.inches), smallest, least


def best_of(panel: Panel, fixed_y: float | None = None) -> Phase:
    size, bond, field, smallest, least = searched(panel)
    found = best_phase(panel, size, bond, field, smallest, least, fixed_y)
    assert found is not None
    return found


def cost_of(panel: Panel, origin: tuple[float, float]) -> Phase:
    found = phase_cost(*searched(panel), origin)
    assert found is not None
    return found


def at(panel: Panel, origin: tuple[float, float]) -> Panel:
    """The panel with the bond's origin there, to the nearest nanometre."""
    return replace(panel, field=replace(panel.field, origin=(inch(origin[0]), inch(origin[1]))))


def unlike_ends(layout: Layout) -> int:
    """Courses of piers and openings with unlike ends, by slicing the field course by course and walking its units."""
    bond, size = BONDS[layout.panel.field.bond], layout.size
    lat = lattice(bond, size, layout.origin)
    across, (lean, rise) = lat.across[0], lat.up
    courses: dict[tuple[float, float], list[int]] = {}
    for k in range(len(bond.cells)):
        courses.setdefault((round(float(lat.y[k]), 6), round(float(lat.height[k]), 6)), []).append(k)
    count = 0
    for cells in courses.values():
        if abs(sum(bond.cells[k].width.inches(size) for k in cells) - across) > TOLERANCE:
            continue
        y, height = float(lat.y[cells[0]]), float(lat.height[cells[0]])
        low, high = layout.field.bounds[1], layout.field.bounds[3]
        for j in range(floor((low - y) / rise) - 1, ceil((high - y) / rise) + 1):
            units = [(float(lat.x[k]) + j * lean, float(lat.width[k])) for k in cells]
            count += unlike_in_course(layout.field, y + j * rise, height, units, across)
    return count


def unlike_in_course(
    field: BaseGeometry, y: float, height: float, units: list[tuple[float, float]], across: float
) -> int:
    x0, low, x1, high = field.bounds
    if y < low - TOLERANCE or y + height > high + TOLERANCE:
        return 0
    course = shapely.box(x0, y + TOLERANCE, x1, y + height - TOLERANCE)
    piers = full_boxes(course.intersection(field), height)
    gaps = [gap for gap in full_boxes(course.difference(field), height) if gap[0] > x0 + 0.01 and gap[1] < x1 - 0.01]
    ends = [(piece_at(left, 1, units, across), piece_at(right, -1, units, across)) for left, right in piers]
    ends += [(piece_at(left, -1, units, across), piece_at(right, 1, units, across)) for left, right in gaps]
    return sum(abs(one - two) > 1 / 64 + TOLERANCE for one, two in ends)


def full_boxes(shape: BaseGeometry, height: float) -> list[tuple[float, float]]:
    parts = [part for part in shapely.get_parts(shape) if part.area > 1e-4]
    return [
        (part.bounds[0], part.bounds[2])
        for part in parts
        if abs(part.area - (part.bounds[2] - part.bounds[0]) * height) < 1e-3
    ]


def piece_at(x: float, side: int, units: list[tuple[float, float]], across: float) -> float:
    """Length of the course's last piece at x, the brick on its right (1) or left (-1)."""
    pieces = []
    for start, width in units:
        for i in range(floor((x - start) / across) - 2, floor((x - start) / across) + 3):
            low, high = start + i * across, start + i * across + width
            if side > 0 and high > x + TOLERANCE:
                pieces.append((high, high - max(low, x)))
            if side < 0 and low < x - TOLERANCE:
                pieces.append((-low, min(high, x) - low))
    return min(pieces)[1]


def assert_counted_as_laid(panel: Panel, origin: tuple[float, float]) -> None:
    found = cost_of(panel, origin)
    layout = lay_out(at(panel, origin))
    laid = (layout.small, len(layout.trims), len(layout.left_out.unit))
    assert (found.small, found.cut, found.left_out) == laid, f"{layout.field.wkt} {origin}"
    assert found.asymmetry == unlike_ends(layout), f"{layout.field.wkt} {origin}"
    assert found.cost == found.cut + 10 * found.small + 11 * found.left_out + 2 * found.asymmetry


@RANDOM
@given(faces(), inches(-30, 30), inches(-30, 30))
def test_any_origin_counts_as_the_layout_laid_with_it(document: Document, x: float, y: float) -> None:
    assert_counted_as_laid(read_panel(document), (x, y))


@RANDOM
@given(faces())
def test_the_best_origin_counts_as_the_layout_laid_with_it(document: Document) -> None:
    panel = read_panel(document)
    found = best_of(panel)
    assert_counted_as_laid(panel, found.origin)
    assert panel.field.origin is not None
    present = cost_of(panel, (panel.field.origin[0].inches, panel.field.origin[1].inches))
    assert found.cost <= found.before == present.cost


def swept(panel: Panel, y: Floats | None = None) -> float:
    """The least cost over every 1/64 in. of the period across, and up unless y is given."""
    size, bond, field, smallest, least = searched(panel)
    lines = lines_of(bond, size, field.bounds[1], field.bounds[3])
    assert lines is not None
    x = np.arange(0, lines.across, 1 / 64)
    y = np.arange(0, lines.up[1], 1 / 64) if y is None else y
    return float(costs(edging(field), lines, Rules(smallest, least), x, y).min())


@RANDOM
@given(faces(SHORT))
def test_the_best_is_never_worse_than_a_sweep_of_the_whole_period(document: Document) -> None:
    panel = read_panel(document)
    assert best_of(panel).cost <= swept(panel)


@RANDOM
@given(faces(SHORT), st.integers(0, 150))
def test_with_courses_pinned_the_best_is_never_worse_than_a_sweep_across(document: Document, steps: int) -> None:
    panel = read_panel(document)
    found = best_of(panel, fixed_y=steps / 64)
    assert found.origin[1] == steps / 64
    size, bond, field, *_ = searched(panel)
    lines = lines_of(bond, size, field.bounds[1], field.bounds[3])
    assert lines is not None
    if steps / 64 < lines.up[1]:
        assert found.cost <= swept(panel, np.array([steps / 64]))


@settings(RANDOM, max_examples=30)
@given(faces(SHORT), inches(0.125, 5))
def test_between_critical_offsets_the_cost_is_one_whatever_the_weights(document: Document, least: float) -> None:
    size, bond, field, smallest, _ = searched(read_panel(document))
    lines, edges = lines_of(bond, size, *field.bounds[1::2]), edging(field)
    rules = Rules(smallest, least, Weights(1, 10.3, -11.7, 2.9))
    assert lines is not None
    x, middle_x = swept_and_middles(critical_x(edges, lines, rules), lines.across)
    y, middle_y = swept_and_middles(critical_y(edges, lines, rules), lines.up[1])
    y, middle_y = y[::4], middle_y[::4]
    np.testing.assert_allclose(costs(edges, lines, rules, x, y), costs(edges, lines, rules, middle_x, middle_y))


def swept_and_middles(critical: Floats, period: float) -> tuple[Floats, Floats]:
    """Every odd 1/128 in. of a period, and for each the middle between the critical offsets beside it;
    those that are themselves critical are left out."""
    critical = np.unique(np.mod(critical, period))
    around = np.concatenate([critical - period, critical, critical + period])
    sweep = np.arange(1 / 128, period, 1 / 64)
    after = np.searchsorted(around, sweep)
    sweep, after = (
        part[np.minimum(around[after] - sweep, sweep - around[after - 1]) > 0.001] for part in (sweep, after)
    )
    middle = (around[after] + around[after - 1]) / 2
    return sweep, middle


def test_critical_offsets_and_the_middles_between_them_are_searched() -> None:
    assert candidates(np.array([1.0, 9.0, 3.0, -2.0]), 8.0).tolist() == [1, 2, 3, 4.5, 6, 7.5]


def wall(width: float, height: float, *openings: Opening, bond: str = "running") -> Panel:
    outline = points((0, 0), (width, 0), (width, height), (0, height))
    return Panel("N1", outline, inch(7.25), Brickwork("modular", bond), margin=inch(0), openings=openings)


def test_a_wall_that_courses_keeps_its_corner_and_has_halves_only() -> None:
    """Common practice: a wall of whole and half modules less one joint has a half at each end of every other course."""
    found = best_of(wall(79.625, 10 * 8 - 5 / 12))
    assert found.origin == (0, 0)
    assert (found.small, found.cut, found.left_out, found.asymmetry) == (0, 2 * 15, 0, 0)
    assert found.before == found.cost == 30


def test_a_wall_a_half_module_off_is_moved_by_whole_critical_offsets() -> None:
    """The same wall with its bond begun 1-3/4 in. off: the best has the same cost as the corner, and so moves back."""
    found = best_of(at(wall(79.625, 10 * 8 - 5 / 12), (1.75, 0.5)))
    assert found.cost == 30 < found.before
    assert found.origin == pytest.approx((0, 0), abs=1e-6)


def test_the_eleven_foot_wall_with_a_six_foot_door_counts_its_two_inch_pieces() -> None:
    """A 6 ft door centred in an 11 ft wall: piers of 30 in. that need 6 in. and 2 in. pieces (nominal) by turns."""
    door = Opening("D1", rect(30 - 0.375, 0, 72.375, 29 * 8 / 3 - 5 / 12), "door")
    panel = wall(132 - 0.375, 36 * 8 / 3 - 5 / 12, door)
    assert_counted_as_laid(panel, (0, 0))
    found = best_of(panel)
    assert_counted_as_laid(panel, found.origin)
    assert found.cost <= found.before
    assert cost_of(panel, (0, 0)).small >= 29


def test_moving_the_whole_face_moves_nothing_else() -> None:
    def moved(dx: float, dy: float) -> Panel:
        corners = ((0, 0), (90, 0), (90, 70), (0, 70))
        openings = (Opening("W1", rect(30 + dx, 20 + dy, 20, 24), "window"),)
        outline = points(*((x + dx, y + dy) for x, y in corners))
        return Panel("N1", outline, inch(7.25), Brickwork("modular", "flemish"), margin=inch(0), openings=openings)

    assert best_of(moved(13.25, 5.125)).cost == best_of(moved(0, 0)).cost


@pytest.mark.parametrize("bond", ["herringbone-90", "herringbone-45"])
def test_a_bond_without_level_lines_has_no_phase(bond: str) -> None:
    panel = wall(80, 60, bond=bond)
    size, laid, field, smallest, least = searched(panel)
    assert best_phase(panel, size, laid, field, smallest, least) is None
    assert phase_cost(size, laid, field, smallest, least, (0, 0)) is None


def test_no_field_has_no_phase() -> None:
    panel = wall(80, 60)
    assert best_phase(panel, MODULAR, BONDS["running"], shapely.Polygon(), 0.25, 3.625) is None


@pytest.mark.parametrize("bond", LEVEL)
def test_slanted_and_round_edges_are_passed_over(bond: str) -> None:
    circle = shapely.Point(60, 40).buffer(9)
    gable = shapely.Polygon([(0, 0), (120, 0), (120, 60), (60, 90), (0, 60)])
    found = best_phase(wall(80, 60), MODULAR, BONDS[bond], gable - circle, 0.25, MODULAR.half_bat)
    assert found is not None
    assert found.cost <= found.before


def test_edges_of_a_face_with_one_window() -> None:
    """
    +-----------+
    |   +---+   |
    |   +---+   |   two jambs, two panel edges; piers left and right of the window, above and below it the whole face
    +-----------+
    """
    found = edging(shapely.box(0, 0, 100, 60) - shapely.box(40, 20, 60, 50))
    uprights = zip(found.uprights.x.tolist(), found.uprights.right.tolist(), strict=True)
    assert sorted(uprights) == [(0, True), (40, False), (60, True), (100, False)]
    levels = zip(found.levels.y.tolist(), found.levels.above.tolist(), strict=True)
    assert sorted(levels) == [(0, True), (20, False), (50, True), (60, False)]
    assert (len(found.corners.x), int(found.corners.outer.sum())) == (8, 4)
    pairs = np.column_stack([found.pairs.x0, found.pairs.x1, found.pairs.y0, found.pairs.y1]).tolist()
    assert sorted(zip(pairs, found.pairs.pier.tolist(), strict=True)) == [
        ([0, 40, 20, 50], True),
        ([0, 100, 0, 20], True),
        ([0, 100, 50, 60], True),
        ([40, 60, 20, 50], False),
        ([60, 100, 20, 50], True),
    ]


@pytest.mark.quiet
def test_the_reference_face_is_searched_in_no_time(capsys: pytest.CaptureFixture[str]) -> None:
    file: dict[str, Any] = json.loads((CASES / "b1.json").read_text())
    panel = read_panel(file["walls"][0]["panels"][0])
    times = [perf_counter()]
    for _ in range(20):
        found = best_of(panel)
        times.append(perf_counter())
    least = min(end - start for start, end in pairwise(times))
    with capsys.disabled():
        print(f"\nphase of the reference face: {least * 1000:.1f} ms, cost {found.before:.0f} to {found.cost:.0f}")
    assert found.cost < found.before
    assert least <= 0.025
