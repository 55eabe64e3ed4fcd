"""The keys of a bond of the project's own."""

from typing import Any

from app.brickwork.own_bonds import MOST_CELLS, own_bond_faults
from app.documents.kinds import Number, Setting, Text, in_words, refuse
from app.documents.records import Key, Listed, Record, always
from app.panel.faults import Fault, Refused
from app.panel.own_bond import OwnBond, OwnCell

LONGEST_NAME = 60
LONGEST_SUM = 60

_SUM = 'a sum of modules as text, such as "1/2 P", "2 G" or "S - P", or 0'
_NOTHING = "0"


class _Sum:
    """A sum of modules as typed; a plain 0 is one as well."""

    def read(self, value: Any, setting: Setting) -> str:
        if _is_zero(value):
            return _NOTHING
        if not isinstance(value, str):
            raise refuse(in_words(value), _SUM)
        return Text(_SUM, LONGEST_SUM).read(value, setting)

    def write(self, value: str, setting: Setting, like: Any) -> str | int | float:  # noqa: ARG002
        said: str | int | float = like if _is_zero(like) and value == _NOTHING else value
        return said


class _Pair:
    """Two sums of modules: across and up."""

    def read(self, value: Any, setting: Setting) -> tuple[str, ...]:
        if not isinstance(value, list) or len(value) != 2:
            raise refuse(in_words(value), "a list of 2 sums of modules: across, up")
        sums, faults = [], list[Fault]()
        for place, said in enumerate(value):
            try:
                sums.append(_Sum().read(said, setting))
            except Refused as refused:
                faults += [fault.under(f"[{place}]") for fault in refused.faults]
        if faults:
            raise Refused(faults)
        return tuple(sums)

    def write(self, value: tuple[str, str], setting: Setting, like: Any) -> list[str | int | float]:
        before = like if isinstance(like, list) and len(like) == 2 else [None, None]
        return [_Sum().write(said, setting, old) for said, old in zip(value, before, strict=True)]


def _is_zero(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and value == 0


CELL = Record("a cell", OwnCell, (Key("kind", Text("a kind", LONGEST_SUM)), Key("at", _Pair())))


def _faults(own: OwnBond, setting: Setting) -> tuple[Fault, ...]:
    """What cannot be read; overlaps and holes depend on brick sizes, which are looked at with the whole file."""
    return own_bond_faults(own, (), setting.length_unit)


BOND = Record(
    "a bond",
    OwnBond,
    (
        Key("name", Text("a name", LONGEST_NAME)),
        Key("cells", Listed("cells", CELL, MOST_CELLS)),
        Key("across", _Pair()),
        Key("up", _Pair()),
        Key("turn", Number("a turn in degrees", -360, 360), always(0.0)),
    ),
    faults=_faults,
)
