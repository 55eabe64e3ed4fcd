"""Faults of the margin, and of how brick ends at edges of the outline."""

from app.lengths import Length
from app.panel.faults import Fault
from app.panel.values import Edge, Panel, Side
from app.panel.wording import one_of, quoted, said

TREATMENTS = ("margin", "flush", "return")
DEEPEST_INCHES = 36
"""A return is no deeper than the thickest panel."""

UPRIGHT = "a return at an upright edge only, for corner units stand upright; margin or flush here"


def margin_faults(panel: Panel, unit: str) -> list[Fault]:
    """A fault for a panel margin below 0, or so large that no field can be left."""
    return [] if panel.margin is None else _margin(panel.margin, "margin", panel, unit)


def edge_faults(panel: Panel, unit: str, is_outline_sound: bool = True) -> list[Fault]:
    """Faults of every edge that has a treatment of its own; how it lies is looked at only in a sound outline."""
    faults: list[Fault] = []
    first: dict[int, int] = {}
    for k, edge in enumerate(panel.edges):
        path = f"edges[{k}]"
        number = _number(edge, k, first, panel)
        lie = _lie(edge.edge, panel) if is_outline_sound and not number else ""
        faults += number + treatment_faults(edge, path, f"edge {edge.edge}", lie, panel, unit)
        first.setdefault(edge.edge, k)
    return faults


def treatment_faults(thing: Edge | Side, path: str, name: str, lie: str, panel: Panel, unit: str) -> list[Fault]:
    """Faults of a treatment with its depth and margin, at an edge or side that is `lie`: "" for an upright one."""
    if thing.treatment not in TREATMENTS:
        faults = [Fault(f"{path}.treatment", quoted(thing.treatment), one_of(TREATMENTS, thing.treatment))]
    elif thing.treatment == "return" and lie:
        faults = [Fault(f"{path}.treatment", f"a return at {name}, which is {lie}", UPRIGHT)]
    else:
        faults = _depth(thing, path, panel, unit)
    return faults + _own_margin(thing, path, panel, unit)


def _own_margin(thing: Edge | Side, path: str, panel: Panel, unit: str) -> list[Fault]:
    if thing.margin is None:
        return []
    if thing.treatment == "return" and thing.margin.nm > 0:
        expected = "no margin at a return, whose brick goes around the edge"
        return [Fault(f"{path}.margin", said(thing.margin, unit), expected)]
    return _margin(thing.margin, f"{path}.margin", panel, unit)


def _margin(margin: Length, path: str, panel: Panel, unit: str) -> list[Fault]:
    most = _half_of_lesser(panel)
    if 0 <= margin.nm <= most:
        return []
    expected = f"0 or more, at most {said(Length(most), unit)}, half the panel's lesser dimension"
    return [Fault(path, said(margin, unit), expected)]


def _half_of_lesser(panel: Panel) -> int:
    sides = [[point[axis].nm for point in panel.outline] or [0] for axis in (0, 1)]
    return min(max(values) - min(values) for values in sides) // 2


def _number(edge: Edge, k: int, first: dict[int, int], panel: Panel) -> list[Fault]:
    path, last = f"edges[{k}].edge", len(panel.outline) - 1
    if not 0 <= edge.edge <= last:
        return [Fault(path, f"edge {edge.edge}", f"an edge of the outline, 0 to {last}")]
    if edge.edge in first:
        return [Fault(path, f"edge {edge.edge} again, as in edges[{first[edge.edge]}]", "every edge at most once")]
    return []


def _lie(edge: int, panel: Panel) -> str:
    """How an edge lies: "level", "slanted", or "" for upright."""
    start, end = panel.outline[edge], panel.outline[(edge + 1) % len(panel.outline)]
    if start[0] == end[0]:
        return ""
    return "level" if start[1] == end[1] else "slanted"


def _depth(thing: Edge | Side, path: str, panel: Panel, unit: str) -> list[Fault]:
    is_return = thing.treatment == "return"
    if thing.depth is None:
        return [Fault(f"{path}.depth", "nothing", "the depth of the return")] if is_return else []
    most, words = Length.from_inches(DEEPEST_INCHES), ""
    if is_return and panel.thickness.nm > 0:
        most, words = panel.thickness, "the panel thickness, "
    if 0 < thing.depth.nm <= most.nm:
        return []
    expected = f"a depth of more than 0 and at most {words}{said(most, unit)}"
    return [Fault(f"{path}.depth", said(thing.depth, unit), expected)]
