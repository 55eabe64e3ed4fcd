"""A palette as style rules for a live drawing, so that screen and paper look alike."""

from app.drawing.palettes import DASH_MM, INKS, THIN, Look, hatch_inks, palette
from app.drawing.styles import Style

PIXELS_PER_MM = 96 / 25.4
"""CSS pixels in a millimetre (CSS Values and Units)."""


def style_sheet(name: str, within: str) -> str:
    """One rule a style under the selector `within`; pens keep their width at every zoom.

    Raises KeyError for a palette that is not in INKS. A brick's pen is halved: on a screen joints are a pixel wide.
    """
    inks, looks = INKS[name], palette(name)
    rules = [f"{within} path,{within} circle{{vector-effect:non-scaling-stroke}}"]
    rules += [f"{within} {_selector(style)}{{{_declarations(look)}}}" for style, look in looks.items()]
    pen = f"{THIN * PIXELS_PER_MM / 2:.2f}px"
    for hatch, (ground, line) in hatch_inks(inks).items():
        rules.append(f"{within} .hatch-ground.{hatch}{{fill:{ground};stroke:none}}")
        rules.append(
            f"{within} .hatch-line.{hatch}{{fill:none;stroke:{line};stroke-width:{pen};stroke-dasharray:none}}"
        )
    return "\n".join(rules) + "\n"


def _selector(style: Style) -> str:
    return "." + style.replace(" ", ".")


def _declarations(look: Look) -> str:
    fill = f"url(#hatch-{look.hatch})" if look.hatch else look.fill
    said = {"fill": fill, "stroke": "none"}
    if look.line != "none":
        pen = look.pen * PIXELS_PER_MM * (0.5 if look.most else 1)
        said |= {"stroke": look.line, "stroke-width": f"{pen:.2f}px"}
    if look.dashed:
        said["stroke-dasharray"] = " ".join(f"{dash * PIXELS_PER_MM:.2f}" for dash in DASH_MM)
    if look.bold:
        said["font-weight"] = "600"
    if look.halo:
        said |= {"stroke": look.halo, "stroke-width": "0.3em", "stroke-linejoin": "round", "paint-order": "stroke"}
    return ";".join(f"{key}:{value}" for key, value in said.items())
