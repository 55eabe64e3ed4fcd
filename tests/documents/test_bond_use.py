"""A project's own bond is tried with the brick that it is laid in."""

from dataclasses import replace

import pytest
from panels import PLAIN, rect

from app.documents.bond_use import file_bond_faults, panel_bond_faults
from app.panel.own_bond import OwnBond, OwnCell
from app.panel.project import Project, Wall
from app.panel.values import Brickwork, Panel, Zone

# Courses a third of a head module high: modular brick has 3 courses in 8 in. and a head module of 8 in., so its
# gauge is just that (arithmetic); norman brick has the same gauge and a head module of 12 in., a third of which is 4.
THIRD = OwnBond("third", (OwnCell("stretcher", ("0", "0")),), ("P", "0"), ("1/2 P", "1/3 P"))
HOLED = OwnBond("holed", (OwnCell("stretcher", ("0", "0")),), ("P", "0"), ("0", "2 G"))


def project(*panels: Panel, bonds: tuple[OwnBond, ...] = (THIRD,)) -> Project:
    return Project("One", (Wall("A", panels),), bonds=bonds)


def laid(size: str, bond: str = "third") -> Panel:
    return replace(PLAIN, field=Brickwork(size, bond))


def test_a_bond_is_sound_with_the_brick_it_covers_the_face_with():
    whole = project(laid("modular"))
    assert file_bond_faults(whole) == ()
    assert panel_bond_faults(whole, laid("modular")) == ()


def test_a_bond_that_leaves_holes_with_the_brick_it_is_used_with_is_told_at_the_bond():
    faults = file_bond_faults(project(laid("modular"), laid("norman")))
    assert {fault.path for fault in faults} == {"bonds[0].cells"}
    assert "a hole of" in faults[0].found
    assert "with brick norman" in faults[0].found


def test_of_one_panel_it_is_told_where_the_panel_asks_for_the_bond():
    zone = Zone("S1", rect(60, 60, 40, 40), Brickwork("norman", "third"))
    (fault,) = panel_bond_faults(project(), replace(laid("modular"), zones=(zone,)))
    assert fault.path == "zones[0].bond"
    assert "with brick norman" in fault.found
    assert panel_bond_faults(project(), laid("norman"))[0].path == "field.bond"


@pytest.mark.parametrize("used", [(), (laid("norman", "running"),)], ids=["no panel", "another bond"])
def test_an_unused_bond_is_sound_when_some_brick_can_be_laid_in_it(used):
    assert file_bond_faults(project(*used)) == ()
    faults = file_bond_faults(project(*used, bonds=(THIRD, HOLED)))
    assert faults
    assert all(fault.path == "bonds[1].cells" for fault in faults)


def test_bonds_with_holes_are_told_three_at_a_time():
    many = tuple(replace(HOLED, name=f"holed {k}") for k in range(9))
    assert {fault.path for fault in file_bond_faults(project(bonds=many))} == {f"bonds[{k}].cells" for k in range(3)}


def test_the_usual_bonds_are_not_tried():
    assert file_bond_faults(project(laid("norman", "soldier"), bonds=())) == ()
