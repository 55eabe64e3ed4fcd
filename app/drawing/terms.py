"""Terms of the trade: one sentence and a small picture each, from `terms.csv`."""

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import get_args

from app.brickwork.bonds import BONDS
from app.drawing.drawing import Drawing
from app.drawing.marks import Layer, Mark, box, line
from app.drawing.scales import Margins, Scale
from app.drawing.styles import Style
from app.drawing.svg import svg_document
from app.drawing.swatch import bond_marks

WIDE, HIGH = 36.0, 24.0
"""Inches of face in a picture."""
PIXELS_WIDE = 144
STYLES: tuple[str, ...] = get_args(Style)


@dataclass(frozen=True, slots=True)
class Term:
    """`labels` are the words that a page uses for it; `picture` is what is drawn, part by part."""

    name: str
    labels: tuple[str, ...]
    sentence: str
    picture: str

    @property
    def slug(self) -> str:
        return self.name.replace(" ", "-")


@cache
def terms() -> Mapping[str, Term]:
    """Every term by its slug."""
    with Path(__file__).with_name("terms.csv").open(encoding="utf-8", newline="") as file:
        rows = [
            Term(row["term"], tuple(row["labels"].split("|")), row["sentence"], row["picture"])
            for row in csv.DictReader(file)
        ]
    return {term.slug: term for term in rows}


@cache
def term_of(label: str) -> Term | None:
    """The term that a label of a page stands for; None for a label that needs no help."""
    return next((term for term in terms().values() if label in (term.name, *term.labels) and label), None)


@cache
def term_picture(slug: str, palette: str = "paper") -> str:
    """A small SVG document; raises KeyError for a term or a palette that is not known."""
    term = terms()[slug]
    layer = Layer("picture", tuple(_marks(term.picture)))
    scale = Scale(WIDE * 96 / PIXELS_WIDE, "not to scale")
    return svg_document(Drawing(term.name, term.sentence, WIDE, HIGH, Margins(0, 0, 0, 0), scale, (layer,)), palette)


def _marks(picture: str) -> Iterator[Mark]:
    """`bond NAME`, `box STYLE x y width height` and `line STYLE x y x y`, with semicolons between, the first lowest."""
    for part in picture.split(";"):
        kind, *words = part.split()
        if kind == "bond":
            yield from bond_marks(BONDS[" ".join(words)])
            continue
        style, places = _style(words[:-4]), [float(word) for word in words[-4:]]
        x, y, across, up = places
        yield box(x, y, across, up, style) if kind == "box" else line([(x, y), (across, up)], style)


def _style(words: list[str]) -> Style:
    name = " ".join(words)
    if name not in STYLES:
        raise KeyError(name)
    style: Style = name  # type: ignore[assignment]
    return style
