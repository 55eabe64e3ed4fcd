"""Fonts as pages need them: the signs of Latin scripts, figures, fractions, arrows and marks; a sixth of the bytes."""

from io import BytesIO

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

RANGES = (
    (0x0020, 0x017F),
    (0x2000, 0x209F),
    (0x20AC, 0x20AC),
    (0x2150, 0x21FF),
    (0x2200, 0x22FF),
    (0x25A0, 0x25FF),
    (0x2713, 0x2713),
)
"""Code points kept, first and last (Unicode blocks: Latin, punctuation, sub- and superscripts, fractions, arrows,
mathematical signs, shapes); any other sign comes from the browser's own fonts."""

FEATURES = ("kern", "mark", "mkmk", "ccmp", "locl", "liga", "frac", "numr", "dnom", "tnum", "lnum", "sups", "subs")


def subset_font(font: bytes) -> bytes:
    """The font with the signs of RANGES alone, without hints; the same bytes for the same font."""
    opened = TTFont(BytesIO(font), recalcTimestamp=False)
    options = Options(layout_features=list(FEATURES), hinting=False, notdef_outline=True, name_IDs=["*"])
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=[sign for first, last in RANGES for sign in range(first, last + 1)])
    subsetter.subset(opened)
    written = BytesIO()
    opened.save(written)
    return written.getvalue()
