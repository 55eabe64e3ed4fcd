"""What to order as comma-separated text, from the same lines as the project's JSON."""

import csv
import io
from collections.abc import Mapping, Sequence
from typing import Any

from app.panel.cells import guarded

Line = Mapping[str, Any]

COLUMNS = (
    ("Item", "item"),
    ("Kind", "kind"),
    ("Net", "net"),
    ("Overage", "overage"),
    ("Order", "order"),
    ("Unit", "unit"),
    ("Size", "size"),
    ("Colour", "colour"),
    ("Topic", "topic"),
    ("Weight", "weight"),
    ("Weight in", "weight_unit"),
    ("Overage because", "reason"),
    ("Counted", "note"),
)
PACKS = (("Cartons", "carton"), ("Pallets", "pallet"), ("Packs", "pack"))


def takeoff_csv(lines: Sequence[Line]) -> str:
    """Head and lines, text guarded; the head alone for no lines. RFC 4180."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(name for name, _ in (*COLUMNS, *PACKS))
    writer.writerows(_row(line) for line in lines)
    return text.getvalue()


def _row(line: Line) -> list[Any]:
    packs = {pack["name"]: pack["count"] for pack in line["packs"]}
    return [*(_cell(line[key]) for _, key in COLUMNS), *(packs.get(name, "") for _, name in PACKS)]


def _cell(value: Any) -> Any:
    if value is None:
        return ""
    return guarded(value) if isinstance(value, str) else value
