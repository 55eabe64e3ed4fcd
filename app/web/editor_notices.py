"""What the editor says when a change is not made, and what can be answered."""

import re
from collections.abc import Mapping, Sequence
from uuid import uuid4

from app.panel.faults import Refused
from app.panel.values import Edge, Opening, Panel, Zone
from app.web.editor_view import Choice, Notice, address_of
from app.workflow.refusals import Stale, UndoRefused

PLACE = re.compile(r"(?P<list>edges|openings|zones)\[(?P<k>\d+)\]\.?(?P<rest>.*)")
SIDE = re.compile(r"sides\[(?P<n>\d+)\]\.?(?P<rest>.*)")


def refused_notice(refused: Refused, panel: Panel | None = None) -> Notice:
    """Every fault of a form or of the panel that it would make, in that panel's own marks where it is given."""
    lines = tuple(
        f"{_place(fault.path, panel)}: found {fault.found}; expected {fault.expected}." for fault in refused.faults
    )
    return Notice("Not changed.", lines)


def _place(path: str, panel: Panel | None) -> str:
    """`Edge 3, depth` for `edges[1].depth`; paths of anything else as they are."""
    found = PLACE.fullmatch(path)
    if panel is None or found is None:
        return path
    items: Sequence[Edge | Opening | Zone] = getattr(panel, found["list"])
    if int(found["k"]) >= len(items):
        return path
    item = items[int(found["k"])]
    return ", ".join(filter(None, (_called(item), _within(item, found["rest"]))))


def _called(item: Edge | Opening | Zone) -> str:
    match item:
        case Edge():
            return f"Edge {item.edge}"
        case Opening():
            return f"Opening {item.mark}"
        case Zone():
            return f"Zone {item.mark}"


def _within(item: Edge | Opening | Zone, rest: str) -> str:
    """A side of an opening by its name."""
    found = SIDE.fullmatch(rest)
    if not isinstance(item, Opening) or found is None or int(found["n"]) >= len(item.sides):
        return rest
    return ", ".join(filter(None, (item.sides[int(found["n"])].side, found["rest"])))


def undo_notice(refused: UndoRefused) -> Notice:
    """Why a step back is not possible."""
    return Notice("Not changed.", (f"{str(refused)[:1].upper()}{str(refused)[1:]}.",))


def stale_notice(stale: Stale, panel_id: str, form: Mapping[str, str]) -> Notice:
    """What others changed, what this change wants, and the choices: on top where nothing overlaps, or dropped."""
    is_same = set(stale.mine) <= set(stale.theirs)
    lines = (
        f"Changed in the meantime: {'; '.join(stale.theirs) or 'nothing that lasts'}.",
        f"Yours: {'; '.join(stale.mine) or 'nothing'}{', which is there already' if is_same and stale.mine else ''}.",
    )
    drop = Choice("Drop mine, show theirs", address_of(panel_id), method="get")
    if stale.overlap or is_same or not form:
        return Notice("Not saved: someone saved this panel first.", lines, (drop,))
    values = {**form, "on_top": "yes", "command_id": uuid4().hex}
    on_top = Choice("Put mine on top", f"{address_of(panel_id)}/edits", tuple(values.items()))
    return Notice("Not saved: someone saved this panel first.", lines, (on_top, drop))
