"""Whether a panel can be built on: every fault of a panel, or the panel itself."""

from collections.abc import Collection
from functools import lru_cache

from app.panel.check_accepted import accepted_faults, question_faults
from app.panel.check_edges import edge_faults, margin_faults
from app.panel.check_fit import matter_faults
from app.panel.check_laying import laying_faults
from app.panel.check_marks import mark_faults
from app.panel.check_openings import opening_faults
from app.panel.check_outline import outline_faults
from app.panel.check_parts import fixing_faults, plate_faults, strip_faults
from app.panel.check_sides import side_faults
from app.panel.check_zones import work_faults, zone_faults
from app.panel.faults import Fault, Refused
from app.panel.geometry import outline_polygon
from app.panel.values import Panel
from app.panel.wording import said

THICKEST_INCHES = 36
"""A wall panel thicker than this is a slip of the keyboard: common practice is far below."""


def panel_faults(
    panel: Panel, sizes: Collection[str] | None = None, bonds: Collection[str] | None = None, unit: str = "in"
) -> tuple[Fault, ...]:
    """Every fault of the panel, paths relative to it (`openings[1].rect[2]`); empty for a sound panel.

    `sizes` and `bonds` are the names that are known; None leaves names unchecked. Lengths are said in the project's
    `unit`. Raises nothing. What needs a sound outline is looked at only once there is one.
    """
    try:
        checked(panel, sizes, bonds, unit)
    except Refused as refused:
        return tuple(refused.faults)
    return ()


def checked(
    panel: Panel, sizes: Collection[str] | None = None, bonds: Collection[str] | None = None, unit: str = "in"
) -> Panel:
    """The panel itself; raises Refused with every fault that `panel_faults` finds."""
    _found_sound(panel, None if sizes is None else tuple(sizes), None if bonds is None else tuple(bonds), unit)
    return panel


@lru_cache(maxsize=256)
def _found_sound(panel: Panel, sizes: tuple[str, ...] | None, bonds: tuple[str, ...] | None, unit: str) -> None:
    """Kept for sound panels alone, as one is looked at again when it is written and read; raises Refused."""
    faults = _all_faults(panel, sizes, bonds, unit)
    if faults:
        raise Refused(faults)


def _all_faults(
    panel: Panel, sizes: tuple[str, ...] | None, bonds: tuple[str, ...] | None, unit: str
) -> tuple[Fault, ...]:
    outline = outline_faults(panel.outline, unit)
    face = None if outline else outline_polygon(panel)
    return (
        *mark_faults(panel),
        *outline,
        *_thickness_faults(panel, unit),
        *margin_faults(panel, unit),
        *edge_faults(panel, unit, is_outline_sound=not outline),
        *opening_faults(panel.openings, face, unit),
        *side_faults(panel, unit),
        *strip_faults(panel.strips, face, unit),
        *plate_faults(panel.plates, face, unit),
        *work_faults(panel.field, "field", sizes, bonds),
        *zone_faults(panel.zones, face, sizes, bonds, unit),
        *matter_faults(panel.fit.matter),
        *fixing_faults(panel.fixings, face, unit),
        *_limit_faults(panel, unit),
        *accepted_faults(panel.accepted),
        *question_faults(panel.questions),
        *laying_faults(panel.laying),
    )


def _thickness_faults(panel: Panel, unit: str) -> list[Fault]:
    if 0 < panel.thickness.inches <= THICKEST_INCHES:
        return []
    expected = f"a thickness of more than 0 and at most {said(THICKEST_INCHES, unit)}"
    return [Fault("thickness", said(panel.thickness, unit), expected)]


def _limit_faults(panel: Panel, unit: str) -> list[Fault]:
    limits = {"smallest_cut": panel.smallest_cut, "least_piece": panel.least_piece}
    return [
        Fault(name, said(limit, unit), "a length of 0 or more")
        for name, limit in limits.items()
        if limit is not None and limit.nm < 0
    ]
