"""A drawing's SVG rewritten so that its PDF packs well: equal courses become equal text, wherever they lie."""

import re

LONG = 2_000
"""Paths shorter than this, in characters, are left alone."""

_PATH = re.compile(rf'<path d="(M[^"]{{{LONG},}})"([^>]*?) ?/>')
_START = re.compile(r"M(-?[\d.]+)[ ,]?(-?[\d.]+)([^M]*)")
_HATCHED = "url(#"


def packed(svg: str) -> str:
    """The same picture; each long path cut at its absolute moves into parts that all start in their own (0, 0).

    The library that sets the PDF writes absolute coordinates, and no two courses are alike in those. Hatched paths
    stay as they are, for their hatching is laid from the drawing's corner; so do open lines.
    """
    return _PATH.sub(lambda path: _in_parts(path[0], path[1], path[2]), svg)


def _in_parts(path: str, data: str, worn: str) -> str:
    if _HATCHED in worn or not data.endswith("z"):
        return path
    parts = (f'<path transform="translate({x} {y})" d="M0 0{steps}"/>' for x, y, steps in _START.findall(data))
    return f"<g{worn}>{''.join(parts)}</g>"
