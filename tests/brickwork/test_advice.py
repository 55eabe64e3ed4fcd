"""Advice is worth what it says: every number is counted again on a face that was laid out afresh.

The door case: Masonry Construction magazine, *Eliminating odd-size bricks around openings* (a 6 ft door centred in an
11 ft wall leaves 6 in. and 2 in. pieces at every jamb); *Bricking around openings* (at jambs no piece smaller than the
unit's width: a half and a three-quarter instead).
"""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from panels import inch
from random_panels import Document, panels
from shapes import case, example, rectangle

from app.brickwork.advice import Advice, advise
from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.brickwork.place import Place
from app.brickwork.sizes import CATALOGUE
from app.brickwork.wall import place_in
from app.documents.project_file import read_panel, read_project
from app.panel.edits import edit_from
from app.panel.project import Wall
from app.panel.values import Fit, Panel

COURSE = 8 / 3
JOINT = COURSE - 2.25
"""Modular: three courses to 8 in. (BIA TN 10), the bed joint what the catalogue's 2 1/4 in. brick leaves."""


def _advice(panel: Panel, unit: str = "in") -> tuple[Advice, ...]:
    return advise(lay_out(panel), CATALOGUE, BONDS, unit)


def _taken(panel: Panel, advice: Advice, unit: str = "in") -> Layout:
    """The face once the advice's edit is made, checked as any edit is."""
    return lay_out(edit_from(advice.edit, dict(advice.values), unit).apply(panel, unit))


def _changes(before: Layout, after: Layout) -> tuple[int, int, int]:
    return (
        len(after.trims) - len(before.trims),
        after.small - before.small,
        len(after.left_out.unit) - len(before.left_out.unit),
    )


def _assert_kept(panel: Panel, unit: str = "in") -> tuple[Advice, ...]:
    """Every piece of advice does what it says, makes the face better, and they come best first."""
    before, found = lay_out(panel), _advice(panel, unit)
    for advice in found:
        told = (advice.trimmed, advice.small, advice.left_out)
        assert told == _changes(before, _taken(panel, advice, unit)), advice.text
        assert 10 * advice.small + advice.trimmed + 10 * advice.left_out < 0
    scores = [advice.score for advice in found]
    assert scores == sorted(scores)
    assert len(found) <= 8
    return found


def _lengths_at(layout: Layout, jamb: float, ends: bool, below: float) -> set[float]:
    """Lengths of the pieces beside a jamb, in courses wholly below a height."""
    units = layout.units
    edge = units.x + units.width if ends else units.x
    chosen = (units.y + units.height < below) & (abs(edge - jamb) < 0.5)
    return {round(float(width), 3) for width in units.width[chosen]}


def _window(x: float, y: float, width: float, height: float, **more: object) -> Panel:
    return rectangle(96, 80, openings=[{"mark": "W1", "use": "window", "rect": [x, y, width, height]}], **more)


def test_closers_turn_the_two_inch_pieces_beside_the_door_into_halves_and_three_quarters() -> None:
    panel = case("door")
    before = lay_out(panel)
    assert 2.0 in _lengths_at(before, 30, ends=True, below=84)
    advice = next(one for one in _advice(panel) if one.edit == "set_fit")
    assert advice.text == "Closers at the ends of courses"
    after = _taken(panel, advice)
    assert _lengths_at(after, 30, ends=True, below=84) == {3.625, 6.0}
    assert advice.small == -before.small
    assert after.small == 0


def test_or_the_door_moves_and_no_small_piece_is_left_at_its_jambs() -> None:
    panel = case("door")
    advice = next(one for one in _advice(panel) if one.edit == "move_openings")
    assert advice.text == "D1 right 1 5/8 in."
    assert advice.question == (
        "Can D1 go right 1 5/8 in., the left jamb to 2'-7 5/8\" from the left of the panel?"
        " It saves 32 cuts and 31 small pieces."
    )
    after = _taken(panel, advice)
    assert _lengths_at(after, 31.625, ends=True, below=84) == {3.625, 7.625}
    assert _lengths_at(after, 104, ends=False, below=84) == {4.0, 7.625}
    assert after.small == 0


def test_the_door_stays_on_its_floor() -> None:
    for advice in _advice(case("door")):
        values = dict(advice.values)
        assert values.get("dy", "0") == "0"
        assert values.get("side") != "sill"


def test_a_head_that_is_five_eighths_off_goes_up_five_eighths() -> None:
    foot, sill = 20 * COURSE, 9 * COURSE - JOINT
    panel = _window(8, sill, 79.625, foot - 0.625 - sill, smallest_cut=0.125)
    advice = next(one for one in _assert_kept(panel) if one.values[1:2] == (("side", "head"),))
    assert advice.text == "Head of W1 up 5/8 in."
    moved = edit_from(advice.edit, dict(advice.values), "in").apply(panel).openings[0].shape
    assert moved.y.inches + moved.height.inches == pytest.approx(foot, abs=1e-6)
    after = _taken(panel, advice)
    assert advice.trimmed == len(after.trims) - len(lay_out(panel).trims) < 0
    assert advice.effect == f"{-advice.trimmed} cuts fewer"


@pytest.mark.parametrize(("off", "way"), [(0.625, "up"), (-0.625, "down")])
def test_a_head_off_either_way_goes_the_short_way(off: float, way: str) -> None:
    panel = _window(24, 24 - JOINT, 31.625, 32 - off + JOINT)
    texts = [one.text for one in _assert_kept(panel)]
    assert f"Head of W1 {way} 5/8 in." in texts


def test_openings_that_share_a_head_go_together() -> None:
    openings = [
        {"mark": "W1", "rect": [8, 24 - JOINT, 23.625, 31.375 + JOINT]},
        {"mark": "W2", "rect": [56, 32 - JOINT, 23.625, 23.375 + JOINT]},
    ]
    found = _assert_kept(rectangle(96, 80, openings=openings))
    advice = next(one for one in found if one.text == "Head of W1, W2 up 5/8 in.")
    assert dict(advice.values) == {"marks": "W1, W2", "side": "head", "by": '5/8"'}
    assert advice.question.startswith(
        "Can the heads of W1 and W2 go up 5/8 in., to 4'-8\" above the foot of the panel? It saves "
    )
    assert (advice.x, advice.y) == (pytest.approx(8 + 23.625 / 2), pytest.approx(55.375))


def test_a_face_that_courses_out_needs_no_advice_about_its_opening() -> None:
    panel = _window(23.625, 24 - JOINT, 32.375, 32 + JOINT)
    assert not [one for one in _advice(panel) if one.edit in ("move_openings", "resize_openings")]


def test_the_bond_of_a_wall_stays_where_it_is() -> None:
    panel = rectangle(93, 61.5)
    assert any(one.edit == "set_origin" for one in _advice(panel))
    placed = lay_out(panel, CATALOGUE, BONDS, Place(origin=(1.0, 0.0)))
    assert not any(one.edit == "set_origin" for one in advise(placed, CATALOGUE, BONDS))


def test_no_opening_is_moved_over_another_or_off_the_face() -> None:
    openings = [{"mark": "W1", "rect": [0.5, 8, 39, 20]}, {"mark": "W2", "rect": [39.75, 8, 30, 20]}]
    panel = rectangle(70, 40, openings=openings)
    for advice in _assert_kept(panel):
        assert _taken(panel, advice).area.openings > 0


def test_metric_advice_is_in_millimetres() -> None:
    panel = case("door")
    found = _assert_kept(panel, "mm")
    move = next(one for one in found if one.edit == "move_openings")
    assert move.text == "D1 right ≈ 41 mm"
    assert dict(move.values) == {"marks": "D1", "dx": "41.275", "dy": "0"}


@pytest.mark.parametrize("unit", ["in", "ft", "mm", "cm", "m"])
def test_the_fields_are_read_back_exactly_in_every_unit(unit: str) -> None:
    texts = [one.effect for one in _assert_kept(case("b1"), unit)]
    assert texts == [one.effect for one in _advice(case("b1"))]


def test_at_most_as_many_as_asked_for() -> None:
    layout = lay_out(case("b1"))
    assert advise(layout, CATALOGUE, BONDS, most=3) == advise(layout, CATALOGUE, BONDS)[:3]
    assert advise(layout, CATALOGUE, BONDS, most=0) == ()


def test_an_empty_field_gets_none() -> None:
    panel = rectangle(20, 20, margin=10)
    assert lay_out(panel).field.is_empty
    assert _advice(panel) == ()


def test_a_herringbone_gets_no_advice_about_openings() -> None:
    found = _assert_kept(example("window", bond="herringbone-45"))
    assert {one.edit for one in found} <= {"set_fit"}


@pytest.mark.parametrize("shape", ["window", "two windows", "door", "arch", "edges", "soldier band", "stack panel"])
@pytest.mark.parametrize("bond", ["running", "flemish", "english", "stack"])
def test_what_is_said_is_what_is_counted(shape: str, bond: str) -> None:
    _assert_kept(example(shape, bond=bond))


@given(panels())
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_what_is_said_is_what_is_counted_on_random_panels(document: Document) -> None:
    _assert_kept(read_panel(document))


@given(panels(), st.builds(Fit, st.booleans(), st.booleans(), st.booleans()))
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_so_it_is_where_joints_give_and_courses_have_closers(document: Document, fit: Fit) -> None:
    _assert_kept(replace(read_panel(document), fit=fit))


def test_advice_taken_one_after_another_leaves_a_better_face_each_time() -> None:
    panel, scores = case("b1"), []
    for _ in range(4):
        layout = lay_out(panel)
        scores.append(10 * layout.small + len(layout.trims) + 10 * len(layout.left_out.unit))
        best = _advice(panel)[0]
        panel = edit_from(best.edit, dict(best.values), "in").apply(panel)
    assert scores == sorted(scores, reverse=True)
    assert len(set(scores)) == 4


def test_least_pieces_typed_on_the_panel_count() -> None:
    panel = _window(26, 24 - JOINT, 32, 32 + JOINT)
    assert all(one.small == 0 for one in _assert_kept(replace(panel, least_piece=inch(1))))


FOLLOWS = "; the wall's courses follow"


def _wall(*panels: Document) -> Wall:
    head = {"format": "castcourse-project/1", "name": "x", "length_unit": "in", "temperature_unit": "F"}
    return read_project(head | {"walls": [{"mark": "A", "datum": 0, "joint": 0.75, "panels": list(panels)}]}).walls[0]


def _of_wall(mark: str, openings: list[Document], **more: object) -> Document:
    outline = [[0, 0], [112, 0], [112, 96], [0, 96]]
    panel = {"mark": mark, "thickness": 7.25, "margin": 0, "outline": outline, "openings": openings}
    return {**panel, "field": {"size": "modular", "bond": "running"}, **more}


def _in(wall: Wall) -> tuple[Layout, ...]:
    return tuple(lay_out(panel, place=place_in(wall, panel, CATALOGUE)) for panel in wall.panels)


def _place_of(wall: Wall) -> Callable[[Panel], Place]:
    return lambda changed: place_in(wall, changed, CATALOGUE)


def _taken_in(wall: Wall, k: int, advice: Advice) -> Wall:
    """The wall once the advice's edit of panel k is made."""
    panels = list(wall.panels)
    panels[k] = edit_from(advice.edit, dict(advice.values), "in").changed(panels[k])
    return replace(wall, panels=tuple(panels))


def _courses_of(layout: Layout) -> dict[int, float]:
    return {course.course: course.bottom for course in layout.courses}


def _assert_kept_in(wall: Wall, k: int) -> tuple[Advice, ...]:
    """Every claimed number is that of the edited panel in the edited wall, and no neighbour moves unsaid."""
    before = _in(wall)
    found = advise(before[k], CATALOGUE, BONDS, place_of=_place_of(wall))
    for advice in found:
        after = _in(_taken_in(wall, k, advice))
        assert (advice.trimmed, advice.small, advice.left_out) == _changes(before[k], after[k]), advice.text
        old, new = _courses_of(before[1 - k]), _courses_of(after[1 - k])
        is_moved = old.keys() != new.keys() or not np.allclose(list(old.values()), list(new.values()), 0, 1e-6)
        assert advice.effect.endswith(FOLLOWS) or not is_moved, advice.text
    return found


@st.composite
def _panels_of_wall(draw: st.DrawFn, mark: str) -> Document:
    """Two windows whose sills and heads stand within 3/4 in. of a course."""
    off = st.integers(-12, 12).map(lambda sixteenths: sixteenths / 16)
    openings = []
    for k in range(2):
        sill = draw(st.integers(6, 8)) * COURSE - JOINT + draw(off)
        head = draw(st.integers(19, 24)) * COURSE + draw(off)
        width = draw(st.sampled_from([31.625, 32]))
        openings.append({"mark": f"W{k + 1}", "rect": [12 + 44 * k, sill, width, head - sill]})
    return _of_wall(
        mark,
        openings,
        field={"size": "modular", "bond": draw(st.sampled_from(["running", "flemish", "stack"]))},
        fit={name: draw(st.booleans()) for name in ("courses", "heads", "closers")},
        base=draw(st.sampled_from([0, 5, COURSE])),
        released=draw(st.integers(0, 4)) == 4,
    )


@given(_panels_of_wall("P1"), _panels_of_wall("P2"))
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_what_is_said_is_what_is_counted_in_a_wall_whose_bed_joints_give(one: Document, two: Document) -> None:
    wall = _wall(one, two)
    for k in range(2):
        _assert_kept_in(wall, k)


def _neighbours(head: float, gives: bool, **more: object) -> Wall:
    """The window of the first panel has its sill on a course, its head `head` inches above the foot of the 18th."""
    sill = 9 * COURSE - JOINT
    window = {"mark": "W1", "rect": [16, sill, 79.625, 18 * COURSE + head - sill]}
    first = _of_wall("P1", [window], smallest_cut=0.125, fit={"courses": gives})
    return _wall(first, _of_wall("P2", [], **more))


def _effects(found: tuple[Advice, ...]) -> dict[str, str]:
    return {advice.text: advice.effect for advice in found}


def test_where_the_courses_of_the_neighbour_move_the_effect_says_that_the_wall_follows() -> None:
    effects = _effects(_assert_kept_in(_neighbours(0.125, gives=False), 0))
    assert effects["Bed joints that give"] == "10 cuts fewer; the wall's courses follow"
    assert not effects["Head of W1 down 1/8 in."].endswith(FOLLOWS)


def test_so_they_do_where_a_window_is_moved_in_a_wall_whose_joints_give_already() -> None:
    effects = _effects(_assert_kept_in(_neighbours(-0.25, gives=True), 0))
    assert effects["W1 up ≈ 2 5/8 in."] == "2 cuts fewer; the wall's courses follow"


def test_nothing_is_said_of_the_wall_where_no_other_panel_shares_its_courses() -> None:
    wall = _neighbours(0.125, gives=False, released=True)
    found = advise(_in(wall)[0], CATALOGUE, BONDS, place_of=_place_of(wall), is_shared=False)
    assert _effects(found)["Bed joints that give"] == "10 cuts fewer"


def test_nor_by_a_panel_that_is_released_from_it() -> None:
    wall = _neighbours(0.125, gives=False)
    released = replace(wall, panels=(replace(wall.panels[0], released=True), wall.panels[1]))
    assert _effects(_assert_kept_in(released, 0))["Bed joints that give"] == "10 cuts fewer"
