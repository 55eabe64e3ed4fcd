"""Days as texts agree with the calendar of Python's standard library (proleptic Gregorian, ISO 8601)."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.panel.days import is_day


@given(st.integers(0, 9999), st.integers(0, 14), st.integers(0, 33))
def test_a_text_is_a_day_exactly_where_the_calendar_has_it(year, month, day):
    text = f"{year:04}-{month:02}-{day:02}"
    try:
        expected = date(year, month, day).isoformat() == text
    except ValueError:
        expected = False
    assert is_day(text) == expected


@pytest.mark.parametrize(
    "text", ["", "20261201", "2026-W49-2", "2026-12-1", " 2026-12-01", "2026-12-01\n", "٢٠٢٦-12-01"]
)
def test_another_way_to_write_a_day_is_none(text):
    assert not is_day(text)
