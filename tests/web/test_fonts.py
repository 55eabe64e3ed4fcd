"""Fonts keep every sign that pages write, and the same bytes each time."""

from importlib.resources import files
from io import BytesIO

import pytest
from fontTools.ttLib import TTFont

from app.web.fonts import subset_font

WRITTEN = "AZaz09éßñçşł '\"“”‘’–—…·×−±≈≤≥°²³½¼⅛⅝⁄→←↑↓"


@pytest.mark.parametrize("weight", ["Regular", "Semibold"])
def test_a_font_keeps_what_pages_write_and_loses_most_of_its_bytes(weight: str) -> None:
    font = (files("font_source_sans_pro") / f"files/SourceSansPro-{weight}.ttf").read_bytes()
    made = subset_font(font)
    before, after = (TTFont(BytesIO(one)).getBestCmap() for one in (font, made))
    assert [sign for sign in WRITTEN if ord(sign) in before and ord(sign) not in after] == []
    assert len(made) < len(font) / 5
    assert subset_font(font) == made
