"""Lengths as lettered: what is missed by less than the tape's smallest mark is still said to be missed."""

import pytest

from app.drawing.lettering import lettered_miss


@pytest.mark.parametrize(
    ("inches", "unit", "words"),
    [
        (0.0155, "in", '< 1⁄16"'),
        (-0.0155, "in", '< 1⁄16"'),
        (0.5, "in", '1⁄2"'),
        (-0.25, "in", '1⁄4"'),
        (0.01, "mm", "< 1 mm"),
        (2 / 25.4, "mm", "2 mm"),
    ],
)
def test_a_miss_is_never_lettered_as_nothing(inches: float, unit: str, words: str) -> None:
    assert lettered_miss(inches, unit) == words
