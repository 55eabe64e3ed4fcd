"""Courses and bond of a wall run on through its panel joints: where each panel finds them. See `place_in`."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache

from app.brickwork.bond import Bond
from app.brickwork.bonds import BONDS
from app.brickwork.fit_grids import has_plain_courses
from app.brickwork.panel_fit import WallPart, wall_course_fit
from app.brickwork.place import JOINT_GIVE, Place
from app.brickwork.stretch import Stretch
from app.panel.geometry import brick_field
from app.panel.project import Wall
from app.panel.size import BrickSize
from app.panel.values import Panel


def is_continuous(panel: Panel) -> bool:
    """Whether the panel takes its courses and bond from the wall: it is not released and has no origin of its own."""
    return not panel.released and panel.field.origin is None


def with_panel(wall: Wall, panel: Panel) -> Wall:
    """The wall with this panel in place of the one of the same mark; the wall itself where it has none."""
    return replace(wall, panels=tuple(panel if one.mark == panel.mark else one for one in wall.panels))


def panels_along(wall: Wall) -> Iterator[tuple[Panel, float]]:
    """Each panel with where its left edge stands, inches from the first panel's."""
    left = 0.0
    for panel in wall.panels:
        yield panel, left
        left += panel.width + wall.joint.inches


def wall_origin(wall: Wall, sizes: Mapping[str, BrickSize]) -> tuple[float, float] | None:
    """Where the wall's bond starts: inches along from the first panel's left edge, and its elevation.

    Across it is the lower-left corner of the brick field of the first panel that takes part; up it stands as high over
    the datum as that field does over its panel's foot. None where no panel with a brick field takes part.
    """
    for panel, left in panels_along(wall):
        if is_continuous(panel):
            field = brick_field(panel, sizes[panel.field.size].head_joint.inches)
            if not field.is_empty:
                return left + float(field.bounds[0]), wall.datum.inches + float(field.bounds[1])
    return None


def place_in(
    wall: Wall,
    panel: Panel,
    sizes: Mapping[str, BrickSize],
    give: float = JOINT_GIVE,
    bonds: Mapping[str, Bond] = BONDS,
) -> Place:
    """The panel's place in its wall; alone where it is released, has its own origin or is no panel of the wall."""
    together = with_panel(wall, panel)
    left = next((left for one, left in panels_along(together) if one.mark == panel.mark), None)
    start = wall_origin(together, sizes)
    if left is None or start is None:
        return Place(give=give)
    here = start[0] - left, start[1] - panel.base.inches
    fitted = wall_courses(together, panel.field.size, start[1], sizes, bonds, give)
    courses = fitted.moved(-panel.base.inches) if fitted else None
    if not is_continuous(panel):
        return Place(give=give, wall=here, wall_courses=courses)
    return Place(here, courses, here, give, courses)


def wall_courses(
    wall: Wall, size: str, datum: float, sizes: Mapping[str, BrickSize], bonds: Mapping[str, Bond], give: float
) -> Stretch | None:
    """Where the courses of this brick size stand in the wall once bed joints give, by elevation, inches.

    The control lines of all panels that ask for it, in a bond of that brick's plain courses, count together, and all
    that take part in the wall follow, so that courses still run on. None where no panel asks.
    """
    asking = tuple(
        panel
        for panel in wall.panels
        if is_continuous(panel)
        and panel.fit.courses
        and panel.field.size == size
        and has_plain_courses(bonds[panel.field.bond], sizes[size])
    )
    return _courses(asking, sizes[size], bonds[asking[0].field.bond], datum, give) if asking else None


@lru_cache(maxsize=64)
def _courses(asking: tuple[Panel, ...], size: BrickSize, bond: Bond, datum: float, give: float) -> Stretch | None:
    """Kept, as every panel of a wall asks for the same."""
    parts = [WallPart(panel, brick_field(panel, size.head_joint.inches), panel.base.inches) for panel in asking]
    fitted = wall_course_fit(parts, size, bond, datum, give, is_pinned=True)
    return None if isinstance(fitted, str) else fitted.stretch
