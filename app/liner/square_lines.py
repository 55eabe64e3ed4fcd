"""Strips and fixing lines square to the tape, and those that are square to neither axis and so hold nothing."""

from collections.abc import Iterator
from itertools import pairwise

from app.brickwork.findings import Finding
from app.liner.tape import Tape
from app.panel.geometry import inches
from app.panel.shapes import Point
from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel

OUT = 0.375
"""Inches by which a line may be out of square from end to end and still count as square: one head joint, within which
a line of glue or tape is drawn by hand (common practice)."""

STEEPEST = 1 / 16
"""And by no more of its length than this (common practice)."""


def drawn_lines(panel: Panel) -> list[tuple[str, tuple[Point, ...]]]:
    """Strips and fixing lines by name, as drawn."""
    drawn = [(f"strip {strip.mark}", strip.line) for strip in panel.strips]
    return drawn + [(f"fixing {k}", fixing.line) for k, fixing in enumerate(panel.fixings, start=1)]


def square_parts(line: tuple[Point, ...], tape: Tape) -> Iterator[tuple[float, float, float]]:
    """Positions along the tape of the line's parts square to it, each with the part's ends the other way.

    Face frame, inches. A part a little out of square stands where its end nearest the hook does, so that liner beyond
    it is never taken to be held farther on than it is. None for a line of parts that are not square.
    """
    axis = 0 if tape.axis == "x" else 1
    for a, b in pairwise(inches(line)):
        low, high = sorted((a[1 - axis], b[1 - axis]))
        if _is_square(abs(a[axis] - b[axis]), high - low):
            yield min(a[axis], b[axis], key=tape.running), low, high


def _is_square(out: float, length: float) -> bool:
    return out <= TOLERANCE or out <= min(OUT, STEEPEST * length) + TOLERANCE


def askew_findings(panel: Panel, both: tuple[Tape, Tape]) -> Iterator[Finding]:
    """A note `liner-line-askew` at the middle of each strip and fixing line without any part square to either tape."""
    for name, line in drawn_lines(panel):
        if any(True for tape in both for _ in square_parts(line, tape)):
            continue
        points = inches(line)
        x, y = ((points[0][k] + points[-1][k]) / 2 for k in (0, 1))
        text = f"{name[:1].upper()}{name[1:]} is not square to either axis, so it resets no growth."
        yield Finding("liner-line-askew", "note", x, y, text, name)
