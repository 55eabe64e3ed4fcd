"""The bed view is the face in a mirror, with upright words: engine.md's frames, `x_bed = width - x_face`."""

from dataclasses import fields

import numpy as np
import pytest
from drawings import NAMES, drawn, laid, liner_of
from svg_paths import bounds, rings_of

from app.drawing.layers import LAYERS
from app.drawing.marks import Areas, Boxes, Circle, Letters, Lines, Mark, Text
from app.drawing.mirror import mirrored
from app.drawing.scene import Scene
from app.drawing.svg import svg_document, svg_layers

FACE_LAYERS = sorted(name for name, module in LAYERS.items() if module.FRAME == "face")
ANCHORS = {"start": "end", "middle": "middle", "end": "start"}


def same(one: Mark, other: Mark) -> bool:
    pairs = [(getattr(one, field.name), getattr(other, field.name)) for field in fields(one)]
    return type(one) is type(other) and all(
        np.allclose(a, b, atol=1e-9) if isinstance(a, np.ndarray | float) else a == b for a, b in pairs
    )


def is_mirrored(face: Mark, bed: Mark, width: float) -> bool:
    match face, bed:
        case Boxes(), Boxes():
            return np.allclose(bed.x, width - face.x - face.width) and np.array_equal(bed.width, face.width)
        case (Areas(), Areas()) | (Lines(), Lines()):
            return np.allclose(bed.points[:, 0], width - face.points[:, 0])
        case Text(), Text():
            return bed.x == width - face.x and bed.anchor == ANCHORS[face.anchor] and bed.text == face.text
        case (Letters(), Letters()) | (Circle(), Circle()):
            return np.allclose(bed.x, width - face.x)
    return False


@pytest.mark.parametrize("layer", FACE_LAYERS)
@pytest.mark.parametrize("name", NAMES)
def test_every_mark_of_the_face_stands_mirrored_on_the_bed(name: str, layer: str) -> None:
    plan, drift = liner_of(name)
    scene = Scene(laid(name), plan=plan, drift=drift)
    faces = list(LAYERS[layer].marks(scene))
    beds = [mirrored(mark, scene.width) for mark in faces]
    assert all(is_mirrored(face, bed, scene.width) for face, bed in zip(faces, beds, strict=True))
    assert all(same(mirrored(bed, scene.width), face) for face, bed in zip(faces, beds, strict=True))


@pytest.mark.parametrize("name", ["b1", "door", "window", "soldier band"])
def test_in_the_files_each_brick_is_at_width_less_x_less_its_own_width(name: str) -> None:
    width = laid(name).panel.width
    face = [bounds(ring) for ring in rings_of(svg_layers(drawn("elevation", name))["brick"], "whole")]
    bed = [bounds(ring) for ring in rings_of(svg_layers(drawn("bed", name))["brick"], "whole")]
    turned = sorted((round(width - x - w, 3), round(y, 3), round(w, 3), round(h, 3)) for x, y, w, h in face)
    assert np.allclose(turned, sorted((round(x, 3), round(y, 3), round(w, 3), round(h, 3)) for x, y, w, h in bed))


@pytest.mark.parametrize("view", ["elevation", "bed", "sheets", "story pole"])
def test_nothing_is_turned_over_by_a_transform(view: str) -> None:
    document = svg_document(drawn(view, "b1"))
    assert "matrix" not in document
    assert "scale(-" not in document
    assert document.count("scale(") == 1


def test_the_corner_mark_is_upper_left_on_the_face_and_upper_right_on_the_bed() -> None:
    width = laid("b1").panel.width
    for view, corner in (("elevation", 0.0), ("bed", width)):
        (triangle,) = rings_of(svg_layers(drawn(view, "b1"))["orientation"], "solid")
        assert [x for x, _ in triangle].count(corner) == 2
        _, top, wide, high = bounds(triangle)
        assert wide == pytest.approx(2 * high, abs=1e-3)
        assert top + high < 0


def test_a_mark_of_another_kind_is_refused() -> None:
    with pytest.raises(TypeError, match="expected one of the marks"):
        mirrored("no mark", 10.0)  # type: ignore[type-var]
