"""Panels by hand: a plain one, and one with something of everything."""

from app.lengths import Length
from app.panel.shapes import Arch, Circle, Point, Polygon, Rect
from app.panel.values import (
    Accepted,
    Band,
    Brickwork,
    Edge,
    Fixing,
    Opening,
    Panel,
    Plate,
    Question,
    Side,
    Strip,
    Zone,
)


def inch(value: float) -> Length:
    return Length.from_inches(value)


def points(*pairs: tuple[float, float]) -> tuple[Point, ...]:
    return tuple((inch(x), inch(y)) for x, y in pairs)


def rect(x: float, y: float, width: float, height: float) -> Rect:
    return Rect(inch(x), inch(y), inch(width), inch(height))


def polygon(*pairs: tuple[float, float]) -> Polygon:
    return Polygon(points(*pairs))


def circle(x: float, y: float, radius: float) -> Circle:
    return Circle(inch(x), inch(y), inch(radius))


def arch(x: float, y: float, width: float, height: float, rise: float) -> Arch:
    return Arch(inch(x), inch(y), inch(width), inch(height), inch(rise))


RUNNING = Brickwork("modular", "running")
SOLDIER = Brickwork("modular", "soldier")

PLAIN = Panel(
    mark="N1",
    outline=points((0, 0), (360, 0), (360, 384), (0, 384)),
    thickness=inch(7.25),
    field=RUNNING,
)

FULL = Panel(
    mark="N2",
    outline=points((0, 0), (360, 0), (360, 300), (180, 384), (0, 300)),
    thickness=inch(7.25),
    field=RUNNING,
    margin=inch(0.375),
    edges=(Edge(1, "return", inch(3.625)), Edge(4, "flush")),
    openings=(
        Opening("W1", rect(60, 96, 48, 64), "window", (Side("sill", "margin", None, inch(0.5)),)),
        Opening("D1", rect(150, 0, 40, 84), "door"),
        Opening("V1", circle(180, 320, 12), "vent"),
        Opening("L1", polygon((220, 200), (260, 200), (260, 230)), "louver"),
        Opening("A1", arch(250, 90, 48, 80, 24)),
    ),
    strips=(Strip("R1", points((0, 180), (360, 180)), inch(0.75)),),
    plates=(Plate("P1", rect(320, 20, 12, 12)),),
    zones=(Zone("S1", rect(56, 160.375, 56, 8), SOLDIER), Zone("B1", Band(100, 3), SOLDIER)),
    fixings=(Fixing(points((180, 0), (180, 300)), "glue"),),
    smallest_cut=inch(0.25),
    accepted=(Accepted("missed-head", "W1 head", "A. Mason", "The lintel covers it."),),
    questions=(Question("Q1", "May W1 be 4 in higher?"),),
)
