"""Colours of a blend have names of their own: what is ordered of two that read alike could not be told apart."""

import pytest
from broken_files import SOUND

from app.documents.project_file import read_project
from app.panel.faults import Refused


def named(*names: str) -> dict[str, object]:
    return {**SOUND, "blend": {"colours": [{"name": name, "percent": 100 / len(names)} for name in names]}}


@pytest.mark.parametrize("again", ["red", "Red", " red", "RED\N{NO-BREAK SPACE}"])
def test_a_name_that_an_earlier_colour_has_is_refused_with_its_place(again: str) -> None:
    with pytest.raises(Refused) as caught:
        read_project(named("red", "buff", again))
    (fault,) = caught.value.faults
    assert fault.path == "blend.colours[2].name"
    assert again.strip() in fault.found
    assert "colour 1 has it too" in fault.expected


def test_capital_sharp_s_is_no_way_around() -> None:
    with pytest.raises(Refused):
        read_project(named("weiß", "WEISS"))


def test_names_that_differ_are_taken() -> None:
    assert len(read_project(named("red", "red 2", "dark red")).blend.colours) == 3
