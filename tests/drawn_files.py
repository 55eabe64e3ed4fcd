"""Project files drawn at random: sound ones, any of the keys, typed in any way, in any order."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from hypothesis import strategies as st

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.panel.laying import CORNERS

Document = dict[str, Any]

SIDES = ["left", "right", "head", "sill"]
BLENDED = [{"name": "red", "percent": 62.5}, {"percent": 37.5, "name": "buff"}]
MM = Fraction(254, 10)


@dataclass(frozen=True)
class Drawer:
    """Draws parts of a panel about 20 x 11 ft whose numbers are in `unit`."""

    draw: st.DrawFn
    unit: str

    def typed(self, inches: float) -> Any:
        """Sixteenths of an inch, as a number or in words."""
        ticks = round(inches * 16)
        exact = Fraction(ticks, 16)
        number = float(exact if self.unit == "in" else exact * MM)
        ways = [number, f'{float(exact)}"', f"{float(exact * MM):.4f} mm"]
        ways.append(f"{ticks // 16} {ticks % 16}/16" if ticks % 16 else f"{ticks // 192}'-{ticks // 16 % 12}")
        ways += [int(number)] if number == int(number) else []
        return self.draw(st.sampled_from(ways))

    def between(self, low: float, high: float) -> float:
        return self.draw(st.integers(round(low * 16), round(high * 16))) / 16

    def point(self, x: float, y: float) -> list[Any]:
        return [self.typed(x), self.typed(y)]

    def shuffled(self, value: Document) -> Document:
        return dict(self.draw(st.permutations(list(value.items()))))

    def some(self, parts: Document, more: Document) -> Document:
        """All of `parts` and any of `more`, shuffled."""
        kept = [key for key in more if self.draw(st.booleans())]
        return self.shuffled(parts | {key: more[key] for key in kept})

    def few(self) -> range:
        return range(self.draw(st.integers(0, 3)))

    def work(self) -> Document:
        size, bond = st.sampled_from(sorted(CATALOGUE)), st.sampled_from(sorted(BONDS))
        origin = {"origin": self.point(self.between(0, 9), self.between(0, 9))}
        return self.some({"size": self.draw(size), "bond": self.draw(bond)}, origin)

    def shape(self, x: float) -> Document:
        size = self.between(4, 20)
        shapes = [
            {"rect": [*self.point(x, 30), *self.point(size, size)]},
            {"polygon": [self.point(x, 30), self.point(x + size, 30), self.point(x, 30 + size)]},
            {"circle": [*self.point(x + 10, 50), self.typed(size / 2)]},
            {"arch": [*self.point(x, 30), *self.point(size, size), self.typed(size / 4)]},
        ]
        return self.draw(st.sampled_from(shapes))

    def flat(self, x: float) -> Document:
        return {"rect": [*self.point(x, 80), *self.point(self.between(2, 10), self.between(2, 10))]}

    def opening(self, k: int) -> Document:
        shape = self.shape(10 + 40 * k)
        sides = (
            {"sides": [self.side(name) for name in self.draw(st.permutations(SIDES))[:2]]} if "rect" in shape else {}
        )
        return self.some({"mark": f"W{k}", **shape}, {"use": "window"} | sides)

    def side(self, name: str) -> Document:
        ways = [{"treatment": "flush"}, {"treatment": "margin", "margin": self.typed(0.5)}]
        ways += [{"treatment": "return", "depth": self.typed(3.625)}] if name in ("left", "right") else []
        return self.shuffled({"side": name, **self.draw(st.sampled_from(ways))})

    def fit(self) -> Document:
        word = st.sampled_from(["required", "wanted", "free"])
        matter = self.some(
            {}, {kind: self.draw(word) for kind in ("heads", "sills", "jambs", "edges", "strips", "zones")}
        )
        flags = {flag: self.draw(st.booleans()) for flag in ("courses", "heads", "closers")}
        return self.some({}, flags | {"matter": matter})

    def accepted(self, k: int) -> Document:
        said = {"code": "small-piece", "about": f"W{k} left", "by": "A. Mason", "reason": "Behind the downpipe; ½ m."}
        return self.shuffled(said)

    def question(self, k: int) -> Document:
        return self.shuffled({"mark": f"Q{k}", "text": 'May the head move 2" up?'})

    def zone(self, k: int) -> Document:
        region = self.draw(st.sampled_from([{"band": {"courses": 3, "course": k}}, self.flat(20 * k)]))
        return self.shuffled({"mark": f"Z{k}", **region, **self.work()})

    def strip(self, k: int) -> Document:
        return {"mark": f"R{k}", "width": self.typed(1), "line": [self.point(0, 9 + k), self.point(240, 9)]}

    def fixing(self) -> Document:
        return {"by": "glue", "line": [self.point(9, 0), self.point(9, self.between(1, 100))]}

    def edge(self, k: int) -> Document:
        return {"treatment": "return" if k in (1, 4) else "flush", "edge": k, "depth": self.typed(3.625)}

    def laying(self) -> Document:
        return self.some({}, {"corner": self.draw(st.sampled_from(CORNERS)), "direction": "up"})

    def lists(self) -> Document:
        return {
            "edges": [self.edge(k) for k in self.few()],
            "openings": [self.opening(k) for k in self.few()],
            "strips": [self.strip(k) for k in self.few()],
            "plates": [{"mark": f"P{k}", **self.flat(60 + 20 * k)} for k in self.few()],
            "zones": [self.zone(k) for k in self.few()],
            "fixings": [self.fixing() for _ in self.few()],
            "accepted": [self.accepted(k) for k in self.few()],
            "questions": [self.question(k) for k in self.few()],
        }

    def lengths(self) -> Document:
        limits = {"base": (0, 20), "margin": (0, 3), "smallest_cut": (0.25, 2), "least_piece": (1, 4)}
        return {key: self.typed(self.between(*limit)) for key, limit in limits.items()}

    def panel(self, mark: str) -> Document:
        peak = self.point(self.between(100, 140), 130)
        corners = [self.point(0, 0), self.point(240, 0), self.point(240, 120), peak, self.point(0, 120)]
        parts = {"mark": mark, "thickness": self.typed(7.25), "outline": corners, "field": self.work()}
        more = {"fit": self.fit(), "released": self.draw(st.booleans()), "laying": self.laying()}
        more |= {"cast_on": "2026-12-01", "placed": self.draw(st.booleans())}
        return self.some(parts, self.lengths() | self.lists() | more)


def size_document(unit: str) -> Document:
    """A brick size of a project's own."""
    times = 1 if unit == "in" else 25
    lengths = {"length": 8 * times, "height": 2 * times, "thickness": times, "head_joint": 0.5, "per": 10 * times}
    return {"name": "own", "courses": 4, **lengths}


def bond_documents() -> st.SearchStrategy[list[Document]]:
    """Bonds of a project's own: a half-lap one said two ways, and soldiers."""
    cells = [{"kind": "stretcher", "at": [0, "0"]}, {"at": ["1/2 P", "G"], "kind": "stretcher"}]
    half = {"name": "half lap", "cells": cells, "across": ["P", 0], "up": ["0", "2 G"]}
    short = {"up": ["1/2 P", "G"], "across": ["P", 0.0], "turn": 90, "cells": cells[:1], "name": "turned"}
    upright = {
        "name": "upright",
        "turn": 0,
        "cells": [{"kind": "soldier", "at": [0, 0]}],
        "across": ["S", 0],
        "up": [0, "P"],
    }
    return st.lists(st.sampled_from([half, short, upright]), unique_by=lambda bond: bond["name"])


@st.composite
def panel_documents(draw: st.DrawFn, unit: str = "in") -> Document:
    """Sound panels."""
    return Drawer(draw, unit).panel("P")


@st.composite
def project_documents(draw: st.DrawFn) -> Document:
    """Sound projects of up to two panels, in either unit."""
    unit, temperature = draw(st.sampled_from(["in", "mm"])), draw(st.sampled_from(["F", "C"]))
    drawer = Drawer(draw, unit)
    panels = [drawer.panel(f"P{k}") for k in range(draw(st.integers(0, 2)))]
    wall = drawer.shuffled({"mark": "North", "panels": panels, "joint": drawer.typed(0.75)})
    parts = {
        "format": "castcourse-project/1",
        "name": "Drawn",
        "length_unit": unit,
        "temperature_unit": temperature,
        "walls": draw(st.sampled_from([[wall], []])),
    }
    more = {
        "liner": draw(st.sampled_from([{}, {"rows": 9}, {"reference_temperature": 20, "columns": 5.0}])),
        "order": draw(st.sampled_from([{}, {"per_carton": 60, "overage_percent": 7.5}, {"bead": drawer.typed(0.25)}])),
        "blend": draw(st.sampled_from([{}, {"cluster": 3, "colours": BLENDED}])),
        "deliveries": draw(st.sampled_from([[], [{"item": "Brick", "day": "2026-11-30", "count": 900}]])),
        "day": draw(st.sampled_from([{}, {"bed_high": 60.0, "bed_low": 5}])),
        "sizes": draw(st.sampled_from([[], [size_document(unit)]])),
        "bonds": draw(bond_documents()),
    }
    return drawer.some(parts, more)
