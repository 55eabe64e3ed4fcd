"""Where two layouts differ: every piece that differs is ringed, and little else."""

from dataclasses import replace

import numpy as np
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.brickwork.changed import changed_rings
from app.brickwork.layout import Layout, lay_out
from app.panel.values import Brickwork, Opening
from tests.panels import PLAIN, inch, points, rect


def test_the_same_layout_differs_nowhere():
    assert changed_rings(wall(), wall()) == []


def test_a_moved_window_is_ringed_where_it_was_and_where_it_is():
    """A window of 40 x 40 at 40, 40 goes 4 in. to the right: what differs lies from 40 to 84, a brick around."""
    rings = changed_rings(wall(40), wall(44))
    assert len(rings) == 1
    low, high = rings[0].min(axis=0), rings[0].max(axis=0)
    assert np.all(low <= [40, 40])
    assert np.all(high >= [84, 80])
    assert np.all(low >= [16, 24])
    assert np.all(high <= [108, 96])


def test_two_places_far_apart_are_two_rings():
    """Windows at 20 and 180: each moved by 2 in., the brick between them as it was."""
    assert len(changed_rings(wall(20, 180), wall(22, 182))) == 2


def test_another_bond_is_one_ring_over_the_whole_field():
    rings = changed_rings(wall(), wall(bond="stack"))
    assert len(rings) == 1
    assert shapely.Polygon(rings[0]).area >= 0.9 * 240 * 120


@settings(max_examples=30, suppress_health_check=[HealthCheck.too_slow])
@given(was=st.integers(10, 150), now=st.integers(10, 150))
def test_every_piece_that_differs_is_inside_a_ring(was, now):
    earlier, later = wall(was), wall(now)
    rings = shapely.union_all([shapely.Polygon(ring) for ring in changed_rings(earlier, later)])
    ours, theirs = ({tuple(row) for row in rows(one)} for one in (earlier, later))
    for x, y, width, height in ours ^ theirs:
        assert rings.buffer(1e-6).covers(shapely.box(x, y, x + width, y + height))
    assert rings.is_empty == (was == now)


def rows(layout: Layout):
    units = layout.units
    return np.round(np.column_stack([units.x, units.y, units.width, units.height]), 4).tolist()


def wall(*windows: int, bond: str = "running") -> Layout:
    """240 x 120 in. with a window of 40 x 40 at each place, 40 in. up."""
    openings = tuple(Opening(mark=f"W{k}", use="window", shape=rect(x, 40, 40, 40)) for k, x in enumerate(windows))
    outline = points((0, 0), (240, 0), (240, 120), (0, 120))
    drawn = replace(PLAIN, outline=outline, openings=openings, margin=inch(0.375), field=Brickwork("modular", bond))
    return lay_out(drawn)
