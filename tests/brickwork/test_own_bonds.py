"""A project's own bonds: read, checked for overlap and gaps, and laid like the built-in ones."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from laws import assert_laws, assert_same_pieces
from shapes import example, rectangle

from app.brickwork.bond import ZERO, G, P, S
from app.brickwork.bond_faults import tiling_faults
from app.brickwork.bonds import BONDS
from app.brickwork.layout import lay_out
from app.brickwork.own_bonds import MOST_CELLS, all_own_bond_faults, known_bonds, own_bond, own_bond_faults
from app.brickwork.sizes import CATALOGUE
from app.panel.faults import Fault, Refused
from app.panel.own_bond import ModulePoint, OwnBond, OwnCell
from app.panel.project import Project
from app.panel.values import Panel

MODULAR = CATALOGUE["modular"]
SIZES = tuple(CATALOGUE.values())
TOUCH, NO_GAP = "cells that touch and do not overlap", "cells that cover the face without a gap"


def own(
    *cells: tuple[str, str, str], across: ModulePoint, up: ModulePoint, name: str = "ours", turn: float = 0.0
) -> OwnBond:
    return OwnBond(name, tuple(OwnCell(kind, (x, y)) for kind, x, y in cells), across, up, turn)


RUNNING = own(("stretcher", "0", "0"), across=("P", "0"), up=("1/2 P", "G"))
FLEMISH = own(("stretcher", "0", "0"), ("header", "P", "0"), across=("3/2 P", "0"), up=("3/4 P", "G"))
SOLDIERS = own(("soldier", "0", "0"), across=("S", "0"), up=("0", "P"))
WEAVE = own(
    ("shiner", "0", "0"),
    ("shiner", "0", "P/2"),
    ("sailor", "P", "0"),
    ("sailor", "3/2 P", "0"),
    across=("2 P", "0"),
    up=("P", "P"),
)
ALIKE = {"running": RUNNING, "flemish": FLEMISH, "soldier": SOLDIERS, "basket-weave": WEAVE}


@pytest.mark.parametrize("built_in", ALIKE)
def test_an_own_bond_typed_like_a_built_in_one_is_that_bond(built_in: str) -> None:
    bond = own_bond(ALIKE[built_in])
    assert replace(bond, name=built_in, words=BONDS[built_in].words) == BONDS[built_in]
    assert own_bond_faults(ALIKE[built_in], SIZES) == ()


def _in_own(panel: Panel) -> Panel:
    return replace(panel, field=replace(panel.field, bond="ours"))


@pytest.mark.parametrize("built_in", ALIKE)
def test_it_is_laid_like_the_built_in_one(built_in: str) -> None:
    panel = example("window", bond=built_in)
    bonds = known_bonds(Project("Yard", (), bonds=(ALIKE[built_in],)))
    assert_same_pieces(lay_out(panel), lay_out(_in_own(panel), CATALOGUE, bonds))


@pytest.mark.parametrize(
    ("across", "up"),
    [
        (("1/2 P", "G"), ("P", "0")),
        (("P", "0"), ("-1/2 P", "-G")),
        (("-P", "0"), ("1/2 P", "G")),
        (("0", "2 G"), ("1/2 P", "G")),
        (("3/2 P", "G"), ("1/2 P", "G")),
    ],
)
def test_other_vectors_of_the_same_repeat_lay_the_same_bricks(across: ModulePoint, up: ModulePoint) -> None:
    panel = rectangle(60, 40)
    bond = own_bond(replace(RUNNING, across=across, up=up))
    assert tiling_faults(bond, MODULAR) == ()
    layout = lay_out(_in_own(panel), CATALOGUE, {"ours": bond})
    assert_laws(layout)
    assert_same_pieces(lay_out(panel), layout)


def _only(own: OwnBond, unit: str = "in") -> Fault:
    (fault,) = own_bond_faults(own, [MODULAR], unit)
    return fault


def test_a_hole_is_told_with_its_area_and_place() -> None:
    """A stretcher and a header in the length of two stretchers: half a module of 4 in. by 8/3 in. stays open."""
    fault = _only(own(("stretcher", "0", "0"), ("header", "P", "0"), across=("2 P", "0"), up=("0", "G")))
    assert str(fault) == (
        'cells: found a hole of 10.67 sq in. at x 1\'-0" (1.5 P), y 0" (0 G) with brick modular, '
        "expected cells that cover the face without a gap"
    )


def test_an_open_course_is_a_hole_without_end() -> None:
    fault = _only(own(("stretcher", "0", "0"), across=("P", "0"), up=("0", "2 G")))
    assert fault.found == 'a hole of 21.33 sq in. at x 0" (0 P), y ≈ 2 43/64" (1 G) with brick modular'


def test_a_hole_between_pinwheels_is_told_once() -> None:
    """Four bricks around a square hole as wide as a brick is long less its height, here P - G."""
    cells = (("stretcher", "0", "0"), ("soldier", "P", "0"), ("stretcher", "S", "P"), ("soldier", "0", "G"))
    wheel = own(*cells, across=("P + S", "0"), up=("0", "P + G"))
    fault = _only(wheel)
    hole = 8 * 8 + (8 + 2.625) * (8 + 8 / 3) - 64 - 2 * 8 * (8 / 3 + 2.625)
    assert (fault.path, fault.expected) == ("cells", NO_GAP)
    assert fault.found.startswith(f'a hole of {hole:,.2f} sq in. at x 2 5/8" (0.328 P), y ≈ 2 43/64" (1 G)')


def test_an_overlap_is_told_with_its_area_and_place() -> None:
    """The header starts 2 in. too far left: 2 by 8/3 in."""
    fault = _only(own(("stretcher", "0", "0"), ("header", "3/4 P", "0"), across=("5/4 P", "0"), up=("3/4 P", "G")))
    assert str(fault) == (
        'cells[1]: found an overlap with cells[0] of 5.33 sq in. at x 6" (0.75 P), y 0" (0 G) with brick modular, '
        "expected cells that touch and do not overlap"
    )


def test_a_project_in_millimetres_is_told_in_millimetres() -> None:
    shifted = own(("stretcher", "0", "0"), ("header", "1/2 P", "0"), across=("3/2 P", "0"), up=("3/4 P", "G"))
    overlap, hole = own_bond_faults(shifted, [CATALOGUE["german nf"]], "mm")
    assert overlap.found.endswith("of 10,417 sq mm at x 125 mm (0.5 P), y 0 mm (0 G) with brick german nf")
    assert hole.found.startswith("a hole of 10,417 sq mm at x ≈ 63 mm (0.25 P), y ≈ 83 mm (1 G)")


def test_a_cell_over_its_own_repeat_is_an_overlap() -> None:
    fault = _only(own(("stretcher", "0", "0"), across=("3/4 P", "0"), up=("0", "G")))
    assert (fault.path, fault.expected) == ("cells[0]", TOUCH)
    assert fault.found == 'an overlap with its own repeat of 5.33 sq in. at x 0" (0 P), y 0" (0 G) with brick modular'


def test_cells_far_from_the_corner_are_told_where_they_were_typed() -> None:
    """The same bond with its header twenty modules on; overlap 2 in. wide at 20-3/4 modules."""
    far = own(("stretcher", "0", "0"), ("header", "20 P + 3/4 P", "0"), across=("5/4 P", "0"), up=("3/4 P", "G"))
    assert 'of 5.33 sq in. at x 13\'-10" (20.75 P), y 0" (0 G)' in _only(far).found


def test_a_repeat_shorter_than_a_cell_is_narrow_is_told_at_once() -> None:
    fault = _only(own(("stretcher", "0", "0"), across=("1/1000 P", "0"), up=("0", "G")))
    assert fault.path == "cells[0]"
    assert fault.expected == 'a repeat of at least ≈ 2 43/64"'


def test_a_bond_may_close_with_one_brick_and_not_with_another() -> None:
    """Three lying stretchers beside three soldiers' width: a square only where three courses make a head module."""
    weave = own(
        *(("stretcher", "0", f"{k} G") for k in range(3)), ("shiner", "P", "0"), across=("2 P", "0"), up=("P", "P")
    )
    closed = own(*(("stretcher", "0", f"{k} G") for k in range(3)), across=("P", "0"), up=("0", "P"))
    assert own_bond_faults(closed, [MODULAR, CATALOGUE["utility"]]) == ()
    assert [fault.path for fault in own_bond_faults(closed, SIZES)] != []
    assert "with brick engineer modular" in own_bond_faults(closed, SIZES)[0].found
    assert own_bond_faults(weave, SIZES)[0].expected == NO_GAP


@pytest.mark.parametrize(
    ("change", "path", "found"),
    [
        ({"cells": ()}, "cells", "no cells"),
        ({"cells": (OwnCell("stretcher", ("0", "0")),) * (MOST_CELLS + 1)}, "cells", "201 cells"),
        ({"cells": (OwnCell("strecher", ("0", "0")),)}, "cells[0].kind", "'strecher'"),
        ({"cells": (OwnCell("soldier 1/3", ("0", "0")),)}, "cells[0].kind", "'soldier 1/3'"),
        ({"cells": (OwnCell("header 1/9", ("0", "0")),)}, "cells[0].kind", "'header 1/9'"),
        ({"cells": (OwnCell("header", ("0", "2 Q")),)}, "cells[0].at[1]", "'2 Q', character 3: Q"),
        ({"across": ("", "0")}, "across[0]", "nothing"),
        ({"across": ("0", "P - P")}, "across", "no step at all"),
        ({"up": ("2 P", "0")}, "up", "the same direction as across with brick modular"),
        ({"name": " "}, "name", "nothing"),
        ({"name": "flemish"}, "name", "'flemish'"),
        ({"turn": float("inf")}, "turn", "inf degrees"),
    ],
)
def test_what_is_wrong_is_told_with_its_place(change: dict[str, object], path: str, found: str) -> None:
    faults = own_bond_faults(replace(RUNNING, **change), [MODULAR])  # type: ignore[arg-type]
    assert [(fault.path, fault.found) for fault in faults] == [(path, found)]


def test_every_fault_of_reading_is_told_at_once() -> None:
    bad = own(("brick", "?", "0"), across=("", "P"), up=("0", "4"))
    assert [fault.path for fault in own_bond_faults(bad, SIZES)] == [
        "cells[0].kind",
        "cells[0].at[0]",
        "across[0]",
        "up[1]",
    ]
    with pytest.raises(Refused) as raised:
        own_bond(bad)
    assert len(raised.value.faults) == 4


def test_vectors_that_turn_the_other_way_with_one_brick_are_told() -> None:
    """S - 2/5 P is down for modular and roman brick and up for closure brick; in no case do the cells close."""
    turning = own(("stretcher", "0", "0"), across=("P", "0"), up=("0", "S - 2/5 P"))
    found = [own_bond_faults(turning, [CATALOGUE[name]])[0].path for name in ("modular", "closure", "roman")]
    assert found == ["cells[0]", "up", "cells"]


def test_two_bonds_of_a_project_need_two_names() -> None:
    faults = all_own_bond_faults([RUNNING, FLEMISH], [MODULAR])
    assert faults == (Fault("bonds[1].name", "'ours' again", "another name for each bond"),)
    other = replace(FLEMISH, name="theirs", cells=FLEMISH.cells[:1])
    assert [fault.path for fault in all_own_bond_faults([RUNNING, other], [MODULAR])] == ["bonds[1].cells"]


def test_a_project_knows_the_built_in_bonds_and_its_own() -> None:
    known = known_bonds(Project("Yard", (), bonds=(RUNNING,)))
    assert list(known) == [*BONDS, "ours"]
    assert (known["ours"].across, known["ours"].up) == ((P, ZERO), (P / 2, G))


@pytest.mark.parametrize("size", CATALOGUE)
@pytest.mark.parametrize("bond", BONDS)
def test_no_built_in_bond_has_a_fault(bond: str, size: str) -> None:
    assert tiling_faults(BONDS[bond], CATALOGUE[size]) == ()


@settings(max_examples=60, deadline=None, derandomize=True)
@given(st.sampled_from(sorted(BONDS)), st.sampled_from(sorted(CATALOGUE)), st.data())
def test_a_bond_less_one_cell_has_a_hole_and_with_one_twice_an_overlap(
    name: str, size: str, data: st.DataObject
) -> None:
    bond, brick = BONDS[name], CATALOGUE[size]
    cell = data.draw(st.sampled_from(bond.cells))
    twice = tiling_faults(replace(bond, cells=(*bond.cells, cell)), brick)
    assert [fault.path for fault in twice] == [f"cells[{len(bond.cells)}]"]
    less = tiling_faults(replace(bond, cells=tuple(other for other in bond.cells if other is not cell)), brick)
    assert {fault.path for fault in less} == {"cells"}


def _header_courses(every: int) -> OwnBond:
    """Running courses with every n-th of headers a third of a stretcher long."""
    running = [("stretcher", f"{k % 2}/2 P", f"{k} G") for k in range(every - 1)]
    headers = [("header 1/3", f"{k}/3 P - 1/6 P", f"{every - 1} G") for k in range(3)]
    return own(*running, *headers, across=("P", "0"), up=("0", f"{every} G"))


@pytest.mark.parametrize(("every", "more"), [(5, Fraction(2, 5)), (6, Fraction(2, 6)), (7, Fraction(2, 7))])
def test_headers_a_third_of_a_stretcher_add_two_a_module_every_nth_course(every: int, more: Fraction) -> None:
    """12 in. brick, header 4 in. with its joint (3-5/8 face): units of one repeat against one stretcher a module and
    course. Source: BIA Technical Notes 10, bond correction factors, from memory; equal to this geometry."""
    bond, utility = own_bond(_header_courses(every)), CATALOGUE["utility"]
    assert own_bond_faults(_header_courses(every), [utility]) == ()
    assert bond.cells[-1].face(utility) == pytest.approx((3.625, 3.625))
    (width, _), (_, height) = bond.across, bond.up
    stretchers = round(width.inches(utility) / utility.head_module * height.inches(utility) / utility.gauge)
    assert Fraction(len(bond.cells), stretchers) == 1 + more


def test_standing_units_a_third_as_wide_keep_their_length() -> None:
    size = CATALOGUE["utility"]
    cells = own_bond(
        own(
            ("sailor 1/3", "0", "0"),
            ("rowlock 1/3", "0", "0"),
            ("shiner 1/3", "0", "0"),
            across=("P", "0"),
            up=("0", "P"),
        )
    ).cells
    faces = np.array([cell.face(size) for cell in cells])
    assert faces == pytest.approx(np.array([[3.625, 11.625], [3.625, 3.625], [11.625, 3.625]]))
    assert [(cell.width, cell.height) for cell in cells] == [(P / 3, P), (S, P / 3), (P, P / 3)]
