"""Every demonstration panel with courses and head joints given leave: measured from the units that are laid.

Joints of 3/8 in. stay within 1/4 and 1/2 in., others in proportion, and change by 1/32 in. at most (common practice).
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from shapes import project

from app.brickwork.bond import Bond, face
from app.brickwork.layout import Layout, lay_out
from app.brickwork.own_bonds import known_bonds
from app.brickwork.wall import place_in
from app.documents.project_file import sizes_of
from app.panel.project import Wall
from app.panel.size import BrickSize

DEMO = Path(__file__).parents[2] / "demo_data"
PROJECTS = {path.stem: project(path) for path in sorted(DEMO.glob("*.json"))}
ALL = [(name, wall.mark, panel.mark) for name, one in PROJECTS.items() for wall in one.walls for panel in wall.panels]
GIVE = 1 / 32
NEAR = 1e-6

every_panel = pytest.mark.parametrize(("name", "wall", "mark"), ALL, ids=[" ".join(one) for one in ALL])
in_or_alone = pytest.mark.parametrize("is_alone", [False, True], ids=["in its wall", "alone"])


def _asking(wall: Wall) -> Wall:
    """The wall with bed and head joints of all its panels given leave to give."""
    panels = [replace(panel, fit=replace(panel.fit, courses=True, heads=True)) for panel in wall.panels]
    return replace(wall, panels=tuple(panels))


@cache
def _laid(name: str, wall: str, mark: str, is_alone: bool) -> Layout:
    one = PROJECTS[name]
    asking = next(_asking(each) for each in one.walls if each.mark == wall)
    panel = next(each for each in asking.panels if each.mark == mark)
    sizes, bonds = sizes_of(one), known_bonds(one)
    if is_alone:
        return lay_out(panel, sizes, bonds)
    return lay_out(panel, sizes, bonds, place_in(asking, panel, sizes, GIVE, bonds))


def _in_range(joints: np.ndarray, nominal: float) -> bool:
    changes = np.abs(joints - nominal).max(initial=0)
    low, high = joints.min(initial=nominal), joints.max(initial=nominal)
    return bool(changes <= GIVE + NEAR and low >= nominal * 2 / 3 - NEAR and high <= nominal * 4 / 3 + NEAR)


def _field_rows(layout: Layout) -> dict[float, list[int]]:
    """Units of the field that are full high, whole or cut in length, by their foot, from the left."""
    units, rows = layout.units, defaultdict[float, list[int]](list)
    is_full = np.abs(units.height - layout.size.height.inches) < NEAR
    for unit in np.flatnonzero(is_full & (units.zone == 0)).tolist():
        rows[round(float(units.y[unit]), 5)].append(unit)
    return {foot: sorted(row, key=lambda unit: float(units.x[unit])) for foot, row in sorted(rows.items())}


def _bed_joints(layout: Layout, gauge: float) -> np.ndarray:
    """From the top of one row of units to the foot of the next, where no course is missing between."""
    rows = list(_field_rows(layout))
    steps = np.array([high - low for low, high in pairwise(rows)])
    return steps[steps < 1.5 * gauge] - layout.size.height.inches


def _head_joints(layout: Layout) -> np.ndarray:
    """Between units side by side in one course; an opening or zone between is no joint."""
    units = layout.units
    gaps = [
        float(units.x[right] - units.x[left] - units.width[left])
        for row in _field_rows(layout).values()
        for left, right in pairwise(row)
    ]
    found = np.array(gaps)
    return found[found < 1.5]


@every_panel
@in_or_alone
def test_no_bed_joint_leaves_its_range(name: str, wall: str, mark: str, is_alone: bool) -> None:
    layout = _laid(name, wall, mark, is_alone)
    size = layout.size
    joints = _bed_joints(layout, size.gauge)
    assert len(joints) >= 20
    assert _in_range(joints, size.bed_joint)


@every_panel
@in_or_alone
def test_no_head_joint_leaves_its_range(name: str, wall: str, mark: str, is_alone: bool) -> None:
    layout = _laid(name, wall, mark, is_alone)
    joints = _head_joints(layout)
    assert len(joints) >= 400
    assert _in_range(joints, layout.size.head_joint.inches)


@every_panel
@in_or_alone
def test_a_whole_brick_keeps_its_size(name: str, wall: str, mark: str, is_alone: bool) -> None:
    layout = _laid(name, wall, mark, is_alone)
    units = layout.units
    for zone, region in enumerate(layout.regions):
        if region.bond.turn:
            continue
        whole = ~units.is_trimmed & (units.zone == zone)
        faces = np.array(list(_faces(region.bond, region.size)))[units.cell[whole]]
        assert np.abs(units.width[whole] - faces[:, 0]).max(initial=0) < NEAR
        assert np.abs(units.height[whole] - faces[:, 1]).max(initial=0) < NEAR


def _faces(bond: Bond, size: BrickSize) -> Iterator[tuple[float, float]]:
    yield from (face(cell.kind, size) for cell in bond.cells)


def test_joints_of_the_demonstration_do_give() -> None:
    """Else there would be nothing to keep in range."""
    beds = [layout for one in ALL if _changed(_bed_joints(layout := _laid(*one, True), layout.size.gauge), layout)]
    heads = [layout for one in ALL if _moved(_head_joints(layout := _laid(*one, True)), layout)]
    assert len(ALL) >= 20
    assert len(beds) >= 5
    assert len(heads) >= 2


def _changed(joints: np.ndarray, layout: Layout) -> bool:
    return bool(np.abs(joints - layout.size.bed_joint).max() > 1e-3)


def _moved(joints: np.ndarray, layout: Layout) -> bool:
    return bool(np.abs(joints - layout.size.head_joint.inches).max() > 1e-3)
