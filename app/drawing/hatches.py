"""Hatching of cut bricks and trimmed sheets: one a cut class, so that colour is never alone."""

from app.drawing.scales import Scale

WIDEST_MM, CLOSEST_MM, ON_BRICK = 1.2, 0.5, 0.9
"""Distance of hatch lines: ON_BRICK inches, so that a course shows two, within what paper shows well, mm."""


SHEET_MM = 2.8
"""Distance of the hatch lines of a trimmed sheet, mm."""

WASTE_MM = 4.6
"""Distance of the crosses over what is left of a sheet, mm: wide, so that it reads as crossed out."""

LANE_MM, DROP_MM = 3.4, 1.6
"""Distance of the hatch lines over a lane, wide so that brick shows through, and over the first drop, mm."""

LAP_MM = 1.2
"""Distance of the hatch lines of a lap, mm: closer than on a trim, as a lap is narrow."""


ON_PAPER = {"sheet": SHEET_MM, "lap": LAP_MM, "waste": WASTE_MM, "lane": LANE_MM, "drop": DROP_MM}
"""Hatchings with the same distance on paper at every scale, mm."""


def hatch_step(name: str, scale: Scale) -> float:
    """Side of a hatching's tile at a scale, inches."""
    inches = scale.inches_per_mm
    if name in ON_PAPER:
        return ON_PAPER[name] * inches
    return min(max(ON_BRICK, CLOSEST_MM * inches), WIDEST_MM * inches)


HATCHES: dict[str, tuple[tuple[float, float, float, float], ...]] = {
    "length": ((0.5, 0, 0.5, 1),),
    "height": ((0, 0.5, 1, 0.5),),
    "notch": ((0.5, 0, 0.5, 1), (0, 0.5, 1, 0.5)),
    "skew": ((-0.25, 0.25, 0.25, -0.25), (0, 1, 1, 0), (0.75, 1.25, 1.25, 0.75)),
    "blend-b": ((-0.25, 0.25, 0.25, -0.25), (0, 1, 1, 0), (0.75, 1.25, 1.25, 0.75)),
    "blend-c": ((0, 0.5, 1, 0.5),),
    "blend-d": ((0.5, 0, 0.5, 1),),
    "blend-e": ((0, 0, 1, 1), (0, 1, 1, 0)),
    "blend-f": ((0.1, 0.3, 0.4, 0.3), (0.6, 0.8, 0.9, 0.8)),
    "lap": ((0.25, -0.25, -0.25, 0.25), (1, 0, 0, 1), (1.25, 0.75, 0.75, 1.25)),
    "sheet": ((-0.25, 0.25, 0.25, -0.25), (0, 1, 1, 0), (0.75, 1.25, 1.25, 0.75)),
    "waste": ((0, 0, 1, 1), (0, 1, 1, 0)),
    "lane": ((0.25, -0.25, -0.25, 0.25), (1, 0, 0, 1), (1.25, 0.75, 0.75, 1.25)),
    "drop": ((0, 0.5, 1, 0.5), (0.5, 0, 0.5, 1)),
}
"""Lines of one tile of side 1, x0, y0, x1, y1: upright, level, both, slanted; those of a blend,
whose first colour has none; slanted and wide for a lap, a lane and a trimmed sheet; crossed out
for waste; a net for the first drop."""


def hatch_path(name: str, step: float) -> str:
    """Path data of one tile whose side is `step`; raises KeyError for a name that is not in HATCHES."""
    sides = [tuple(f"{step * value:.4g}" for value in line) for line in HATCHES[name]]
    return "".join(f"M{x0} {y0}L{x1} {y1}" for x0, y0, x1, y1 in sides)
