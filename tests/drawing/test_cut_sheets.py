"""Cut sheets: every sheet that gives more than one is drawn once a pattern, with every number that comes out of it."""

import re
from functools import cache
from xml.etree import ElementTree

import pytest
from drawings import laid, liner_of
from shapes import rectangle
from svg_paths import SVG

from app.brickwork.layout import lay_out
from app.drawing.drawing import Drawing
from app.drawing.marks import Areas, Text
from app.drawing.palettes import INKS
from app.drawing.svg import svg_document
from app.drawing.views.cut_sheets import cut_sheets_view
from app.liner.cut_patterns import cut_patterns
from app.liner.offcut_values import CuttingPlan
from app.liner.offcuts import cutting_plan
from app.liner.sheets import sheet_plan
from app.panel.project import Liner

NAMES = ("b1", "b3", "soldier band", "herringbone panel", "plain")


@cache
def cutting_of(name: str) -> CuttingPlan:
    return cutting_plan(laid(name), liner_of(name)[0], Liner())


def drawn(name: str, unit: str = "in") -> Drawing:
    return cut_sheets_view(laid(name), cutting_of(name), Liner(), unit=unit)


def texts(drawing: Drawing) -> list[str]:
    return [mark.text for layer in drawing.layers for mark in layer.marks if isinstance(mark, Text)]


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("palette", INKS)
@pytest.mark.parametrize("name", NAMES)
def test_it_is_one_well_formed_file_in_every_palette(name: str, palette: str, unit: str) -> None:
    root = ElementTree.fromstring(svg_document(drawn(name, unit), palette))
    assert root.tag == f"{SVG}svg"


@pytest.mark.parametrize("name", NAMES)
def test_every_laid_sheet_out_of_a_shared_one_has_its_number_there(name: str) -> None:
    shared = {taken.number for sheet in cutting_of(name).sheets if sheet.is_shared for taken in sheet.taken}
    told = {int(number) for words in texts(drawn(name)) for number in re.findall(r"\d+", words)}
    assert shared <= told


@pytest.mark.parametrize("name", NAMES)
def test_each_pattern_is_drawn_once_with_how_many_sheets_are_cut_so(name: str) -> None:
    patterns = cut_patterns(cutting_of(name))
    shared = sum(sheet.is_shared for sheet in cutting_of(name).sheets)
    assert sum(len(pattern.sheets) for pattern in patterns) == shared
    words = texts(drawn(name))
    heads = [found for text in words if (found := re.match(r"(\d+) sheets?(:|, for|$)", text))]
    assert [int(head.group(1)) for head in heads] == [len(pattern.sheets) for pattern in patterns]
    assert any(text.endswith(f"{cutting_of(name).used - shared} give one each.") for text in words)


def test_trims_are_drawn_with_their_area_mirrored_as_on_the_bed() -> None:
    patterns, drawing = cut_patterns(cutting_of("b1")), drawn("b1")
    rings = [mark for mark in drawing.layer("cut_trims").marks if isinstance(mark, Areas) and mark.style == "knife"]
    assert len(rings) == len(patterns)
    for mark, pattern in zip(rings, patterns, strict=True):
        own = [point for taken in pattern.first.taken for ring in taken.rings for point in ring]
        drawn_x, own_x = mark.points[:, 0], [x for x, _ in own]
        assert drawn_x - drawn_x.min() == pytest.approx([max(own_x) - x for x in own_x])


def test_a_panel_whose_sheets_are_not_shared_says_so() -> None:
    layout = lay_out(rectangle(96, 48, "stack"))
    plan = sheet_plan(layout, Liner())
    words = texts(cut_sheets_view(layout, cutting_plan(layout, plan, Liner()), Liner()))
    assert any("0 sheets give more than one and are drawn; 4 give one each." in text for text in words)
