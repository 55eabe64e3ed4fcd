"""Cuts of a sheet that are told and made as one: along the teeth of its pockets, or along an arc. See `knife_lines`."""

from collections.abc import Sequence

import numpy as np

from app.brickwork.lattice import Flags, Floats
from app.liner.arcs import arcs
from app.liner.cut_lines import NEAR
from app.liner.knife import AT_LINE, counts
from app.liner.pockets import Pockets
from app.liner.work_values import Counted, KnifeCut, KnifeLine

FEWEST = 3
"""Cuts along teeth that are told as one; two are sooner read each by itself."""


def knife_lines(cuts: Sequence[KnifeCut], grid: Pockets) -> tuple[KnifeLine, ...]:
    """All cuts, each once, in the order of a knife: teeth and arcs where their first cut was, any other by itself.

    Teeth are cuts that each follow one pocket's side within its joint, and meet each other or one longer cut. An arc is
    three chords or more that follow on one another with their ends on one circle. None for no cuts.
    """
    if not cuts:
        return ()
    ends = np.array([(knife.cut.start, knife.cut.end) for knife in cuts])
    found = [(some, _along_teeth(tuple(cuts[k] for k in some), ends[some], grid)) for some in _teeth(ends, grid)]
    rest = _others(len(cuts), found)
    for some, arc in arcs(ends[rest]):
        own = tuple(cuts[rest[k]] for k in some)
        along, up = (counts(arc.ends, edges, axis) for axis, edges in enumerate((grid.columns, grid.rows)))
        found.append(([rest[k] for k in some], KnifeLine("arc", own, along=along, up=up, arc=arc)))
    found += [([k], KnifeLine("cut", (cuts[k],))) for k in _others(len(cuts), found)]
    return tuple(line for _, line in sorted(found, key=lambda one: min(one[0])))


def _others(count: int, found: Sequence[tuple[list[int], KnifeLine]]) -> list[int]:
    taken = {k for some, _ in found for k in some}
    return [k for k in range(count) if k not in taken]


def _along_teeth(own: tuple[KnifeCut, ...], ends: Floats, grid: Pockets) -> KnifeLine:
    """Counted at the joints in which the teeth end, and from and to along their run, which is across the short cuts."""
    run = np.abs(ends[:, 1] - ends[:, 0])
    is_short = _on_sides(ends, grid)[1]
    axis = int(run[is_short].sum(axis=0).argmax())
    across = sorted({round(float(at), 3) for at in ends[run[:, axis] <= NEAR, 0, axis]})
    edges = grid.columns, grid.rows
    low, high = ends[..., 1 - axis].min(), ends[..., 1 - axis].max()
    counted = (
        _at_joints(counts([(at, at) for at in across], edges[axis], axis)),
        counts([(low, low), (high, high)], edges[1 - axis], 1 - axis),
    )
    return KnifeLine("teeth", own, "xy"[axis], *(counted if axis == 0 else counted[::-1]))


def _at_joints(counted: Sequence[Counted]) -> tuple[Counted, ...]:
    """Those in a joint, all where none is: every other course has its joints between those that one counts."""
    return tuple(one for one in counted if one.past <= one.joint + AT_LINE) or tuple(counted)


def _teeth(ends: Floats, grid: Pockets) -> list[list[int]]:
    """Groups of cuts along pockets that belong together, as a knife meets them."""
    is_along, is_short = _on_sides(ends, grid)
    met = _meet(ends)
    met &= is_along[:, None] & is_along
    touching = _touch(ends) & (is_along & is_short)[:, None] & ~is_along
    met |= (touching[:, None, :] & touching[None, :, :]).any(axis=2)
    groups = [sorted(some) for some in _joined(met, is_along)]
    return [some for some in groups if len(some) >= FEWEST and is_short[some].any() and _turns(ends[some])]


def _on_sides(ends: Floats, grid: Pockets) -> tuple[Flags, Flags]:
    """Which cuts run all along one side of a pocket, off it no more than a joint, and which of them stop on the way:
    where teeth come to their ends the next course has its joints in the middle of a pocket."""
    start, side = grid.corners.reshape(-1, 2), grid.sides.reshape(-1, 2)
    length = np.hypot(*side.T)
    unit = side / length[:, None]
    off = ends[:, :, None] - start
    along = off[..., 0] * unit[:, 0] + off[..., 1] * unit[:, 1]
    across = off[..., 0] * unit[:, 1] - off[..., 1] * unit[:, 0]
    near, far = along.min(axis=1), along.max(axis=1)
    joint = grid.ridge + NEAR
    is_beside = (np.abs(across).max(axis=1) <= joint) & (np.ptp(across, axis=1) <= NEAR)
    is_within = is_beside & (near >= -joint) & (far <= length + joint) & (far - near > joint)
    is_short = is_within & (far - near < length - joint)
    return is_within.any(axis=1), is_short.any(axis=1)


def _meet(ends: Floats) -> Flags:
    """Which cuts have an end in common."""
    apart = np.hypot(*np.moveaxis(ends[:, None, :, None] - ends[None, :, None, :], -1, 0))
    met: Flags = apart.min(axis=(2, 3)) <= 2 * NEAR
    return met


def _touch(ends: Floats) -> Flags:
    """Which cuts (rows) have an end on another (columns)."""
    run = ends[:, 1] - ends[:, 0]
    length = np.maximum(np.hypot(*run.T), NEAR)
    unit = run / length[:, None]
    off = ends[:, None] - ends[None, :, :1]
    along = (off * unit[None, :, None]).sum(axis=-1)
    across = off[..., 0] * unit[:, None, 1] - off[..., 1] * unit[:, None, 0]
    on = (np.abs(across) <= 2 * NEAR) & (along >= -2 * NEAR) & (along <= length[:, None] + 2 * NEAR)
    touches: Flags = on.any(axis=2)
    return touches


def _joined(met: Flags, chosen: Flags) -> list[set[int]]:
    """Those chosen, in sets of all that are met one from the other."""
    groups: list[set[int]] = []
    for k in np.flatnonzero(chosen).tolist():
        same = [some for some in groups if met[k, sorted(some)].any()]
        groups = [some for some in groups if some not in same]
        groups.append({k}.union(*same))
    return groups


def _turns(ends: Floats) -> bool:
    run = ends[:, 1] - ends[:, 0]
    return bool((np.abs(run[0, 0] * run[:, 1] - run[0, 1] * run[:, 0]) > NEAR).any())
