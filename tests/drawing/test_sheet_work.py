"""The work at the sheets as drawn: laps, cuts, stacks, edge pieces, flags and the sheet of trims to cut."""

from functools import cache

import numpy as np
import pytest
from drawings import laid, liner_of
from shapes import rectangle

from app.brickwork.layout import lay_out
from app.drawing.layers import layer
from app.drawing.marks import Areas, Boxes, Lines, Mark, Text
from app.drawing.scene import Scene
from app.drawing.svg import svg_document
from app.drawing.views.sheets import DETAILS, LAYERS, sheet_view
from app.drawing.views.trims import trims_view
from app.liner.sheet_work import sheet_work
from app.liner.sheets import sheet_plan
from app.liner.work_values import SheetWork
from app.panel.project import Day, Liner

NAMES = ("b1", "window", "gable", "herringbone panel")


@cache
def work_of(name: str) -> SheetWork:
    return sheet_work(laid(name), liner_of(name)[0], Liner(), Day())


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


def test_sizes_of_cuts_stand_clear_of_each_other_and_count_pockets() -> None:
    words = [mark.text for mark in marks_of("b1", "sheet_cut_sizes") if isinstance(mark, Text)]
    assert any("p" in text for text in words)
    assert any("c" in text for text in words)


def test_without_the_work_the_sheet_plan_is_drawn_as_before() -> None:
    plan, _ = liner_of("window")
    drawing = sheet_view(laid("window"), plan)
    for name in ("sheet_laps", "edge_pieces", "sheet_stacks", "sheet_fixes", "sheet_work_key"):
        assert drawing.layer(name).marks == ()
    whole = sheet_view(laid("window"), plan, work=work_of("window"), layers=(*LAYERS, *DETAILS))
    assert whole.margins.bottom > drawing.margins.bottom
    assert svg_document(whole)


@pytest.mark.parametrize("name", NAMES)
def test_each_stack_is_drawn_once_with_its_pockets_and_its_cuts(name: str) -> None:
    stacks = work_of(name).stacks
    drawing = trims_view(laid(name), liner_of(name)[0], Liner(), stacks)
    texts = [mark.text for mark in drawing.layer("trim_words").marks if isinstance(mark, Text)]
    assert [text.split(" x ")[0] for text in texts if " x " in text] == [stack.mark for stack in stacks]
    bold = [m for m in drawing.layer("trim_cuts").marks if isinstance(m, Lines) and m.style == "knife"]
    assert [len(mark.count) for mark in bold] == [len(stack.cuts) for stack in stacks]
    pale = [mark for mark in drawing.layer("trim_grounds").marks if isinstance(mark, Areas) and mark.style == "pocket"]
    assert len(pale) == len(stacks)
    assert svg_document(drawing)


@pytest.mark.parametrize("corner", ["bed lower left", "bed lower right", "bed upper left", "bed upper right"])
def test_a_trim_lies_on_its_drawing_as_on_the_bed(corner: str) -> None:
    """
    A face of 30 x 24 in. in stack bond: seen on the bed, what is left of a sheet has the same outline on its drawing.
    """
    layout = lay_out(rectangle(30, 24, "stack", laying={"corner": corner}))
    plan = sheet_plan(layout, Liner())
    work = sheet_work(layout, plan, Liner(), Day())
    drawing = trims_view(layout, plan, Liner(), work.stacks)
    (ground,) = [m for m in drawing.layer("trim_grounds").marks if isinstance(m, Areas) and m.style == "sheet trimmed"]
    (sheet,) = [m for m in drawing.layer("trim_grounds").marks if isinstance(m, Areas) and m.style == "sheet"]
    drawn = ground.points - sheet.points.min(axis=0)
    on_bed = [np.array([(30 - x, y) for x, y in ring]) for ring in (plan.sheets[0].trim[0], plan.sheets[0].outline)]
    expected = on_bed[0] - on_bed[1].min(axis=0)
    assert sorted(map(tuple, drawn.round(6).tolist())) == sorted(map(tuple, expected.round(6).tolist()))


def test_no_trims_are_said() -> None:
    layout = lay_out(rectangle(48, 24, "stack"))
    plan = sheet_plan(layout, Liner())
    drawing = trims_view(layout, plan, Liner(), ())
    assert any("No sheet is cut" in mark.text for mark in drawing.layer("title").marks if isinstance(mark, Text))
