"""What a knife meets: counted by hand in pockets, and on random panels against shapely's own clipping."""

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from random_panels import Document, panels
from shapes import rectangle

from app.brickwork.lattice import grid, lattice
from app.brickwork.layout import Layout, lay_out
from app.brickwork.regions import Region
from app.brickwork.turning import turned, turned_points
from app.documents.project_file import read_panel
from app.liner.cuts import straight_cut
from app.liner.knife import GUIDED
from app.liner.knife_words import knife_words
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.liner.stacks import cut_list
from app.liner.values import Sheet
from app.liner.work_values import Counted, KnifeCut, Stack
from app.panel.project import Liner

RANDOM = settings(max_examples=15, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
NEAR = 1e-3
LINER = Liner(columns=3, rows=5)


def stacks_of(layout: Layout, liner: Liner) -> tuple[Stack, ...]:
    plan = sheet_plan(layout, liner)
    return cut_list(layout, plan, cutting_plan(layout, plan, liner), liner).stacks


def cuts_of(layout: Layout, liner: Liner) -> tuple[KnifeCut, ...]:
    """Of the unpacked sheet fetched for the first one that is cut."""
    return min(stacks_of(layout, liner), key=lambda stack: stack.owners).cuts


def words_of(layout: Layout, unit: str = "in") -> list[str]:
    return [knife_words(cut, unit) for cut in cuts_of(layout, Liner())]


def from_left(width: float, height: float, bond: str = "stack", **more: object) -> Layout:
    """Laid from the face's lower left, so that the first pocket stands in the very corner."""
    return lay_out(rectangle(width, height, bond, laying={"corner": "bed lower right"}, **more))


def test_an_upright_cut_is_counted_in_pockets_of_the_first_course() -> None:
    """
    Modular brick: pockets 7-5/8, ridges 3/8, cells 8 in. A face of 30 in. ends 6 in. into the fourth pocket; the third
    ends at 23-5/8, so the cut is 6-3/8 past it. It crosses nine bed joints: eight between courses, one over the last.
    """
    (cut,) = cuts_of(from_left(30, 24), Liner())
    assert cut.along == (Counted(3, pytest.approx(6.375), pytest.approx(0.375)),)
    assert cut.up == ()
    assert len(cut.ridges) == 9
    assert cut.in_ridge == 0
    assert words_of(from_left(30, 24)) == ['3 pockets + 6 3/8" along, 9 ridges across']


def test_a_level_cut_is_counted_in_courses() -> None:
    """
    A face 20 in. high: seven courses end at 6 x 8/3 + 2-1/4 = 18-1/4 in., so the cut is 1-3/4 past them, in the eighth.
    """
    (cut,) = cuts_of(from_left(48, 20), Liner())
    assert (cut.up, cut.along) == ((Counted(7, pytest.approx(1.75), pytest.approx(5 / 12)),), ())
    assert len(cut.ridges) == 6, "five head joints between six pockets, and the one at the sheet's end"


def test_from_the_other_side_the_sheet_starts_with_a_joint() -> None:
    """
    From the face's lower right, joints come before pockets, which end 8, 16, 24, 32 in. from the sheet's edge. An
    opening from 12 to 18 in. is then 30 to 36 in. away: 6 in. past the third pocket, 4 in. past the fourth.
    """
    opening = {"mark": "V1", "rect": [12, 6, 6, 8]}
    cuts = cuts_of(lay_out(rectangle(48, 24, "stack", openings=[opening])), Liner())
    along = sorted((cut.along[0].pockets, cut.along[0].past) for cut in cuts if cut.along)
    assert along == [(3, pytest.approx(6)), (4, pytest.approx(4))]


def test_a_cut_along_a_ridge_says_how_long_and_where_the_floor_is() -> None:
    """
    A face of 31-3/4 in. ends in the head joint between 31-5/8 and 32: in stack bond the cut runs all 24 in. in a ridge,
    1/8 in. past the fourth pocket's edge.
    """
    (cut,) = cuts_of(from_left(31.75, 24), Liner())
    assert cut.in_ridge == pytest.approx(24)
    assert cut.beside == pytest.approx(-0.125)
    assert cut.ridges == ()
    assert words_of(from_left(31.75, 24)) == [
        '4 pockets along at the joint line + 1/8", in a ridge for 2\'-0": set it 1/8" nearer'
    ]


def test_in_running_bond_a_cut_in_a_head_joint_runs_in_a_ridge_every_other_course() -> None:
    """
    Of four courses two have a head joint there, 2-1/4 in. high, with 5/12 in. of bed joint over and under: three beds,
    as the lowest course has none below. The other two are crossed on the floor, and the bed joint on top across.
    """
    cuts = cuts_of(from_left(31.75, 32 / 3, "running"), Liner(columns=6, rows=4))
    (cut,) = [cut for cut in cuts if cut.in_ridge]
    assert cut.in_ridge == pytest.approx(2 * 2.25 + 3 * 5 / 12, abs=4 * GUIDED)
    assert len(cut.ridges) == 1
    assert cut.beside == pytest.approx(-0.125)


def test_an_opening_is_cut_on_four_sides() -> None:
    opening = {"mark": "W1", "rect": [10, 6, 12, 8]}
    cuts = cuts_of(from_left(48, 24, openings=[opening]), Liner())
    assert sorted((cut.cut.axis, round(cut.cut.at, 6)) for cut in cuts) == [("x", 10), ("x", 22), ("y", 6), ("y", 14)]
    along = sorted((cut.along[0].pockets, cut.along[0].past) for cut in cuts if cut.along)
    assert along == [(1, pytest.approx(2.375)), (2, pytest.approx(6.375))]


def test_a_slanted_cut_is_counted_at_both_ends() -> None:
    gable = {"mark": "G", "thickness": 7.25, "margin": 0, "outline": [[0, 0], [40, 0], [40, 6], [0, 21]]}
    layout = lay_out(read_panel({**gable, "field": {"size": "modular", "bond": "stack"}}))
    slant = next(cut for cut in cuts_of(layout, Liner()) if cut.cut.axis == "skew")
    assert len(slant.along) == len(slant.up) == 2
    assert sum(counted.pockets for counted in slant.along) == 5
    assert "pockets" in knife_words(slant)


def words_at(at: float, in_ridge: float = 0.0, beside: float | None = None, unit: str = "in") -> str:
    """An upright cut past three pockets that end at 24 in."""
    cut = straight_cut((24 + at, 0), (24 + at, 24))
    return knife_words(KnifeCut(cut, (Counted(3, at),), (), (), in_ridge, beside), unit)


def test_nobody_is_told_less_than_a_sixteenth() -> None:
    """1/24 in. is nearer to 1/16 than to nothing; what is less than 1/32 off a pocket's end is at the joint line."""
    assert words_at(1 / 24) == '3 pockets + 1/16" along, no ridge'
    assert words_at(0.03) == "3 pockets along at the joint line, no ridge"
    assert words_at(1 / 24, unit="mm") == "3 pockets + 1 mm along, no ridge"
    assert "\u2248" not in words_at(0.4, 11.3, -0.4)


def test_anywhere_in_a_joint_is_at_the_joint_line() -> None:
    """The joint after the third pocket is 3/8 in. wide; where the next pocket begins is its far edge."""

    def said(past: float) -> str:
        cut = straight_cut((24 + past, 0), (24 + past, 24))
        return knife_words(KnifeCut(cut, (Counted(3, past, 0.375),), (), (), 0.0, None)).removesuffix(", no ridge")

    assert said(0) == "3 pockets along at the joint line"
    assert said(0.125) == '3 pockets along at the joint line + 1/8"'
    assert said(0.375) == "3 pockets along at the joint line's far edge"
    assert said(0.4375) == '3 pockets + 7/16" along'


def test_a_cut_between_courses_is_at_the_joint_line() -> None:
    """Face 24 in. high, opening with its sill 8 in. up: three gauges of 8/3 in., where the fourth course begins."""
    opening = {"mark": "W1", "rect": [16, 8, 16, 8]}
    words = words_of(from_left(48, 24, openings=[opening]))
    assert sum(said.startswith("3 courses up at the joint line's far edge") for said in words) == 1


def test_a_ridge_is_told_only_where_a_knife_runs_in_it_for_long() -> None:
    assert words_at(0.125, 2.0, -0.125) == '3 pockets + 1/8" along, no ridge'
    assert words_at(0.125, 4.0, -0.125) == '3 pockets + 1/8" along, in a ridge for 4": set it 1/8" nearer'
    assert words_at(0.25, 4.0, 0.02) == '3 pockets + 1/4" along, in a ridge for 4": set it 1/16" farther'
    assert words_at(0.25, 4.0) == '3 pockets + 1/4" along, in a ridge for 4"'


def test_where_joints_gave_the_knife_still_counts_in_the_nominal_sheet() -> None:
    """An opening stands where joints gave: its sides stay on pocket edges, or half a brick on, in the sheet."""
    opening = {"mark": "W1", "rect": [96 + 0.25, 80 + 0.3, 47.6, 53.2]}
    layout = lay_out(rectangle(260, 200, openings=[opening], margin=0.375, fit={"courses": True, "heads": True}))
    assert not layout.lines.across.is_identity
    jambs = [0.25, 0.25 + 47.6]
    assert not np.allclose(layout.lines.across.nominal(np.array([96 + at for at in jambs])), [96 + at for at in jambs])
    past = [c.past for stack in stacks_of(layout, Liner()) for cut in stack.cuts for c in cut.along if cut.up == ()]
    head_joint, half = 0.375, 4.0
    off = np.abs(np.array(past)[:, None] - [0.0, head_joint, half, half + head_joint]).min(axis=1)
    assert np.median(off) < NEAR


@RANDOM
@given(panels(zones=1))
def test_ridges_are_what_the_bond_itself_leaves_between_its_units(document: Document) -> None:
    """
    Laid out again on the face: every unit of the bond's lattice on the sheet, and the cut less those units by shapely.
    """
    layout = lay_out(read_panel(document))
    regions = {region.mark: region for region in layout.regions}
    sheets = {sheet.number: sheet for sheet in sheet_plan(layout, LINER).sheets}
    for stack in stacks_of(layout, LINER):
        sheet = sheets[stack.owners[0]]
        region = regions[sheet.region]
        floors = units_over(region, sheet).buffer(GUIDED, join_style="mitre")
        start = (np.array(sheet.outline) * sheet.away).min(axis=0)
        inner = shapely.Polygon(sheet.outline).buffer(-1e-3, join_style="mitre")
        widest = max(
            max(
                c.width.inches(region.size) - c.face(region.size)[0],
                c.height.inches(region.size) - c.face(region.size)[1],
            )
            for c in region.bond.cells
        )
        for cut in stack.cuts:
            line = shapely.LineString((np.array([cut.cut.start, cut.cut.end]) + start) * sheet.away)
            gaps = shapely.length(shapely.get_parts(line.intersection(inner).difference(floors)))
            if (
                np.abs(gaps - 2 * widest).min(initial=1) < 5 * NEAR
                or np.abs(gaps - 2 * GUIDED).min(initial=1) < 5 * NEAR
            ):
                continue
            assert cut.in_ridge == pytest.approx(gaps[gaps > 2 * widest].sum(), abs=5 * NEAR)
            assert len(cut.ridges) == np.count_nonzero((gaps <= 2 * widest) & (gaps > 2 * GUIDED))
            assert list(cut.ridges) == sorted(cut.ridges)
            assert all(line.interpolate(at).distance(floors) > 0 for at in cut.ridges)


def units_over(region: Region, sheet: Sheet) -> shapely.Geometry:
    turn = region.bond.turn
    origin = turned_points(np.array([region.origin]), -turn)[0]
    over = turned(shapely.Polygon(sheet.outline), -turn).bounds
    laid = grid(lattice(region.bond, region.size, (float(origin[0]), float(origin[1]))), over)
    units = np.array([turned(box, turn) for box in shapely.box(laid.x0, laid.y0, laid.x1, laid.y1)])
    own = shapely.contains(shapely.Polygon(sheet.outline), shapely.centroid(units))
    return shapely.MultiPolygon(units[own].tolist())


def test_a_full_sheet_has_no_cuts() -> None:
    assert stacks_of(lay_out(rectangle(48, 24, "stack")), Liner()) == ()
