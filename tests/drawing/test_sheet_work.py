"""The work at the sheets as drawn: laps, cuts, stacks, edge pieces, flags, and the list of sheets to cut."""

import re
from functools import cache, reduce

import numpy as np
import pytest
import shapely
from drawings import laid, liner_of
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.drawing.hatches import HATCHES
from app.drawing.layers import layer
from app.drawing.layers.sheet_numbers import labels
from app.drawing.lettering import text_width_mm
from app.drawing.marks import Areas, Boxes, Lines, Mark, Text
from app.drawing.palettes import INKS, palette
from app.drawing.scene import Frame, Scene
from app.drawing.svg import svg_document
from app.drawing.views.sheets import DETAILS, LAYERS, sheet_view
from app.drawing.views.sheets_to_cut import sheets_to_cut_view
from app.liner.offcuts import cutting_plan
from app.liner.sheet_work import sheet_work
from app.liner.sheets import sheet_plan
from app.liner.told_lines import MOST_TOLD
from app.liner.trims import trim_shapes
from app.liner.values import SheetPlan
from app.liner.work_values import SheetWork
from app.panel.project import Day, Liner

NAMES = ("b1", "window", "gable", "herringbone panel")


@cache
def work_of(name: str) -> SheetWork:
    return worked(laid(name), liner_of(name)[0])


def worked(layout: Layout, plan: SheetPlan) -> SheetWork:
    return sheet_work(layout, plan, cutting_plan(layout, plan, Liner()), Liner(), Day())


def scene_of(name: str) -> Scene:
    return Scene(laid(name), "bed", plan=liner_of(name)[0], work=work_of(name))


def marks_of(name: str, what: str) -> tuple[Mark, ...]:
    return layer(what, scene_of(name)).marks


@pytest.mark.parametrize("name", NAMES)
def test_every_lap_and_every_edge_piece_is_drawn(name: str) -> None:
    work = work_of(name)
    laps = [mark for mark in marks_of(name, "sheet_laps") if isinstance(mark, Areas)]
    assert sum(len(mark.count) for mark in laps) == sum(len(lap.rings) for lap in work.laps)
    edges = [mark for mark in marks_of(name, "edge_pieces") if isinstance(mark, Lines)]
    assert sum(len(mark.count) for mark in edges) == len(work.edge_pieces.runs)


@pytest.mark.parametrize("name", NAMES)
def test_every_cut_is_a_line_on_the_edge_of_its_trim(name: str) -> None:
    (lines,) = marks_of(name, "sheet_cuts")
    plan, width = liner_of(name)[0], laid(name).panel.width
    corners = {(round(width - x, 3), round(y, 3)) for s in plan.sheets for r in (*s.trim, *s.holes) for x, y in r}
    assert isinstance(lines, Lines)
    assert {(round(x, 3), round(y, 3)) for x, y in lines.points.tolist()} <= corners


@pytest.mark.parametrize("name", NAMES)
def test_every_trimmed_sheet_has_the_letter_of_its_stack(name: str) -> None:
    letters = sorted(mark.text for mark in marks_of(name, "sheet_stacks") if isinstance(mark, Text))
    assert letters == sorted(stack.mark for stack in work_of(name).stacks for _ in stack.sheets)


@pytest.mark.parametrize("name", NAMES)
def test_every_sheet_to_fix_has_its_flag_and_every_hold_down_its_dot(name: str) -> None:
    flags = [mark.text for mark in marks_of(name, "sheet_fixes") if isinstance(mark, Text)]
    assert sorted(flags) == sorted("W" if fix.when == "wind" else "S" for fix in work_of(name).fixes)
    (dots,) = marks_of(name, "hold_downs")
    assert isinstance(dots, Boxes)
    assert len(dots.x) == sum(len(hold.points) for hold in work_of(name).hold_downs)


@pytest.mark.parametrize("frame", ["face", "bed"])
@pytest.mark.parametrize("name", [*NAMES, "soldier band", "door"])
def test_no_number_stands_on_another_or_on_a_letter(name: str, frame: Frame) -> None:
    scene = Scene(laid(name), frame, plan=liner_of(name)[0], work=work_of(name))
    found = labels(scene)
    assert [label.number.text for label in found] == [sheet.mark for sheet in liner_of(name)[0].sheets]
    boxes = np.array([shapely.box(*label.box) for label in found])
    one, two = shapely.STRtree(boxes).query(boxes, predicate="overlaps")
    assert len(one) == 0, [(found[k].number.text, found[n].number.text) for k, n in zip(one, two, strict=True)]


@pytest.mark.parametrize("name", [*NAMES, "soldier band"])
def test_a_number_stands_on_its_sheet_or_a_line_leads_there(name: str) -> None:
    plan = liner_of(name)[0]
    for label, trim in zip(labels(scene_of(name)), trim_shapes(plan.sheets), strict=True):
        if not label.is_away:
            assert trim.contains(shapely.box(*label.box))
    away = sum(label.is_away for label in labels(scene_of(name)))
    lines = [mark for mark in marks_of(name, "sheet_numbers") if isinstance(mark, Lines)]
    assert sum(len(mark.count) for mark in lines) == away


def test_without_the_work_the_sheet_plan_is_drawn_as_before() -> None:
    plan, _ = liner_of("window")
    drawing = sheet_view(laid("window"), plan)
    for name in ("sheet_laps", "edge_pieces", "sheet_stacks", "sheet_work_key"):
        assert drawing.layer(name).marks == ()
    whole = sheet_view(laid("window"), plan, work=work_of("window"), layers=(*LAYERS, *DETAILS))
    assert whole.margins.bottom > drawing.margins.bottom
    assert "sheet_fixes" not in LAYERS, "flags stand at every last sheet of a row and hide numbers"
    assert svg_document(whole)


@pytest.mark.parametrize("name", NAMES)
def test_each_stack_is_drawn_once_with_its_pockets_and_its_cuts(name: str) -> None:
    stacks = work_of(name).stacks
    drawing = sheets_to_cut_view(laid(name), liner_of(name)[0], Liner(), stacks)
    texts = [mark.text for mark in drawing.layer("stack_words").marks if isinstance(mark, Text)]
    heads = [text.split(",")[0] for text in texts if " x " in text]
    assert heads == [f"{stack.mark} x {stack.count}" for stack in stacks]
    bold = [m for m in drawing.layer("stack_cuts").marks if isinstance(m, Lines) and m.style == "knife"]
    assert [len(mark.count) for mark in bold] == [len(stack.cuts) for stack in stacks]
    pale = [mark for mark in drawing.layer("stack_pockets").marks if isinstance(mark, Areas) and mark.style == "pocket"]
    assert len(pale) == len(stacks)
    assert svg_document(drawing)


@pytest.mark.parametrize("name", [*NAMES, "soldier band"])
def test_every_laid_sheet_is_told_with_its_stack(name: str) -> None:
    """Those cut out of one sheet stand on its pieces too, or beside it."""
    stacks = work_of(name).stacks
    drawing = sheets_to_cut_view(laid(name), liner_of(name)[0], Liner(), stacks)
    words = " ".join(mark.text for mark in drawing.layer("stack_words").marks if isinstance(mark, Text))
    told = set(map(int, re.findall(r"\d+", words)))
    assert {number for stack in stacks for number in stack.sheets} <= told
    drawn = [mark.text for mark in drawing.layer("stack_numbers").marks if isinstance(mark, Text)]
    alone = {str(number) for stack in stacks if stack.count == 1 for number in stack.sheets}
    assert alone <= set(drawn)


@pytest.mark.parametrize("corner", ["bed lower left", "bed lower right", "bed upper left", "bed upper right"])
def test_a_piece_lies_on_its_drawing_as_on_the_bed(corner: str) -> None:
    """
    A face of 30 x 24 in. in stack bond: seen on the bed, what is left of a sheet has the same outline on its drawing.
    """
    layout = lay_out(rectangle(30, 24, "stack", laying={"corner": corner}))
    plan = sheet_plan(layout, Liner())
    drawing = sheets_to_cut_view(layout, plan, Liner(), worked(layout, plan).stacks)
    areas = [mark for mark in drawing.layer("stack_pockets").marks if isinstance(mark, Areas)]
    (piece,), (sheet,) = ([mark for mark in areas if mark.style == style] for style in ("rule", "sheet"))
    drawn = piece.points - sheet.points.min(axis=0)
    on_bed = [np.array([(30 - x, y) for x, y in ring]) for ring in (plan.sheets[0].trim[0], plan.sheets[0].outline)]
    expected = on_bed[0] - on_bed[1].min(axis=0)
    assert sorted(map(tuple, drawn.round(6).tolist())) == sorted(map(tuple, expected.round(6).tolist()))


def test_waste_is_what_is_left_of_the_sheets() -> None:
    stacks = work_of("b1").stacks
    drawing = sheets_to_cut_view(laid("b1"), liner_of("b1")[0], Liner(), stacks)
    crossed = [mark for mark in drawing.layer("stack_waste").marks if isinstance(mark, Areas)]
    for mark, stack in zip(crossed, stacks, strict=True):
        ends = np.cumsum(mark.count)
        rings = [shapely.Polygon(mark.points[end - n : end]) for n, end in zip(mark.count, ends, strict=True)]
        waste = reduce(shapely.symmetric_difference, rings).area
        left = shapely.Polygon(stack.outline).area - sum(piece.area for piece in stack.pieces)
        assert waste == pytest.approx(left, abs=0.05)


def test_waste_has_a_look_of_its_own_that_the_key_names() -> None:
    """On the sheet plan a trim is laid and has its hatch; on the sheets to cut what goes is crossed out."""
    laid_as = {mark.style for mark in marks_of("b1", "sheet_grounds") if isinstance(mark, Areas)}
    drawing = sheets_to_cut_view(laid("b1"), liner_of("b1")[0], Liner(), work_of("b1").stacks)
    waste = {mark.style for mark in drawing.layer("stack_waste").marks if isinstance(mark, Areas)}
    assert waste == {"sheet waste"}
    assert not waste & laid_as
    for name in INKS:
        looks = palette(name)
        assert looks["sheet waste"].hatch != looks["sheet trimmed"].hatch
    assert HATCHES["waste"] == ((0, 0, 1, 1), (0, 1, 1, 0)), "both ways across"
    title = drawing.layer("title").marks
    assert [mark.style for mark in title if isinstance(mark, Boxes)].count("sheet waste") == 1
    assert any("crossed out is waste" in mark.text for mark in title if isinstance(mark, Text))


@pytest.mark.parametrize("name", NAMES)
def test_every_line_of_a_few_has_one_number_and_its_words(name: str) -> None:
    """Teeth and arcs have one number each, so no drawing of few lines leaves any out."""
    stacks = [stack for stack in work_of(name).stacks if len(stack.lines) <= MOST_TOLD]
    drawing = sheets_to_cut_view(laid(name), liner_of(name)[0], Liner(), stacks)
    numbers = [mark.text for mark in drawing.layer("stack_numbers").marks if isinstance(mark, Text)]
    styled = [mark.text for mark in drawing.layer("stack_numbers").marks if getattr(mark, "style", "") == "cut letter"]
    expected = [str(k) for stack in stacks if len(stack.lines) > 1 for k in range(1, len(stack.lines) + 1)]
    assert sorted(styled) == sorted(expected)
    assert len(numbers) >= len(styled)


def test_no_cuts_are_said() -> None:
    layout = lay_out(rectangle(48, 24, "stack"))
    plan = sheet_plan(layout, Liner())
    drawing = sheets_to_cut_view(layout, plan, Liner(), ())
    assert any("No sheet is cut" in mark.text for mark in drawing.layer("title").marks if isinstance(mark, Text))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("paper_mm", [160.0, 380.0])
def test_the_title_stays_within_the_drawing(name: str, paper_mm: float) -> None:
    """However few stacks there are: a line wider than the drawing would be cut off at the edge of its page."""
    stacks = work_of(name).stacks[:1]
    drawing = sheets_to_cut_view(laid(name), liner_of(name)[0], Liner(), stacks, paper_mm=paper_mm)
    mm = drawing.scale.inches_per_mm
    for text in (mark for mark in drawing.layer("title").marks if isinstance(mark, Text)):
        assert text.x / mm + text_width_mm(text.text, text.size_mm) <= drawing.width / mm
