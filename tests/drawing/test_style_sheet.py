"""Rules of a live drawing: a hatching takes no line from a style that shares its name, such as the seams of sheets."""

import re

import pytest

from app.drawing.hatches import HATCHES
from app.drawing.palettes import INKS
from app.drawing.style_sheet import style_sheet


@pytest.mark.parametrize("palette", sorted(INKS))
def test_a_hatching_says_its_own_stroke_and_dashes(palette):
    rules = dict(re.findall(r"\.drawing (\S+)\{([^}]*)\}", style_sheet(palette, ".drawing")))
    for hatch in HATCHES:
        assert "stroke:none" in rules[f".hatch-ground.{hatch}"].split(";")
        assert "stroke-dasharray:none" in rules[f".hatch-line.{hatch}"].split(";")
