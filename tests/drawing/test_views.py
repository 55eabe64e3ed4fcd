"""What a reader must find on each view."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from drawings import NAMES, VIEWS, drawn, laid, liner_of
from svg_paths import SVG

from app.brickwork.layout import lay_out
from app.drawing.layers import LAYERS, layer
from app.drawing.layers.orientation import TOP_EDGE
from app.drawing.marks import Areas, Circle, Letters, Text
from app.drawing.palettes import INKS, palette
from app.drawing.scene import Scene
from app.drawing.style_sheet import style_sheet
from app.drawing.styles import STYLES
from app.drawing.svg import svg_document, svg_layers, svg_patterns
from app.drawing.views.elevation import elevation


def texts(view: str, name: str) -> list[str]:
    root = ElementTree.fromstring(svg_document(drawn(view, name)))
    return [text.text or "" for text in root.iter(f"{SVG}text")]


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("name", NAMES)
def test_every_view_of_every_panel_is_one_well_formed_file(view: str, name: str) -> None:
    root = ElementTree.fromstring(svg_document(drawn(view, name)))
    assert root.tag == f"{SVG}svg"
    assert root.attrib["width"].endswith("mm")


@pytest.mark.parametrize(
    ("view", "words"),
    [
        ("elevation", "FACE, seen from outside"),
        ("bed", "BED VIEW, mirrored: back of panel, seen standing at its foot"),
        ("sheets", "BED VIEW, mirrored: back of panel, seen standing at its foot"),
    ],
)
def test_a_view_says_which_face_it_shows_and_which_edge_is_up(view: str, words: str) -> None:
    found = texts(view, "door")
    assert words in found
    assert TOP_EDGE in found
    assert any(text.startswith("Scale ") for text in found)


def test_openings_carry_mark_use_and_size_with_true_fractions() -> None:
    assert {"W1", "W12", "L1", "window", "5'-0\u20091\u20442\" x 5'-10\u20091\u20444\""} <= set(
        texts("elevation", "b1")
    )


def test_the_pole_numbers_every_third_course_and_writes_what_is_missed() -> None:
    """BIA Technical Notes 10B, Table 3: three courses are 8 in., so course 96 starts at 21'-4", the sill of W9."""
    scene = Scene(laid("b1"))
    marks = layer("pole", scene).marks
    numbers = [mark.text for mark in marks if isinstance(mark, Text) and mark.style == "text"]
    assert numbers == [str(course) for course in range(0, 134, 3)]
    notches = {mark.style: len(mark.count) for mark in marks if isinstance(mark, Areas)}
    missed = [mark.text for mark in marks if isinstance(mark, Text) and mark.style == "text attention"]
    assert notches == {"met": 3, "missed": 5} == {"met": 3, "missed": len(missed)}


def test_the_story_pole_says_for_each_head_and_sill_where_the_nearest_joint_is() -> None:
    found = texts("story pole", "b1")
    assert "21'-4\"  sill W9, W10, W11, W12: on a joint" in found
    assert '18\'-0\u20091\u20444"  head W5, W6, W7, W8: nearest joint 1\u20444" below' in found


def test_the_tape_runs_from_the_starting_corner_on_the_bed() -> None:
    """The door of the 11 ft wall is in its middle, 2'-6\" from either edge: readings are the same both ways round."""
    for view in ("elevation", "bed"):
        assert {'0"', "2'-6\"", "8'-6\"", "11'-0\""} <= set(texts(view, "door"))
    louver = {"3'-2\"", "2'-8\"", '10"', '2"'}
    assert louver <= set(texts("bed", "b1"))
    assert not louver & set(texts("elevation", "b1"))


@pytest.mark.parametrize("name", ["b1", "b3", "door", "two windows", "strip"])
def test_every_checkpoint_has_its_ring_and_its_reading(name: str) -> None:
    plan, drift = liner_of(name)
    scene = Scene(laid(name), "bed", plan=plan, drift=drift)
    marks = layer("checkpoints", scene).marks
    words = [mark.text for mark in marks if isinstance(mark, Text)]
    upwards = [point for point in drift.checkpoints if point.axis == "y"]
    assert sorted(word for word in words if word[0] in "XY") == sorted(point.mark for point in drift.checkpoints)
    assert sum(word[0] not in "XY" for word in words) == len(upwards)
    assert sum(isinstance(mark, Circle) for mark in marks) == len(drift.checkpoints)


@pytest.mark.parametrize("name", NAMES)
def test_every_sheet_has_its_number(name: str) -> None:
    plan, _ = liner_of(name)
    scene = Scene(laid(name), "bed", plan=plan)
    found = [mark.text for mark in layer("sheet_numbers", scene).marks if isinstance(mark, Text)]
    assert found == [sheet.mark for sheet in plan.sheets]


def test_each_cut_class_has_its_letter_somewhere_and_small_pieces_their_size() -> None:
    scene = Scene(laid("b1"))
    (letters,) = layer("letters", scene).marks
    assert isinstance(letters, Letters)
    assert set(letters.letters) == {"L", "H", "N", "S"}
    assert any(isinstance(mark, Text) and mark.text == '3\u20091\u20448"' for mark in layer("sizes", scene).marks)


@pytest.mark.parametrize("view", VIEWS)
def test_layers_for_a_page_hold_class_names_and_no_looks(view: str) -> None:
    for markup in svg_layers(drawn(view, "b1")).values():
        assert not re.search(r'\s(style|fill|stroke|stroke-width|font-weight)="', markup)
        used = set(re.findall(r'class="([^"]*)"', markup))
        assert used <= set(STYLES)


@pytest.mark.parametrize("name", list(INKS))
def test_every_palette_knows_every_style_and_every_rule_is_written(name: str) -> None:
    rules = style_sheet(name, ".drawing")
    assert set(palette(name)) == set(STYLES)
    for style in STYLES:
        assert f".drawing .{style.replace(' ', '.')}{{" in rules


def test_patterns_are_there_for_every_hatching_and_wear_class_names_only() -> None:
    patterns = svg_patterns(drawn("elevation", "b1").scale)
    for hatch in ("length", "height", "notch", "skew", "sheet"):
        assert f'id="hatch-{hatch}"' in patterns
    assert "stroke" not in patterns


def test_a_layer_that_is_not_there_is_refused() -> None:
    with pytest.raises(KeyError):
        layer("wallpaper", Scene(laid("plain")))
    with pytest.raises(KeyError, match="expected one of"):
        drawn("elevation", "plain").layer("wallpaper")


def test_every_layer_says_its_frame() -> None:
    assert {module.FRAME for module in LAYERS.values()} == {"face", "view"}


def test_words_in_millimetres_where_the_project_is_metric() -> None:
    scene = Scene(laid("window"), unit="mm")
    sizes = [mark.text for mark in layer("openings", scene).marks if isinstance(mark, Text)]
    assert sizes[:2] == ["W1", "window"]
    assert all(mark.text.endswith("mm") for mark in layer("dimensions", scene).marks if isinstance(mark, Text))


def test_markup_in_marks_is_escaped() -> None:

    panel = laid("window").panel
    odd = replace(panel, openings=(replace(panel.openings[0], mark="<b>&\"W'"),))

    document = svg_document(elevation(lay_out(odd)))
    assert "<b>" not in document
    assert "<b>&\"W'" in [text.text for text in ElementTree.fromstring(document).iter(f"{SVG}text")]
