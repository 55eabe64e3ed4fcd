"""Adhesive, fixings, tape, edge pieces and weights, by worked arithmetic."""

from dataclasses import replace
from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapes import example, rectangle
from works import takeoff_of

from app.brickwork.layout import Layout, lay_out
from app.lengths import Length
from app.order.packs import length_overage
from app.order.values import Line
from app.panel.project import Order
from app.panel.values import Panel


def held(by: str | None, *lengths: float) -> Layout:
    """A face with level fixing lines of these lengths in inches."""
    fixings = [{"line": [[0, 20 + 10 * k], [length, 20 + 10 * k]], "by": by} for k, length in enumerate(lengths)]
    return lay_out(rectangle(480, 120, fixings=[{k: v for k, v in one.items() if v} for one in fixings]))


def lines(layouts: list[Layout], order: Order = Order(), unit: str = "in") -> dict[str, Line]:  # noqa: B008 - frozen
    return {line.item: line for line in takeoff_of(layouts, order, unit).lines}


def test_adhesive_is_a_round_bead_in_cartridges() -> None:
    """Two lines of 40 ft with a bead of 1/4 in.: 960 in. x 0.04909 sq in. = 47.12 cu in.; a fluid ounce is 231/128 =
    1.8047 cu in. (a US gallon is 231 cu in., exact), so a cartridge of 10.1 holds 18.23: 2.585, that is 3."""
    line = lines([held("glue", 480, 480)])["Adhesive cartridge"]
    assert (line.net, line.overage, line.order, line.unit) == (3, 1, 4, "cartridge")
    assert line.note == (
        '80.0 ft of glue line with a round bead of 1/4" (0.049 sq in.) = 47.1 cu in.; '
        "a cartridge of 10.1 fl oz holds 18.2 cu in.: 2.59 cartridges"
    )


@settings(max_examples=30, deadline=None, derandomize=True)
@given(st.integers(8, 480), st.integers(1, 16), st.integers(10, 300))
def test_cartridges_hold_the_bead_and_one_less_would_not(length: int, sixteenths: int, tenths: int) -> None:
    order = Order(bead=Length.from_inches(sixteenths / 16), cartridge_fl_oz=tenths / 10)
    net = lines([held("glue", length)], order)["Adhesive cartridge"].net
    bead = length * pi * (sixteenths / 32) ** 2
    holds = tenths / 10 * 231 / 128
    assert (net - 1) * holds < bead <= net * holds + 1e-6


def test_fixings_stand_at_the_spacing_or_closer_and_at_both_ends() -> None:
    """40 ft at 12 in. is 41; 3 ft 6 is 5 (four gaps of 10-1/2 in.): 46, and 5 % is 2."""
    line = lines([held("nails", 480, 42)])["Fixings, plastic or stainless"]
    assert (line.net, line.overage, line.unit) == (46, 2, "each")


def test_fixings_say_what_rusts_and_what_the_engineer_must_accept() -> None:
    """Common practice is aluminium; ACI 303R-12 says not in architectural concrete (ACI FAQ 914): both are said."""
    note = lines([held("nails", 96)])["Fixings, plastic or stainless"].note
    for words in ("plastic or stainless first", "only where the engineer accepts", "ACI 303R-12", "never steel"):
        assert words in note


def test_tape_is_ordered_by_the_whole_foot_or_metre() -> None:
    """40 ft and 5 % are 42 ft; 12.192 m and 5 % are 12.80, so 13 m."""
    line = lines([held("tape", 480)])["Tape for the liner"]
    assert (line.net, line.order, line.unit, line.reason) == (40, 42, "ft", "5 percent of 40.0 ft, up to the whole ft")
    metric = lines([held("tape", 480)], unit="mm")["Tape for the liner"]
    assert (metric.net, metric.order, metric.unit) == (pytest.approx(12.192), pytest.approx(13), "m")


def test_a_line_held_by_nothing_said_is_told_and_not_ordered() -> None:
    found = lines([held(None, 480)])
    line = found["Fixing lines without a means"]
    assert (line.net, line.unit, line.is_bought) == (40, "ft", False)
    assert not {"Adhesive cartridge", "Fixings, plastic or stainless", "Tape for the liner"} & set(found)


def test_without_fixing_lines_nothing_holds_the_liner() -> None:
    found = lines([lay_out(example("window"))])
    assert [item for item in found if found[item].topic == "fixings and sundries"] == ["Wax wash, face to wash"]
    assert "mock-up" in found["Wax wash, face to wash"].note


@given(st.floats(0.1, 5000), st.sampled_from([0.0, 3.0, 5.0, 10.0]))
def test_a_length_is_ordered_whole_and_no_more_than_a_foot_past_its_overage(net: float, percent: float) -> None:
    order = net + length_overage(net, percent)
    assert order == pytest.approx(round(order))
    assert net * (1 + percent / 100) - 1e-6 <= order < net * (1 + percent / 100) + 1


def test_the_edge_piece_runs_along_all_of_a_margin() -> None:
    """Stack bond that fits: 5 bricks less a joint, 39-5/8 in., 15 courses less a joint, 40 - 5/12; all round that is
    158.42 in. or 13.201 ft, half of it nearly upright."""
    panel = rectangle(39.625 + 2, 40 - 5 / 12 + 2, "stack", margin=1)
    found = lines([lay_out(panel_at_margin(panel))])["Finishing edge piece"]
    assert (found.net, found.unit, found.order) == (pytest.approx((39.625 + 40 - 5 / 12) / 6), "ft", pytest.approx(14))
    assert found.note == "where courses stop in the open: 6.6 ft upright, 6.6 ft level"


def panel_at_margin(panel: Panel) -> Panel:
    return replace(panel, field=replace(panel.field, origin=None))


def test_bricks_and_corner_units_weigh_as_their_volume() -> None:
    """Modular 7-5/8 x 2-1/4 x 5/8 at 120 lb/ft3: 10.723 cu in., 0.7446 lb. A corner unit has 3-5/8 less the 5/8 that
    the legs share more: 10-5/8 x 2-1/4 x 5/8 is 14.941 cu in., 1.0376 lb."""
    edges = [{"edge": 1, "treatment": "return", "depth": 7.625}]
    found = lines([lay_out(rectangle(239.625, 80, thickness=24, edges=edges))])
    flat, corner = found["Thin brick modular, stretcher"], found["Corner unit, right, modular"]
    assert flat.weight == pytest.approx(flat.order * 0.74464, rel=1e-4)
    assert corner.weight == pytest.approx(corner.order * 1.03760, rel=1e-4)
    assert (flat.weight_unit, corner.weight_unit) == ("lb", "lb")


def test_thin_brick_of_half_an_inch_weighs_five_pounds_a_square_foot() -> None:
    """BIA Technical Notes 28C: 5.0 psf at 1/2 in. full cover, that is 120 lb/ft3."""
    assert Order().brick_density_lb_ft3 * 0.5 / 12 == 5.0


def test_sheets_weigh_as_their_area() -> None:
    """A full 4 x 2 ft sheet of 0.021 in. at 65 lb/ft3 is 0.91 lb."""
    line = lines([lay_out(rectangle(96, 48, "stack"))])["Liner sheet modular, stack"]
    assert line.weight == pytest.approx(line.order * 0.91)


def test_metric_adhesive_is_told_in_millimetres() -> None:
    """12.192 m of 31.67 mm2 are 386.1 ml; 10.1 fl oz of 29.574 ml are 298.7 ml."""
    line = lines([held("glue", 480)], unit="mm")["Adhesive cartridge"]
    assert line.note == (
        "12.2 m of glue line with a round bead of ≈ 6 mm (31.7 mm2) = 386 ml; a cartridge of 10.1 fl oz holds 299 ml: "
        "1.29 cartridges"
    )
    assert line.net == 2
