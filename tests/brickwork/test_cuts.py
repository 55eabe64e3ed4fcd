"""What is left of one brick under every kind of cut, each with its picture.

One course of modular brick, units at x = 0..7.625, 8..15.625, height 2.25.
"""

import pytest

from app.brickwork.cuts import CUTS
from app.brickwork.layout import Layout, lay_out
from app.lengths import Length
from app.panel.shapes import Circle, Point, Polygon, Rect, Shape
from app.panel.values import Brickwork, Opening, Panel


def length(value: float) -> Length:
    return Length.from_inches(value)


def points(*pairs: tuple[float, float]) -> tuple[Point, ...]:
    return tuple((length(x), length(y)) for x, y in pairs)


def rect(x: float, y: float, width: float, height: float) -> Rect:
    return Rect(length(x), length(y), length(width), length(height))


def course(*shapes: Shape, width: float = 15.625) -> Layout:
    """One course with openings cut in it, no margin."""
    return lay_out(
        Panel(
            mark="T",
            outline=points((0, 0), (width, 0), (width, 2.25), (0, 2.25)),
            thickness=length(7.25),
            margin=Length(0),
            openings=tuple(Opening(f"O{k}", shape) for k, shape in enumerate(shapes)),
            field=Brickwork("modular", "stack", points((0, 0))[0]),
        )
    )


def trims(layout: Layout) -> list[tuple[str, float, float, int]]:
    """Cut class, length, height and number of corners of each trim."""
    rows = layout.trim_rows()
    return sorted((cut, round(long, 6), round(high, 6), len(ring)) for _, cut, long, high, _, ring in rows)


def test_a_square_cut_is_a_length_cut() -> None:
    # [#######] [####....
    layout = course(rect(12, -1, 9, 9))
    assert trims(layout) == [("length", 4.0, 2.25, 4)]
    assert layout.whole == 1


def test_a_rip_is_a_height_cut() -> None:
    # [.......] [#######]
    # [#######] [#######]
    layout = course(rect(-1, 1.5, 8.8, 3))
    assert trims(layout) == [("height", 7.625, 1.5, 4)]


def test_a_corner_bitten_off_is_a_notch_of_six_corners() -> None:
    # [###....] [#######]
    # [#######] [#######]
    assert trims(course(rect(3, 1, 4.8, 3))) == [("notch", 7.625, 2.25, 6)]


def test_a_bite_from_above_is_a_notch_of_eight_corners() -> None:
    # [##...##] [#######]
    # [#######] [#######]
    assert trims(course(rect(3, 1, 2, 3))) == [("notch", 7.625, 2.25, 8)]


def test_a_unit_split_in_two_gives_two_pieces() -> None:
    # [##...##] [#######]
    assert trims(course(rect(3, -1, 2, 5))) == [("length", 2.625, 2.25, 4), ("length", 3.0, 2.25, 4)]


def test_a_slanted_cut_is_skew() -> None:
    # [####\..] [#######]
    layout = course(Polygon(points((4, -1), (7.8, -1), (7.8, 4), (6, 4))))
    [(cut, long, high, corners)] = trims(layout)
    assert (cut, high, corners) == ("skew", 2.25, 4)
    assert long == pytest.approx(4 + 2 / 5 * 3.25)


def test_an_opening_inside_a_unit_leaves_its_area_out() -> None:
    # [##( )##] [#######]
    layout = course(Circle(length(3.8), length(1.1), length(0.5)))
    assert layout.area.brick == pytest.approx(layout.area.field - 0.375 * 2.25, abs=1e-9)
    assert [cut for cut, *_ in trims(layout)] == ["skew"]


def test_a_piece_thinner_than_a_quarter_inch_is_left_as_joint() -> None:
    # [#......] with 3/16 in. of brick
    layout = course(rect(0.1875, -1, 7.7, 5))
    assert layout.whole == 1
    assert len(layout.trims) == 0
    assert layout.area.left_out == pytest.approx(0.1875 * 2.25)


def test_a_piece_of_just_a_quarter_inch_is_kept_and_small() -> None:
    layout = course(rect(0.25, -1, 7.7, 5))
    assert trims(layout) == [("length", 0.25, 2.25, 4)]
    assert layout.small == 1


def test_a_half_bat_is_not_small() -> None:
    """Half bat (L + j)/2 - j = 3-5/8: arithmetic on the modular brick."""
    layout = course(rect(3.625, -1, 4.1, 5))
    assert trims(layout) == [("length", 3.625, 2.25, 4)]
    assert layout.small == 0


def test_a_cut_along_the_joint_touches_no_brick() -> None:
    assert trims(course(rect(7.625, -1, 0.375, 5))) == []


def test_an_empty_field_gives_an_empty_layout() -> None:
    layout = course(rect(-1, -1, 40, 9))
    assert (len(layout.units), layout.whole, layout.courses) == (0, 0, ())


def test_classes_are_those_of_the_contract() -> None:
    assert CUTS == ("length", "height", "notch", "skew")
