"""Lanes and pour as drawn on the bed: all is there, mirrored with the panel, words upright, never colour alone."""

import numpy as np
import pytest
from drawings import laid

from app.drawing.layers import layer
from app.drawing.layers.bed_work_key import marks as key_marks
from app.drawing.marks import Areas, Boxes, Lines, Mark, Text
from app.drawing.palettes import INKS, THIN, palette
from app.drawing.scene import Frame, Scene
from app.drawing.svg import svg_document
from app.drawing.views.placing import placing_view
from app.drawing.views.pour import pour_view
from app.site.lanes import lanes
from app.site.pour import pour

NAMES = ("b1", "b3", "window", "gable", "round vent")


def scene_of(name: str, frame: Frame = "bed") -> Scene:
    """A reach of 8 in., so that small panels have lanes too."""
    layout = laid(name)
    return Scene(layout, frame, lanes=lanes(layout, 8.0), pour=pour(layout))


def texts(marks: tuple[Mark, ...]) -> list[str]:
    return [mark.text for mark in marks if isinstance(mark, Text)]


@pytest.mark.parametrize("name", NAMES)
def test_every_lane_has_its_strip_and_its_mark_mirrored_to_the_bed(name: str) -> None:
    scene = scene_of(name)
    marks = layer("lanes", scene).marks
    (strips,) = (mark for mark in marks if isinstance(mark, Boxes) and mark.style == "lane")
    found = scene.lanes.lanes if scene.lanes else ()
    assert strips.x == pytest.approx(np.array([scene.width - lane.strip.x - lane.strip.width for lane in found]))
    assert texts(marks) == [lane.mark for lane in found]
    places = [mark.x for mark in marks if isinstance(mark, Text)]
    assert places == pytest.approx([scene.width - lane.at[0] for lane in found])


@pytest.mark.parametrize("name", NAMES)
def test_every_band_has_its_number_and_an_arrow_but_the_first(name: str) -> None:
    scene = scene_of(name)
    marks, found = layer("pour", scene).marks, scene.pour
    assert found is not None
    numbers = [text for text in texts(marks) if text.isdigit()]
    assert numbers == [str(band.number) for band in found.bands]
    heads = [mark for mark in marks if isinstance(mark, Lines) and mark.style == "pour way" and mark.count[0] == 3]
    assert len(heads) == sum(band.after is not None for band in found.bands)
    assert texts(marks).count("first drop") == len(found.drops) == 1
    (edges,) = (mark for mark in marks if isinstance(mark, Areas))
    assert len(edges.count) == sum(len(band.rings) for band in found.bands)


@pytest.mark.parametrize("name", NAMES)
def test_every_vibrator_point_is_a_cross_where_it_is(name: str) -> None:
    scene = scene_of(name)
    (crosses,) = (m for m in layer("pour", scene).marks if isinstance(m, Lines) and m.style == "vibrator")
    middles = crosses.points.reshape(-1, 4, 2).mean(axis=1)
    assert scene.pour is not None
    expected = np.column_stack([scene.width - scene.pour.points[:, 0], scene.pour.points[:, 1]])
    assert middles == pytest.approx(expected)


def test_an_arrow_points_into_its_band() -> None:
    """On the face frame, where bands and marks have the same places."""
    scene = scene_of("b1", "face")
    assert scene.pour is not None
    heads = [m for m in layer("pour", scene).marks if isinstance(m, Lines) and len(m.points) == 3]
    followers = [band for band in scene.pour.bands if band.after is not None]
    for head, band in zip(heads, followers, strict=True):
        way = head.points[1] - np.array(band.begins)
        assert way @ np.array(band.heading) > 0
        assert abs(way @ np.array(band.heading)) == pytest.approx(np.hypot(*way))


@pytest.mark.parametrize("name", NAMES)
def test_words_stand_upright_in_either_frame(name: str) -> None:
    for what in ("lanes", "pour", "bed_work_key"):
        for frame in ("face", "bed"):
            marks = layer(what, scene_of(name, frame)).marks
            assert all(mark.angle == 0 for mark in marks if isinstance(mark, Text))
    for drawing in (placing_view(laid(name), lanes(laid(name))), pour_view(laid(name), pour(laid(name)))):
        assert "BED VIEW, mirrored" in drawing.words
        assert "scale(-" not in svg_document(drawing)


@pytest.mark.parametrize("name", list(INKS))
def test_lanes_and_first_drop_are_told_by_hatch_and_line_too(name: str) -> None:
    looks = palette(name)
    assert looks["lane"].hatch != looks["first drop"].hatch
    for style in ("lane", "first drop"):
        assert looks[style].hatch
        assert looks[style].pen >= THIN
    assert all(looks[style].pen >= THIN for style in ("pour edge", "pour way", "vibrator"))


def test_without_results_nothing_is_drawn() -> None:
    scene = Scene(laid("window"), "bed")
    for what in ("lanes", "pour", "bed_work_key"):
        assert layer(what, scene).marks == ()


def test_the_key_says_width_reach_and_depth_and_that_no_lane_is_needed() -> None:
    scene = scene_of("b1")
    words = " ".join(mark.text for mark in key_marks(scene) if isinstance(mark, Text))
    assert "lane, 1'-4\"" in words
    assert 'reach 8"' in words
    assert 'head 3" down' in words
    assert any(
        "no lane" in text
        for text in texts(layer("bed_work_key", Scene(laid("plain"), lanes=lanes(laid("plain")))).marks)
    )
