"""How each style looks: colours and pen widths, looked up only when a drawing becomes a file.

Pens are 0.18, 0.35 and 0.7 mm, twice as thick from one to the next or nearly (ISO 128).
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from app.drawing.styles import BLEND_STYLES, STYLES, Style

THIN, MEDIUM, THICK = 0.18, 0.35, 0.7

ON_JOINT = 0.09
"""Inches: a quarter of the usual 3/8 in. joint."""

DASH_MM = (2.4, 1.2)
"""Dash and gap of a broken line on paper, mm."""


@dataclass(frozen=True, slots=True)
class Look:
    """Fill, line colour, pen in mm; `hatch` names the hatching over the fill; "none" is no fill or no line;
    `halo` is what a text is edged with so that it reads over brick;
    `most` is the thickest pen in inches of panel (0: no limit), so that at a small scale no line hides a joint;
    `wide` is the fill at scales that show a joint as a gap between two lines, "" for the same fill;
    `near` is drawn with its line at such scales alone: at others the joint beside it is its line."""

    fill: str = "none"
    line: str = "none"
    pen: float = 0.0
    dashed: bool = False
    bold: bool = False
    hatch: str = ""
    halo: str = ""
    most: float = 0.0
    wide: str = ""
    near: bool = False


@dataclass(frozen=True, slots=True)
class Inks:
    """The colours of one palette, by role."""

    ground: str
    ink: str
    quiet: str
    concrete: str
    joint: str
    brick: str
    trim_fill: str
    trim: str
    small: str
    sheet: str
    sheet_fill: str
    attention: str


PAPER = Inks(
    ground="#FCFBF8",
    ink="#1E2430",
    quiet="#5A6272",
    concrete="#EFEDE7",
    joint="#6E6862",
    brick="#DDBBA8",
    trim_fill="#E9D8CC",
    trim="#9C4A2F",
    small="#7A2E63",
    sheet="#0B6B75",
    sheet_fill="#DCEBEA",
    attention="#8A5A00",
)
NIGHT = Inks(
    ground="#14171D",
    ink="#EDEAE2",
    quiet="#A9AFBC",
    concrete="#1F242D",
    joint="#A39C92",
    brick="#5A4238",
    trim_fill="#2B2624",
    trim="#E08B6A",
    small="#E08CC4",
    sheet="#4FC3CE",
    sheet_fill="#1E3639",
    attention="#E7B450",
)
BED = Inks(
    ground="#FFFFFF",
    ink="#000000",
    quiet="#000000",
    concrete="#FFFFFF",
    joint="#000000",
    brick="#FFFFFF",
    trim_fill="#FFFFFF",
    trim="#000000",
    small="#000000",
    sheet="#000000",
    sheet_fill="#FFFFFF",
    attention="#000000",
)
PRINT = replace(BED, concrete="#F2F2F2", quiet="#3A3A3A", brick="#E4E4E4")

WHITE = replace(PAPER, ground="#FFFFFF")
"""The paper's own colours for what is printed on white sheets."""

INKS: dict[str, Inks] = {"paper": PAPER, "white": WHITE, "night": NIGHT, "bed": BED, "print": PRINT}


def palette(name: str) -> Mapping[Style, Look]:
    """The looks of every style in one palette; raises KeyError for a name that is not in INKS."""
    inks = INKS[name]
    looks = _areas(inks) | _cuts(inks) | _blend(inks) | _lines(inks) | _plots(inks) | _texts(inks)
    return {style: looks[style] for style in STYLES}


def _areas(inks: Inks) -> dict[Style, Look]:
    return {
        "concrete": Look(inks.concrete),
        "joint": Look(inks.joint, wide=inks.concrete),
        "opening": Look(inks.ground),
        "strip": Look(inks.concrete, inks.ink, THIN),
        "plate": Look(inks.concrete, inks.ink, MEDIUM),
        "whole": Look(inks.brick, inks.ink, THIN, most=ON_JOINT, near=True),
        "pole": Look(inks.ground, inks.ink, THIN),
        "tape": Look(inks.ground, inks.ink, THIN),
        "met": Look(inks.ink, inks.ink, THIN),
        "missed": Look(inks.ground, inks.attention, MEDIUM),
        "solid": Look(inks.ink),
        "label": Look(inks.ground),
        "checkpoint": Look(inks.ground, inks.ink, MEDIUM),
    }


def _cuts(inks: Inks) -> dict[Style, Look]:
    return {
        "trimmed length": Look(inks.trim_fill, inks.trim, THIN, hatch="length", most=ON_JOINT),
        "trimmed height": Look(inks.trim_fill, inks.trim, THIN, hatch="height", most=ON_JOINT),
        "trimmed notch": Look(inks.trim_fill, inks.trim, THIN, hatch="notch", most=ON_JOINT),
        "trimmed skew": Look(inks.trim_fill, inks.trim, THIN, hatch="skew", most=ON_JOINT),
        "cut letter": Look(inks.ink, bold=True, halo=inks.trim_fill),
        "small": Look("none", inks.small, MEDIUM, most=3 * ON_JOINT),
        "small mark": Look(inks.small),
    }


DARKER, HATCHED = (0.0, 0.22, 0.07, 0.3, 0.14, 0.38), 0.7
"""How much of the ink is mixed into the brick's colour for each colour of a blend, and into its hatching."""


def _blend(inks: Inks) -> dict[Style, Look]:
    looks: dict[Style, Look] = {"blend letter": Look(inks.ink, bold=True, halo=inks.brick)}
    for style, part in zip(BLEND_STYLES, DARKER, strict=True):
        hatch = "" if style == BLEND_STYLES[0] else style.replace(" ", "-")
        looks[style] = Look(_mixed(inks.brick, inks.ink, part), inks.ink, THIN, hatch=hatch, most=ON_JOINT, near=True)
    return looks


def _mixed(one: str, other: str, part: float) -> str:
    """A colour between two, `part` of the way to the other."""
    pairs = ((int(one[k : k + 2], 16), int(other[k : k + 2], 16)) for k in (1, 3, 5))
    return "#" + "".join(f"{round(a + (b - a) * part):02X}" for a, b in pairs)


def _lines(inks: Inks) -> dict[Style, Look]:
    return {
        "outline": Look("none", inks.ink, THICK),
        "opening rim": Look("none", inks.ink, MEDIUM),
        "sheet full": Look(inks.ground),
        "sheet trimmed": Look(inks.sheet_fill, hatch="sheet"),
        "sheet waste": Look(inks.ground, hatch="waste"),
        "lap": Look(inks.sheet_fill, hatch="lap"),
        "knife": Look("none", inks.trim, THICK),
        "pocket": Look("none", inks.quiet, THIN, most=ON_JOINT),
        "edge piece": Look("none", inks.small, THICK),
        "lane": Look("none", inks.ink, THICK, hatch="lane"),
        "pour edge": Look(inks.concrete, inks.ink, MEDIUM),
        "pour way": Look("none", inks.attention, THICK),
        "vibrator": Look("none", inks.ink, THIN),
        "first drop": Look("none", inks.ink, THICK, hatch="drop"),
        "fixing": Look("none", inks.ink, MEDIUM, dashed=True),
        "sheet": Look("none", inks.sheet, MEDIUM, dashed=True),
        "rule": Look("none", inks.ink, THIN),
        "tick": Look("none", inks.ink, MEDIUM),
        "earlier": Look("none", inks.attention, MEDIUM, dashed=True),
        "changed": Look("none", inks.sheet, THICK),
        "cloud": Look("none", inks.small, MEDIUM),
        "delta": Look(inks.ground, inks.small, MEDIUM),
    }


def _plots(inks: Inks) -> dict[Style, Look]:
    pale = inks.concrete if inks.sheet_fill == inks.ground else inks.sheet_fill
    return {
        "envelope": Look(pale),
        "band": Look("none", inks.ink, MEDIUM, dashed=True),
        "beyond": Look("none", inks.quiet, THIN / 2),
        "growth": Look("none", inks.ink, THICK),
    }


def _texts(inks: Inks) -> dict[Style, Look]:
    return {
        "text": Look(inks.ink),
        "text strong": Look(inks.ink, bold=True),
        "text quiet": Look(inks.quiet),
        "text small": Look(inks.small),
        "text sheet": Look(inks.sheet, bold=True),
        "text attention": Look(inks.attention, bold=True),
    }


def hatch_inks(inks: Inks) -> dict[str, tuple[str, str]]:
    """Ground and line of each hatching; no ground over brick that is to show through."""
    cut, sheet = (inks.trim_fill, inks.trim), (inks.sheet_fill, inks.sheet)
    line = _mixed(inks.brick, inks.ink, HATCHED)
    blend = {look.hatch: (look.fill, line) for look in _blend(inks).values() if look.hatch}
    sheets = {"sheet": sheet, "lap": sheet, "waste": (inks.ground, inks.quiet)}
    bed = {"lane": ("none", inks.ink), "drop": ("none", inks.ink)}
    return {"length": cut, "height": cut, "notch": cut, "skew": cut, **sheets, **bed, **blend}
