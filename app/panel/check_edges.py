"""Faults of the margin and of what is said about single edges of the outline."""

from app.lengths import Length
from app.panel.faults import Fault
from app.panel.values import Edge, Panel
from app.panel.wording import one_of, quoted, said

TREATMENTS = ("margin", "flush", "return")
DEEPEST_INCHES = 36
"""A return is no deeper than the thickest panel."""


def margin_faults(panel: Panel, unit: str) -> list[Fault]:
    """A fault for a panel margin below 0, or so large that no field can be left."""
    return [] if panel.margin is None else _margin(panel.margin, "margin", panel, unit)


def edge_faults(panel: Panel, unit: str) -> list[Fault]:
    """Faults of every edge that has a treatment of its own."""
    faults: list[Fault] = []
    first: dict[int, int] = {}
    for k, edge in enumerate(panel.edges):
        path = f"edges[{k}]"
        faults += _number(edge, k, first, panel)
        faults += _treatment(edge, path, unit)
        if edge.margin is not None:
            faults += _margin(edge.margin, f"{path}.margin", panel, unit)
        first.setdefault(edge.edge, k)
    return faults


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


def _treatment(edge: Edge, path: str, unit: str) -> list[Fault]:
    if edge.treatment not in TREATMENTS:
        return [Fault(f"{path}.treatment", quoted(edge.treatment), one_of(TREATMENTS, edge.treatment))]
    if edge.depth is None:
        expected = "the depth of the return"
        return [Fault(f"{path}.depth", "nothing", expected)] if edge.treatment == "return" else []
    if 0 < edge.depth.inches <= DEEPEST_INCHES:
        return []
    expected = f"a depth of more than 0 and at most {said(DEEPEST_INCHES, unit)}"
    return [Fault(f"{path}.depth", said(edge.depth, unit), expected)]
