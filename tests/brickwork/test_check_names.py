"""Names of edges in findings, and the words for slivers: stable, and never a bare number of inches."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from shapes import CROSSED, example, rectangle

from app.brickwork.borders import borders
from app.brickwork.checks import findings
from app.brickwork.checks.joint_range import check as joint_range
from app.brickwork.checks.lap import check as lap
from app.brickwork.checks.left_out import check as left_out
from app.brickwork.layout import Layout, lay_out
from app.brickwork.place import Place
from app.brickwork.stretch import Stretch
from app.panel.values import Fit

WINDOW = {"openings": [{"mark": "W2", "rect": [40, 16, 30, 24]}]}
AROUND = {"zones": [{"mark": "Z1", "rect": [30, 10, 60, 40], "size": "modular", "bond": "stack"}]}
STEPPED = {"polygon": [[40, 16], [60, 16], [60, 30], [50, 30], [50, 40], [40, 40]]}


def laid(bond: str = "running", closers: bool = False, **more: Any) -> Layout:
    return lay_out(replace(rectangle(120, 60, bond, **more), fit=Fit(closers=closers)))


@pytest.mark.parametrize("bond", ["running", "flemish", "herringbone-45"])
def test_an_edge_inside_a_zone_keeps_its_own_name(bond: str) -> None:
    named = borders(laid(bond, **WINDOW, **AROUND))
    assert set(named.uprights.names) == {"left edge", "left jamb W2", "right jamb W2", "right edge"}
    assert set(named.levels.names) == {"base", "sill W2", "head W2", "top"}


def test_edges_without_a_name_are_counted_from_the_left_and_from_below() -> None:
    """A stepped opening, its inner side at 50 and its inner shelf at 30 in."""
    named = borders(laid(openings=[{"mark": "W1", **STEPPED}]))
    uprights = dict(zip(named.uprights.names, named.uprights.at.tolist(), strict=True))
    assert uprights["upright edge 1"] == pytest.approx(50)
    assert dict(zip(named.levels.names, named.levels.at.tolist(), strict=True))["level edge 1"] == pytest.approx(30)


def texts() -> Iterator[str]:
    for shape in CROSSED:
        for bond in ("running", "flemish", "herringbone-45"):
            panel = example(shape, bond=bond)
            for closers in (False, True):
                for one in findings(lay_out(replace(panel, fit=Fit(True, True, closers))), "mm"):
                    yield f"{one.about} {one.text}"


def test_no_finding_names_a_place_by_a_bare_number() -> None:
    assert not [text for text in texts() if re.search(r"\b(x|y|height) -?\d", text)]


def test_joints_beside_no_upright_edge_are_one_finding_of_their_zone() -> None:
    """A zone 61-1/4 in. wide and far from all edges of the face, where closers line joints up."""
    zone = {"mark": "Z1", "rect": [40, 8, 61.25, 44], "size": "modular", "bond": "running"}
    panel = replace(rectangle(160, 60, zones=[zone]), fit=Fit(closers=True))
    found = [one for one in lap(lay_out(panel), "mm") if "Z1" in one.about]
    assert [one.about for one in found] == ["away from upright edges in zone Z1"]
    assert found[0].text.startswith("Head joints line up away from upright edges in zone Z1 in ")


def test_joints_between_lines_of_another_panel_are_counted_from_below_and_those_at_a_zone_named_by_it() -> None:
    zone = {"mark": "Z1", "rect": [40, 16, 40, 24], "size": "modular", "bond": "running"}
    panel = rectangle(120, 60, zones=[zone])

    def abouts(*knots: float) -> list[str]:
        place = Place(courses=Stretch(knots, (knots[0], knots[1] + 2)))
        return [one.about for one in joint_range(lay_out(panel, place=place), "mm")]

    assert abouts(8.0, 24.0) == ["bed joints from control line 1"]
    assert abouts(40.0, 56.0) == ["bed joints from zone Z1, above"]


def residue(by: float, unit: str) -> list[str]:
    """Slivers of the top course where its foot stands `by` inches below the brick's top."""
    layout = lay_out(rectangle(23.625, 8 + by, margin=0, field={"size": "modular", "bond": "running"}))
    return [one.text for one in left_out(layout, unit)]


def test_slivers_thinner_than_a_rule_reads_are_one_note_an_edge() -> None:
    assert residue(0.003, "in") == ['4 slivers at top thinner than 1/64" left as joint.']
    assert residue(0.003, "mm") == ["4 slivers at top thinner than 0.5 mm left as joint."]


def test_slivers_that_a_rule_reads_are_told_one_by_one_by_their_size() -> None:
    assert len(residue(1 / 32, "in")) == 4
    assert all(' x 1/32" left as joint; thinner than 1/4"' in text for text in residue(1 / 32, "in"))
