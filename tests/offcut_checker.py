"""An independent check of cutting plans: plain shapes and the bond's own vectors, nothing of the code that packs."""

from collections import Counter
from collections.abc import Callable
from functools import lru_cache, reduce
from itertools import combinations, pairwise, product
from math import ceil, cos, floor, radians, sin

import numpy as np
import shapely

from app.brickwork.bond import Bond, Module
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.liner.mould import Mould, mould
from app.liner.offcut_values import CutSheet, CuttingPlan, Taken
from app.liner.values import Sheet, SheetPlan
from app.panel.project import Liner
from app.panel.size import BrickSize

NEAR = 1e-3
"""Square inches; a knife is a hundred times coarser."""
GRIDS = (1e-8, 1e-6, 1e-5)
"""Inches; where nearly equal slants fail on the finer grid they are compared on the coarser."""
STEPS = 1e-4
"""How far a shift may be from whole steps, as a share of one."""


def assert_cutting(layout: Layout, plan: SheetPlan, cutting: CuttingPlan, liner: Liner) -> None:
    """Every law of a cutting plan."""
    assert_counts(plan, cutting)
    laid = {sheet.number: sheet for sheet in plan.sheets}
    regions = {region.mark: region for region in layout.regions}
    by_mould: Counter[tuple[str, str]] = Counter()
    covered: Counter[tuple[str, str]] = Counter()
    for cut in cutting.sheets:
        assert_owner_first(cut)
        assert_apart(cut)
        for taken in cut.taken:
            sheet = laid[taken.number]
            region = regions[sheet.region]
            assert (region.size.name, region.bond.name) == (cut.size, cut.bond), "cut from a sheet of another mould"
            assert_cut_from_its_place(taken, sheet, region, mould(region.bond, region.size, liner.columns, liner.rows))
            covered[cut.size, cut.bond] += shape_of(taken.rings).area  # type: ignore[assignment]
        by_mould[cut.size, cut.bond] += 1
    assert by_mould == cutting.counts
    assert_bounds(layout, cutting, liner, covered)


def assert_counts(plan: SheetPlan, cutting: CuttingPlan) -> None:
    numbers = sorted(taken.number for cut in cutting.sheets for taken in cut.taken)
    assert numbers == [sheet.number for sheet in plan.sheets], "every laid sheet is cut once"
    assert cutting.used == len(cutting.sheets)
    assert cutting.used == sum(cutting.source_of(sheet.number) is None for sheet in plan.sheets)
    assert cutting.placed == cutting.naive == len(plan.sheets)
    assert cutting.area_bound <= cutting.bound <= cutting.used <= cutting.naive
    for cut in cutting.sheets:
        for taken in cut.taken:
            source = cutting.source_of(taken.number)
            assert source == (None if taken.number == cut.owner else cut.owner)


def assert_owner_first(cut: CutSheet) -> None:
    areas = [shape_of(taken.rings).area for taken in cut.taken]
    assert cut.owner == cut.taken[0].number
    assert all(one >= two - NEAR for one, two in pairwise(areas)), "the largest comes first"
    assert np.allclose(areas, [taken.area for taken in cut.taken], atol=NEAR)


def assert_apart(cut: CutSheet) -> None:
    shapes = [shape_of(taken.rings) for taken in cut.taken]
    for one, two in combinations(shapes, 2):
        assert area_of(shapely.intersection, one, two) < NEAR, "two trims overlap"


def assert_cut_from_its_place(taken: Taken, sheet: Sheet, region: Region, full: Mould) -> None:
    """The trim as it lies on the bed, moved by whole steps of the bond, inside a sheet."""
    cut, own = shape_of(taken.rings), shapely.Polygon(full.outline)
    if not sheet.is_trimmed:
        assert cut.equals(own)
        assert taken.steps == (0, 0)
        return
    trim = trim_in_sheet(sheet, region, full)
    outside = area_of(shapely.difference, cut, own.buffer(1e-6, join_style="mitre"))
    assert outside < NEAR, f"sheet {taken.number} reaches {outside} sq in. beyond its unpacked sheet"
    moved = np.array(cut.bounds[:2]) - np.array(trim.bounds[:2])
    back = shapely.transform(cut, lambda points: points - moved)
    is_bent = not (region.across.is_identity and region.up.is_identity)
    difference = area_of(shapely.symmetric_difference, back, trim)
    assert difference < (0.05 if is_bent else NEAR), f"sheet {taken.number} is cut to another shape than it has"
    steps = np.linalg.solve(vectors(region.bond, region.size, full.turn).T, moved)
    assert np.abs(steps - np.round(steps)).max() < STEPS, f"sheet {taken.number} is moved by {steps} steps"
    place, line = taken.steps
    said = place * np.array([full.length, 0.0]) + line * np.array(full.step)
    assert np.abs(said - moved).max() < STEPS, "steps said are not the steps moved"


def assert_bounds(layout: Layout, cutting: CuttingPlan, liner: Liner, covered: Counter[tuple[str, str]]) -> None:
    full = {
        (region.size.name, region.bond.name): mould(region.bond, region.size, liner.columns, liner.rows)
        for region in layout.regions
    }
    least = sum(ceil(area / full[key].area - 1e-5) for key, area in covered.items())
    assert cutting.area_bound == least


def trim_in_sheet(sheet: Sheet, region: Region, full: Mould) -> shapely.Geometry:
    """The laid trim where it is in its own sheet, joints as moulded, turned back."""
    trim = unstretched(shape_of((*sheet.trim, *sheet.holes)), region, full.turn)
    outline = unstretched(shapely.Polygon(sheet.outline), region, full.turn)
    away = np.array(outline.bounds[:2]) - np.array(shapely.Polygon(full.outline).bounds[:2])
    return shapely.transform(trim, lambda points: points - away)


def unstretched(shape: shapely.Geometry, region: Region, turn: float) -> shapely.Geometry:
    if region.across.is_identity and region.up.is_identity:
        return shapely.transform(shape, lambda points: points @ turned(turn))
    fine = shapely.segmentize(shape, 4.0)
    return shapely.transform(
        fine,
        lambda points: np.column_stack(
            [
                back(points[:, 0], region.across.real_knots, region.across.nominal_knots),
                back(points[:, 1], region.up.real_knots, region.up.nominal_knots),
            ]
        ),
    )


def back(at: np.ndarray, real: tuple[float, ...], nominal: tuple[float, ...]) -> np.ndarray:
    """Where a line stood before joints gave: straight between knots, as far off beyond them."""
    if not real:
        return at
    inside = np.interp(at, real, nominal)
    below, above = np.minimum(at - real[0], 0), np.maximum(at - real[-1], 0)
    return inside + below + above


def turned(degrees: float) -> np.ndarray:
    """Matrix that turns rows of points back."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return np.array([[c, -s], [s, c]])


def vectors(bond: Bond, size: BrickSize, turn: float) -> np.ndarray:
    """The bond's two vectors by its data, turned as the bond is and back as the sheet is."""
    own = np.array([[in_inches(x, size), in_inches(y, size)] for x, y in (bond.across, bond.up)])
    return own @ turned(turn - bond.turn)


def in_inches(module: Module, size: BrickSize) -> float:
    head, length, height = size.head_joint.inches, size.length.inches, size.height.inches
    return module.p * (length + head) + module.g * size.per.inches / size.courses + module.s * (height + head)


@lru_cache(maxsize=4096)
def shape_of(rings: tuple[tuple[tuple[float, float], ...], ...]) -> shapely.Geometry:
    parts = shapely.get_parts(reduce(shapely.symmetric_difference, [shapely.Polygon(ring) for ring in rings]))
    return shapely.multipolygons([part for part in parts if part.geom_type == "Polygon"])


def area_of(compared: Callable[..., shapely.Geometry], one: shapely.Geometry, two: shapely.Geometry) -> float:
    for grid in GRIDS[:-1]:
        try:
            return compared(one, two, grid_size=grid).area
        except shapely.errors.GEOSException:
            continue
    return compared(one, two, grid_size=GRIDS[-1]).area


def fewest(trims: list[shapely.Geometry], own: shapely.Polygon, lattice: np.ndarray) -> int:
    """The fewest sheets for a few trims of one mould, each where it lies in a sheet of its own: all ways tried."""
    places = [list(_places(trim, own, lattice)) for trim in trims]
    known: dict[frozenset[int], bool] = {}

    def share(group: frozenset[int]) -> bool:
        if group not in known:
            known[group] = _fit([places[k] for k in sorted(group)], [])
        return known[group]

    def least(rest: tuple[int, ...], groups: list[frozenset[int]]) -> int:
        if not rest:
            return len(groups)
        first, others = rest[0], rest[1:]
        best = least(others, [*groups, frozenset({first})])
        for n, group in enumerate(groups):
            wider = group | {first}
            if share(wider):
                best = min(best, least(others, [*groups[:n], wider, *groups[n + 1 :]]))
        return best

    return least(tuple(range(len(trims))), [])


def _places(trim: shapely.Geometry, own: shapely.Polygon, lattice: np.ndarray) -> list[shapely.Geometry]:
    grown = own.buffer(1e-6, join_style="mitre")
    reach = np.hypot(*np.array(own.bounds[2:]) - np.array(own.bounds[:2]))
    most = floor(reach / np.abs(np.linalg.svd(lattice, compute_uv=False)).min()) + 1
    found = []
    low, high = np.array(own.bounds[:2]) - 1e-4, np.array(own.bounds[2:]) + 1e-4
    moves = np.array(list(product(range(-most, most + 1), repeat=2))) @ lattice
    corners = np.array(trim.bounds).reshape(2, 2) + moves[:, None]
    is_near = (corners[:, 0] >= low).all(axis=1) & (corners[:, 1] <= high).all(axis=1)
    for move in moves[is_near]:
        moved = shapely.transform(trim, lambda points, move=move: points + move)
        if area_of(shapely.difference, moved, grown) < NEAR / 10:
            found.append(moved)
    return found


def _fit(places: list[list[shapely.Geometry]], taken: list[shapely.Geometry]) -> bool:
    if not places:
        return True
    for place in places[0]:
        is_free = all(area_of(shapely.intersection, place, one) < NEAR / 10 for one in taken)
        if is_free and _fit(places[1:], [*taken, place]):
            return True
    return False
