"""What the editor says when a change is not made, and what can be answered."""

from collections.abc import Mapping
from uuid import uuid4

from app.panel.faults import Refused
from app.web.editor_view import Choice, Notice, address_of
from app.workflow.refusals import Stale, UndoRefused


def refused_notice(refused: Refused) -> Notice:
    """Every fault of a form or of the panel that it would make."""
    lines = tuple(f"{fault.path}: found {fault.found}; expected {fault.expected}." for fault in refused.faults)
    return Notice("Not changed.", lines)


def undo_notice(refused: UndoRefused) -> Notice:
    """Why a step back is not possible."""
    return Notice("Not changed.", (f"{str(refused)[:1].upper()}{str(refused)[1:]}.",))


def stale_notice(stale: Stale, panel_id: str, form: Mapping[str, str]) -> Notice:
    """What others changed, what this change wants, and the choices: on top where nothing overlaps, or dropped."""
    lines = (
        f"Changed in the meantime: {'; '.join(stale.theirs) or 'nothing that lasts'}.",
        f"Yours: {'; '.join(stale.mine) or 'nothing'}.",
    )
    drop = Choice("Drop mine, show theirs", address_of(panel_id), method="get")
    if stale.overlap or not form:
        return Notice("Not saved: someone saved this panel first.", lines, (drop,))
    values = {**form, "on_top": "yes", "command_id": uuid4().hex}
    on_top = Choice("Put mine on top", f"{address_of(panel_id)}/edits", tuple(values.items()))
    return Notice("Not saved: someone saved this panel first.", lines, (on_top, drop))
