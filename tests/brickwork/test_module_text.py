"""Sums of modules as people type them, and what is said of text that is none."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.brickwork.bond import ZERO, G, Module, P, S
from app.brickwork.module_text import read_module
from app.lengths import LengthError


@pytest.mark.parametrize(
    ("text", "module"),
    [
        ("P", P),
        ("1/2 P", P / 2),
        ("2 G", 2 * G),
        ("S - P", S - P),
        ("P/2 + G", P / 2 + G),
        ("3 P / 4", 3 * P / 4),
        ("-P", -P),
        ("1.5p", 1.5 * P),
        ("0", ZERO),
        ("0 P", ZERO),
        ("0 + 3G-S", 3 * G - S),
        ("  P −  S ", P - S),
    ],
)
def test_a_sum_of_modules_is_read(text: str, module: Module) -> None:
    assert read_module(text) == module


@pytest.mark.parametrize(
    ("text", "position", "found", "expected"),
    [
        ("", 0, "nothing", "a number or P, G or S"),
        ("   ", 3, "nothing", "a number or P, G or S"),
        ("2", 1, "the end", "P, G or S"),
        ("2 Q", 2, "Q", "P, G or S"),
        ("x", 0, "x", "a number or P, G or S"),
        ("P G", 2, "G", "+, - or the end"),
        ("P +", 3, "the end", "a number or P, G or S"),
        ("1/0 P", 0, "1", "a share of at least one part"),
        ("P/0", 1, "/", "a share of at least one part"),
        ("P - 2000 G", 4, "2", "at most 1,000 modules"),
        ("8 in", 2, "i", "P, G or S"),
        ("1/2/2 P", 3, "/", "P, G or S"),
    ],
)
def test_what_is_no_sum_is_refused_where_it_goes_wrong(text: str, position: int, found: str, expected: str) -> None:
    with pytest.raises(LengthError) as raised:
        read_module(text)
    error = raised.value
    assert (error.position, error.found) == (position, found)
    assert error.expected.startswith(expected)


_TERMS = st.tuples(st.sampled_from("PGS"), st.fractions(0, 99, max_denominator=12))


@given(st.lists(_TERMS, min_size=1, max_size=5))
def test_a_sum_is_the_sum_of_its_terms(terms: list[tuple[str, Fraction]]) -> None:
    read = read_module(" + ".join(f"{times} {letter}" for letter, times in terms))
    for part, letter in ((read.p, "P"), (read.g, "G"), (read.s, "S")):
        assert part == pytest.approx(float(sum(times for mark, times in terms if mark == letter)))


@given(st.text("PGS0123456789/+-. x", max_size=20))
def test_any_text_is_read_or_refused_within_it(text: str) -> None:
    assert 0 <= _fault_place(text) <= len(text)


def _fault_place(text: str) -> int:
    try:
        read_module(text)
    except LengthError as error:
        return error.position
    return 0
