"""Corner units that are cut: each from one corner unit, for no flat brick turns a corner."""

from collections import Counter, defaultdict
from collections.abc import Sequence

from app.brickwork.cuts import CUTS
from app.brickwork.layout import Layout
from app.brickwork.returns import Leg, Return, size_of
from app.order.rules import Rules
from app.order.saw_seats import seats_of
from app.order.saw_steps import inches, step_of, to_step
from app.order.saw_values import CornerCut
from app.order.work import FaceWork
from app.panel.tolerance import TOLERANCE

_Key = tuple[str, str, int, str, int, int, int]
_Places = Counter[tuple[str, str, int]]


def corner_cuts(faces: Sequence[FaceWork], rules: Rules) -> tuple[CornerCut, ...]:
    """Groups of equal cuts by size, hand and colour; none where no unit is cut."""
    groups: defaultdict[_Key, _Places] = defaultdict(Counter)
    step = step_of(rules.length_unit)
    for face in faces:
        for one in face.around:
            for leg in one.legs:
                if leg.is_cut or leg.is_shortened:
                    groups[_key(face, one, leg, step)][_place(face.layout, leg)] += 1
    return tuple(_row(key, groups[key], rules) for key in sorted(groups))


def _row(key: _Key, places: _Places, rules: Rules) -> CornerCut:
    size, hand, colour, cut, face_leg, return_leg, height = key
    legs = inches(face_leg), inches(return_leg), inches(height)
    return CornerCut(size, hand, cut, *legs, places.total(), seats_of(places), rules.colour_name(colour))


def _key(face: FaceWork, one: Return, leg: Leg, step: int) -> _Key:
    layout, colour = face.layout, int(face.colours[leg.unit])
    size = size_of(layout, leg.unit)
    length, height = size.length.inches, size.height.inches
    measures = (to_step(leg.face_leg, length, step), to_step(leg.return_leg, length, step))
    cut = _class(layout, leg, height)
    return size.name, one.hand, colour, cut, *measures, to_step(leg.height, height, step)


def _class(layout: Layout, leg: Leg, height: float) -> str:
    """The class of the face's cut, where the unit has one of another class than length."""
    units, trims = layout.units, layout.trims
    if units.is_trimmed[leg.unit]:
        of_unit = [CUTS[cut] for cut in trims.cut[trims.unit == leg.unit].tolist() if CUTS[cut] != "length"]
        if of_unit:
            return of_unit[0]
    return "height" if leg.height < height - TOLERANCE else "length"


def _place(layout: Layout, leg: Leg) -> tuple[str, str, int]:
    mark = layout.regions[int(layout.units.zone[leg.unit])].mark
    return layout.panel.mark, "" if mark == "field" else mark, int(layout.units.course[leg.unit])
