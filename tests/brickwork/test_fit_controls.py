"""Control lines of panels: against the real layout's bricks, and against dimensions worked by hand."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapes import example, project, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.fit_controls import course_controls, head_joint_controls
from app.brickwork.fit_grids import course_grid, head_joint_grid
from app.brickwork.fit_lines import Control, Grid1, Outcome
from app.brickwork.layout import Layout, lay_out
from app.brickwork.panel_fit import PanelFit, States, WallPart, panel_fit, states, wall_course_fit
from app.brickwork.sizes import CATALOGUE
from app.panel.geometry import brick_field
from app.panel.values import Fit, Matter, Panel

MODULAR = CATALOGUE["modular"]
GAUGE, HEIGHT, LENGTH, BED = MODULAR.gauge, MODULAR.height.inches, MODULAR.length.inches, MODULAR.bed_joint
MARGIN = 0.375
GIVE = 1 / 32
DEMO = Path(__file__).parents[2] / "demo_data"
DEMO_PANELS = [
    pytest.param(panel, {**CATALOGUE, **{size.name: size for size in one.sizes}}, id=f"{path.stem} {panel.mark}")
    for path in sorted(DEMO.glob("*.json"))
    for one in [project(path)]
    for wall in one.walls
    for panel in wall.panels
    if panel.field.bond in BONDS
]


def field_of(panel: Panel) -> shapely.geometry.base.BaseGeometry:
    return brick_field(panel, MARGIN)


def courses_of(panel: Panel) -> dict[str, Control]:
    grid = course_grid(BONDS["running"], MODULAR, (0.0, 0.0))
    assert isinstance(grid, Grid1)
    return {each.name: each for each in course_controls(panel, field_of(panel), MARGIN, grid)}


def heads_of(panel: Panel) -> dict[str, Control]:
    grid = head_joint_grid(BONDS["running"], MODULAR, (0.0, 0.0))
    assert isinstance(grid, Grid1)
    return {each.name: each for each in head_joint_controls(panel, field_of(panel), MARGIN, grid)}


def at(controls: dict[str, Control]) -> dict[str, float]:
    return {name: each.at for name, each in controls.items()}


def states_of(layout: Layout) -> States:
    panel = layout.panel
    return states(panel, layout.field, layout.size, BONDS[panel.field.bond], layout.origin)


def fit_of(panel: Panel, give: float = GIVE, is_pinned: bool = False) -> PanelFit:
    field = field_of(panel)
    low = (float(field.bounds[0]), float(field.bounds[1]))
    return panel_fit(panel, field, MODULAR, BONDS[panel.field.bond], low, give, is_pinned)


def asked(panel: Panel, **matter: str) -> Panel:
    return replace(panel, fit=Fit(courses=True, heads=True, matter=Matter(**matter)))


def test_a_window_gives_base_sill_head_top_and_both_jambs():
    assert at(courses_of(example("window"))) == {
        "base": 0.375,
        "sill W1": 13.25 - 0.375 - HEIGHT,
        "head W1": 13.25 + 18.5 + 0.375,
        "top": 44 - 0.375 - HEIGHT,
    }
    assert at(heads_of(example("window"))) == {
        "left edge": 0.375,
        "left jamb W1": 17.5 - 0.375 - LENGTH,
        "right jamb W1": 38.5 + 0.375,
        "right edge": 60 - 0.375 - LENGTH,
    }


def test_a_control_knows_its_edge_as_drawn_and_a_point_on_it():
    head, jamb = courses_of(example("window"))["head W1"], heads_of(example("window"))["left jamb W1"]
    assert (head.edge, head.x, head.y, head.ends) == (31.75, 28.0, 31.75, False)
    assert (jamb.edge, jamb.x, jamb.y, jamb.ends) == (17.5, 17.5, 22.5, True)


def test_a_door_has_no_sill_where_no_brick_is_below():
    assert set(courses_of(example("door"))) == {"base", "head D1", "top"}


def test_margins_of_edges_and_of_an_openings_sides_are_honoured():
    sides = [
        {"side": "head", "treatment": "flush"},
        {"side": "left", "treatment": "return", "depth": 3.625},
        {"side": "sill", "treatment": "margin", "margin": 0.5},
    ]
    panel = rectangle(60, 44, openings=[{"mark": "W1", "rect": [17.5, 13.25, 21, 18.5], "sides": sides}])
    panel = replace(panel, margin=example("window").margin)
    assert at(courses_of(panel))["head W1"] == 31.75
    assert at(courses_of(panel))["sill W1"] == 13.25 - 0.5 - HEIGHT
    assert at(heads_of(panel))["left jamb W1"] == 17.5 - LENGTH
    assert at(heads_of(panel))["right jamb W1"] == 38.5 + 0.375
    edges = example("edges")
    assert at(courses_of(edges)) == {"base": 0.0, "top": 44 - 2.5 - HEIGHT}
    assert at(heads_of(edges)) == {"left edge": 0.375, "right edge": 60 - LENGTH}


def test_a_stepped_top_numbers_the_edges_that_are_not_the_outermost():
    controls = courses_of(example("stepped top"))
    assert at(controls) == {
        "base": 0.375,
        "edge 4": 33.5 - 0.375 - HEIGHT,
        "edge 6": 40 - 0.375 - HEIGHT,
        "top": 46 - 0.375 - HEIGHT,
    }


def test_slanted_edges_and_slanted_sides_give_no_control():
    assert set(courses_of(example("gable"))) == {"base"}
    assert set(courses_of(example("slanted"))) == set()
    assert set(courses_of(example("polygon opening"))) == {"base", "top"}


def test_an_arch_has_its_crown_and_a_circle_only_its_lowest_and_highest_points():
    assert at(courses_of(example("arch")))["head A1"] == pytest.approx(34 + 0.375)
    assert {"left jamb A1", "right jamb A1"} < set(heads_of(example("arch")))
    assert at(courses_of(example("round vent")))["head V1"] == pytest.approx(32 + 0.375)
    assert set(heads_of(example("round vent"))) == {"left edge", "right edge"}


def test_brick_ends_below_a_strip_and_starts_above_it():
    controls = courses_of(example("strip"))
    assert controls["strip R1, below"].at == 21.5 - 0.375 - HEIGHT
    assert controls["strip R1, above"].at == 21.5 + 0.375
    assert not any("strip" in name for name in heads_of(example("strip")))


def test_the_field_ends_a_joint_below_a_zone_and_starts_at_its_top():
    controls, heads = courses_of(example("stack panel")), heads_of(example("stack panel"))
    assert controls["zone K1, below"].at == pytest.approx(12 - GAUGE)
    assert controls["zone K1, above"].at == 29
    assert heads["zone K1, left"].at == pytest.approx(16 - 8)
    assert heads["zone K1, right"].at == 41


def test_what_lies_inside_a_zone_is_no_matter_of_the_field():
    zone = [{"mark": "K1", "rect": [10, 8, 40, 30], "size": "modular", "bond": "stack"}]
    panel = rectangle(60, 44, openings=[{"mark": "W1", "rect": [20, 14, 20, 16]}], zones=zone)
    assert set(courses_of(panel)) == {"base", "zone K1, below", "zone K1, above", "top"}


def test_adjoining_openings_have_no_control_between_them():
    openings = [{"mark": "D1", "rect": [20, 0, 20, 20]}, {"mark": "T1", "rect": [20, 20, 20, 10]}]
    assert set(courses_of(rectangle(60, 44, openings=openings))) == {"base", "head T1", "top"}


def test_what_matters_is_taken_from_the_panel():
    panel = asked(example("window"), heads="required", sills="free", jambs="free", edges="required")
    matters = {name: each.matter for name, each in {**courses_of(panel), **heads_of(panel)}.items()}
    assert matters["head W1"] == matters["base"] == matters["left edge"] == "required"
    assert matters["sill W1"] == matters["right jamb W1"] == "free"


def test_an_empty_field_has_no_controls():
    panel = asked(example("window"))
    nothing = shapely.Polygon()
    fitted = panel_fit(panel, nothing, MODULAR, BONDS["running"], (0.0, 0.0), GIVE)
    assert fitted.vertical is not None
    assert fitted.vertical.outcomes == ()
    assert fitted.vertical.stretch.is_identity


spots = st.integers(64, 64 * 24)
extents = st.integers(64 * 16, 64 * 24)


@settings(max_examples=60, deadline=None)
@given(spots, spots, extents, extents, st.sampled_from(["running", "stack", "third-raked", "header"]))
def test_the_piece_a_control_makes_is_the_piece_in_the_layout(x, y, width, height, bond):
    """Against the bricks of the real layout beside the opening, whatever is thinner than 1/4 in. left out."""
    rect = [x / 64 + 12, y / 64 + 12, width / 64, height / 64]
    layout = lay_out(rectangle(76, 76, bond, openings=[{"mark": "W1", "rect": rect}]))
    found = states_of(layout)
    outcomes = {each.control.name: each for each in (*found.vertical, *found.horizontal)}
    box = (rect[0], rect[1], rect[0] + rect[2], rect[1] + rect[3])
    for name, axis, far in (("left jamb", 0, 0), ("sill", 1, 0), ("right jamb", 0, 1), ("head", 1, 1)):
        pieces = cut_beside(layout, box, axis, far)
        outcome: Outcome = outcomes[f"{name} W1"]
        if outcome.cut >= layout.smallest_cut:
            assert pieces.min() == pytest.approx(outcome.cut, abs=1e-6)
        elif outcome.cut == 0.0:
            assert len(pieces) == 0


def cut_beside(layout: Layout, box: tuple[float, ...], axis: int, far: int) -> np.ndarray:
    """Lengths square to one side of the opening of the cut pieces that end at it, corner pieces left out."""
    units = layout.units
    start, size = ((units.x, units.width), (units.y, units.height))[axis]
    other, other_size = ((units.y, units.height), (units.x, units.width))[axis]
    meets = np.abs((start if far else start + size) - box[axis + 2 * far]) < 1e-6
    between = (other >= box[1 - axis] - 1e-6) & (other + other_size <= box[3 - axis] + 1e-6)
    whole = (LENGTH if layout.bond.name != "header" else MODULAR.half_bat, HEIGHT)[axis]
    return size[meets & between & (size < whole - 1e-6)]


@pytest.mark.parametrize("courses", range(4, 10))
def test_a_masonry_opening_of_whole_courses_needs_no_joint_to_give(courses):
    """n x 2-2/3 in. high, one bed joint included, and n x 4 + 3/8 in. wide: Masonry Construction magazine, "Bricking
    around openings"."""
    sides = [{"side": "sill", "treatment": "margin", "margin": 5 / 12}]
    opening = {"mark": "W1", "rect": [24 - 0.375, 8, 4 * courses + 0.375, 8 * courses / 3], "sides": sides}
    panel = asked(rectangle(96, 64, openings=[opening]), edges="free")
    fitted = fit_of(panel, give=0.0, is_pinned=True)
    assert fitted.vertical is not None
    assert fitted.horizontal is not None
    outcomes = {each.control.name: each for each in (*fitted.vertical.outcomes, *fitted.horizontal.outcomes)}
    assert all(outcomes[f"{name} W1"].is_met for name in ("sill", "head", "left jamb", "right jamb"))
    assert fitted.vertical.cost == fitted.horizontal.cost == 0.0


def test_only_the_axis_that_is_asked_for_is_fitted():
    panel = example("window")
    assert fit_of(panel) == PanelFit()
    up = fit_of(replace(panel, fit=Fit(courses=True)))
    assert up.vertical is not None
    assert up.horizontal is None


@pytest.mark.parametrize(
    ("bond", "joints", "why"),
    [
        ("flemish", "head", "its units have 2 lengths"),
        ("basket-weave", "bed", "its units have 2 heights"),
        ("herringbone-90", "bed", "it has no level courses"),
        ("herringbone-45", "head", "it is turned 45 degrees"),
    ],
)
def test_a_bond_without_a_grid_says_why(bond, joints, why):
    panel = asked(example("window", bond=bond))
    assert f"{joints} joints cannot give in {bond}: {why}" in fit_of(panel).reasons


@pytest.mark.parametrize("bond", sorted(BONDS))
@pytest.mark.parametrize("size", sorted(CATALOGUE))
def test_a_bonds_grid_holds_every_start_of_its_units(bond, size):
    motif, brick = BONDS[bond], CATALOGUE[size]
    for axis, grid in enumerate((head_joint_grid(motif, brick, (0, 0)), course_grid(motif, brick, (0, 0)))):
        if isinstance(grid, Grid1):
            for cell in motif.cells:
                start = ((cell.x, cell.y)[axis] + 5 * motif.up[axis] + 3 * motif.across[axis]).inches(brick)
                assert start - grid.line(grid.nearest_line(start)) == pytest.approx(0, abs=1e-6)
            assert grid.unit + grid.joint == pytest.approx(grid.cell_steps * grid.step)


@pytest.mark.parametrize(
    ("bond", "step", "cell_steps"),
    [("running", 4.0, 2), ("stack", 8.0, 1), ("third-raked", 8 / 3, 3), ("header", 2.0, 2), ("soldier", 2.625, 1)],
)
def test_the_step_is_the_lap_of_the_bond(bond, step, cell_steps):
    """Half, whole, third and (of headers) quarter laps of an 8 in. module: the bonds' definitions."""
    grid = head_joint_grid(BONDS[bond], MODULAR, (0.0, 0.0))
    assert isinstance(grid, Grid1)
    assert (grid.step, grid.cell_steps) == (pytest.approx(step), cell_steps)


def test_the_head_of_a_wall_is_met_by_all_its_panels_in_one_map():
    one = replace(example("plain"), mark="P1")
    two = replace(example("window"), mark="P2")
    parts = [WallPart(one, field_of(one), 0.0), WallPart(two, field_of(two), -3 * GAUGE)]
    fitted = wall_course_fit(parts, MODULAR, BONDS["running"], 0.375, GIVE)
    assert not isinstance(fitted, str)
    names = [each.control.name for each in fitted.outcomes]
    assert names == ["P1 base", "P1 top", "P2 base", "P2 sill W1", "P2 head W1", "P2 top"]
    head = fitted.outcomes[4].control
    assert (head.at, head.edge, head.y) == (32.125 - 3 * GAUGE, 31.75 - 3 * GAUGE, 31.75 - 3 * GAUGE)
    own = fitted.stretch.moved(3 * GAUGE)
    for each in fitted.outcomes[2:]:
        if each.is_met:
            assert own.real(own.nominal(each.control.at + 3 * GAUGE)) == pytest.approx(each.control.at + 3 * GAUGE)


def test_a_wall_of_a_bond_without_courses_says_why():
    panel = example("plain")
    told = wall_course_fit([WallPart(panel, field_of(panel), 0.0)], MODULAR, BONDS["herringbone-45"], 0.0, GIVE)
    assert told == "bed joints cannot give in herringbone-45: it is turned 45 degrees"


@pytest.mark.parametrize(("panel", "sizes"), DEMO_PANELS)
def test_no_joint_of_the_demonstration_leaves_its_range(panel, sizes):
    """A 3/8 in. joint within 1/4 and 1/2 in., others in proportion (common practice), and within its give of 1/32."""
    size, bond = sizes[panel.field.size], BONDS[panel.field.bond]
    field = brick_field(panel, size.head_joint.inches)
    low = (float(field.bounds[0]), float(field.bounds[1]))
    fitted = panel_fit(asked(panel), field, size, bond, low, GIVE)
    grids = (course_grid(bond, size, low), head_joint_grid(bond, size, low))
    for one, grid in zip((fitted.vertical, fitted.horizontal), grids, strict=True):
        if one is None or not isinstance(grid, Grid1):
            assert one is None
            continue
        cells = one.stretch.real(np.array([grid.line(k) for k in range(-10, 400)]))
        joints = cells[grid.cell_steps :] - cells[: -grid.cell_steps] - grid.unit
        assert np.abs(joints - grid.joint).max() <= GIVE + 1e-6
        assert joints.min() >= grid.joint * 2 / 3 - 1e-6
        assert joints.max() <= grid.joint * 4 / 3 + 1e-6
