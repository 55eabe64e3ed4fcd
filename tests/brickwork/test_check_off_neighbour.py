"""A panel whose courses or head joints do not run on from its wall's: what the check says of it."""

from dataclasses import replace
from typing import Any

import pytest
from shapes import rectangle

from app.brickwork.checks.off_neighbour import check
from app.brickwork.findings import Finding
from app.brickwork.layout import lay_out
from app.brickwork.place import Place
from app.brickwork.sizes import CATALOGUE
from app.brickwork.wall import place_in
from app.lengths import Length
from app.panel.project import Wall
from app.panel.values import Fit, Panel


def placed(panel: Panel, wall: tuple[float, float] | None) -> list[tuple[str, str]]:
    return [(one.severity, one.text) for one in check(lay_out(panel, place=Place(wall=wall)), "in")]


def test_a_panel_whose_own_origin_is_off_the_walls_is_told_by_how_much() -> None:
    panel = rectangle(64, 48)
    assert placed(panel, None) == []
    assert placed(panel, (8 * 3.0, 8.0 * 2)) == []
    ((severity, text),) = placed(panel, (-1.5, -0.5))
    assert severity == "warning"
    assert '1/2" above the wall\'s and head joints 1 1/2" right of them' in text


def test_a_released_panel_has_a_note() -> None:
    ((severity, text),) = placed(replace(rectangle(64, 48), released=True), (0.0, 1.0))
    assert severity == "note"
    assert '1" below' in text


def test_what_runs_on_is_not_told() -> None:
    ((_, courses),) = placed(rectangle(64, 48), (0.0, -0.5))
    assert courses == ("Courses stand 1/2\" above the wall's; take away the field's own origin to let them run on.")
    ((_, heads),) = placed(rectangle(64, 48), (-1.5, 0.0))
    assert heads.startswith("Head joints stand 1 1/2\" right of the wall's; take away")


def test_less_than_a_rule_reads_is_never_nothing() -> None:
    ((_, text),) = placed(rectangle(64, 48), (0.0, -0.004))
    assert text.startswith("Courses stand less than 1/64\" above the wall's")


def in_wall(mark: str, **more: Any) -> Panel:
    """240 x 160 in. with a joint's margin and the wall's own bond."""
    panel = rectangle(240, 160, **{"margin": 0.375, "field": {"size": "modular", "bond": "running"}, **more})
    return replace(panel, mark=mark)


def fitted(panel: Panel, *, is_asked: bool = True) -> tuple[Wall, Panel]:
    """A wall whose first panel's bed joints give for a window, and the panel beside it."""
    window = in_wall("P0", openings=[{"mark": "W1", "rect": [36, 37, 60.5, 70.25]}])
    return Wall("A", (replace(window, fit=Fit(courses=is_asked)), panel)), panel


def beside(panel: Panel, *, is_asked: bool = True) -> list[Finding]:
    wall, panel = fitted(panel, is_asked=is_asked)
    return list(check(lay_out(panel, place=place_in(wall, panel, CATALOGUE)), "in"))


def farthest(panel: Panel) -> tuple[int, float]:
    """Which course stands farthest from that of the first panel's layout, and by how much up; inches."""
    wall, _ = fitted(panel)
    first = lay_out(wall.panels[0], place=place_in(wall, wall.panels[0], CATALOGUE))
    own = lay_out(panel, place=place_in(wall, panel, CATALOGUE))
    pairs = zip(own.courses, first.courses, strict=True)
    course, off = max(((a.course, a.bottom - b.bottom) for a, b in pairs), key=lambda one: round(abs(one[1]), 6))
    return course, off


def test_a_panel_that_takes_the_walls_courses_runs_on() -> None:
    assert beside(in_wall("P1")) == []
    assert beside(in_wall("P1", field={"size": "modular", "bond": "flemish"})) == []


RELEASED = replace(in_wall("P1"), released=True)
OWN = replace(RELEASED, released=False, field=replace(RELEASED.field, origin=(Length(0), Length.from_inches(0.375))))


@pytest.mark.parametrize(("panel", "severity"), [(RELEASED, "note"), (OWN, "warning")])
def test_courses_that_do_not_give_as_the_walls_do_are_told_where_they_are_farthest_off(
    panel: Panel, severity: str
) -> None:
    """The course lines of both layouts are compared one by one."""
    (one,) = beside(panel)
    course, off = farthest(panel)
    assert abs(off) > 0.1
    assert one.severity == severity
    assert one.text.startswith(f"Course {course} stands ≈ ")
    assert f"{'above' if off > 0 else 'below'} the wall's, the farthest of all courses" in one.text


def test_a_bond_that_cannot_follow_the_walls_courses_is_told() -> None:
    for bond in ("herringbone-45", "basket-weave", "rowlock"):
        panel = in_wall("P1", field={"size": "modular", "bond": bond})
        (one,) = beside(panel)
        assert one.severity == "warning"
        assert "take a bond of plain courses" in one.text
        assert beside(panel, is_asked=False) == []
