"""The stream finds covered area everywhere, all concrete is placed once, and no place is far from the vibrator."""

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from random_panels import Document, inches, panels
from shapely.geometry.base import BaseGeometry
from shapes import SHAPES, case, example, rectangle
from works import takeoff_of

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.panel.geometry import outline_polygon, shape_polygon
from app.site.pour import pour
from app.site.pour_values import Band, Pour

RANDOM = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
NEAR = 1e-3

LARGE = {
    "one large window": [[20, 20, 200, 80]],
    "two that leave a cross": [[0, 0, 110, 50], [130, 70, 110, 50]],
    "a door that parts the foot": [[80, -1, 80, 100]],
    "one that parts the panel": [[100, -1, 30, 122]],
    "combs": [[30, -1, 20, 90], [90, 31, 20, 90], [150, -1, 20, 90], [200, 31, 20, 90]],
}


def concrete(layout: Layout) -> BaseGeometry:
    openings = [shape_polygon(opening.shape) for opening in layout.panel.openings]
    return outline_polygon(layout.panel).difference(shapely.union_all(openings))


def shape(band: Band) -> BaseGeometry:
    rings = [shapely.Polygon(ring) for ring in band.rings]
    return rings[0].difference(shapely.union_all(rings[1:]))


def assert_spreads(layout: Layout, found: Pour) -> None:
    """Each band touches the earlier one that it follows along a length, or touches no earlier one and has its drop."""
    shapes = [shape(band) for band in found.bands]
    drops = {drop.band for drop in found.drops}
    for band in found.bands:
        grown = shapes[band.number - 1].buffer(NEAR, join_style="mitre")
        touched = {k + 1 for k in range(band.number - 1) if grown.intersection(shapes[k]).area >= NEAR / 100}
        assert band.after in touched if touched else (band.after is None and band.number in drops)
        if band.after is not None:
            assert shapely.Point(band.begins).distance(shapes[band.after - 1]) < 2 * NEAR, "falls beside covered area"
            assert shapely.Point(band.begins).distance(shapes[band.number - 1]) < 2 * NEAR
        assert shapes[band.number - 1].contains(shapely.Point(band.at))
    whole = [part for part in shapely.get_parts(concrete(layout)) if part.area > 1e-6]
    assert len(found.drops) >= len(whole)


def assert_covers(layout: Layout, found: Pour) -> None:
    shapes = [shape(band) for band in found.bands]
    total = concrete(layout)
    assert shapely.union_all(shapes).symmetric_difference(total).area < 1e-4
    assert sum(one.area for one in shapes) == pytest.approx(total.area, abs=1e-4)


def assert_vibrated(layout: Layout, found: Pour) -> None:
    """Every half inch of the concrete and each of its corners is within the diagonal of a square of a point of it.

    1/100 in. more is allowed at the form's edges: tips of less than a millionth of a square inch get no point.
    """
    total = concrete(layout)
    x, y = np.meshgrid(np.arange(0.25, layout.panel.width, 0.5), np.arange(0.25, layout.panel.height, 0.5))
    places = np.column_stack([x.ravel(), y.ravel()])
    places = places[shapely.contains_xy(total, *places.T)]
    places = np.concatenate([places, shapely.get_coordinates(total)])
    tree = shapely.STRtree(shapely.points(found.points))
    _, far = tree.query_nearest(shapely.points(places), return_distance=True, all_matches=False)
    assert far.max() <= np.hypot(*found.step) + 0.01
    assert max(found.step) <= found.grid + 1e-6
    assert shapely.contains_xy(total, *found.points.T).all(), "a point in an opening or outside"


@RANDOM
@given(panels(), inches(4, 14))
def test_bands_cover_the_concrete_once_and_each_touches_one_before_it(document: Document, grid: float) -> None:
    layout = lay_out(read_panel(document))
    found = pour(layout, grid=grid)
    assert_covers(layout, found)
    assert_spreads(layout, found)


@RANDOM
@given(panels(), inches(4, 14))
def test_no_concrete_is_farther_from_a_vibrator_point_than_a_squares_diagonal(document: Document, grid: float) -> None:
    layout = lay_out(read_panel(document))
    assert_vibrated(layout, pour(layout, grid=grid))


def test_an_opening_in_a_slanted_edge_leaves_no_thread_of_concrete() -> None:
    """Found at random: left of the opening ran a thread of no width, 7 in. long, without a vibrator point."""
    outline = [[0, 0], [24, 0], [24, 4], [1 / 16, 22], [0, 4]]
    openings = [{"mark": "W1", "rect": [0, 0, 4, 11.1875]}]
    layout = lay_out(rectangle(24, 22, outline=outline, openings=openings))
    assert_vibrated(layout, pour(layout, grid=4))


@RANDOM
@given(panels(), inches(4, 14))
def test_every_point_is_walked_to_once_in_the_band_that_it_is_in(document: Document, grid: float) -> None:
    layout = lay_out(read_panel(document))
    found = pour(layout, grid=grid)
    assert len(np.unique(found.points.round(6), axis=0)) == found.insertions == len(found.points)
    bands = [one.band for one in found.passes]
    assert bands == sorted(bands)
    for one in found.passes:
        assert shapely.contains_xy(shape(found.bands[one.band - 1]), *one.points.T).all()


@pytest.mark.parametrize("name", list(LARGE))
def test_large_openings_break_no_order(name: str) -> None:
    openings = [{"mark": f"W{k}", "rect": rect} for k, rect in enumerate(LARGE[name])]
    layout = lay_out(rectangle(240, 120, openings=openings))
    found = pour(layout)
    assert_covers(layout, found)
    assert_spreads(layout, found)
    assert_vibrated(layout, found)
    assert len(found.drops) == len(shapely.get_parts(concrete(layout)))


@pytest.mark.parametrize("name", ["b1", "b3", "door", *SHAPES])
def test_net_concrete_is_that_of_the_takeoff(name: str) -> None:
    """By another path: the takeoff takes the whole face by the thickness, less the brick."""
    layout = lay_out(example(name) if name in SHAPES else case(name))
    found = pour(layout)
    assert_spreads(layout, found)
    (line,) = (line for line in takeoff_of([layout]).lines if line.item == "Concrete, net")
    assert sum(band.cubic_yards for band in found.bands) == pytest.approx(line.net)


def test_a_pour_worked_by_hand() -> None:
    """
    96 x 48 in., 7-1/4 thick, stack bond, no margin; the bed's left is the face's right.

        +-------+-------+       8 x 4 squares of 12 in.: 32 points, in 8 rows of 4 as bands run up, the shorter way.
        |   2 <-|-  1   |       Two bands of 48 x 48 in. Brick lies everywhere, so the first drop is at the bed's lower
        |       |      x|       left: face 84 to 96, 0 to 12.
        +-------+-------+

    Over a brick of 5/8 in. are 6-5/8 in. of concrete; less 1 in. clear 5-5/8, so the limit of 3 in. holds.
    Concrete 96 x 48 x 7-1/4 = 33,408 cu in., less 12 x 18 bricks of 7-5/8 x 2-1/4 x 5/8 = 216 x 10.72265625 =
    2,316.09375: 31,091.90625 cu in. = 0.666407 cu yd (46,656 cu in.) = 0.509505 m3 (0.0254^3 each).
    """
    found = pour(lay_out(rectangle(96, 48, "stack")))
    assert (found.insertions, found.step, len(found.passes)) == (32, (12, 12), 8)
    assert [(band.number, band.after, band.heading) for band in found.bands] == [(1, None, (0, 0)), (2, 1, (-1, 0))]
    (drop,) = found.drops
    assert (drop.strip.x, drop.strip.y, drop.strip.width, drop.plain) == (84, 0, 12, 0)
    assert "cover it by shovel first" in drop.words
    assert (found.over_brick, found.depth, found.findings) == (6.625, 3, ())
    assert found.volume == pytest.approx(31_091.90625)
    assert sum(band.cubic_yards for band in found.bands) == pytest.approx(0.666407, abs=1e-6)
    assert sum(band.cubic_metres for band in found.bands) == pytest.approx(0.509505, abs=1e-6)
    assert found.passes[0].points.tolist() == [[90, 6], [90, 18], [90, 30], [90, 42]]
    assert found.passes[1].points.tolist() == [[78, 42], [78, 30], [78, 18], [78, 6]]
    assert found.passes[4].points[0].tolist() in ([42, 6], [42, 42])


@pytest.mark.parametrize(("grid", "insertions"), [(4.5, 8560), (9.0, 2160)])
def test_insertions_of_a_plain_panel_are_as_many_as_the_table_gives(grid: float, insertions: int) -> None:
    """Spacing 1.5 x radius of action (UFGS-03300A 3.8.2): 30 x 40 ft at a radius of 3 in. takes 80 x 107 = 8,560
    insertions, at 6 in. 40 x 54 = 2,160 (arithmetic)."""
    assert pour(lay_out(rectangle(480, 360)), grid=grid).insertions == insertions


@pytest.mark.parametrize(
    ("thickness", "depth", "code"),
    [(7.25, 3.0, None), (4.625, 3.0, None), (4.0, 2.375, "pour-shallow-head"), (1.625, None, "pour-too-thin")],
)
def test_the_head_keeps_clear_of_the_brick(thickness: float, depth: float | None, code: str | None) -> None:
    """Thickness less 5/8 in. of brick less 1 in. clear: 5-5/8, 3, 2-3/8 and 0 in.; at most 3 in. (common practice)."""
    found = pour(lay_out(rectangle(96, 48)), thickness)
    assert found.depth == depth
    assert [finding.code for finding in found.findings] == ([code] if code else [])


def test_a_panel_too_thin_is_told_with_its_numbers() -> None:
    (finding,) = pour(lay_out(rectangle(96, 48)), 1.5).findings
    assert finding.severity == "error"
    assert finding.text.startswith('Panel R is 1 1/2" thick and leaves 7/8" of concrete over the brick')
    assert "licensed engineer of record" in finding.text


def test_the_first_drop_goes_where_plain_concrete_is() -> None:
    """A margin of 24 in. at the head alone leaves two rows of squares without brick."""
    edges = [{"edge": 2, "treatment": "margin", "margin": 24}]
    (drop,) = pour(lay_out(rectangle(96, 120, edges=edges))).drops
    assert drop.plain == 1
    assert drop.strip.y >= 96
    assert drop.words.endswith("(all of it). Let the stream down here, low and slowly.")


@pytest.mark.parametrize("name", ["thickness", "grid", "depth_limit"])
def test_a_measure_of_nothing_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match=rf"{name.replace('_', ' ')} of the pour: found 0 in\., expected more than 0"):
        pour(lay_out(rectangle(60, 40)), **{name: 0})


def test_a_clearance_below_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match=r"clearance of the vibrator: found -1 in\."):
        pour(lay_out(rectangle(60, 40)), clearance=-1)
