"""The closed set of styles: what a mark stands for. How it looks is a palette's business."""

from typing import Literal, get_args

Style = Literal[
    "outline",
    "concrete",
    "joint",
    "opening",
    "opening rim",
    "strip",
    "plate",
    "fixing",
    "whole",
    "trimmed length",
    "trimmed height",
    "trimmed notch",
    "trimmed skew",
    "cut letter",
    "small",
    "small mark",
    "blend a",
    "blend b",
    "blend c",
    "blend d",
    "blend e",
    "blend f",
    "blend letter",
    "sheet",
    "sheet full",
    "sheet trimmed",
    "sheet waste",
    "lap",
    "knife",
    "pocket",
    "edge piece",
    "lane",
    "pour edge",
    "pour way",
    "vibrator",
    "first drop",
    "checkpoint",
    "pole",
    "tape",
    "rule",
    "tick",
    "earlier",
    "changed",
    "cloud",
    "delta",
    "met",
    "missed",
    "solid",
    "label",
    "envelope",
    "band",
    "beyond",
    "growth",
    "text",
    "text strong",
    "text quiet",
    "text small",
    "text sheet",
    "text attention",
]

STYLES: tuple[Style, ...] = get_args(Style)

BLEND_STYLES: tuple[Style, ...] = ("blend a", "blend b", "blend c", "blend d", "blend e", "blend f")
"""One a colour of a blend: each has a lightness and a hatching of its own."""

CUT_STYLES: dict[str, Style] = {
    "length": "trimmed length",
    "height": "trimmed height",
    "notch": "trimmed notch",
    "skew": "trimmed skew",
}
CUT_LETTERS = {"length": "L", "height": "H", "notch": "N", "skew": "S"}
"""One letter a cut class, so that colour is never alone."""
