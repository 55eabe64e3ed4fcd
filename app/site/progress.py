"""How far the work on a panel is, by the records made at its bed. Nothing is counted that nobody recorded."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from app.panel.record import STATES, Record


@dataclass(frozen=True, slots=True)
class Arrived:
    """A record and its place in the order of arrival."""

    record: Record
    arrival: int


@dataclass(frozen=True, slots=True)
class Progress:
    """The last word on each thing: its record, by kind and name; readings and findings all that were not corrected.

    `sheets`, `bricks`, `checks` and `steps` hold what stands now, so nothing that was taken back.
    """

    sheets: Mapping[str, Record] = field(default_factory=dict)
    bricks: Mapping[str, Record] = field(default_factory=dict)
    checks: Mapping[str, Record] = field(default_factory=dict)
    steps: Mapping[str, Record] = field(default_factory=dict)
    signs: Mapping[str, Record] = field(default_factory=dict)
    concrete: Record | None = None
    readings: tuple[Record, ...] = ()
    findings: tuple[Record, ...] = ()


TARGETS = {"sheet": "sheet", "brick": "step", "check": "item", "strip": "step", "sign": "role"}
"""What a record of each kind is about, by the name in its body."""


def in_order(arrived: Iterable[Arrived]) -> tuple[Record, ...]:
    """Each device's records in its own order, devices by arrival: never by a clock.

    A record that arrived late stands before those that its device made after it, wherever they are.
    """
    devices: dict[str, list[Arrived]] = {}
    for one in arrived:
        devices.setdefault(one.record.device, []).append(one)
    placed: list[tuple[int, int, Record]] = []
    for ours in devices.values():
        latest = 0
        for one in sorted(ours, key=lambda each: (each.record.sequence, each.arrival)):
            latest = max(latest, one.arrival)
            placed.append((latest, one.record.sequence, one.record))
    return tuple(record for _, _, record in sorted(placed, key=lambda each: each[:2]))


def progress(arrived: Iterable[Arrived]) -> Progress:
    """All of it; nothing for no records."""
    records = in_order(arrived)
    corrected = {record.corrects for record in records if record.corrects}
    standing = tuple(record for record in records if record.id not in corrected)
    last = {kind: dict(_standing(standing, kind)) for kind in TARGETS}
    concrete = [record for record in standing if record.kind == "concrete"]
    return Progress(
        sheets=last["sheet"],
        bricks=last["brick"],
        checks=last["check"],
        steps=last["strip"],
        signs=last["sign"],
        concrete=concrete[-1] if concrete and not _takes_back(concrete[-1]) else None,
        readings=tuple(one for one in standing if one.kind == "reading"),
        findings=tuple(one for one in standing if one.kind == "finding"),
    )


def _standing(records: Iterable[Record], kind: str) -> Iterator[tuple[str, Record]]:
    last = {record.body[TARGETS[kind]]: record for record in records if record.kind == kind}
    return ((name, record) for name, record in last.items() if not _takes_back(record))


def _takes_back(record: Record) -> bool:
    return record.kind in STATES and record.body["state"] == STATES[record.kind][-1]
