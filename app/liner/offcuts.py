"""The cutting plan: which trims come out of which unpacked sheets. See `cutting_plan`."""

from collections.abc import Iterator, Sequence

from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.liner.cuts import Ring
from app.liner.mould import Mould, mould
from app.liner.offcut_greedy import Filled
from app.liner.offcut_places import steps_in_inches
from app.liner.offcut_solve import solve
from app.liner.offcut_trims import Shape, shapes_of, trims_of
from app.liner.offcut_values import CutSheet, CuttingPlan, Taken
from app.liner.programs import NODES
from app.liner.values import SheetPlan
from app.panel.project import Liner


def cutting_plan(layout: Layout, plan: SheetPlan, liner: Liner, nodes: int = NODES) -> CuttingPlan:
    """Take the trims of one panel out of as few unpacked sheets as are found, over all its regions of one mould.

    A trim lies in an unpacked sheet only as it lay on the bed, moved by whole steps of the bond, so that its pockets
    are there. A full sheet takes one, and a trim with several parts comes out of one as it lies. Joints that gave are
    taken as moulded. The same plan gives the same cutting on every machine: limits count places tried and
    `nodes`, branches of a mould's program. No sheets for a plan without any.
    """
    sheets: list[CutSheet] = []
    area_bound = bound = 0
    for regions in _by_mould(layout):
        shape = mould(regions[0].bond, regions[0].size, liner.columns, liner.rows)
        laid = [(region, [sheet for sheet in plan.sheets if sheet.region == region.mark]) for region in regions]
        full = [sheet.number for _, sheets in laid for sheet in sheets if not sheet.is_trimmed]
        cut = [trim for region, sheets in laid for trim in trims_of(region, shape, sheets)]
        shapes = shapes_of(cut, shape)
        solved = solve(shape, shapes, nodes)
        area_bound, bound = area_bound + len(full) + solved.area_bound, bound + len(full) + solved.bound
        name = regions[0].size.name, regions[0].bond.name
        sheets += [CutSheet(number, *name, (_whole(number, shape),)) for number in full]
        sheets += _cut_sheets(name, shape, shapes, solved.sheets)
    return CuttingPlan(
        sheets=tuple(sorted(sheets, key=lambda sheet: sheet.owner)),
        placed=len(plan.sheets),
        naive=len(plan.sheets),
        used=len(sheets),
        area_bound=area_bound,
        bound=bound,
    )


def _by_mould(layout: Layout) -> list[list[Region]]:
    """Regions whose sheets come out of one mould."""
    found: dict[tuple[str, str], list[Region]] = {}
    for region in layout.regions:
        found.setdefault((region.size.name, region.bond.name), []).append(region)
    return list(found.values())


def _whole(number: int, shape: Mould) -> Taken:
    return Taken(number, (0, 0), (_as_ring(shape.outline),), shape.area)


def _as_ring(points: Floats, dx: float = 0.0, dy: float = 0.0) -> Ring:
    return tuple((x + dx, y + dy) for x, y in points.tolist())


def _cut_sheets(
    name: tuple[str, str], shape: Mould, shapes: Sequence[Shape], filled: Sequence[Filled]
) -> Iterator[CutSheet]:
    """Hand the places in the sheets to the trims of each shape in laying order; a sheet belongs to its largest."""
    members = [iter(zip(one.members, one.away, strict=True)) for one in shapes]
    for sheet in filled:
        taken = []
        for place in sheet.taken:
            number, away = next(members[place.shape])
            taken.append(_taken(number, away, place.steps, shapes[place.shape], shape))
        taken.sort(key=lambda one: (-round(one.area, 4), one.number))
        yield CutSheet(taken[0].number, *name, tuple(taken))


def _taken(number: int, away: tuple[int, int], steps: tuple[int, int], trimmed: Shape, shape: Mould) -> Taken:
    """A trim that lay `away` from the first of its shape, cut `steps` from where that one lay."""
    dx, dy = steps_in_inches(shape, steps)
    rings = tuple(_as_ring(ring, dx, dy) for ring in trimmed.rings)
    return Taken(number, (steps[0] - away[0], steps[1] - away[1]), rings, trimmed.area)
