"""The takeoff counts what the layouts hold, by an independent path."""

from collections import Counter
from dataclasses import replace
from math import ceil
from pathlib import Path
from typing import Any

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_panels import Document, panels
from shapes import SHAPES, case, example, project, rectangle
from works import saw_of
from works import takeoff_of as of

from app.brickwork.layout import Layout, lay_out
from app.brickwork.returns import returns
from app.brickwork.sizes import CATALOGUE
from app.documents import results_face, results_returns
from app.documents.measure import Measured
from app.documents.project_file import read_panel
from app.lengths import Length
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.values import TOPICS, Line, Takeoff
from app.order.work import FaceWork
from app.panel.blend import Blend, Colour
from app.panel.project import Liner, Order
from app.workflow.compute import compute, takeoff_of

RANDOM = settings(max_examples=40, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
DEMO = Path(__file__).parents[2] / "demo_data"
PLAIN = Rules(Order(), Liner())
THREE = Blend((Colour("red", 40), Colour("brown", 35), Colour("grey", 25)))


def line(found: Takeoff, item: str) -> Line:
    return next(line for line in found.lines if line.item == item)


def bricks(found: Takeoff) -> list[Line]:
    return [line for line in found.lines if line.kind]


def as_json(layout: Layout) -> tuple[dict[str, Any], list[dict[str, Any]]]:
    """Units and returns as the interface for scripts gives them."""
    measured = Measured("in")
    return results_face.units(layout, measured), results_returns.return_edges(layout, measured)


def counted(faces: list[FaceWork], rules: Rules) -> Counter[tuple[str, str, str]]:
    """Bricks by size, kind and colour: whole units from the lists of the results one by one, corner units from the
    legs of the returns, bricks cut or rubbed off from the saw list, pieces behind corners from the depth of the return
    alone."""
    saw = saw_list(faces, rules)
    found = Counter[tuple[str, str, str]](saw.bricks_by)
    for piece in saw.rubs:
        found[piece.size, piece.kind, piece.colour] += piece.count
    names = [colour.name for colour in rules.blend.colours] or [""]
    for face in faces:
        layout = face.layout
        units, edges = as_json(layout)
        colours = [names[colour] for colour in face.colours.tolist()]
        corners = {leg["unit"] for edge in edges for leg in edge["legs"]}
        for edge in edges:
            for leg in edge["legs"]:
                found[size_of(layout, units, leg["unit"]), f"corner {edge['hand']}", colours[leg["unit"]]] += 1
        for unit, (kind, state) in enumerate(zip(units["kind"], units["state"], strict=True)):
            found[size_of(layout, units, unit), kind, colours[unit]] += state == "whole" and unit not in corners
        behind = [piece for edge in returns(layout) for piece in edge.pieces]
        for piece, colour in zip(behind, face.return_colours.tolist(), strict=True):
            found[size_of(layout, units, piece.unit), "stretcher", names[colour]] += not piece.is_trimmed
    return Counter({key: count for key, count in found.items() if count})


def size_of(layout: Layout, units: dict[str, Any], unit: int) -> str:
    """The size by the mark of the unit's zone: the panel's own, or the zone's as typed."""
    mark, panel = units["zone"][unit], layout.panel
    return panel.field.size if mark == "field" else next(zone.work.size for zone in panel.zones if zone.mark == mark)


def totals(found: Takeoff) -> Counter[tuple[str, str, str]]:
    summed = Counter[tuple[str, str, str]]()
    for one in bricks(found):
        summed[one.size, one.kind, one.colour] += int(one.net)
    return summed


def colourless(found: Counter[tuple[str, str, str]]) -> Counter[tuple[str, str]]:
    summed = Counter[tuple[str, str]]()
    for (size, kind, _), count in found.items():
        summed[size, kind] += count
    return summed


def test_totals_equal_the_pieces_counted_one_by_one() -> None:
    layouts = [lay_out(example(shape, bond=bond)) for shape in SHAPES for bond in ("running", "flemish")]
    assert totals(of(layouts)) == counted([FaceWork(layout) for layout in layouts], PLAIN)


@pytest.mark.parametrize("name", ["casting_yard", "metric_hall", "weir_works"])
def test_totals_equal_the_pieces_counted_one_by_one_in_the_demo_projects(name: str) -> None:
    """As they are, the yard mixed of three colours; the order takes its bricks from the saw list, line by line."""
    value = project(DEMO / f"{name}.json")
    computed = [compute(value, wall, panel) for wall in value.walls for panel in wall.panels]
    for scope in (computed, *([one] for one in computed[:3])):
        assert totals(takeoff_of(value, scope)) == counted([one.face for one in scope], Rules.of(value))


@RANDOM
@given(st.lists(panels(), min_size=1, max_size=3), st.lists(st.integers(1, 9), max_size=4))
def test_the_laws_of_an_order_hold_on_random_panels_in_any_blend(documents: list[Document], parts: list[int]) -> None:
    """Bricks of a size, kind and colour are those set whole and those that the saw list cuts up; and the two below."""
    layouts, blend = [lay_out(read_panel(document)) for document in documents], mixed_of(parts)
    plain, mixed = of(layouts), of(layouts, blend=blend)
    faces, rules = [FaceWork(layout, blend) for layout in layouts], Rules(Order(), Liner(), blend)
    assert totals(mixed) == counted(faces, rules)
    assert_colours_cost_only_sharing(plain, mixed, layouts)
    assert_sum_of_each_less_what_the_saw_saves(plain, layouts)


def assert_colours_cost_only_sharing(plain: Takeoff, mixed: Takeoff, layouts: list[Layout]) -> None:
    """Whole bricks are the same in all; a piece is cut from a brick of its colour, so cut bricks can only be more,
    and never more than pieces."""
    one, many = colourless(totals(plain)), colourless(totals(mixed))
    pieces = Counter[tuple[str, str]]()
    for trim in saw_of(layouts).pieces:
        pieces[trim.size, trim.kind] += trim.count
    assert one.keys() == many.keys()
    for key, count in one.items():
        assert count <= many[key] <= count + pieces[key]


def assert_sum_of_each_less_what_the_saw_saves(together: Takeoff, layouts: list[Layout]) -> None:
    """What is not cut, or cut from one brick each, adds up; panels that share cut bricks never take more."""
    summed = Counter[str]()
    for layout in layouts:
        summed.update({one.item: one.net for one in of([layout]).lines})
    assert {one.item for one in together.lines} == set(summed)
    for one in together.lines:
        if one.topic == "brick":
            assert one.net <= summed[one.item]
        else:
            assert one.net == pytest.approx(summed[one.item])


def mixed_of(parts: list[int]) -> Blend:
    """A blend of so many colours; none for no parts."""
    return Blend(tuple(Colour(f"c{k}", 100 * part / sum(parts)) for k, part in enumerate(parts)))


def test_each_colour_has_its_share_of_the_bricks() -> None:
    found = of([lay_out(case("b1"))], blend=THREE)
    net = {one.colour: one.net for one in bricks(found)}
    assert list(net) == ["red", "brown", "grey"]
    for name, share in (("red", 0.40), ("brown", 0.35), ("grey", 0.25)):
        assert net[name] / sum(net.values()) == pytest.approx(share, abs=0.02)
    assert line(found, "Thin brick modular, stretcher, red").colour == "red"


def test_corner_units_and_bricks_behind_them_have_colours() -> None:
    """120 courses with a return 16 in. deep: 120 corner units, and behind each one or two stretchers."""
    edges = [{"edge": 1, "treatment": "return", "depth": 16}]
    layouts = [lay_out(rectangle(239.625, 320, thickness=24, edges=edges))]
    mixed = of(layouts, blend=THREE)
    corners = [one for one in bricks(mixed) if one.kind == "corner right"]
    assert [one.colour for one in corners] == ["red", "brown", "grey"]
    assert sum(one.net for one in corners) == 120
    assert colourless(totals(mixed))["modular", "corner right"] == 120
    assert totals(of(layouts))["modular", "corner right", ""] == 120
    assert min(one.net for one in corners) >= 15


def test_the_bench_panel_counts_every_brick() -> None:
    """5,144 whole and 785 trimmed: the reference case's own counts; those come out of 596 bricks, proven least."""
    stretchers = line(of([lay_out(case("b1"))]), "Thin brick modular, stretcher")
    assert (stretchers.net, stretchers.overage, stretchers.order) == (5740, 287, 6027)
    assert [(pack.name, pack.count) for pack in stretchers.packs] == [("carton", 121), ("pallet", 3)]
    assert stretchers.note == "5,144 whole, 596 to cut into 785 trimmed pieces"
    assert stretchers.reason == "5 percent of 5,740, to the nearest piece"


def test_one_piece_and_one_place_are_told_as_one() -> None:
    """12 in. of stack bond: a brick and a piece of 4 in., on one part of one sheet."""
    found = of([lay_out(rectangle(12, 2.25, "stack"))])
    assert line(found, "Thin brick modular, stretcher").note == "1 whole, 1 to cut into 1 trimmed piece"
    assert "for 1 place on the bed" in line(found, "Liner sheet modular, stack").note


def test_every_line_orders_net_and_overage_and_says_why() -> None:
    found = of([lay_out(example(shape, bond="flemish")) for shape in SHAPES], blend=THREE)
    for one in found.lines:
        assert one.order == pytest.approx(one.net + one.overage)
        assert bool(one.reason) == bool(one.overage)
        assert one.note
    assert [one.topic for one in found.lines] == sorted((one.topic for one in found.lines), key=TOPICS.index)
    assert len({one.item for one in found.lines}) == len(found.lines)


def test_without_overage_the_order_is_net() -> None:
    """A length is still ordered by the whole foot."""
    for one in of([lay_out(example("window"))], Order(overage_percent=0)).lines:
        assert one.order == pytest.approx(ceil(one.net) if one.unit == "ft" else one.net)


def test_headers_and_soldiers_are_lines_of_their_own() -> None:
    found = of([lay_out(example("soldier band", bond="flemish"))])
    assert [line.kind for line in bricks(found)] == ["stretcher", "header", "soldier"]
    assert "half-length unit" in line(found, "Thin brick modular, header").note


def test_overage_is_taken_from_the_total_not_panel_by_panel() -> None:
    """Ten panels of 11 brick: 5 % of 110 is 5.5, so 6; panel by panel it would be 10."""
    layouts = [lay_out(rectangle(88, 8 / 3, "stack")) for _ in range(10)]
    stretchers = line(of(layouts), "Thin brick modular, stretcher")
    assert (stretchers.net, stretchers.overage) == (110, 6)


def test_sheets_are_ordered_by_mould_with_overage_and_packs() -> None:
    """96 x 48 in. in 48 x 24 sheets: four, and 5 % rounded up to one; in packs of 3 that is two."""
    layouts = [lay_out(rectangle(96, 48, "stack"))]
    sheets = line(of(layouts), "Liner sheet modular, stack")
    assert (sheets.net, sheets.overage, sheets.order, sheets.unit, sheets.packs) == (4, 1, 5, "sheet", ())
    (pack,) = line(of(layouts, Order(sheets_per_pack=3)), "Liner sheet modular, stack").packs
    assert (pack.name, pack.count, pack.holds) == ("pack", 2, 3)


def test_face_area_is_the_panel_less_its_openings() -> None:
    layout = lay_out(example("door"))
    door = shapely.box(20, 0, 39.5, 30)
    for item in ("Face of panels", "Wax wash, face to wash"):
        face = line(of([layout]), item)
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


def test_concrete_is_the_panel_less_openings_and_brick() -> None:
    """10 x 10 ft of 6 in. is 50 cu ft; a plain stack face of 45 x 15 modular 7-5/8 x 2-1/4 x 5/8 in. takes 675 times
    10.723 cu in. = 4.1886 cu ft off; 45.8114 cu ft are 1.69672 cu yd."""
    found = of([lay_out(replace(rectangle(120, 120, "stack"), thickness=Length.from_inches(6)))])
    assert line(found, "Thin brick modular, stretcher").net == 675
    concrete = line(found, "Concrete, net")
    assert (concrete.unit, concrete.net) == ("cu yd", pytest.approx(1.69672, abs=1e-5))
    assert "never for lifting" in concrete.note


@pytest.mark.parametrize("shape", SHAPES)
def test_brick_in_the_face_weighs_as_its_area(shape: str) -> None:
    """Modular brick alone, of 1/2 in.: 5.0 lb to the square foot of brick (BIA Technical Notes 28C)."""
    thin = replace(CATALOGUE["modular"], thickness=Length.from_inches(0.5))
    layout = lay_out(example(shape), {"modular": thin})
    weight = line(of([layout]), "Brick set in the face")
    assert (weight.unit, weight.net) == ("lb", pytest.approx(layout.area.brick / 144 * 5.0))


def test_no_panels_take_nothing() -> None:
    assert of([]).lines == ()


def test_liner_of_other_sheets_changes_only_the_liner() -> None:
    layout = lay_out(example("window"))
    usual, small = of([layout]), of([layout], liner=Liner(columns=3, rows=4))
    assert [one for one in usual.lines if one.topic == "brick"] == [one for one in small.lines if one.topic == "brick"]
    assert line(small, "Liner sheet modular, running").net > line(usual, "Liner sheet modular, running").net
