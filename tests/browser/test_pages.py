"""Every page in a real browser, at the sizes people use: nothing runs off the side, and axe finds nothing."""

import json
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from app.documents.project_file import read_panel

pytestmark = pytest.mark.browser

SIZES = ((1440, 900), (1180, 820), (820, 1180), (390, 800))
DEMO = json.loads((Path(__file__).parents[2] / "demo_data" / "casting_yard.json").read_text())
SHOWN = ("set-out", "sheets", "brick", "checkpoints")

Axe = Callable[..., list[str]]


def _looked_at(page: Page, axe: Axe, *, strict: bool = False) -> None:
    """The page as it stands, at every size and on both grounds."""
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        for width, height in SIZES:
            page.set_viewport_size({"width": width, "height": height})
            too_wide = page.evaluate("document.documentElement.scrollWidth - innerWidth")
            assert too_wide <= 0, f"{too_wide} px run off the side at {width} x {height}"
        assert axe(page, strict=strict) == []


def _long_names(server: Any) -> dict[str, Any]:
    """The demonstration with names as long as people make them."""
    file = json.loads(json.dumps(DEMO))
    file["name"] = "Name of exactly thirty letters"
    for wall in file["walls"]:
        wall["mark"] = f"{wall['mark']} {'elevation of the yard'}"[:30]
        for panel in wall["panels"]:
            panel["mark"] = f"{panel['mark']} a mark of many letters more"[:30]
    ids: dict[str, Any] = server.create(file)
    return ids


def test_the_list_of_projects(page: Page, demo: dict[str, Any], axe: Axe) -> None:
    page.goto("/")
    expect(page.get_by_role("link", name=DEMO["name"]).first).to_be_visible()
    assert demo["id"] in page.content()
    _looked_at(page, axe)


def test_an_empty_list_leads_on_to_the_demonstration(page: Page, empty_server: Any, axe: Axe) -> None:
    page.goto(empty_server.address)
    expect(page.get_by_text("No projects yet.")).to_be_visible()
    _looked_at(page, axe)
    page.get_by_role("button", name="Open the demonstration").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(DEMO["name"])


def test_a_project(page: Page, demo: dict[str, Any], axe: Axe) -> None:
    page.goto(f"/projects/{demo['id']}")
    expect(page.get_by_role("heading", level=1)).to_have_text(DEMO["name"])
    _looked_at(page, axe)


def test_a_project_with_long_names(page: Page, server: Any, axe: Axe) -> None:
    page.goto(f"/projects/{_long_names(server)['id']}")
    _looked_at(page, axe)


def test_a_begun_project(page: Page, axe: Axe) -> None:
    page.goto("/")
    page.get_by_label("Name").fill("Shed by the lock")
    page.get_by_role("button", name="Begin project").click()
    expect(page.get_by_text("No panels in this wall yet.")).to_be_visible()
    _looked_at(page, axe)


def test_a_broken_file_is_told_where(page: Page, troubles: Any, axe: Axe) -> None:
    troubles.expect("422")
    page.goto("/")
    held = {"name": "shed.json", "mimeType": "application/json", "buffer": json.dumps(DEMO | {"colour": 1}).encode()}
    page.get_by_label("Project file").set_input_files(held)  # type: ignore[arg-type]
    page.get_by_role("button", name="Bring in").click()
    expect(page.get_by_role("alert").first).to_contain_text("colour")
    _looked_at(page, axe)


def test_each_panel_of_the_drawing_leads_to_its_editor(page: Page, demo: dict[str, Any]) -> None:
    page.goto(f"/projects/{demo['id']}")
    for wall, ids in zip(DEMO["walls"], demo["walls"], strict=True):
        drawing = page.get_by_role("group", name=f"Wall {wall['mark']}, seen from outside")
        places = drawing.get_by_role("link")
        assert [place.get_attribute("href") for place in places.all()] == [f"/panels/{one}" for one in ids["panels"]]
    first = page.get_by_role("group", name="seen from outside").first.get_by_role("link").first
    first.focus()
    page.keyboard.press("Enter")
    page.wait_for_url(f"**/panels/{demo['walls'][0]['panels'][0]}")


def test_panels_of_a_wall_stand_side_by_side_at_one_scale(page: Page, demo: dict[str, Any]) -> None:
    page.goto(f"/projects/{demo['id']}")
    drawing = page.get_by_role("group", name="seen from outside").first
    places = [place.bounding_box() for place in drawing.locator("a .target").all()]
    panels = DEMO["walls"][0]["panels"]
    widths = [_wide(panel) for panel in panels]
    assert all(places)
    scale = places[0]["width"] / widths[0]  # type: ignore[index]
    for place, width in zip(places, widths, strict=True):
        assert place is not None
        assert place["width"] == pytest.approx(width * scale, abs=0.5)
    for left, right in pairwise(places):
        assert left is not None
        assert right is not None
        assert left["x"] + left["width"] <= right["x"] + 0.1


def _wide(panel: dict[str, Any]) -> float:
    return read_panel(panel, DEMO["length_unit"]).width


def test_typed_lengths_are_echoed_and_stay_as_typed(page: Page, demo: dict[str, Any]) -> None:
    page.goto(f"/projects/{demo['id']}")
    page.get_by_text("New panel in wall").first.click()
    width = page.get_by_label("Width", exact=True).first
    width.press_sequentially("12-6 3/8")
    expect(page.get_by_text("Width 12'-6 3/8\" (").first).to_be_visible()
    expect(width).to_have_value("12-6 3/8")
    expect(width).to_be_focused()


def test_a_shared_bed_view_opens_for_a_stranger_until_it_is_revoked(
    page: Page, browser: Browser, server: Any, demo: dict[str, Any], troubles: Any, axe: Axe
) -> None:
    troubles.expect("404")
    panel_id, other_id = demo["walls"][0]["panels"][:2]
    page.goto(f"/projects/{demo['id']}")
    page.get_by_label("Opens").select_option(panel_id)
    page.get_by_role("button", name="Make a link").click()
    link = page.locator("#address").inner_text()
    _looked_at(page, axe)

    stranger = browser.new_context(viewport={"width": 1180, "height": 820})
    tablet = stranger.new_page()
    troubles.watch(tablet)
    tablet.goto(link)
    assert tablet.url == f"{server.address}/bed/{panel_id}"
    expect(tablet.get_by_role("heading", level=1)).to_contain_text("BED VIEW (mirrored)")
    assert tablet.evaluate("document.cookie") == ""
    assert tablet.goto(f"{server.address}/bed/{other_id}").status == 404  # type: ignore[union-attr]

    page.goto(f"/projects/{demo['id']}")
    page.get_by_role("button", name="Revoke the link").first.click()
    expect(page.locator("#share li").get_by_text("revoked").first).to_be_visible()
    assert tablet.goto(f"{server.address}/bed/{panel_id}").status == 404  # type: ignore[union-attr]
    _looked_at(tablet, axe)
    assert tablet.goto(link).status == 404  # type: ignore[union-attr]
    expect(tablet.get_by_role("heading", level=1)).to_have_text("There is nothing at this address")
    _looked_at(tablet, axe)
    stranger.close()


def test_a_link_to_the_project_opens_a_list_of_its_panels(
    page: Page, browser: Browser, demo: dict[str, Any], troubles: Any, axe: Axe
) -> None:
    page.goto(f"/projects/{demo['id']}")
    page.get_by_role("button", name="Make a link").click()
    stranger = browser.new_context(viewport={"width": 820, "height": 1180})
    tablet = stranger.new_page()
    troubles.watch(tablet)
    tablet.goto(page.locator("#address").inner_text())
    expect(tablet.get_by_role("link")).to_have_count(1 + sum(len(wall["panels"]) for wall in demo["walls"]))
    _looked_at(tablet, axe, strict=True)
    stranger.close()


@pytest.mark.parametrize("shown", SHOWN)
def test_a_bed_page(page: Page, demo: dict[str, Any], axe: Axe, shown: str) -> None:
    page.goto(f"/bed/{demo['walls'][0]['panels'][1]}?show={shown}")
    expect(page.get_by_role("button", name=shown.replace("-", " "))).to_have_attribute("aria-pressed", "true")
    _looked_at(page, axe, strict=True)


def test_a_bed_page_with_long_names(page: Page, server: Any, axe: Axe) -> None:
    panel_id = _long_names(server)["walls"][0]["panels"][0]
    page.goto(f"/bed/{panel_id}")
    _looked_at(page, axe, strict=True)


def test_targets_and_numbers_at_the_bed_are_large(page: Page, demo: dict[str, Any]) -> None:
    page.goto(f"/bed/{demo['walls'][0]['panels'][1]}")
    for button in page.get_by_role("button").all():
        box = button.bounding_box()
        assert box is not None
        assert box["height"] >= 64
    sizes = page.locator(".key").evaluate_all("cells => cells.map(cell => parseFloat(getComputedStyle(cell).fontSize))")
    assert sizes
    assert min(sizes) >= 28


@pytest.mark.parametrize("shown", SHOWN)
def test_words_of_the_bed_drawing_are_upright_and_its_marks_are_drawn(
    page: Page, demo: dict[str, Any], shown: str
) -> None:
    page.goto(f"/bed/{demo['walls'][0]['panels'][1]}?show={shown}")
    marks = page.evaluate(
        """() => [...document.querySelectorAll("svg.drawing text, svg.drawing path, svg.drawing circle")]
             .filter((mark) => !mark.closest("defs"))
             .map((mark) => {
               const box = mark.getBBox(), turned = mark.getCTM();
               return {name: mark.tagName, space: mark.namespaceURI, side: Math.max(box.width, box.height),
                       turned: turned.a * turned.d - turned.b * turned.c};
             })"""
    )
    assert {mark["name"] for mark in marks} >= {"text", "path"}
    for mark in marks:
        assert mark["space"] == "http://www.w3.org/2000/svg"
        assert mark["side"] > 0
        assert mark["turned"] > 0


def test_readings_follow_the_temperature(page: Page, demo: dict[str, Any]) -> None:
    page.goto(f"/bed/{demo['walls'][0]['panels'][1]}?show=checkpoints")
    before = page.locator("#readings").inner_text()
    degrees = page.get_by_role("spinbutton")
    degrees.fill("60")
    expect(page.locator("#readings")).to_contain_text("At 60 °F")
    assert page.locator("#readings").inner_text() != before
    assert page.locator("#slide").input_value() == "60"
    expect(degrees).to_be_focused()
    page.locator("#slide").fill("90")
    expect(page.locator("#readings")).to_contain_text("At 90 °F")
    expect(degrees).to_have_value("90")


def test_the_list_of_problems(page: Page, axe: Axe) -> None:
    page.goto("/problems")
    _looked_at(page, axe)


def test_an_address_with_nothing_leads_back(page: Page, troubles: Any, axe: Axe) -> None:
    troubles.expect("404")
    page.goto("/nothing")
    _looked_at(page, axe)
    page.get_by_role("link", name="All projects").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Projects")


def test_a_server_that_does_not_answer_is_told_in_words(page: Page, troubles: Any, demo: dict[str, Any]) -> None:
    troubles.expect("htmx:sendError")
    troubles.expect("htmx:afterRequest")
    troubles.expect("ERR_INTERNET_DISCONNECTED")
    page.goto(f"/bed/{demo['walls'][0]['panels'][1]}")
    page.context.set_offline(True)
    page.get_by_role("spinbutton").fill("60")
    expect(page.get_by_role("alert")).to_contain_text("The server did not answer")
    page.context.set_offline(False)


@pytest.mark.parametrize("view", ["elevation", "bed", "sheets", "story-pole"])
def test_a_drawing_on_paper_opens_in_a_browser(page: Page, demo: dict[str, Any], view: str) -> None:
    page.goto(f"/api/panels/{demo['walls'][0]['panels'][1]}/{view}.svg")
    assert page.locator("svg").evaluate("svg => svg.getBBox().width") > 0
