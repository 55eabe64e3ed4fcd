"""Corners and edges moved one by one: the corner goes where it is put, all others stay."""

import pytest
from panels import FULL

from app.lengths import Length, parse
from app.panel.corners import corners_of
from app.panel.edits import edit_from
from app.panel.faults import Refused
from app.panel.values import Panel

KEYS = ("outline", "openings/L1", "strips/R1", "fixings/0")


def made(name: str, **fields: str) -> Panel:
    return edit_from(name, fields, "in").changed(FULL)


@pytest.mark.parametrize("key", KEYS)
def test_one_corner_goes_where_it_is_put_and_the_others_stay(key: str) -> None:
    before = corners_of(FULL, key)
    after = corners_of(made("move_corner", thing=key, point="1", x="61 3/16", y="72"), key)
    assert after[1] == (parse("61 3/16", "in"), parse("72", "in"))
    assert [*after[:1], *after[2:]] == [*before[:1], *before[2:]]


@pytest.mark.parametrize("key", KEYS[1:])
def test_an_edge_moves_with_both_its_ends(key: str) -> None:
    """
    .---.      .-----.
    |   |  ->  |     |
    '---'      '-----'
    """
    before = corners_of(FULL, key)
    after = corners_of(made("move_edge", thing=key, edge="0", dx="3", dy="1 1/2"), key)
    by = [(b[0].nm - a[0].nm, b[1].nm - a[1].nm) for a, b in zip(before, after, strict=True)]
    whole = (parse("3", "in").nm, parse("1 1/2", "in").nm)
    assert by == [whole, whole, *[(0, 0)] * (len(before) - 2)]


def test_the_frame_follows_an_edge_of_the_outline() -> None:
    """The foot moved up by 2 in.: the panel is lower, its base higher, and what is in the face stays in the world."""
    after = made("move_edge", thing="outline", edge="0", dy="2")
    assert FULL.height - after.height == 2
    assert after.base.nm - FULL.base.nm == Length.from_inches(2).nm
    lowered = {b[1].nm - a[1].nm for a, b in zip(FULL.strips[0].line, after.strips[0].line, strict=True)}
    assert lowered == {-Length.from_inches(2).nm}


def test_the_last_edge_of_a_polygon_joins_its_last_corner_to_its_first() -> None:
    after = corners_of(made("move_edge", thing="openings/L1", edge="2", dx="-1"), "openings/L1")
    before = corners_of(FULL, "openings/L1")
    assert [b[0].nm - a[0].nm for a, b in zip(before, after, strict=True)] == [
        -Length.from_inches(1).nm,
        0,
        -Length.from_inches(1).nm,
    ]


def test_a_line_has_no_edge_back_to_its_start() -> None:
    with pytest.raises(Refused) as refused:
        made("move_edge", thing="strips/R1", edge="1", dx="1")
    assert [(fault.found, fault.expected) for fault in refused.value.faults] == [("edge 1", "edge 0 to 0")]


def test_a_line_moves_whole() -> None:
    before, after = (
        corners_of(FULL, "strips/R1"),
        corners_of(made("move_line", thing="strips/R1", dy="-2"), "strips/R1"),
    )
    assert {b[1].nm - a[1].nm for a, b in zip(before, after, strict=True)} == {-Length.from_inches(2).nm}


@pytest.mark.parametrize(
    ("key", "found"),
    [
        ("openings/W1", "W1, which is no polygon"),
        ("openings/W99", "'W99'"),
        ("roof", "'roof'"),
        ("fixings/7", "fixing '7'"),
        ("fixings/-1", "fixing '-1'"),
    ],
)
def test_a_thing_without_corners_is_refused_by_name(key: str, found: str) -> None:
    with pytest.raises(Refused) as refused:
        made("move_corner", thing=key, point="0", x="1", y="1")
    assert refused.value.faults[0].path == "thing"
    assert refused.value.faults[0].found == found
