"""Readings of one axis: how far off each was along the tape, in the order they came, and the verdict on it."""

from collections.abc import Iterator, Mapping, Sequence

from app.drawing.drawing import Drawing
from app.drawing.marks import LARGE, NORMAL, SMALL, Circle, Layer, Mark, Text, area, segments
from app.drawing.readings_axes import Axes, ground, signed
from app.drawing.scales import Margins, Scale
from app.liner.drift import expected_at
from app.liner.readings_values import KINDS, Kind, Verdict
from app.liner.values import Checkpoint, Drift

WORDS = "READINGS, from the tape's hook; how far each was long or short of nominal; right in the shaded band"
NONE_YET = "No readings yet along this axis."
NO_BRICK = "This panel has no brick, so there is nothing to read."

AROUND = Margins(left=34.0, right=32.0, bottom=56.0, top=8.0)
"""Room for errors at the left, words beside the last checkpoint, marks and words below, mm."""

WIDTH_MM = 190.0
"""The tape's length on paper."""

RADIUS_MM, BESIDE_MM, LABEL_MM = 2.1, 6.4, 3.6
"""Size of a mark, from one reading of a checkpoint to its next, from a mark to its words."""

ROOM = 1.15
"""The plot goes so much farther than the greatest error."""

LETTERS: dict[Kind, str] = {"hold": "H", "adjust": "A", "relay": "R", "measure": "M"}


def reading_history(
    drift: Drift,
    axis: str,
    verdicts: Sequence[Verdict],
    *,
    reach: float,
    temperature: float | None = None,
    unit: str = "in",
    degree: str = "F",
    title: str = "",
) -> Drawing:
    """The plot of one axis, "x" or "y", of a tape `reach` inches long; verdicts in the order the readings came.

    Hold is a ring with H, adjust a triangle with A, relay a square with R, measure one with M. Several readings of a
    checkpoint stand side by side, joined and numbered, with what the last one was off. With a bed temperature also what
    the tape would read if nothing were corrected. Without readings or checkpoints it says so in words.
    """
    points = [point for point in drift.checkpoints if point.axis == axis]
    own = [verdict for verdict in verdicts if verdict.axis == axis]
    expected = {} if temperature is None else {p.mark: expected_at(p, temperature) - p.nominal for p in points}
    axes = _axes(points, [*(verdict.error for verdict in own), *expected.values()], reach, unit)
    layers = (
        Layer("reading_ground", tuple(ground(axes, points, temperature, degree))),
        Layer("readings", tuple(_readings(axes, own, expected))),
        Layer("reading_words", tuple(_words(axes, points, own, title or f"Readings along {axis}"))),
    )
    return Drawing(title or f"Readings along {axis}", WORDS, reach, axes.height, AROUND, axes.scale, layers)


def _axes(points: Sequence[Checkpoint], errors: Sequence[float], reach: float, unit: str) -> Axes:
    band = max((point.band for point in points), default=0.125)
    most = ROOM * max(2 * band, *map(abs, errors), band)
    return Axes(reach, most, band, Scale(reach * 25.4 / WIDTH_MM, "to fit"), unit)


def _readings(axes: Axes, verdicts: Sequence[Verdict], expected: Mapping[str, float]) -> Iterator[Mark]:
    for mark in dict.fromkeys(verdict.mark for verdict in verdicts):
        yield from _at_one(axes, [verdict for verdict in verdicts if verdict.mark == mark], expected.get(mark))


def _at_one(axes: Axes, verdicts: Sequence[Verdict], expected: float | None) -> Iterator[Mark]:
    """The readings of one checkpoint side by side, joined in order, with the last error beside."""
    beside, count = axes.mm(BESIDE_MM), len(verdicts)
    across = [verdict.nominal + (k - (count - 1) / 2) * beside for k, verdict in enumerate(verdicts)]
    up = [axes.up(verdict.error) for verdict in verdicts]
    joined = list(zip(across, up, across[1:], up[1:], strict=False))
    yield segments(joined, "rule")
    for k, (verdict, x, y) in enumerate(zip(verdicts, across, up, strict=True), start=1):
        yield from shape(axes, verdict.kind, x, y, str(k) if count > 1 else "")
    words = signed(verdicts[-1].error, axes.unit)
    y = up[-1] + _clear(axes, up[-1], expected)
    yield Text(across[-1] + axes.mm(LABEL_MM), y, words, "text strong", SMALL, "start")


def _clear(axes: Axes, y: float, expected: float | None) -> float:
    """How far words are moved off the line of what was expected, or else off the edge of the band or zero."""
    away = axes.mm(SMALL)
    if expected is not None and abs(y - axes.up(expected)) <= 2 * away:
        return away if y >= axes.up(expected) else -away
    for at in (axes.up(0), axes.up(axes.band), axes.up(-axes.band)):
        if abs(y - at) <= 0.6 * away:
            return at - y + (0.8 * away if y >= at else -0.8 * away)
    return 0.0


def shape(axes: Axes, kind: Kind, x: float, y: float, number: str = "") -> Iterator[Mark]:
    """The mark of a verdict with its letter and number, its middle at x, y."""
    side = axes.mm(RADIUS_MM)
    if kind == "hold":
        yield Circle(x, y, RADIUS_MM, "checkpoint")
    elif kind == "adjust":
        yield area([(x - 1.5 * side, y - side), (x + 1.5 * side, y - side), (x, y + 1.7 * side)], "missed")
    else:
        yield area([(x - side, y - side), (x + side, y - side), (x + side, y + side), (x - side, y + side)], "missed")
    at = y - (axes.mm(0.4) if kind == "adjust" else 0)
    yield Text(x, at, f"{LETTERS[kind]}{number}", "text strong", (0.8 if number else 0.9) * SMALL)


def _words(axes: Axes, points: Sequence[Checkpoint], verdicts: Sequence[Verdict], title: str) -> Iterator[Mark]:
    if not verdicts:
        yield Text(axes.reach / 2, axes.up(0.6 * axes.most), NONE_YET if points else NO_BRICK, "text strong", NORMAL)
    y = -axes.mm(33)
    left = -axes.mm(AROUND.left - 4)
    yield Text(left, y, title, "text strong", LARGE, "start")
    yield Text(left, y - axes.mm(6.5), WORDS, "text", SMALL, "start")
    for k, (kind, words) in enumerate(KINDS.items()):
        x, below = left + axes.mm(3 + 24 * k), y - axes.mm(13.5)
        yield from shape(axes, kind, x, below)
        yield Text(x + axes.mm(4), below, words.lower(), "text", SMALL, "start")
