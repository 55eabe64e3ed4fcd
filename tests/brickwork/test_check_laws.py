"""What all checks keep to, on every bond and on panels of any make."""

from dataclasses import replace
from math import isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box
from shapes import CROSSED, SHAPES, example, rectangle

from app.brickwork.bonds import BONDS
from app.brickwork.checks import findings
from app.brickwork.findings import Finding
from app.brickwork.layout import Layout, lay_out
from app.lengths import Length
from app.panel.values import Fit

CODES = {
    "bare-at-return", "broken-bond", "cut-at-return", "empty-zone", "joint-range", "lap", "left-out", "missed-head",
    "missed-sill", "off-neighbour", "required-missed", "small-piece", "two-returns",
    "unsymmetrical-pier", "zone-outside", "zone-seam",
}  # fmt: skip


def sound(layout: Layout) -> tuple[Finding, ...]:
    """The findings, each with a code that is known, a place that is one, words, and what it is about."""
    found = findings(layout)
    for one in found:
        assert one.code in CODES
        assert one.severity in ("note", "warning", "error")
        assert isfinite(one.x)
        assert isfinite(one.y)
        assert one.about
        assert one.text.endswith(".")
    return found


@pytest.mark.parametrize("shape", CROSSED)
@pytest.mark.parametrize("bond", BONDS)
def test_findings_of_every_bond_have_a_place_words_and_what_they_are_about(bond: str, shape: str) -> None:
    panel = example(shape, bond=bond)
    for closers in (False, True):
        layout = lay_out(replace(panel, fit=Fit(closers=closers)))
        assert sum(one.code == "small-piece" for one in sound(layout)) == layout.small


@pytest.mark.parametrize("shape", SHAPES)
def test_findings_of_every_shape_have_a_place_words_and_what_they_are_about(shape: str) -> None:
    sound(lay_out(example(shape)))


def test_a_face_without_brick_has_no_findings() -> None:
    assert findings(lay_out(replace(rectangle(48, 48), margin=Length.from_inches(24)))) == ()


sixteenths = st.integers(0, 16 * 40).map(lambda count: count / 16)
spans = st.integers(16, 16 * 30).map(lambda count: count / 16)
rects = st.tuples(sixteenths, sixteenths, spans, spans).map(list)


def _apart(openings: list[list[float]]) -> list[list[float]]:
    """Those that overlap none before them: openings that do are refused."""
    kept: list[Polygon] = []
    for x, y, width, height in openings:
        if not any(box(x, y, x + width, y + height).intersects(other) for other in kept):
            kept.append(box(x, y, x + width, y + height))
    return [[x0, y0, x1 - x0, y1 - y0] for x0, y0, x1, y1 in (each.bounds for each in kept)]


@settings(max_examples=60, deadline=None)
@given(
    bond=st.sampled_from(sorted(BONDS)),
    other=st.sampled_from(sorted(BONDS)),
    openings=st.lists(rects, max_size=3),
    zone=st.one_of(st.none(), rects),
    band=st.integers(-2, 18),
    closers=st.booleans(),
)
def test_findings_of_any_panel_have_a_place_words_and_what_they_are_about(
    bond: str, other: str, openings: list[list[float]], zone: list[float] | None, band: int, closers: bool
) -> None:
    zones = [{"mark": "B", "band": {"course": band, "courses": 3}, "size": "modular", "bond": other}]
    if zone is not None:
        zones.append({"mark": "Z", "rect": zone, "size": "norman", "bond": other})
    marked = [{"mark": f"W{k}", "rect": rect} for k, rect in enumerate(_apart(openings))]
    panel = rectangle(61.3125, 44.6875, bond, openings=marked, zones=zones)
    sound(lay_out(replace(panel, fit=Fit(closers=closers))))


def test_a_panel_edited_a_little_has_findings_about_the_same_things() -> None:
    """So that a finding that somebody accepted is found again."""

    def abouts(left: float, width: float) -> set[tuple[str, str]]:
        window = {"mark": "W1", "rect": [left, 13.25, width, 18.5]}
        return {(one.code, one.about) for one in findings(lay_out(rectangle(61.5, 44, openings=[window])))}

    assert abouts(17.5, 21) == abouts(17.4375, 21.125)
    assert ("small-piece", "right edge") in abouts(17.5, 21)
