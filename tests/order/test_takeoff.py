"""The takeoff counts what the layouts hold, by an independent path."""

from collections import Counter
from itertools import repeat

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from shapes import SHAPES, case, example, rectangle

from app.brickwork.layout import Layout, lay_out
from app.documents.project_file import read_panel
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.order.takeoff import takeoff
from app.order.values import Line, Takeoff
from app.panel.project import Liner, Order

RANDOM = settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))


def of(layouts: list[Layout], order: Order = Order(), unit: str = "in") -> Takeoff:  # noqa: B008 - frozen
    plans = [sheet_plan(layout, Liner()) for layout in layouts]
    cuttings = [cutting_plan(layout, plan, Liner()) for layout, plan in zip(layouts, plans, strict=True)]
    return takeoff(layouts, plans, cuttings, order, Liner(), unit)


def line(found: Takeoff, item: str) -> Line:
    return next(line for line in found.lines if line.item == item)


def bricks(found: Takeoff) -> list[Line]:
    return [line for line in found.lines if line.kind]


def test_totals_equal_the_pieces_counted_one_by_one() -> None:
    """A piece at the return edge of the example "edges", 60 in. from the left, is a corner unit instead."""
    layouts = [lay_out(example(shape)) for shape in SHAPES]
    counted = Counter(
        (layout.regions[zone].size.name, "corner right" if is_at_return else kind)
        for layout, shape in zip(layouts, SHAPES, strict=True)
        for zone, kind, is_at_return in zip(
            layout.units.zone.tolist(),
            kinds(layout),
            (layout.units.x + layout.units.width > 60 - 1e-6).tolist() if shape == "edges" else repeat(False),
            strict=False,
        )
    )
    assert {(line.size, line.kind): line.net for line in bricks(of(layouts))} == counted


def kinds(layout: Layout) -> list[str]:
    """The kinds by their own order in the project file's words, spelled out here."""
    words = ["stretcher", "header", "soldier", "sailor", "rowlock", "shiner"]
    return [words[kind] for kind in layout.units.kind.tolist()]


@RANDOM
@given(st.lists(panels(zones=0), min_size=1, max_size=3))
def test_a_takeoff_of_many_panels_is_the_sum_of_one_each(documents: list[Document]) -> None:
    layouts = [lay_out(read_panel(document)) for document in documents]
    together = {line.item: line.net for line in of(layouts).lines}
    summed = Counter[str]()
    for layout in layouts:
        summed.update({line.item: line.net for line in of([layout]).lines})
    assert together == pytest.approx(dict(summed))


def test_the_bench_panel_counts_every_brick() -> None:
    """5,144 whole and 785 trimmed: the reference case's own counts."""
    stretchers = line(of([lay_out(case("b1"))]), "Thin brick modular, stretcher")
    assert (stretchers.net, stretchers.overage, stretchers.order) == (5929, 296, 6225)
    assert [(pack.name, pack.count) for pack in stretchers.packs] == [("carton", 125), ("pallet", 3)]
    assert stretchers.note.startswith("5144 whole, 785 trimmed; a trimmed piece is counted as one brick")


def test_every_line_orders_net_and_overage() -> None:
    for found in of([lay_out(example(shape, bond="flemish")) for shape in SHAPES]).lines:
        assert found.order == found.net + found.overage


def test_headers_and_soldiers_are_lines_of_their_own() -> None:
    found = of([lay_out(example("soldier band", bond="flemish"))])
    assert [line.kind for line in bricks(found)] == ["stretcher", "header", "soldier"]
    assert "half-length unit" in line(found, "Thin brick modular, header").note


def test_overage_is_taken_from_the_total_not_panel_by_panel() -> None:
    """Ten panels of 11 brick: 5 % of 110 is 5.5, so 6; panel by panel it would be 10."""
    layouts = [lay_out(rectangle(88, 8 / 3, "stack")) for _ in range(10)]
    stretchers = line(of(layouts), "Thin brick modular, stretcher")
    assert (stretchers.net, stretchers.overage) == (110, 6)


def test_sheets_are_ordered_by_mould_with_overage() -> None:
    """96 x 48 in. in 48 x 24 sheets: four, and 5 % rounded up to one."""
    sheets = line(of([lay_out(rectangle(96, 48, "stack"))]), "Liner sheet modular, stack")
    assert (sheets.net, sheets.overage, sheets.order, sheets.unit, sheets.packs) == (4, 1, 5, "sheet", ())


def test_face_area_is_the_panel_less_its_openings() -> None:
    layout = lay_out(example("door"))
    door = shapely.box(20, 0, 39.5, 30)
    face = line(of([layout]), "Face of panels")
    assert face.unit == "sq ft"
    assert face.net == pytest.approx((60 * 44 - door.area) / 144)


def test_liner_mass_is_area_times_thickness_times_density() -> None:
    """Two 4 x 2 ft sheets of 0.021 in. at 65 lb/ft3: 16 x 0.021 / 12 x 65 = 1.82 lb.

    Density of high-impact polystyrene, 1.03 to 1.06 g/cm3 (65 lb/ft3): makeitfrom.com and matmake.com tables.
    """
    layouts = [lay_out(rectangle(96, 24, "stack"))]
    assert line(of(layouts), "Liner to recycle").net == pytest.approx(1.82)
    metric = line(of(layouts, unit="mm"), "Liner to recycle")
    assert (metric.unit, metric.net) == ("kg", pytest.approx(1.82 * 0.45359237))
    assert line(of(layouts, unit="mm"), "Face of panels").net == pytest.approx(16 * 0.09290304)


def test_no_panels_take_nothing() -> None:
    assert of([]).lines == ()
