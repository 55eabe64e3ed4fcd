"""Fit of a panel's own courses and head joints, of a wall's courses, and how controls fare where nothing gives."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from shapely.geometry.base import BaseGeometry

from app.brickwork.bond import Bond
from app.brickwork.fit import Fitted, fit
from app.brickwork.fit_controls import course_controls, head_joint_controls
from app.brickwork.fit_grids import Point, course_grid, head_joint_grid
from app.brickwork.fit_lines import Control, Grid1, Outcome, outcomes
from app.brickwork.stretch import IDENTITY, Stretch
from app.panel.size import BrickSize
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class PanelFit:
    """Fit up the courses and along the head joints; None where it is not asked for, or where the bond offers none and
    `reasons` says why."""

    vertical: Fitted | None = None
    horizontal: Fitted | None = None
    reasons: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class States:
    """How every control fares, rising and from the left; empty along an axis on which the bond has no grid."""

    vertical: tuple[Outcome, ...] = ()
    horizontal: tuple[Outcome, ...] = ()


def panel_fit(
    panel: Panel,
    field: BaseGeometry,
    size: BrickSize,
    bond: Bond,
    origin: Point,
    give: float,
    is_pinned: bool = False,
) -> PanelFit:
    """Fit along the axes that the panel asks for (`fit.courses`, `fit.heads`).

    `field` is its brick field, `origin` the corner of the bond's cell 0, inches; a pinned one stays. `give` is how far
    a joint may change, inches. An empty field has no controls, and nothing moves.
    """
    axes = _axes(panel, size, bond, origin, is_pinned)
    vertical, horizontal = (
        fit(_controls(panel, field, size, grid, find), grid, give) if is_asked and isinstance(grid, Grid1) else None
        for is_asked, grid, find in axes
    )
    asked = [grid for is_asked, grid, _ in axes if is_asked]
    return PanelFit(vertical, horizontal, tuple(grid for grid in asked if isinstance(grid, str)))


def states(
    panel: Panel,
    field: BaseGeometry,
    size: BrickSize,
    bond: Bond,
    origin: Point,
    across: Stretch = IDENTITY,
    up: Stretch = IDENTITY,
) -> States:
    """How all controls fare, met or missed, where lines stand as `across` and `up` say: nominally for `IDENTITY`."""
    vertical, horizontal = (
        outcomes(_controls(panel, field, size, grid, find), grid, stretch) if isinstance(grid, Grid1) else ()
        for (_, grid, find), stretch in zip(_axes(panel, size, bond, origin, False), (up, across), strict=True)
    )
    return States(vertical, horizontal)


Finder = Callable[[Panel, BaseGeometry, float, Grid1], tuple[Control, ...]]


def _axes(
    panel: Panel, size: BrickSize, bond: Bond, origin: Point, is_pinned: bool
) -> tuple[tuple[bool, Grid1 | str, Finder], ...]:
    """Up, then across: whether fit is asked for, the bond's grid or why it has none, and what finds its controls."""
    return (
        (panel.fit.courses, course_grid(bond, size, origin, is_pinned), course_controls),
        (panel.fit.heads, head_joint_grid(bond, size, origin, is_pinned), head_joint_controls),
    )


def _controls(panel: Panel, field: BaseGeometry, size: BrickSize, grid: Grid1, find: Finder) -> tuple[Control, ...]:
    return find(panel, field, size.head_joint.inches, grid)


@dataclass(frozen=True, slots=True)
class WallPart:
    """A panel of a wall with its brick field, and how high its foot stands in the wall's elevation, inches."""

    panel: Panel
    field: BaseGeometry
    foot: float


def wall_course_fit(
    parts: Sequence[WallPart],
    size: BrickSize,
    bond: Bond,
    datum: float,
    give: float,
    is_pinned: bool = False,
) -> Fitted | str:
    """One fit of the courses that run through all the parts, in wall elevation; controls are named "P1 head W1".

    `datum` is the elevation of course 0, inches. A panel's own map is `stretch.moved(-foot)`. The reason where the
    bond's bed joints cannot give. The parts are laid in this size and bond.
    """
    grid = course_grid(bond, size, (0.0, datum), is_pinned)
    if not isinstance(grid, Grid1):
        return grid
    controls = [control for part in parts for control in _in_elevation(part, size, grid)]
    return fit(controls, grid, give)


def _in_elevation(part: WallPart, size: BrickSize, grid: Grid1) -> list[Control]:
    own = _controls(part.panel, part.field, size, grid, course_controls)
    return [
        replace(
            control,
            name=f"{part.panel.mark} {control.name}",
            at=control.at + part.foot,
            edge=control.edge + part.foot,
            y=control.y + part.foot,
        )
        for control in own
    ]
