"""A kerf that leaves no brick and a sheet that fits on no panel are refused; whatever suits one panel is not."""

from copy import deepcopy
from typing import Any

import pytest
from broken_files import SOUND
from hypothesis import given
from hypothesis import strategies as st

from app.brickwork.sizes import CATALOGUE
from app.documents.project_file import read_project, read_stored
from app.panel.faults import Refused
from app.panel.project import Liner

STATED = {size: (row.length.inches + row.head_joint.inches, row.gauge) for size, row in CATALOGUE.items()}


def panel(mark: str, width: float, height: float, size: str = "modular") -> dict[str, Any]:
    outline = [[0, 0], [width, 0], [width, height], [0, height]]
    return {"mark": mark, "thickness": 7.25, "outline": outline, "field": {"size": size, "bond": "running"}}


def project(panels: list[dict[str, Any]], **more: Any) -> dict[str, Any]:
    return deepcopy(SOUND) | {"walls": [{"mark": "North", "panels": panels}]} | more


def paths(document: dict[str, Any]) -> list[str]:
    try:
        read_project(document)
    except Refused as refused:
        return [fault.path for fault in refused.faults]
    return []


def test_the_usual_sheet_is_taken_on_a_mock_up_smaller_than_it() -> None:
    assert paths(project([panel("M", 30, 20)], liner={"columns": 6, "rows": 9})) == []
    assert paths(project([panel("M", 30, 20)], liner={"columns": 6, "rows": 10})) == ["liner.rows"]
    assert paths(project([panel("M", 30, 20)], liner={"columns": 7, "rows": 9})) == ["liner.columns"]


def test_a_sheet_up_to_ten_feet_may_be_longer_than_a_narrow_panel() -> None:
    assert paths(project([panel("P", 60, 120)], liner={"columns": 15})) == []
    assert paths(project([panel("P", 60, 120)], liner={"columns": 16})) == ["liner.columns"]


def test_a_lap_is_less_than_half_of_the_shorter_step_of_every_sheet_that_is_laid() -> None:
    """6 stretchers of 8 in. by 9 courses of 8/3 in.: 24 in. up; 6 soldiers of 8/3 in. along: 16 in."""
    assert paths(project([panel("P", 100, 100)], liner={"lap": 11.9})) == []
    assert paths(project([panel("P", 100, 100)], liner={"lap": 12})) == ["liner.lap"]
    soldiers = {"mark": "Z", "rect": [8, 40, 30, 8], "size": "modular", "bond": "soldier"}
    banded = panel("P", 100, 100) | {"zones": [soldiers]}
    assert paths(project([banded], liner={"lap": 7.8})) == []
    assert paths(project([banded], liner={"lap": 8})) == ["liner.lap"]


def test_a_project_without_panels_takes_any_liner_and_kerf() -> None:
    assert paths(project([], liner={"columns": 1000, "rows": 1000}, order={"kerf": 100})) == []


def test_the_kerf_is_held_against_bricks_that_are_used_and_no_others() -> None:
    assert paths(project([panel("P", 100, 100)], order={"kerf": 2.125})) == []
    banded = panel("P", 100, 100) | {"zones": [{"mark": "Z", "rect": [8, 40, 30, 8], "size": "long", "bond": "stack"}]}
    assert paths(project([banded], order={"kerf": 2.125})) == ["order.kerf"]


def test_what_is_stored_already_is_read_whatever_its_panels_became() -> None:
    absurd = project([panel("P", 100, 100)], order={"kerf": 4}, liner={"rows": 900})
    assert paths(absurd) == ["order.kerf", "liner.rows"]
    assert read_stored(absurd).liner.rows == 900


@pytest.mark.parametrize("unit", ["F", "C"])
def test_a_refused_temperature_is_told_in_the_files_unit(unit: str) -> None:
    with pytest.raises(Refused) as caught:
        read_project(project([], temperature_unit=unit, liner={"reference_temperature": 900}))
    (fault,) = caught.value.faults
    assert fault.found == f"900 degrees {unit}"
    assert fault.expected.endswith(f"degrees {unit}")


@given(
    st.lists(
        st.tuples(st.integers(20, 400), st.integers(20, 400), st.sampled_from(sorted(CATALOGUE))),
        min_size=1,
        max_size=4,
    ),
    st.integers(1, 80),
    st.integers(1, 200),
)
def test_a_liner_is_refused_exactly_where_no_panel_and_no_ten_feet_take_its_sheet(
    drawn: list[tuple[int, int, str]], columns: int, rows: int
) -> None:
    """The rule written out again: some panel is larger one way, and neither way is past ten feet and every panel."""
    panels = [panel(f"P{k}", *one) for k, one in enumerate(drawn)]
    wide = [(columns * STATED[size][0], width) for width, _, size in drawn]
    high = [(rows * STATED[size][1], height) for _, height, size in drawn]
    fits = any(w[0] <= w[1] or h[0] <= h[1] for w, h in zip(wide, high, strict=True))
    is_long = [all(sheet > max(120, *(side for _, side in way), 0) for sheet, _ in way) for way in (wide, high)]
    expected = (columns, rows) != (6, 9) and (not fits or any(is_long))
    found = paths(project(panels, liner={"columns": columns, "rows": rows}))
    assert bool(set(found) - {"liner.lap"}) == expected
    assert set(found) <= {"liner.columns", "liner.rows", "liner.lap"}
    steps = [(columns * STATED[size][0], rows * STATED[size][1]) for _, _, size in drawn]
    assert ("liner.lap" in found) == (not expected and Liner().lap.inches >= min(map(min, steps)) / 2)
