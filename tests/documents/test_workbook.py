"""The workbook, reopened by another library (openpyxl): the same figures on every sheet, text that stays text."""

import io
import re
from collections import Counter
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from openpyxl.worksheet.worksheet import Worksheet
from shapes import project as read

from app.documents.digest import panel_digest
from app.documents.order_book import BookPanel, OrderBook
from app.documents.workbook import workbook
from app.lengths import parse
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.short import castings_so_far, short_list
from app.order.takeoff import takeoff
from app.order.values import Casting, Takeoff
from app.panel.blend import Blend, Colour
from app.panel.cells import FORMULA_STARTS, unguarded
from app.panel.delivery import Delivery
from app.panel.project import Project
from app.workflow.compute import compute, saw_list_of, takeoff_of

DEMO = Path(__file__).parents[2] / "demo_data"
NAMES = ["Cover", "Order", "By panel", "Bricks and colours", "Saw list", "Saw patterns", "Liner sheets"]
NAMES += ["Fixings and sundries", "Short"]
HOSTILE = ["=1+1", "+1", "-1'-6\"", "@SUM(A1)", "=cmd|' /C calc'!A0", "'quoted"]
"""Examples of OWASP's page on CSV injection."""

THREE = Blend((Colour("red", 40), Colour("brown", 35), Colour("grey", 25)))


def book_of(project: Project, scope: str = "Whole project") -> OrderBook:
    pairs = [(wall, panel) for wall in project.walls for panel in wall.panels]
    computed = [compute(project, wall, panel) for wall, panel in pairs]
    panels = []
    for (wall, panel), done in zip(pairs, computed, strict=True):
        casting = Casting(wall.mark, panel.mark, panel.cast_on or "", panel.placed)
        panels.append(BookPanel(casting, panel_digest(project, wall, panel), done.work, done.takeoff, done.saw))
    taken = takeoff_of(project, computed)
    castings, percent = [one.casting for one in panels], project.order.overage_percent
    together = [takeoff_of(project, [computed[k] for k in row]) for row in castings_so_far(castings)]
    nets = [{line.item: line.net for line in one.bought} for one in together]
    short = short_list(castings, nets, taken.bought, project.deliveries, percent, "2026-12-01")
    saw = saw_list_of(project, computed)
    return OrderBook(project, scope, "3.4", date(2026, 12, 1), taken, tuple(panels), saw, short)


@pytest.fixture(scope="module")
def demo() -> OrderBook:
    """The demo works, mixed of three colours, with a yard."""
    project = replace(read(DEMO / "weir_works.json"), blend=THREE)
    walls = [
        replace(
            wall,
            panels=tuple(
                replace(panel, cast_on=f"2026-12-{k + 1:02}", placed=k == 0) for k, panel in enumerate(wall.panels)
            ),
        )
        for wall in project.walls
    ]
    came = (Delivery("2026-11-20", "Thin brick modular, stretcher, red", 4000), Delivery("2026-11-21", "Sand", 2))
    return book_of(replace(project, walls=tuple(walls), deliveries=came))


@pytest.fixture(scope="module")
def opened(demo: OrderBook) -> Any:
    return openpyxl.load_workbook(io.BytesIO(workbook(demo)))


def rows(sheet: Worksheet) -> list[dict[str, Any]]:
    head, *body = sheet.iter_rows(values_only=True)
    return [dict(zip(head, row, strict=True)) for row in body]


def test_there_is_a_sheet_a_topic_and_the_order_is_shown(opened: Any) -> None:
    assert opened.sheetnames == NAMES
    assert opened.active.title == "Order"


def test_the_order_has_the_figures_of_the_takeoff(opened: Any, demo: OrderBook) -> None:
    found = rows(opened["Order"])
    assert [row["Item"] for row in found] == [line.item for line in demo.takeoff.lines]
    for row, line in zip(found, demo.takeoff.lines, strict=True):
        assert [row["Net"], row["Overage"], row["Order"]] == pytest.approx(
            [line.net, line.overage, line.order], abs=0.005
        )
        assert (row["Unit"], row["Colour"] or "", row["Counted"]) == (line.unit, line.colour, line.note)
        assert {name: row[title] for title, name in (("Cartons", "carton"), ("Pallets", "pallet"))} == {
            name: next((pack.count for pack in line.packs if pack.name == name), None) for name in ("carton", "pallet")
        }


def test_by_panel_has_every_panel_and_sums_to_the_order(opened: Any, demo: OrderBook) -> None:
    """But for what panels share: cut bricks, and glue of which each panel counts the cartridge it has begun."""
    summed = Counter[str]()
    for row in rows(opened["By panel"]):
        summed[row["Item"]] += row["Net"]
    for line in demo.takeoff.lines:
        if line.unit in ("sheet", "sq ft", "lb", "cu yd", "ft") or line.topic == "corner units":
            assert summed[line.item] == pytest.approx(line.net, abs=0.005 * len(demo.panels))
        else:
            assert summed[line.item] >= line.net
    assert {row["Panel"] for row in rows(opened["By panel"])} == {panel.casting.mark for panel in demo.panels}
    assert {row["Placed"] for row in rows(opened["By panel"])} == {"yes", "no"}


def test_bricks_and_colours_sum_to_what_each_panel_takes(opened: Any, demo: OrderBook) -> None:
    counted = Counter[tuple[str, str, str]]()
    for row in rows(opened["Bricks and colours"]):
        counted[row["Panel"], row["Kind"], row["Colour"]] += row["Bricks"]
        if row["Whole"] is not None:
            assert row["Whole"] + row["Cut up"] == row["Bricks"]
    for panel in demo.panels:
        net = Counter[tuple[str, str, str]]()
        for line in panel.takeoff.lines:
            if line.kind:
                net[panel.casting.mark, line.kind, line.colour] += int(line.net)
        assert {key: count for key, count in counted.items() if key[0] == panel.casting.mark} == net


def test_the_saw_list_has_every_piece_and_its_length_twice(opened: Any, demo: OrderBook) -> None:
    found = rows(opened["Saw list"])
    flat = [row for row in found if not row["Cut from"].startswith("corner")]
    assert sum(row["Count"] for row in flat) == demo.saw.flat_pieces
    for row in found:
        assert parse(row["Length"].removeprefix("≈ ")).inches == pytest.approx(row["Length, in"], abs=1 / 32)
    assert (
        sum(row["Bricks"] for row in rows(opened["Saw patterns"]))
        + sum(row["Count"] for row in flat if row["Cut"] != "length")
        == demo.saw.bricks
    )


def test_the_saw_list_cuts_as_many_bricks_of_each_colour_as_the_order_has(opened: Any) -> None:
    """Bricks of the patterns and one for each other piece, beside the words of the order: so many to cut."""
    cut = Counter[tuple[str, str, str]]()
    for row in rows(opened["Saw patterns"]):
        cut[row["Size"], row["Kind"], row["Colour"]] += row["Bricks"]
    for row in rows(opened["Saw list"]):
        if row["Cut"] != "length" and not row["Cut from"].startswith("corner"):
            cut[row["Size"], row["Cut from"], row["Colour"]] += row["Count"]
    told = {
        (row["Size"], row["Kind"], row["Colour"]): int(found.group(1))
        for row in rows(opened["Order"])
        if (found := re.search(r"(\d+) to cut into", row["Counted"] or ""))
    }
    assert {colour for _, _, colour in cut} == {"red", "brown", "grey"}
    assert cut == told


def test_liner_sheets_are_those_of_the_cutting_plans(opened: Any, demo: OrderBook) -> None:
    found = rows(opened["Liner sheets"])
    assert len(found) == sum(panel.work.cutting.used for panel in demo.panels)
    assert sum(row["Laid sheets"] for row in found) == sum(len(panel.work.plan.sheets) for panel in demo.panels)
    for row in found:
        assert len(str(row["Cut for sheets"]).split(", ")) == row["Laid sheets"]


def test_short_has_the_yard(opened: Any, demo: OrderBook) -> None:
    found = {row["Item"]: row for row in rows(opened["Short"])}
    red = found["Thin brick modular, stretcher, red"]
    rules = Rules.of(demo.project)
    placed = [panel.work for panel in demo.panels if panel.casting.is_placed]
    together = takeoff(placed, saw_list([work.face for work in placed], rules), rules)
    (used,) = (line.net for line in together.lines if line.item == red["Item"])
    assert (red["Delivered"], red["Used by placed panels"]) == (4000, used)
    assert red["On hand"] == max(4000 - used, 0)
    assert red[f"Short on {demo.short.day}"] == demo.short.stock[0].short
    assert found["Sand (no line of the order)"]["Delivered"] == 2


def test_the_cover_says_what_it_is_and_what_to_mind(opened: Any) -> None:
    words = [tuple(cell.value for cell in row) for row in opened["Cover"].iter_rows(min_row=2)]
    said = dict(words)
    assert (said["Order for"], said["Revision"], said["Made on"]) == ("Whole project", "3.4", "2026-12-01")
    text = " ".join(row[1] for row in words)
    for caution in ("Silica", "engineer of record", "never steel", "for information, not for lifting"):
        assert caution in text


def test_sheets_print_on_a_page_width_with_their_head_on_every_page(opened: Any) -> None:
    for sheet in opened.worksheets:
        assert sheet.page_setup.orientation == "landscape"
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.page_setup.fitToWidth in (None, 1), "1 is what the format takes where nothing is said"
        assert sheet.page_setup.fitToHeight == 0
        assert sheet.print_title_rows == "$1:$1"
        assert sheet.freeze_panes == "A2"


def test_text_and_numbers_keep_their_sort_everywhere(opened: Any) -> None:
    for sheet in opened.worksheets:
        for row in sheet.iter_rows(min_row=2):
            for cell in row:
                assert cell.data_type in ("s", "n")
                if cell.data_type == "s":
                    assert not cell.value.startswith(FORMULA_STARTS)


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_names_come_back_as_text(name: str, demo: OrderBook) -> None:
    line = replace(demo.takeoff.lines[0], item=name, colour=name)
    minus = replace(line, item="of a size", note="-1'-6\"", net=-5, order=-5)
    project = replace(demo.project, name=name)
    book = replace(demo, project=project, scope=name, takeoff=Takeoff((line, minus)), panels=demo.panels[:1])
    opened = openpyxl.load_workbook(io.BytesIO(workbook(book)))
    first, second = rows(opened["Order"])
    assert (unguarded(first["Item"]), unguarded(first["Colour"])) == (name, name)
    assert (second["Net"], unguarded(second["Counted"])) == (-5, "-1'-6\"")
    assert unguarded(rows(opened["Cover"])[0]["Words"]) == name


def test_the_same_book_is_the_same_file(demo: OrderBook) -> None:
    assert workbook(demo) == workbook(demo)


def test_a_project_without_panels_has_every_sheet_with_its_head() -> None:
    bare = replace(read(DEMO / "metric_hall.json"), walls=())
    opened = openpyxl.load_workbook(io.BytesIO(workbook(book_of(bare))))
    assert opened.sheetnames == NAMES
    assert rows(opened["Order"]) == []
    assert [cell.value for cell in opened["Order"][1]][:6] == ["Item", "Kind", "Net", "Overage", "Order", "Unit"]


def test_a_metric_project_has_millimetres_and_its_paper() -> None:
    opened = openpyxl.load_workbook(io.BytesIO(workbook(book_of(read(DEMO / "metric_hall.json")))))
    assert "Length, mm" in [cell.value for cell in opened["Saw list"][1]]
    assert opened["Order"].page_setup.paperSize == 9
