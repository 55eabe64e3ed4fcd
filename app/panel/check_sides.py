"""Faults of how brick ends at the sides of openings."""

from app.panel.check_edges import treatment_faults
from app.panel.check_shapes import KEYS
from app.panel.faults import Fault
from app.panel.shapes import Rect
from app.panel.values import Opening, Panel, Side
from app.panel.wording import one_of, quoted

SIDES = ("left", "right", "head", "sill")
LEVEL = ("head", "sill")


def side_faults(panel: Panel, unit: str) -> list[Fault]:
    """Faults of every side of an opening that has a treatment of its own; only rectangles have sides."""
    return [fault for k, opening in enumerate(panel.openings) for fault in _of_opening(opening, k, panel, unit)]


def _of_opening(opening: Opening, k: int, panel: Panel, unit: str) -> list[Fault]:
    path = f"openings[{k}].sides"
    if opening.sides and not isinstance(opening.shape, Rect):
        expected = "sides on a rectangle only; other shapes keep the panel's margin all round"
        return [Fault(path, f"sides on a shape of {KEYS[type(opening.shape)]}", expected)]
    faults: list[Fault] = []
    first: dict[str, int] = {}
    for n, side in enumerate(opening.sides):
        faults += _name(side, f"{path}[{n}].side", first)
        name, lie = f"the {side.side} of {opening.mark}", "level" if side.side in LEVEL else ""
        faults += treatment_faults(side, f"{path}[{n}]", name, lie, panel, unit)
        first.setdefault(side.side, n)
    return faults


def _name(side: Side, path: str, first: dict[str, int]) -> list[Fault]:
    if side.side not in SIDES:
        return [Fault(path, quoted(side.side), one_of(SIDES, side.side))]
    if side.side in first:
        return [Fault(path, f"{side.side} again, as in sides[{first[side.side]}]", "every side at most once")]
    return []
