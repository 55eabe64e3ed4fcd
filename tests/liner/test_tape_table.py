"""The tape table: every course and head joint from both hooks, as a tape at its own temperature shows them."""

import numpy as np
import pytest
from shapes import case, rectangle

from app.brickwork.layout import Layout, lay_out
from app.liner.drift import drift, expected_at
from app.liner.tape_table import TapeTable, tape_tables
from app.panel.laying import CORNERS
from app.panel.project import Day, Liner

LINER = Liner()


def tables(layout: Layout, bed: float = 70.0, tape: float | None = None) -> tuple[TapeTable, ...]:
    return tape_tables(layout, drift(layout, LINER, Day()), LINER, bed, tape)


@pytest.mark.parametrize("corner", CORNERS)
def test_both_hooks_together_make_the_whole_panel(corner: str) -> None:
    """And the bed's left is the face's right: x_bed = width - x_face."""
    across, up = tables(lay_out(rectangle(100, 40, laying={"corner": corner})))
    assert (across.hook, up.hook) == (corner.split()[-1], "foot" if "lower" in corner else "top")
    for row in across.rows:
        assert row.first.nominal == pytest.approx(100 - row.position)
        assert row.second.nominal == pytest.approx(row.position)
    for row in up.rows:
        assert row.first.nominal == pytest.approx(row.position)
        assert row.second.nominal == pytest.approx(40 - row.position)


@pytest.mark.parametrize("corner", CORNERS)
def test_every_course_head_joint_and_checkpoint_has_its_row(corner: str) -> None:
    layout = lay_out(rectangle(96, 32, laying={"corner": corner}))
    across, up = tables(layout)
    assert {round(row.position, 6) for row in across.rows} >= {8.0 * k for k in range(13)}
    feet = {round(row.position, 6): row.what for row in up.rows}
    assert all(round(course.bottom, 6) in feet for course in layout.courses)
    for point in drift(layout, LINER, Day()).checkpoints:
        table = across if point.axis == "x" else up
        assert [row.position for row in table.rows if row.mark == point.mark] == [point.position]


def test_rows_run_on_from_the_hook_each_place_once() -> None:
    for table in tables(lay_out(case("b1")), 95):
        near = [getattr(row, "first" if table.hook == table.ends[0] else "second").nominal for row in table.rows]
        assert (np.diff(near) > 1e-6).all()


@pytest.mark.parametrize("corner", CORNERS)
def test_readings_from_the_starting_hook_are_those_of_the_checkpoints(corner: str) -> None:
    layout = lay_out(rectangle(240, 100, laying={"corner": corner}, fixings=[{"line": [[100, 0], [100, 100]]}]))
    points = {point.mark: point for point in drift(layout, LINER, Day()).checkpoints}
    for table in tables(layout, 95):
        for row in (row for row in table.rows if row.mark):
            near = row.first if table.hook == table.ends[0] else row.second
            assert near.expected == pytest.approx(expected_at(points[row.mark], 95))
            assert row.is_within == (abs(near.expected - near.nominal) <= 0.125 + 1e-9)


def test_what_grows_from_one_hook_shrinks_from_the_other() -> None:
    for row in tables(lay_out(rectangle(240, 40)), 100)[0].rows:
        assert row.first.expected + row.second.expected == pytest.approx(240)
        assert row.first.expected >= row.first.nominal


def test_a_hot_tape_reads_short_and_a_cold_one_long() -> None:
    """40 ft at 108 F: 480 x 6.45e-6 x 40 = 0.124 in. less (expansion: surveying forum, *Steel Taping Puzzle*)."""
    layout = lay_out(rectangle(480, 40))
    exact, hot, cold = (tables(layout, 70, tape)[0].rows[-1].first for tape in (None, 108, 28))
    assert (exact.expected, exact.low, exact.high) == (480, 479.875, 480.125)
    assert hot.expected == pytest.approx(480 - 0.1238, abs=1e-4)
    assert cold.expected == pytest.approx(480 + 0.1239, abs=1e-4)
    assert hot.nominal == cold.nominal == 480
    assert hot.high - hot.low == pytest.approx(0.25, abs=1e-3)


def test_an_empty_field_has_no_tables() -> None:
    assert tables(lay_out(rectangle(20, 10, margin=5))) == ()
