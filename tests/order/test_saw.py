"""The saw list has every piece that is cut, once, at its place, with the ends that its neighbours ask for."""

import json
from collections import Counter
from functools import cache
from pathlib import Path

import numpy as np
import pytest
import shapely
from shapes import SHAPES, case, document, example, rectangle
from works import saw_of

from app.brickwork.blend import colours_of
from app.brickwork.layout import Layout, lay_out, whole_outlines
from app.brickwork.own_boxes import own_boxes
from app.brickwork.pieces import areas
from app.brickwork.returns import corner_units, returns
from app.brickwork.turning import turned_points
from app.documents.project_file import read_panel, read_project
from app.lengths import parse
from app.order.saw_values import SawList
from app.order.work import FaceWork
from app.panel.blend import Blend, Colour
from app.panel.faults import Refused
from app.panel.project import Order, Project
from app.panel.values import Fit
from app.workflow.compute import Computed, compute, saw_list_of

DEMO = Path(__file__).parents[2] / "demo_data"
BONDS = ("running", "flemish", "soldier", "rowlock", "herringbone-45", "header")
HALF_STEP = 1 / 32


def of(layout: Layout) -> SawList:
    return saw_of([layout])


@cache
def sawn(shape: str, bond: str) -> tuple[Layout, SawList]:
    """An example in a bond, and what is cut for it."""
    layout = lay_out(example(shape, bond=bond))
    return layout, of(layout)


@pytest.fixture(scope="module")
def yard() -> tuple[Project, list[Computed]]:
    project = read_project(json.loads((DEMO / "casting_yard.json").read_text(encoding="utf-8")))
    return project, [compute(project, wall, panel) for wall in project.walls for panel in wall.panels]


def test_the_twelve_panels_together_take_the_fewest_bricks_and_that_is_proven(
    yard: tuple[Project, list[Computed]],
) -> None:
    saw = saw_list_of(*yard)
    assert len(yard[1]) == 12
    assert saw.is_proven
    assert saw.bricks <= saw.first_fit <= saw.flat_pieces
    assert saw.bricks == sum(saw.bricks_by.values())
    assert {pattern.colour for pattern in saw.patterns} == {colour.name for colour in yard[0].blend.colours}


def test_each_panel_of_the_twelve_is_proven_and_sharing_bricks_between_them_never_costs(
    yard: tuple[Project, list[Computed]],
) -> None:
    alone, together = [panel.saw for panel in yard[1]], saw_list_of(*yard)
    assert all(saw.is_proven for saw in alone)
    assert together.bricks <= sum(saw.bricks for saw in alone)
    assert together.flat_pieces == sum(saw.flat_pieces for saw in alone)


@cache
def mixed(parts: tuple[int, ...]) -> tuple[Layout, Blend, SawList]:
    """A face with rips, notches, skew cuts and a deep return in as many colours."""
    edges = [{"edge": 1, "treatment": "return", "depth": 16}]
    openings = [{"mark": "W1", "rect": [20, 11, 31, 17]}, {"mark": "V1", "circle": [80, 30, 9]}]
    layout = lay_out(rectangle(119.625, 60, thickness=24, edges=edges, openings=openings))
    blend = Blend(tuple(Colour(f"c{k}", 100 * part / sum(parts)) for k, part in enumerate(parts)))
    return layout, blend, saw_of([layout], blend=blend)


BLENDS = ((), (1,), (1, 1), (5, 3, 2), (4, 3, 2, 1))


@pytest.mark.parametrize("parts", BLENDS)
def test_every_piece_has_the_colour_of_its_unit_and_its_brick(parts: tuple[int, ...]) -> None:
    """Pieces of each colour counted from the colours of the units themselves, then from the patterns."""
    layout, blend, saw = mixed(parts)
    names = [colour.name for colour in blend.colours] or [""]
    flat = layout.trims.unit[~np.isin(layout.trims.unit, corner_units(returns(layout)))]
    of_unit = Counter(names[colour] for colour in colours_of(layout, blend)[flat].tolist())
    behind = [piece.is_trimmed for one in returns(layout) for piece in one.pieces]
    for colour, is_cut in zip(FaceWork(layout, blend).return_colours.tolist(), behind, strict=True):
        of_unit[names[colour]] += is_cut
    told, across, by_pattern = Counter[str](), Counter[str](), Counter[str]()
    for piece in (*saw.groups, *saw.rubs):
        told[piece.colour] += piece.count
        across[piece.colour] += piece.count if piece.cut == "length" else 0
    for pattern in saw.patterns:
        by_pattern[pattern.colour] += pattern.times * len(pattern.pieces)
    assert told == of_unit
    assert by_pattern == across


@pytest.mark.parametrize("parts", BLENDS)
def test_colours_cost_shared_bricks_only_and_each_is_cut_from_the_fewest(parts: tuple[int, ...]) -> None:
    saw, plain = mixed(parts)[2], mixed(())[2]
    assert saw.is_proven
    assert saw.flat_pieces == plain.flat_pieces
    assert plain.bricks <= saw.bricks <= saw.flat_pieces
    assert saw.bricks == sum(saw.bricks_by.values())
    if len(parts) < 2:
        assert saw.bricks == plain.bricks


def test_colours_of_one_name_lose_no_brick() -> None:
    """The reader refuses them, but a count must not rest on that."""
    layout, _, apart = mixed((1, 1))
    alike = saw_of([layout], blend=Blend((Colour("a", 50.0), Colour("a", 50.0))))
    assert alike.bricks == apart.bricks == sum(alike.bricks_by.values())


def test_the_reference_panel_is_proven() -> None:
    """785 trimmed pieces (bench.md of this project)."""
    saw = of(lay_out(case("b1")))
    assert saw.flat_pieces == 785
    assert saw.is_proven


@pytest.mark.parametrize("bond", BONDS)
@pytest.mark.parametrize("shape", SHAPES)
def test_every_cut_piece_is_there_once_in_its_class_and_no_corner_unit(shape: str, bond: str) -> None:
    layout, saw = sawn(shape, bond)
    found = returns(layout)
    is_flat = ~np.isin(layout.trims.unit, corner_units(found))
    by_class = Counter(layout.trims.cut[is_flat].tolist())
    behind = sum(piece.is_trimmed for one in found for piece in one.pieces)
    told = [sum(piece.count for piece in of_class) for of_class in (saw.pieces, saw.rips, saw.notches, saw.skews)]
    assert sum(told) + saw.rubbed == int(is_flat.sum()) + behind
    assert told[2] <= by_class[2]
    assert told[3] <= by_class[3]
    assert sum(told[2:]) + saw.rubbed == by_class[2] + by_class[3], "only notches and skew cuts are rubbed off"
    assert all(sum(seat.count for seat in piece.seats) == piece.count for piece in (*saw.groups, *saw.rubs))
    assert saw.is_proven
    corners = sum(leg.is_cut or leg.is_shortened for one in found for leg in one.legs)
    assert sum(corner.count for corner in saw.corners) == corners


@pytest.mark.parametrize("bond", BONDS)
@pytest.mark.parametrize("shape", ["window", "gable", "round vent", "herringbone panel", "edges"])
def test_a_group_is_its_pieces_within_half_a_step(shape: str, bond: str) -> None:
    """Outline by outline: the area told is the pieces' own, give or take half of 1/16 in. around their edge."""
    layout, saw = sawn(shape, bond)
    is_flat = ~np.isin(layout.trims.unit, corner_units(returns(layout)))
    own = float(areas(layout.trims.pieces)[is_flat].sum())
    around = sum(shapely.Polygon(layout.trims.pieces.ring(k)).length for k in np.flatnonzero(is_flat))
    behind = sum(p.length * p.height for one in returns(layout) for p in one.pieces if p.is_trimmed)
    told = sum(shapely.Polygon(piece.outline).area * piece.count for piece in (*saw.groups, *saw.rubs))
    assert abs(told - own - behind) <= HALF_STEP * (around + 20 * behind)


@pytest.mark.parametrize("bond", BONDS)
@pytest.mark.parametrize("shape", ["window", "stack panel", "herringbone panel"])
def test_the_whole_unit_of_a_piece_stands_where_the_layout_puts_whole_units(shape: str, bond: str) -> None:
    """Whole units are drawn by another path; their own boxes must be the same."""
    layout = sawn(shape, bond)[0]
    for zone, region in enumerate(layout.regions):
        units = np.flatnonzero((layout.units.zone == zone) & ~layout.units.is_trimmed)
        drawn = turned_points(whole_outlines(layout, zone).reshape(-1, 2), -region.bond.turn).reshape(-1, 4, 2)
        expected = np.column_stack([drawn.min(axis=1), drawn.max(axis=1)])
        assert np.allclose(own_boxes(layout, zone, units), expected, atol=1e-6)


def test_own_boxes_follow_joints_that_gave() -> None:
    fitted = example("window")
    panel = read_panel(document("window") | {"fit": {"courses": True, "heads": True}})
    assert panel.fit == Fit(courses=True, heads=True) != fitted.fit
    layout = lay_out(panel)
    units = np.flatnonzero(~layout.units.is_trimmed)
    box = own_boxes(layout, 0, units)
    assert np.allclose(box[:, 0], layout.units.x[units], atol=1e-6)
    assert np.allclose(box[:, 1], layout.units.y[units], atol=1e-6)


def pier(width: float) -> dict[float, bool]:
    """Lengths cut on a face of stack bond with a pier of `width` that starts 1 in. into a unit, and whether each has a
    factory end; openings from foot to top, no margin."""
    openings = [{"mark": "W1", "rect": [20, 1, 21, 7]}, {"mark": "W2", "rect": [41 + width, 1, 20, 7]}]
    found = of(lay_out(rectangle(100, 9, bond="stack", openings=openings)))
    return {piece.length: piece.has_factory_end for piece in found.pieces}


def test_a_piece_between_two_openings_needs_no_factory_end() -> None:
    """Units stand every 8 in.: one at 40 in. is cut at 41 and 46 in., one at 16 in. at its right end alone."""
    found = pier(5)
    assert found[5.0] is False
    assert found[4.0] is True


def test_a_piece_beside_a_neighbour_needs_one_factory_end() -> None:
    """A pier of 12 in.: 7-5/8 less 1 in. at the left jamb, then a joint, then 5 in. to the right one."""
    found = pier(12)
    assert (found[6.625], found[5.0]) == (True, True)


def test_a_closer_inside_the_course_needs_one_factory_end_too() -> None:
    """19 in. of stack bond would end in 3 in.; with closers a half bat of 3-5/8 in. and 7 in. beside it."""
    saw = of(lay_out(rectangle(19, 2.25, bond="stack", fit={"closers": True})))
    assert {piece.length: piece.has_factory_end for piece in saw.pieces} == {3.625: True, 7.0: True}


def test_a_closer_longer_than_a_header_is_cut_from_a_stretcher() -> None:
    saws = [
        of(lay_out(rectangle(width, 16, field={"size": "modular", "bond": "header"}, fit={"closers": True})))
        for width in np.arange(40, 45, 0.25).tolist()
    ]
    long = [piece for saw in saws for piece in saw.pieces if piece.length > 3.625]
    assert long
    assert all((piece.kind, piece.whole) == ("stretcher", (7.625, 2.25)) for piece in long)


def test_rips_notches_and_skew_cuts_take_a_brick_each() -> None:
    saw = of(lay_out(example("gable")))
    single = sum(piece.count for piece in (*saw.rips, *saw.notches, *saw.skews))
    assert single
    assert saw.bricks == single + sum(pattern.times for pattern in saw.patterns)


def test_a_soldier_is_measured_along_its_own_length() -> None:
    saw = of(lay_out(rectangle(24.75, 12.75, field={"size": "modular", "bond": "soldier"})))
    lengths = [piece for piece in saw.pieces if piece.kind == "soldier"]
    assert lengths
    assert all(piece.whole == (7.625, 2.25) and piece.height == 2.25 for piece in lengths)


def test_what_is_cut_behind_a_corner_unit_and_corner_units_themselves_are_told() -> None:
    """Depth 16 behind the corner (test_corner_units): pieces of 4 in. end the rows; long legs are whole then."""
    edges = [{"edge": 1, "treatment": "return", "depth": 16}]
    deep = of(lay_out(rectangle(239.625, 8 * 8 / 3, thickness=24, edges=edges)))
    assert [(piece.length, piece.has_factory_end, piece.count) for piece in deep.pieces if piece.length == 4] == [
        (4.0, True, 4)
    ]
    assert deep.corners == ()
    shallow = of(lay_out(rectangle(239.625, 8 * 8 / 3, edges=[{"edge": 1, "treatment": "return", "depth": 3.625}])))
    assert [(one.size, one.hand, one.face_leg, one.return_leg, one.count) for one in shallow.corners] == [
        ("modular", "right", 3.625, 3.625, 4)
    ]
    assert not shallow.bricks_by.get(("modular", "corner right", ""))


def test_a_metric_project_is_cut_to_whole_millimetres() -> None:
    project = read_project(json.loads((DEMO / "metric_hall.json").read_text(encoding="utf-8")))
    layouts = [compute(project, wall, panel).layout for wall in project.walls for panel in wall.panels]
    saw = saw_of(layouts, project.order, "mm")
    assert saw.is_proven
    for piece in saw.pieces:
        assert piece.length * 25.4 == pytest.approx(round(piece.length * 25.4), abs=1e-6)


@pytest.mark.parametrize(("kerf", "said"), [("8", '8"'), ("7 5/8", '7 5/8"')])
def test_a_kerf_that_leaves_nothing_of_a_brick_is_refused_with_sizes_and_units(kerf: str, said: str) -> None:
    with pytest.raises(Refused) as refused:
        saw_of([lay_out(example("window"))], Order(kerf=parse(kerf, "in")))
    fault = refused.value.faults[0]
    assert (fault.path, fault.found) == ("order.kerf", said)
    assert fault.expected == 'less than 7 5/8", the length of a modular stretcher'


def test_no_panels_and_no_cuts_give_an_empty_list() -> None:
    assert saw_of([]).bricks == 0
    whole = of(lay_out(rectangle(23.625, 16 / 3 + 2.25, bond="stack")))
    assert (whole.flat_pieces, whole.bricks, whole.bound, whole.is_proven) == (0, 0, 0, True)
