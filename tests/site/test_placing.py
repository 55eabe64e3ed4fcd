"""Each piece is set in one step: strips between lanes first, then lanes, each left over the way out."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from random_panels import Document, inches, panels
from shapes import case, example, rectangle

from app.brickwork.layout import lay_out
from app.brickwork.returns import corner_units, returns
from app.documents.project_file import read_panel
from app.order.work import FaceWork
from app.panel.blend import Blend, Colour
from app.site.lanes import lanes
from app.site.placing import placing

RANDOM = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
TWO = Blend((Colour("red", 60), Colour("grey", 40)))


@RANDOM
@given(panels(), inches(3, 14), inches(2, 10))
def test_every_piece_is_set_exactly_once(document: Document, reach: float, width: float) -> None:
    layout = lay_out(read_panel(document))
    found = placing(FaceWork(layout), lanes(layout, reach, width))
    numbers = [step.number for step in found.steps]
    assert numbers == list(range(1, len(numbers) + 1))
    counted = np.bincount(found.step_of, minlength=len(numbers) + 1)
    assert counted[0] == 0, "a piece that no step sets"
    assert [step.pieces for step in found.steps] == counted[1:].tolist()
    assert sum(step.pieces for step in found.steps) == len(layout.units)
    cut = sum(count.cut for step in found.steps for count in step.counts)
    assert cut == len(layout.trims)


@RANDOM
@given(panels(), inches(3, 14), inches(2, 10))
def test_the_middle_of_every_piece_lies_in_its_strip_and_lanes_come_last(
    document: Document, reach: float, width: float
) -> None:
    layout = lay_out(read_panel(document))
    found, units = placing(FaceWork(layout), lanes(layout, reach, width)), layout.units
    x, y = units.x + units.width / 2, units.y + units.height / 2
    for step in found.steps:
        of, strip = found.step_of == step.number, step.strip
        if step.sort == "strip":
            assert ((x[of] >= strip.x) & (x[of] <= strip.x + strip.width)).all()
            assert ((y[of] >= strip.y) & (y[of] <= strip.y + strip.height)).all()
    sorts = [step.sort for step in found.steps]
    assert sorts == sorted(sorts, reverse=True), "strips before lanes"


def test_an_order_worked_by_hand() -> None:
    """
    200 x 120 in. of stack bond, 25 bricks a course in 45 courses, and one level lane over courses 20 to 25 (see
    test_lanes): over it 19 courses of 25 = 475, under it 20 x 25 = 500, in it 6 x 25 = 150; 1,125 in all. The way out
    is the foot, so the strip over the lane is set first.
    """
    layout = lay_out(rectangle(200, 120, "stack"))
    found = placing(FaceWork(layout), lanes(layout))
    assert [(step.mark, step.pieces) for step in found.steps] == [("S1", 475), ("S2", 500), ("L1", 150)]
    assert found.steps[0].strip.y == pytest.approx(69.125)
    assert found.steps[1].strip.y == 0
    assert "kneel in L1 and outside the form, and keep it open" in found.steps[0].words
    assert found.steps[2].words.startswith("Walking backwards from the bed's right edge to the bed's left edge")


def test_a_small_panel_is_set_from_outside_the_form() -> None:
    layout = lay_out(rectangle(48, 32, "stack"))
    (step,) = placing(FaceWork(layout), lanes(layout)).steps
    assert (step.mark, step.sort, step.pieces) == ("S1", "strip", 72)
    assert step.words.startswith("The whole panel, 4'-0\" x 2'-8\": set from outside the form")


def test_kinds_are_counted_apart_and_corner_units_by_hand() -> None:
    layout = lay_out(example("edges"))
    face = FaceWork(layout)
    counted: dict[str, int] = {}
    for step in placing(face, lanes(layout, 8, 6)).steps:
        for count in step.counts:
            counted[count.kind] = counted.get(count.kind, 0) + count.pieces
    assert counted["corner right"] == len(corner_units(returns(layout))) > 0
    assert sum(counted.values()) == len(layout.units)
    banded = lay_out(example("soldier band"))
    (step,) = placing(FaceWork(banded), lanes(banded)).steps
    assert {count.kind: count.pieces for count in step.counts} == {
        kind: sum(pair) for kind, pair in banded.by_kind().items()
    }


def test_colours_of_a_blend_add_up_to_those_of_the_face() -> None:
    layout = lay_out(case("door"))
    face = FaceWork(layout, TWO)
    counts = [count for step in placing(face, lanes(layout, 20)).steps for count in step.counts]
    for k, colour in enumerate(TWO.colours):
        assert sum(c.pieces for c in counts if c.colour == colour.name) == np.count_nonzero(face.colours == k)
    plain = placing(replace(face, blend=Blend()), lanes(layout, 20))
    assert {count.colour for step in plain.steps for count in step.counts} == {""}


def test_strips_and_lanes_that_end_at_the_foot_follow_from_the_beds_left() -> None:
    """The bed's left is the face's right: x falls."""
    layout = lay_out(case("b1"))
    found = placing(FaceWork(layout), lanes(layout))
    for sort in ("strip", "lane"):
        places = [step.strip.x for step in found.steps if step.sort == sort]
        assert places == sorted(places, reverse=True)
    assert any("Step over the form of W4, W8, W12." in step.words for step in found.steps)


def test_no_brick_no_steps() -> None:
    layout = lay_out(rectangle(120, 120, margin=60))
    assert placing(FaceWork(layout), lanes(layout)).steps == ()
