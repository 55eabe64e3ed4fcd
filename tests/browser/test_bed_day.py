"""A whole day at the bed, played through: the tablet and the office say the same at each step."""

import json
from collections.abc import Iterator
from io import BytesIO
from math import floor
from typing import Any

import httpx
import numpy as np
import pytest
from bedside import AFTER, FILE, PANEL, Bedside, bedside, each_once, lay, send_now, task, waiting
from PIL import Image
from playwright.sync_api import Browser, Page, expect

pytestmark = pytest.mark.browser

SIXTEENTHS = 16
LARGE = PANEL | {"outline": [[0, 0], [336, 0], [336, 144], [0, 144]], "cast_on": "2031-05-06"}


@pytest.fixture
def bed(server) -> Iterator[Bedside]:
    with bedside(server, FILE | {"walls": [FILE["walls"][0] | {"panels": [LARGE]}]}) as made:
        yield made


@pytest.fixture
def page(browser: Browser, bed: Bedside, troubles) -> Iterator[Page]:
    for words in ("ERR_", "Failed to load resource"):
        troubles.expect(words)
    tablet = browser.new_context(viewport={"width": 1180, "height": 820}, has_touch=True, locale="en-US")
    page = tablet.new_page()
    troubles.watch(page)
    yield bed.open(page)
    tablet.close()


def given(page: Page) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(page.locator("#bed-data").text_content() or "")
    return data


def type_in(page: Page, inches: float) -> None:
    """Feet, inches and sixteenths by the keypad."""
    ticks = floor(inches * SIXTEENTHS + 0.5)
    parts = (ticks // (12 * SIXTEENTHS), ticks // SIXTEENTHS % 12, ticks % SIXTEENTHS)
    for box, number in enumerate(parts):
        page.locator(".keypad-box").nth(box).click()
        for figure in str(number):
            page.locator("#keypad-keys").get_by_role("button", name=figure, exact=True).click()


def read(page: Page, mark: str, inches: float) -> str:
    """The verdict that stands on the keypad before it is recorded."""
    page.locator(".point-row", has=page.get_by_text(mark, exact=True)).click()
    type_in(page, inches)
    verdict = page.locator("#keypad-verdict p").first.inner_text()
    page.locator("#keypad-record").click()
    if verdict != "Hold":
        expect(page.locator("#keypad-record")).to_contain_text("Yes, it reads")
        page.locator("#keypad-record").click()
    expect(page.locator("#bed-undo span")).to_contain_text(f"{mark} read")
    page.wait_for_timeout(AFTER)
    return verdict


def office(bed: Bedside) -> str:
    return httpx.get(f"{bed.server.address}/projects/{bed.project}/at-bed").text


def records(bed: Bedside) -> str:
    return httpx.get(f"{bed.server.address}/panels/{bed.panel}/at-bed").text


def tick(page: Page, button: str) -> None:
    pressed = page.locator(".bed-side").get_by_role("button", name=button, exact=True)
    pressed.click()
    expect(pressed).to_have_attribute("aria-pressed", "true")
    page.wait_for_timeout(AFTER)


def test_a_whole_day_at_the_bed(page: Page, bed: Bedside) -> None:
    sheets, points = given(page)["sheets"], given(page)["checkpoints"]
    assert len(sheets) >= 40
    assert "nothing recorded yet" in office(bed)

    lay(page, 40)
    waiting(page, 0)
    assert f"40 of {len(sheets)}" in office(bed)

    task(page, "check")
    first, second, third = [point for point in points if point["axis"] == "x"][:3]
    page.fill("#bed-temperature", "70")
    assert read(page, first["mark"], first["nominal"]) == "Hold"
    page.fill("#bed-temperature", "100")
    assert read(page, second["mark"], second["nominal"] + 3 / 16) == "Adjust"
    assert read(page, third["mark"], third["nominal"] + 3) == "Relay"
    waiting(page, 0)
    told = records(bed)
    assert all(f">{verdict}</span>" in told for verdict in ("Hold", "Adjust", "Relay"))
    assert f"off: {second['mark']} adjust, {third['mark']} relay" in office(bed)

    bed.change({"margin": 0.5})
    bed.release_again("Margin of 1/2 in.")
    send_now(page)
    expect(page.locator(".news")).to_contain_text("Rev B is released; this page shows rev A.", timeout=15_000)
    page.get_by_role("button", name="Take rev B").click()
    expect(page.locator("h1")).to_contain_text("REV B")
    assert "rev B" in office(bed)

    task(page, "sheets")
    while page.locator("#next-sheet button").count():
        number = page.locator("#next-sheet button").get_attribute("data-sheet")
        page.locator("#next-sheet button").click()
        expect(page.locator("#bed-undo span")).to_have_text(f"Sheet {number} laid")
        page.wait_for_timeout(AFTER)
    task(page, "brick")
    for name in [step["title"] for step in given(page)["placing"]]:
        tick(page, f"{name} placed")
    task(page, "check")
    page.fill("#bed-temperature", "70")
    for point in given(page)["checkpoints"]:
        assert read(page, point["mark"], point["nominal"]) == "Hold"
    task(page, "before")
    sign(page, "foreman")
    expect(page.locator("#bed-banner")).to_contain_text("Not signed: 0 of 7 of this list ticked")
    for button in page.locator("[data-kind=check]").all():
        tick(page, button.inner_text().removeprefix("✓ "))
    sign(page, "foreman")
    expect(page.locator("#sign-foreman")).to_have_text("Signed by R. Foreman")
    page.wait_for_timeout(AFTER)
    sign(page, "second")
    expect(page.locator("#bed-banner")).to_contain_text("has signed already")
    page.fill("#by", "I. Inspector")
    page.wait_for_timeout(AFTER)
    sign(page, "second")
    expect(page.locator("#sign-second")).to_have_text("Signed by I. Inspector")
    waiting(page, 0)
    assert "signed by two, concrete may come" in office(bed)
    assert "Nothing holds it up." in office(bed)

    task(page, "concrete")
    expect(page.locator("#concrete-gate")).to_have_text("Signed by two: concrete may come.")
    tick(page, "Concrete begun")
    tick(page, "Concrete placed")
    waiting(page, 0)
    assert "concrete placed" in office(bed)
    assert "No panel that is still to be cast has a casting day." in office(bed)

    task(page, "strip")
    for step in given(page)["strip"]:
        tick(page, step["name"])
    waiting(page, 0)
    assert "5 of 5" in office(bed)
    each_once(bed, page)


def sign(page: Page, role: str) -> None:
    page.locator(f"[data-sign={role}]").click()
    page.wait_for_timeout(AFTER)


def test_undo_takes_back_what_was_recorded_last(page: Page, bed: Bedside) -> None:
    lay(page, 2)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#count-sheets")).to_contain_text("1 of")
    waiting(page, 0)
    assert [one["kind"] for one in bed.stored()] == ["sheet", "sheet", "withdraw"]
    assert "took back: sheet 2 laid" in records(bed)


def test_a_photo_goes_with_what_is_told_and_is_made_small(page: Page, bed: Bedside, tmp_path) -> None:
    """A picture of 4000 x 3000 px goes as at most 1600 px and 400 kB."""
    noise = np.random.default_rng(1).integers(0, 255, (3000, 4000, 3), dtype=np.uint8)
    Image.fromarray(noise).save(tmp_path / "photo.jpg", quality=80)
    page.locator("#trouble input[type=text]").fill("Corner of sheet 12 is torn")
    page.locator("#trouble input[type=file]").set_input_files(tmp_path / "photo.jpg")
    page.get_by_role("button", name="Tell the office").click()
    expect(page.locator("#troubles")).to_contain_text("Corner of sheet 12 is torn (R. Foreman)", timeout=20_000)
    waiting(page, 0)
    assert "told from the bed, Corner of sheet 12 is torn (R. Foreman)" in office(bed)
    address = records(bed).partition('<img src="')[2].partition('"')[0]
    photo = httpx.get(f"{bed.server.address}{address}").content
    assert len(photo) <= 400_000
    assert max(Image.open(BytesIO(photo)).size) <= 1600


def test_a_hold_is_told_at_once_and_keeps_the_signature_away(page: Page, bed: Bedside) -> None:
    at = f"{bed.server.address}/panels/{bed.panel}/releases/{bed.release}/notice"
    headers = {"sec-fetch-site": "same-origin"}
    httpx.post(at, data={"kind": "hold", "why": "wrong liner came"}, headers=headers)
    send_now(page)
    expect(page.locator(".news")).to_contain_text("ON HOLD: wrong liner came", timeout=15_000)
    task(page, "before")
    sign(page, "foreman")
    expect(page.locator("#bed-banner")).to_contain_text("on hold: wrong liner came")
