"""Laws that hold of every layout: areas, no overlap, nothing outside, and what must make no difference."""

from dataclasses import astuple, replace
from math import cos, radians, sin

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, note, settings
from hypothesis import strategies as st
from laws import assert_a_joint_between_zones, assert_laws, assert_same_pieces
from loop import assert_equal_to_loop
from mirror import SYMMETRIC, mirrored
from random_panels import Document, panels
from shapes import rectangle

from app.brickwork.bond import face
from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.brickwork.sizes import CATALOGUE
from app.documents.project_file import read_panel
from app.lengths import Length
from app.panel.values import Panel

RANDOM = settings(max_examples=200, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
FEWER = settings(RANDOM, max_examples=80)


@RANDOM
@given(panels())
def test_laws_hold_on_random_panels_and_the_loop_agrees(document: Document) -> None:
    panel = read_panel(document)
    layout = assert_equal_to_loop(panel)
    note(layout.field.wkt)
    assert_laws(layout)
    assert_a_joint_between_zones(layout)


@FEWER
@given(panels())
def test_the_order_of_openings_does_not_matter(document: Document) -> None:
    turned_round = {**document, "openings": document["openings"][::-1]}
    assert_same_pieces(lay_out(read_panel(document)), lay_out(read_panel(turned_round)))


@FEWER
@given(panels(zones=0), st.integers(-9, 9), st.integers(-9, 9))
def test_moving_the_origin_by_a_lattice_vector_changes_nothing(document: Document, across: int, up: int) -> None:
    panel = read_panel(document)
    layout = lay_out(panel)
    assert_same_pieces(layout, lay_out(_moved(panel, layout, across, up)))


def _moved(panel: Panel, layout: Layout, across: int, up: int) -> Panel:
    bond = BONDS[panel.field.bond]
    x, y = (across * bond.across[axis].inches(layout.size) + up * bond.up[axis].inches(layout.size) for axis in (0, 1))
    c, s = cos(radians(bond.turn)), sin(radians(bond.turn))
    return _with_origin(panel, layout.origin[0] + c * x - s * y, layout.origin[1] + s * x + c * y)


def _with_origin(panel: Panel, x: float, y: float) -> Panel:
    origin = (Length.from_inches(x), Length.from_inches(y))
    return replace(panel, field=replace(panel.field, origin=origin))


@FEWER
@given(panels())
def test_a_panel_mirrored_twice_is_the_panel(document: Document) -> None:
    panel = read_panel(document)
    assert mirrored(mirrored(panel)) == panel


@FEWER
@given(panels(zones=0, bonds=SYMMETRIC))
def test_the_mirrored_panel_has_the_mirrored_pieces(document: Document) -> None:
    drawn = read_panel(document)
    panel = _with_origin(drawn, *lay_out(drawn).origin)
    layout, image = lay_out(panel), lay_out(mirrored(panel))
    assert astuple(image.area) == pytest.approx(astuple(layout.area), rel=1e-6, abs=1e-4)
    boxes, images = _boxes(layout), _boxes(image)
    width = panel.width
    mirrored_boxes = np.column_stack([width - boxes[:, 2], boxes[:, 1], width - boxes[:, 0], boxes[:, 3]])
    assert np.abs(_by_place(mirrored_boxes) - _by_place(images)).max(initial=0) < 1e-6


def _boxes(layout: Layout) -> np.ndarray:
    u = layout.units
    return np.column_stack([u.x, u.y, u.x + u.width, u.y + u.height])


def _by_place(boxes: np.ndarray) -> np.ndarray:
    return boxes[np.argsort(boxes @ np.array([1.0, 0.317, 0.173, 0.111]))]


@pytest.mark.parametrize("size", CATALOGUE)
@pytest.mark.parametrize("bond", BONDS)
def test_a_bond_tiles_the_plane_without_overlap_or_gap(bond: str, size: str) -> None:
    """One motif's cells have the area of the lattice's cell and a patch of them does not overlap: so no gap either."""
    motif, brick = BONDS[bond], CATALOGUE[size]
    (ax, ay), (ux, uy) = ([part.inches(brick) for part in vector] for vector in (motif.across, motif.up))
    cells = [[part.inches(brick) for part in (cell.x, cell.y, cell.width, cell.height)] for cell in motif.cells]
    assert sum(width * height for _, _, width, height in cells) == pytest.approx(ax * uy - ay * ux, rel=1e-12)
    patch = [
        shapely.box(x + i * ax + j * ux, y + i * ay + j * uy, x + i * ax + j * ux + w, y + i * ay + j * uy + h)
        for x, y, w, h in cells
        for i in range(-2, 3)
        for j in range(-2, 3)
    ]
    assert shapely.union_all(patch).area == pytest.approx(shapely.area(patch).sum(), rel=1e-9)


@pytest.mark.parametrize("size", CATALOGUE)
@pytest.mark.parametrize("bond", BONDS)
def test_a_unit_leaves_a_joint_in_its_cell(bond: str, size: str) -> None:
    for cell in BONDS[bond].cells:
        width, height = face(cell.kind, CATALOGUE[size])
        assert cell.width.inches(CATALOGUE[size]) - width > 0.2
        assert cell.height.inches(CATALOGUE[size]) - height > 0.2


@pytest.mark.parametrize("zone_bond", ["running", "stack"])
def test_zones_on_the_module_stand_exactly_one_joint_apart(zone_bond: str) -> None:
    """Three modules wide, six courses high: head joints 3/8 in. beside it, bed joints 5/12 in. over and under."""
    zone = {"mark": "Z1", "rect": [24, 16, 24, 16], "size": "modular", "bond": zone_bond}
    layout = lay_out(rectangle(71.625, 48 - 5 / 12, "stack", zones=[zone]))
    assert len(layout.trims) == (0 if zone_bond == "stack" else 6)
    assert _gaps(layout) == pytest.approx([3 / 8, 3 / 8, 5 / 12, 5 / 12])


def test_a_zone_off_the_module_is_kept_one_joint_away_and_no_more() -> None:
    """The left and lower neighbour gives up a joint of its own: 3/8 in. across, 5/12 in. up."""
    zone = {"mark": "Z1", "rect": [19, 13, 24, 16], "size": "modular", "bond": "stack", "origin": [1, 1]}
    around, inner = lay_out(rectangle(72, 48, zones=[zone])).regions
    assert inner.extent.bounds == pytest.approx((19, 13, 43 - 3 / 8, 29 - 5 / 12))
    assert around.extent.area == pytest.approx(72 * 48 - (24 + 3 / 8) * (16 + 5 / 12))


def _gaps(layout: Layout) -> list[float]:
    """From the zone's bricks to the nearest of the field's: left, right, below, above."""
    u = layout.units
    x1, y1, inner = u.x + u.width, u.y + u.height, u.zone == 1
    beside = ~inner & (u.y > u.y[inner].min() - 1) & (y1 < y1[inner].max() + 1)
    over = ~inner & (u.x > u.x[inner].min() - 1) & (x1 < x1[inner].max() + 1)
    return [
        u.x[inner].min() - x1[beside & (x1 < 24)].max(),
        u.x[beside & (u.x > 40)].min() - x1[inner].max(),
        u.y[inner].min() - y1[over & (y1 < 16)].max(),
        u.y[over & (u.y > 24)].min() - y1[inner].max(),
    ]
