"""All brick is in reach of where one may stand, and no more lanes are kept open than that needs.

Reach and width of a lane are common practice; the laws are checked by shapely alone, from lanes, outline and pieces.
"""

from itertools import combinations

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, inches, panels
from shapes import case, example, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.panel.geometry import outline_polygon
from app.site.lane_lines import JointLines, fewest, joint_lines
from app.site.lane_values import WAYS_OUT, Lanes
from app.site.lanes import lanes
from app.site.places import Strip

RANDOM = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


def box(strip: Strip) -> shapely.Polygon:
    return shapely.box(strip.x, strip.y, strip.x + strip.width, strip.y + strip.height)


def standing_distance(layout: Layout, found: Lanes) -> np.ndarray:
    """From each piece's middle to the nearest place to stand: outside the outline, or in a lane on the panel."""
    panel, units = outline_polygon(layout.panel), layout.units
    around = panel.buffer(400).difference(panel)
    standing = shapely.union_all([around, *(box(lane.strip).intersection(panel) for lane in found.lanes)])
    middles = shapely.points(units.x + units.width / 2, units.y + units.height / 2)
    return np.asarray(shapely.distance(middles, standing))


@RANDOM
@given(panels(), inches(3, 14), inches(2, 10), st.sampled_from(WAYS_OUT))
def test_every_piece_is_within_reach(document: Document, reach: float, width: float, way_out: str) -> None:
    layout = lay_out(read_panel(document))
    found = lanes(layout, reach, width, way_out)
    distance = standing_distance(layout, found)
    assert distance.max(initial=0.0) <= reach + 1e-6
    assert found.is_within
    assert found.farthest == pytest.approx(distance.max(initial=0.0), abs=1e-6)


@RANDOM
@given(panels(), inches(3, 14), inches(2, 10))
def test_lanes_do_not_overlap_and_end_at_the_edges_of_the_panel(document: Document, reach: float, width: float) -> None:
    layout = lay_out(read_panel(document))
    found = lanes(layout, reach, width)
    boxes = [box(lane.strip) for lane in found.lanes]
    assert all(one.intersection(two).area < 1e-6 for one, two in combinations(boxes, 2))
    run = "height" if found.direction == "up" else "width"
    assert all(getattr(lane.strip, run) == getattr(layout.panel, run) for lane in found.lanes)


@RANDOM
@given(panels(), inches(3, 14), inches(2, 10))
def test_every_piece_that_lies_in_a_lane_waits_for_it(document: Document, reach: float, width: float) -> None:
    layout = lay_out(read_panel(document))
    found, units = lanes(layout, reach, width), layout.units
    pieces = shapely.box(units.x, units.y, units.x + units.width, units.y + units.height)
    for lane in found.lanes:
        lies_in = shapely.area(shapely.intersection(pieces, box(lane.strip))) > 1e-4
        assert (found.lane_of[lies_in] > 0).all()
        assert lane.pieces == np.count_nonzero(found.lane_of == lane.number)


@settings(max_examples=150, deadline=None)
@given(st.lists(inches(0, 60), min_size=1, max_size=25), inches(2, 10), st.sampled_from([2.0, 2.5, 4.0]))
def test_no_fewer_lanes_would_do(places: list[float], reach: float, module: float) -> None:
    """Against all choices of one lane fewer (at most two) from all joint lines of a row 60 in. long."""
    lines = JointLines(np.arange(-3, 40) * module, 2, 60.0)
    middles = np.array(places)
    outside = np.minimum(middles, 60 - middles)
    count = len(fewest(lines, middles, outside, reach))
    needy = middles[outside > reach]
    if count in (1, 2, 3):
        spans = [(low, low + 2 * module) for low in lines.at.tolist()]
        for chosen in combinations(spans, count - 1):
            reached = np.zeros(len(needy), dtype=bool)
            for low, high in chosen:
                reached |= (needy >= low - reach - 1e-9) & (needy <= high + reach + 1e-9)
            assert not reached.all()


def test_a_lane_worked_by_hand() -> None:
    """
    +--------------------------+ 120    200 x 120 in., stack bond, modular: 25 bricks of 8 in. in 45 courses of 8/3 in.
    |                          |
    |==========================| 69-1/8    lane of 16 in. = 6 courses, edges in the middle of bed joints of 5/12 in.
    |==========================| 53-1/8 = 20 x 8/3 - 5/24
    |                          |
    +--------------------------+ 0

    Reach 30: bricks 30 to 170 in. across and 30 to 90 in. up are out of reach from the form. Upright lanes reach
    30 + 16 + 30 = 76 in., so two of them, 2 x 16 x 120 = 3,840 sq in.; one level lane does, 16 x 200 = 3,200 sq in.
    Farthest is course 10, its middle at 10 x 8/3 + 9/8 = 27.79 in.: 53.125 - 27.79 = 25.33 in. from the lane.
    """
    found = lanes(lay_out(rectangle(200, 120, "stack")), reach=30, width=16)
    (lane,) = found.lanes
    assert (found.direction, lane.mark, lane.pieces) == ("along", "L1", 150)
    assert (lane.strip.x, lane.strip.width) == (0, 200)
    assert lane.strip.y == pytest.approx(53.125)
    assert lane.strip.height == pytest.approx(16)
    assert found.area == pytest.approx(3200)
    assert found.farthest == pytest.approx(53.125 - (10 * 8 / 3 + 9 / 8))


def test_no_lane_where_the_form_is_in_reach_from_all_sides() -> None:
    found = lanes(lay_out(rectangle(400, 60, "running")))
    assert found.lanes == ()
    assert found.farthest <= 30
    assert found.is_within


def test_the_edge_of_an_opening_is_no_place_to_stand() -> None:
    """With a lane's worth of window in the middle of 120 x 120 in. brick beside it is still 30 in. or more away."""
    window = {"mark": "W1", "rect": [44, 44, 32, 32]}
    found = lanes(lay_out(rectangle(120, 120, "stack", openings=[window])), reach=30)
    assert len(found.lanes) == 1
    assert found.lanes[0].crosses == ("W1",)


@pytest.mark.parametrize(("bond", "module"), [("running", 8.0), ("stack", 8.0), ("soldier", 2.625)])
def test_a_lane_is_whole_modules_from_joint_to_joint(bond: str, module: float) -> None:
    """16 in. are two stretchers of 8 in., or seven soldiers of 2-1/4 + 3/8 in. (18-3/8)."""
    lines = joint_lines(lay_out(rectangle(120, 120, bond)), 0, 16.0)
    assert lines.modules * module >= 16 > (lines.modules - 1) * module
    offsets = (lines.at + 3 / 16) / module
    assert np.abs(offsets - offsets.round()).max() < 1e-9, "edges in the middle of head joints of 3/8 in."


def test_courses_that_give_carry_the_lane_with_them() -> None:
    layout = lay_out(example("window"))
    lines = joint_lines(layout, 1, 16.0)
    bottoms = np.array([course.bottom for course in layout.courses])
    nearest = np.abs(lines.at[:, None] - bottoms).min(axis=0)
    assert nearest == pytest.approx(layout.size.bed_joint / 2)


@pytest.mark.parametrize(("way_out", "first"), [("foot", "high"), ("top", "low")])
def test_the_lane_farthest_from_the_way_out_is_filled_first(way_out: str, first: str) -> None:
    found = lanes(lay_out(rectangle(280, 200, "stack")), way_out=way_out)
    ups = [lane.strip.y for lane in found.lanes]
    assert found.direction == "along"
    assert len(ups) > 1
    assert ups == sorted(ups, reverse=first == "high")


def test_the_reference_panel_is_in_reach() -> None:
    layout = lay_out(case("b1"))
    found = lanes(layout)
    assert found.is_within
    assert standing_distance(layout, found).max() == pytest.approx(found.farthest)


def test_a_face_without_brick_needs_no_lane() -> None:
    found = lanes(lay_out(rectangle(120, 120, margin=60)))
    assert (found.lanes, found.farthest, found.is_within) == ((), 0.0, True)


@pytest.mark.parametrize(("name", "value"), [("reach", 0), ("reach", float("nan")), ("width", -1)])
def test_a_reach_or_width_of_nothing_is_refused(name: str, value: float) -> None:
    with pytest.raises(ValueError, match=rf"{name} of a lane: found .* in\., expected more than 0"):
        lanes(lay_out(rectangle(60, 40)), **{name: value})


def test_another_way_out_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match=r"found 'roof', expected one of foot, top, left, right"):
        lanes(lay_out(rectangle(60, 40)), way_out="roof")
