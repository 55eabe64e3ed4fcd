"""Unpacked sheets that are cut alike, which are cut in one stack."""

from string import ascii_uppercase

import numpy as np

from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.brickwork.turning import turned_points
from app.liner.cut_lines import cut_lines
from app.liner.cuts import Ring
from app.liner.knife import knife_cuts
from app.liner.knife_lines import knife_lines
from app.liner.mould import mould
from app.liner.offcut_values import CutSheet, CuttingPlan, Taken
from app.liner.places import starts
from app.liner.pockets import pockets
from app.liner.values import SheetPlan
from app.liner.work_values import CutList, Piece, Stack
from app.panel.project import Liner
from app.panel.rings import from_least, turns_only

_TICKS, _OFF_TIE = 1e4, 0.137
"""Pieces are equal to a ten-thousandth of an inch; a little is added before rounding, as lines at whole 1/64 in. or
thirds then lie far from where rounding turns."""

_Key = tuple[tuple[float, float], ...]
Cutout = tuple[Taken, tuple[_Key, ...], tuple[Floats, ...]]
"""A trim with the key of its rings, and the rings."""


def cut_list(layout: Layout, plan: SheetPlan, cutting: CuttingPlan, liner: Liner) -> CutList:
    """Every unpacked sheet of the cutting plan: in the stack of those cut alike, the largest stack first, or whole.

    Alike are sheets of one mould out of which the same pieces are cut at the same places. Empty for no sheets.
    """
    is_trimmed = {sheet.number: sheet.is_trimmed for sheet in plan.sheets}
    whole = [sheet.owner for sheet in cutting.sheets if not is_trimmed[sheet.owner]]
    alike: dict[object, list[tuple[CutSheet, list[Cutout]]]] = {}
    for sheet in cutting.sheets:
        if is_trimmed[sheet.owner]:
            cutouts = sorted(map(_cutout, sheet.taken), key=lambda one: (-round(one[0].area, 3), one[1]))
            key = sheet.size, sheet.bond, tuple(rings for _, rings, _ in cutouts)
            alike.setdefault(key, []).append((sheet, cutouts))
    regions = {(region.size.name, region.bond.name): region for region in reversed(layout.regions)}
    away = starts(plan.corner)
    stacks: list[Stack] = []
    for same in sorted(alike.values(), key=lambda same: (-len(same), same[0][0].owner)):
        stack = _stack(letters(len(stacks)), same, regions[same[0][0].size, same[0][0].bond], liner, away)
        if stack.cuts:
            stacks.append(stack)
        else:
            whole += stack.owners
    return CutList(tuple(stacks), tuple(sorted(whole)))


def _stack(
    mark: str, same: list[tuple[CutSheet, list[Cutout]]], region: Region, liner: Liner, away: tuple[int, int]
) -> Stack:
    """Sheets with the same cutouts in the same order."""
    sheet, first = same[0]
    shape = mould(region.bond, region.size, liner.columns, liner.rows)
    start = (turned_points(shape.outline, shape.turn) * away).min(axis=0)
    own = [[turned_points(ring, shape.turn) * away - start for ring in rings] for _, _, rings in first]
    grid = pockets(region.bond, region.size, liner.columns, liner.rows, away)
    numbers = zip(*([taken.number for taken, _, _ in cutouts] for _, cutouts in same), strict=True)
    cuts = knife_cuts(cut_lines(grid.outline, own), grid)
    return Stack(
        mark=mark,
        size=sheet.size,
        bond=sheet.bond,
        owners=tuple(sheet.owner for sheet, _ in same),
        outline=_ring(grid.outline),
        pieces=tuple(
            Piece(many, tuple(map(_ring, rings)), taken.area)
            for many, rings, (taken, _, _) in zip(numbers, own, first, strict=True)
        ),
        cuts=cuts,
        lines=knife_lines(cuts, grid),
    )


def _cutout(taken: Taken) -> Cutout:
    rings = sorted(((_key(ring), ring) for ring in map(turns_only, map(np.array, taken.rings))), key=lambda one: one[0])
    return taken, tuple(key for key, _ in rings), tuple(ring for _, ring in rings)


def _key(ring: Floats) -> _Key:
    """The same for rings with the same corners, wherever they start."""
    return from_least(list(map(tuple, np.rint(ring * _TICKS + _OFF_TIE).tolist())))


def _ring(points: Floats) -> Ring:
    return tuple((x, y) for x, y in points.tolist())


def letters(number: int) -> str:
    """A to Z, then AA, AB and so on, for 0, 1, 2 …"""
    before, last = divmod(number, len(ascii_uppercase))
    return (letters(before - 1) if before else "") + ascii_uppercase[last]
