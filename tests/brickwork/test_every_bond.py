"""Every bond x every size x every shape, no code per bond: the pieces themselves, and what must make no difference."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from math import cos, radians, sin

import pytest
from laws import (
    Drawn,
    assert_areas,
    assert_inside,
    assert_no_gap,
    assert_no_overlap,
    assert_same_pieces,
    assert_same_rows,
    drawn,
    piece_rows,
    widest_joint,
)
from mirror import mirrored, mirrored_bond
from shapes import SHAPES, example

from app.brickwork.bond import Bond
from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout, lay_out
from app.brickwork.regions import Region, zone_extent
from app.brickwork.sizes import CATALOGUE
from app.lengths import Length
from app.panel.shapes import Point, Rect, Shape
from app.panel.size import BrickSize
from app.panel.values import Band, Panel, Zone

STEPS = (2, -3)
"""Of the lattice along and up: enough that no unit keeps its number."""


@pytest.fixture(scope="module", params=[(bond, shape) for bond in BONDS for shape in SHAPES], ids=" on ".join)
def faces(request: pytest.FixtureRequest) -> dict[str, Drawn]:
    """One bond on one shape, laid and drawn in every size."""
    bond, shape = request.param
    panel = example(shape, bond=bond)
    return {size: drawn(lay_out(replace(panel, field=replace(panel.field, size=size)))) for size in CATALOGUE}


@contextmanager
def _naming(size: str) -> Iterator[None]:
    """A broken law says which brick it was."""
    try:
        yield
    except AssertionError as broken:
        broken.add_note(f"brick: {size}")
        raise


def test_no_piece_overlaps_another_or_leaves_the_field(faces: dict[str, Drawn]) -> None:
    for size, face in faces.items():
        with _naming(size):
            assert len(face.bricks) > 0
            assert_no_overlap(face)
            assert_inside(face)


def test_bricks_joints_and_left_out_make_up_the_field(faces: dict[str, Drawn]) -> None:
    for size, face in faces.items():
        with _naming(size):
            assert_areas(face)


def test_no_gap_is_wider_than_the_joint(faces: dict[str, Drawn]) -> None:
    for size, face in faces.items():
        with _naming(size):
            brick = CATALOGUE[size]
            if len(face.layout.regions) == 1:
                assert widest_joint(face.layout.regions[0]) <= max(brick.head_joint.inches, brick.bed_joint) + 1e-9
            assert_no_gap(face)


def test_moved_by_a_lattice_vector_and_mirrored_twice_it_is_the_same(faces: dict[str, Drawn]) -> None:
    """Once the panel and its bond, once the pieces laid; a seam leans on its left neighbour, so zones go twice before.

    Both laws in one laying, as laying is what takes the time.
    """
    for size, face in faces.items():
        with _naming(size):
            moved = _moved(face.layout)
            if moved.zones:
                _assert_same_twice_mirrored(face.layout, moved)
            else:
                _assert_same_mirrored(face.layout, moved)


def _moved(layout: Layout) -> Panel:
    """Field and zones start `STEPS` of their own lattices further on; a band stays where it is drawn."""
    panel, shares = layout.panel, {region.mark: region for region in layout.regions}
    zones = [replace(zone, region=_where(zone, layout)) for zone in panel.zones]
    zones = [
        replace(zone, work=replace(zone.work, origin=_stepped(shares[zone.mark]))) if zone.mark in shares else zone
        for zone in zones
    ]
    return replace(panel, field=replace(panel.field, origin=_stepped(shares["field"])), zones=tuple(zones))


def _where(zone: Zone, layout: Layout) -> Shape | Band:
    """A band as the rectangle it is, as its courses count from the field's origin."""
    if not isinstance(zone.region, Band):
        return zone.region
    x0, y0, x1, y1 = zone_extent(zone, layout.lines, layout.size.gauge, layout.field).bounds
    return Rect(*_point(x0, y0), *_point(x1 - x0, y1 - y0))


def _stepped(region: Region) -> Point:
    bond, (across, up) = region.bond, STEPS
    x, y = (across * bond.across[axis].inches(region.size) + up * bond.up[axis].inches(region.size) for axis in (0, 1))
    c, s = cos(radians(bond.turn)), sin(radians(bond.turn))
    return _point(region.origin[0] + c * x - s * y, region.origin[1] + s * x + c * y)


def _point(x: float, y: float) -> Point:
    return Length.from_inches(x), Length.from_inches(y)


def _assert_same_mirrored(layout: Layout, panel: Panel) -> None:
    """The mirrored panel in the mirrored bond, laid; its pieces mirrored back."""
    image, (x, y) = mirrored(panel), panel.field.origin
    image = replace(image, field=replace(image.field, bond="image", origin=_point(panel.width - x.inches, y.inches)))
    laid = lay_out(image, bonds={"image": mirrored_bond(layout.bond, layout.size)})
    rows = piece_rows(laid)
    rows[:, [0, 2]] = panel.width - rows[:, [2, 0]]
    assert_same_rows(piece_rows(layout), rows)
    assert abs(layout.area.left_out - laid.area.left_out) < 1e-6


def _assert_same_twice_mirrored(layout: Layout, panel: Panel) -> None:
    """Every bond mirrored twice, and the panel, laid."""
    pinned = mirrored(mirrored(panel))
    works = {"field": pinned.field, **{zone.mark: zone.work for zone in pinned.zones}}
    bonds = {mark: _twice(BONDS[work.bond], CATALOGUE[work.size]) for mark, work in works.items()}
    zones = tuple(replace(zone, work=replace(zone.work, bond=zone.mark)) for zone in pinned.zones)
    again = replace(pinned, field=replace(pinned.field, bond="field"), zones=zones)
    assert_same_pieces(layout, lay_out(again, bonds=bonds))


def _twice(bond: Bond, size: BrickSize) -> Bond:
    return mirrored_bond(mirrored_bond(bond, size), size)
