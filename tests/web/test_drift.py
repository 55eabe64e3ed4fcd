"""The Drift screen: temperatures asked for and refused, the part that follows the slider, fixing lines applied."""

import json
import re
from html import unescape
from pathlib import Path
from typing import Any

import httpx
import numpy as np
import pytest
from growth_field import growth_at
from scenario import project, stored

from app.documents.project_file import read_project
from app.liner.drift import expected_at
from app.liner.tape import steel_tape_reading
from app.panel.project import Project
from app.web.drift_asked import asked_of
from app.workflow.compute import compute

pytestmark = pytest.mark.anyio

B1 = Path(__file__).parents[1] / "cases" / "b1.json"
HALL = Path(__file__).parents[2] / "demo_data" / "metric_hall.json"
FORM = re.compile(r"<form.*?</form>", re.DOTALL)
INPUT = re.compile(r'<input type="hidden" name="([^"]+)" value="([^"]*)">')


async def panel_of(client: httpx.AsyncClient, file: dict[str, Any]) -> str:
    ids = await stored(client, file)
    panel: str = ids["walls"][0]["panels"][0]
    return panel


def b1() -> dict[str, Any]:
    file: dict[str, Any] = json.loads(B1.read_text(encoding="utf-8"))
    return file


def fixing_forms(page: str, edit: str = "add_fixing") -> list[dict[str, str]]:
    found = [{name: unescape(value) for name, value in INPUT.findall(form)} for form in FORM.findall(page)]
    return [form for form in found if form.get("edit") == edit]


async def fixing_advice(client: httpx.AsyncClient, panel: str) -> list[dict[str, Any]]:
    advice: list[dict[str, Any]] = (await client.get(f"/api/panels/{panel}/layout")).json()["drift"]["fixing_advice"]
    return advice


async def test_every_checkpoint_and_course_stands_on_the_page(visitor: httpx.AsyncClient) -> None:
    panel = await panel_of(visitor, b1())
    result = (await visitor.get(f"/api/panels/{panel}/layout")).json()
    page = await visitor.get(f"/panels/{panel}/drift")
    assert page.status_code == 200
    for point in result["drift"]["checkpoints"]:
        assert f'<span class="ring">{point["mark"]}</span>' in page.text
    for course in result["courses"]:
        assert re.search(rf"\bcourse {course['course']}</th>", page.text)
    assert page.text.count("<svg") == 7


@pytest.mark.parametrize("tape", [None, 20, 110])
async def test_readings_are_those_of_the_drift_through_the_tape(visitor: httpx.AsyncClient, tape: int | None) -> None:
    """At 87 F: what the checkpoint reads there, shorter on a hot tape."""
    panel = await panel_of(visitor, b1())
    value = read_project(b1())
    last = compute(value, value.walls[0], value.walls[0].panels[0]).drift.checkpoints[-1]
    expected = expected_at(last, 87) * (1 if tape is None else steel_tape_reading(1.0, tape))
    asked = {"temperature": "87", "tape": "" if tape is None else str(tape)}
    part = (await visitor.get(f"/panels/{panel}/drift/now", params=asked)).text
    (row,) = re.findall(rf'<tr><th scope="row"><span class="ring">{last.mark}</span>.*?</tr>', part)
    assert spoken(row.split("<strong>")[1].split("</strong>")[0]) == pytest.approx(expected, abs=1 / 32 + 1e-9)


def spoken(text: str) -> float:
    """Inches of `30'-0 ³⁄₁₆"` with a fraction slash."""
    feet, _, rest = unescape(text).replace("\u2009", " ").removesuffix('"').rpartition("'-")
    whole, _, fraction = rest.partition(" ")
    over, _, under = fraction.partition("\u2044")
    return float(feet or 0) * 12 + float(whole) + (float(over) / float(under) if over else 0.0)


@pytest.mark.parametrize(
    ("temperature", "found"),
    [
        ("900", "found 900 °F"),
        ("-61", "found -61 °F"),
        ("hot", "found 'hot'"),
        ("", "found nothing"),
        ("1e2", "'1e2'"),
        ("nan", "'nan'"),
    ],
)
async def test_a_temperature_that_cannot_be_is_refused_and_the_page_stays(
    visitor: httpx.AsyncClient, temperature: str, found: str
) -> None:
    panel = await panel_of(visitor, project())
    expected = "expected a bed temperature from -60 to 250 °F"
    part = await visitor.get(f"/panels/{panel}/drift/now", params={"temperature": temperature})
    assert (part.status_code, part.headers["hx-retarget"]) == (422, "#drift-refused")
    page = await visitor.get(f"/panels/{panel}/drift", params={"temperature": temperature})
    assert page.status_code == 422
    for text in (part.text, page.text):
        assert found in unescape(text)
        assert expected in text
    assert "105 °F</span> on the bed" in page.text
    assert "<svg" in page.text


async def test_the_tapes_temperature_is_refused_by_its_own_name(visitor: httpx.AsyncClient) -> None:
    panel = await panel_of(visitor, json.loads(HALL.read_text(encoding="utf-8")))
    asked = {"temperature": "30", "tape": "122"}
    for address in ("now", "tape"):
        part = await visitor.get(f"/panels/{panel}/drift/{address}", params=asked)
        assert part.status_code == 422
        assert "found 122 °C<br>expected a temperature of the tape from -51 to 121 °C" in part.text


def test_what_is_asked_is_read_in_the_projects_unit() -> None:
    celsius = Project("x", (), temperature_unit="C")
    assert asked_of("21,5", "-3.5", celsius).bed == 21.5
    assert asked_of("21.5", "\u22123", celsius).tape == -3
    assert asked_of(None, None, celsius).bed == celsius.day.bed_high
    assert asked_of("121", " ", celsius).faults == ()
    assert len(asked_of("122", "x", celsius).faults) == 2


async def test_each_fixing_line_is_applied_by_its_own_form_and_undone(visitor: httpx.AsyncClient) -> None:
    panel = await panel_of(visitor, b1())
    address = f"/panels/{panel}/drift?temperature=87&tape=100"
    before = await fixing_advice(visitor, panel)
    wanted = [line for advice in before for line in advice["lines"]]
    offered = fixing_forms((await visitor.get(address)).text)
    assert len(offered) == len(wanted) == 10
    applied = await visitor.post(f"/panels/{panel}/edits", data={**offered[2], "by": "tape"})
    assert (applied.status_code, applied.headers["location"]) == (303, address)
    drift = (await visitor.get(f"/api/panels/{panel}/layout")).json()["drift"]
    growth = [span["to"] - span["from"] for span in drift["windows"] if span["axis"] == "x"]
    assert growth == pytest.approx([wanted[2]["nominal"], 480 - wanted[2]["nominal"]])
    page = (await visitor.get(address)).text
    assert "Add fixing line by tape" in page
    undone = await visitor.post(f"/panels/{panel}/undo", data={"base_revision": "2", "then": "drift"})
    assert (undone.status_code, undone.headers["location"]) == (303, f"/panels/{panel}/drift")
    assert await fixing_advice(visitor, panel) == before


async def test_once_every_fixing_line_is_applied_none_is_needed(visitor: httpx.AsyncClient) -> None:
    """Line after line as the page offers them."""
    panel = await panel_of(visitor, b1())
    for _ in range(11):
        offered = fixing_forms((await visitor.get(f"/panels/{panel}/drift")).text)
        if not offered:
            break
        assert (await visitor.post(f"/panels/{panel}/edits", data=offered[0])).status_code == 303
    assert "None needed" in (await visitor.get(f"/panels/{panel}/drift")).text
    for span in (await visitor.get(f"/api/panels/{panel}/layout")).json()["drift"]["windows"]:
        assert span["low"] <= 55 + 1e-6
        assert span["high"] + 1e-6 >= 105


async def test_all_lines_of_an_axis_are_one_step_and_with_both_axes_nothing_grows_past_the_tolerance(
    visitor: httpx.AsyncClient,
) -> None:
    """B1 with an upright strip, so that one axis has two spans; growth is looked at all over the face."""
    file = b1()
    drawn = file["walls"][0]["panels"][0]
    drawn["strips"] = [{"mark": "R1", "line": [[200, 0], [200, 360]], "width": 0.75}]
    panel = await panel_of(visitor, file)
    address = f"/panels/{panel}/drift?temperature=87"
    first = (await visitor.get(address)).text
    along, up = fixing_forms(first, "add_fixings")
    single = fixing_forms(first)
    assert " | ".join(form["line"] for form in single) == " | ".join((along["lines"], up["lines"]))
    assert "Apply all 4</button>" in first
    applied = await visitor.post(f"/panels/{panel}/edits", data={**up, "by": "glue"})
    assert (applied.status_code, applied.headers["location"]) == (303, address)
    (rest,) = fixing_forms((await visitor.get(address)).text, "add_fixings")
    assert rest["lines"] == along["lines"]
    await visitor.post(f"/panels/{panel}/edits", data=rest)
    page = (await visitor.get(address)).text
    assert "None needed" in page
    assert f"Last: Add {len(along['lines'].split('|'))} fixing lines" in page
    assert_within_tolerance((await visitor.get(f"/api/panels/{panel}")).json()["document"], file)
    for base in ("3", "4"):
        await visitor.post(f"/panels/{panel}/undo", data={"base_revision": base})
    assert fixing_forms((await visitor.get(address)).text) == [{**form, "base_revision": "5"} for form in single]


def assert_within_tolerance(panel: dict[str, Any], file: dict[str, Any]) -> None:
    """Growth at the worst temperatures of the day, every inch or so of the face."""
    file["walls"][0]["panels"] = [panel]
    value = read_project(file)
    layout = compute(value, value.walls[0], value.walls[0].panels[0]).layout
    x, y = np.meshgrid(np.linspace(0, layout.panel.width, 400), np.linspace(0, layout.panel.height, 300))
    for bed in (value.day.bed_low, value.day.bed_high):
        for grown in growth_at(layout, value.liner, bed, x.ravel(), y.ravel()):
            assert np.abs(grown).max() <= value.liner.tolerance.inches + 1e-6


async def test_one_line_alone_has_no_button_for_all(visitor: httpx.AsyncClient) -> None:
    """E1 is 144 by 96 in., 79 in. may be free: one line halves each."""
    panel = await panel_of(visitor, project())
    page = (await visitor.get(f"/panels/{panel}/drift")).text
    assert len(fixing_forms(page)) == 2
    assert fixing_forms(page, "add_fixings") == []


async def test_joint_lines_between_checkpoints_are_folded_away(visitor: httpx.AsyncClient) -> None:
    panel = await panel_of(visitor, b1())
    page = (await visitor.get(f"/panels/{panel}/drift")).text
    for axis, table in zip("xy", page.split('<section class="stack tape">')[1:], strict=True):
        between = table.count('<tr class="between"><th scope="row">')
        shown = re.findall(r'<tr><th scope="row"><span class="ring">(\w+)</span>', table)
        assert f'id="every-{axis}" hx-preserve="true"><summary>Show all joint lines, {between} more' in table
        assert between > 20
        assert shown == [f"{axis.upper()}{k}" for k in range(1, len(shown) + 1)]


async def test_a_form_from_elsewhere_leads_to_the_editor_and_never_to_another_site(visitor: httpx.AsyncClient) -> None:
    panel = await panel_of(visitor, project())
    values = {"edit": "add_fixing", "line": "10, 0; 10, 96", "base_revision": "1", "then": "//evil.example/drift"}
    assert (await visitor.post(f"/panels/{panel}/edits", data=values)).headers["location"] == f"/panels/{panel}"


async def test_a_panel_without_brick_says_so(visitor: httpx.AsyncClient) -> None:
    file: dict[str, Any] = project()
    file["walls"][0]["panels"] = [file["walls"][0]["panels"][1] | {"margin": 48}]
    panel = await panel_of(visitor, file)
    page = await visitor.get(f"/panels/{panel}/drift")
    assert page.status_code == 200
    assert "nothing drifts" in page.text
    assert "<svg" not in page.text


async def test_no_such_panel_is_told(visitor: httpx.AsyncClient) -> None:
    assert (await visitor.get("/panels/none/drift")).status_code == 404
