"""The grids of bed and head joints that a bond offers to fit: one step for all its courses, or why there is none."""

from app.brickwork.bond import Bond, Cell, face
from app.brickwork.fit_lines import Grid1
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE

MOST_STEPS = 12
"""Steps of a head-joint grid in one cell; a bond whose starts fall closer than that has no grid worth meeting."""

Point = tuple[float, float]


def course_grid(bond: Bond, size: BrickSize, origin: Point, is_pinned: bool = False) -> Grid1 | str:
    """Course lines of a bond whose units are all one height, in level courses; else the plain reason why bed joints
    cannot give. `origin` is the corner of cell 0, inches."""
    if reason := _not_level(bond, size, "bed"):
        return reason
    low = bond.cells[0].y.inches(size)
    steps = _heights(bond.cells, size)
    if len(steps) > 1:
        return f"bed joints cannot give in {bond.name}: its units have {len(steps)} heights"
    ((step, unit),) = steps
    starts = [cell.y.inches(size) - low for cell in bond.cells]
    if any(_is_off(start, step) for start in (*starts, bond.up[1].inches(size))):
        return f"bed joints cannot give in {bond.name}: its courses do not start at whole heights"
    return Grid1(origin[1] + low, step, 1, step - unit, unit, is_pinned)


def has_plain_courses(bond: Bond, size: BrickSize) -> bool:
    """Whether the bond is laid in level courses of one gauge each, so that it can follow another's bed joints."""
    grid = course_grid(bond, size, (0.0, 0.0))
    return isinstance(grid, Grid1) and abs(grid.step - size.gauge) <= TOLERANCE


def head_joint_grid(bond: Bond, size: BrickSize, origin: Point, is_pinned: bool = False) -> Grid1 | str:
    """Head-joint lines of a bond whose units are all one length: the greatest common step of the starts of its units
    over all courses; else the plain reason why head joints cannot give. `origin` as for `course_grid`."""
    if reason := _not_level(bond, size, "head"):
        return reason
    widths = _widths(bond.cells, size)
    if len(widths) > 1:
        return f"head joints cannot give in {bond.name}: its units have {len(widths)} lengths"
    ((width, unit),) = widths
    left = bond.cells[0].x.inches(size)
    step = _common_step(width, [bond.across[0].inches(size), bond.up[0].inches(size), *_starts(bond, size, left)])
    steps = round(width / step)
    if steps > MOST_STEPS or _is_off(width, step):
        return f"head joints cannot give in {bond.name}: its units start in too many places to share a step"
    return Grid1(origin[0] + left, width / steps, steps, width - unit, unit, is_pinned)


def _not_level(bond: Bond, size: BrickSize, joint: str) -> str:
    if bond.turn:
        return f"{joint} joints cannot give in {bond.name}: it is turned {bond.turn:g} degrees"
    if abs(bond.across[1].inches(size)) > TOLERANCE:
        return f"{joint} joints cannot give in {bond.name}: it has no level courses"
    return ""


def _heights(cells: tuple[Cell, ...], size: BrickSize) -> set[Point]:
    """Height of each cell and of its unit, inches, rounded to the tolerance only to tell them apart."""
    return _distinct([(cell.height.inches(size), face(cell.kind, size)[1]) for cell in cells])


def _widths(cells: tuple[Cell, ...], size: BrickSize) -> set[Point]:
    return _distinct([(cell.width.inches(size), face(cell.kind, size)[0]) for cell in cells])


def _distinct(pairs: list[Point]) -> set[Point]:
    return set({(round(cell, 5), round(unit, 5)): (cell, unit) for cell, unit in pairs}.values())


def _starts(bond: Bond, size: BrickSize, left: float) -> list[float]:
    return [cell.x.inches(size) - left for cell in bond.cells]


def _common_step(width: float, lengths: list[float]) -> float:
    """The greatest length, inches, of which all are whole multiples, by Euclid; none falls below the tolerance."""
    step = width
    for length in lengths:
        rest = abs(length)
        while rest > 100 * TOLERANCE:
            step, rest = rest, step % rest
            rest = 0.0 if step - rest <= 100 * TOLERANCE else rest
    return step


def _is_off(length: float, step: float) -> bool:
    return abs(length - round(length / step) * step) > 100 * TOLERANCE
