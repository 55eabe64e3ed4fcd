"""Nothing that was shown as recorded is lost when the browser or the server is killed without warning."""

import json
import os
import shlex
import shutil
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from random import Random
from types import SimpleNamespace
from typing import Any

import pytest
from bedside import Bedside, bedside, each_once, held, send_now, waiting
from killing import KillableServer, killable_chromium, killable_server
from playwright.sync_api import Browser, Page, expect

pytestmark = pytest.mark.browser

KILLS = 200
SETS = 8
"""Tests that share the kills, so that workers can."""

SERVER_KILLS = 20
SERVER_SETS = 2

TELL = """() => document.addEventListener("work:recorded", ({ detail }) => {
  const told = new XMLHttpRequest();
  told.open("POST", `/told/${detail.record.id}`, false);
  told.send();
})"""
"""Told in the same moment in which the page shows it as recorded."""


@pytest.fixture
def bed(server) -> Iterator[Bedside]:
    with bedside(server) as made:
        yield made


@pytest.mark.parametrize("seed", range(SETS))
def test_two_hundred_kills_of_the_browser_after_a_tap(
    browser: Browser, bed: Bedside, tmp_path: Path, seed: int
) -> None:
    """0 to 50 ms after each tap; the page opens again from the tablet, with no signal, and holds what it had shown."""
    profile, random = tmp_path / "profile", Random(seed)
    profile.mkdir()
    with killable_chromium(browser.browser_type, profile) as (_, tablet):
        take(bed.open(tablet.new_page()))
    bed.proxy.is_offline = True
    for _ in range(KILLS // SETS):
        with killable_chromium(browser.browser_type, profile) as (chromium, tablet):
            page = bed.open(tablet.new_page())
            assert set(bed.proxy.told) <= {one["id"] for one in held(page)}
            page.evaluate(TELL)
            page.evaluate("setTimeout(() => document.querySelector('#next-sheet button').click())")
            time.sleep(random.uniform(0, 0.05))
            chromium.kill()
    bed.proxy.is_offline = False
    with killable_chromium(browser.browser_type, profile) as (_, tablet):
        page = tablet.new_page()
        page.goto(bed.address)
        waiting(page, 0)
        each_once(bed, page)
        assert set(bed.proxy.told) <= {one["id"] for one in bed.stored()}
        assert len(bed.proxy.told) >= KILLS / SETS / 20, "kills that came after the record was shown"


def take(page: Page) -> None:
    page.get_by_role("button", name="Take to the bed").click()
    expect(page.locator("#take-words")).to_contain_text("is on this tablet: it opens with no signal.")


MANY = """async ([release, panel, count]) => {
  const page = [...document.scripts].find((script) => script.src.includes("bed/page.js")).src;
  const { add } = await import(page.replace("page.js", "store.js"));
  for (let k = 0; k < count; k += 1) {
    await add({ id: crypto.randomUUID(), release, panel, kind: "sheet", at: new Date().toISOString(), corrects: null,
      body: { by: "R. Foreman", sheet: String(1 + k), state: "laid" } }, null);
  }
}"""


@pytest.mark.parametrize("seed", range(SERVER_SETS))
def test_twenty_kills_of_the_server_in_a_batch(browser: Browser, tmp_path: Path, seed: int) -> None:
    random = Random(seed)
    with killable_server(tmp_path) as server, bedside(server) as bed:
        page = bed.open(browser.new_context(viewport={"width": 1180, "height": 820}).new_page())
        for _ in range(SERVER_KILLS // SERVER_SETS):
            bed.proxy.is_offline = True
            page.evaluate(MANY, [bed.release, bed.panel, 50])
            bed.proxy.is_offline = False
            send_now(page)
            page.wait_for_timeout(random.uniform(0, 120))
            server.kill()
            server.start()
        send_now(page)
        waiting(page, 0)
        assert [one["sequence"] for one in bed.stored()] == list(range(1, 50 * SERVER_KILLS // SERVER_SETS + 1))
        each_once(bed, page)
        page.context.close()


def test_a_full_disk_of_the_server_keeps_the_record_on_the_tablet(
    browser: Browser, tmp_path: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """The server's data on a small disk in memory, filled to the last byte."""
    mounted = f'mount -t tmpfs -o size=6m tmpfs {shlex.quote(str(tmp_path))} && exec "$@"'
    with killable_server(tmp_path, ("unshare", "-rm", "sh", "-c", mounted, "sh")) as server, bedside(server) as bed:
        page = bed.open(browser.new_context(viewport={"width": 1180, "height": 820}).new_page())
        inside = Path(f"/proc/{serving(server)}/root{tmp_path}")
        out = tmp_path_factory.mktemp("out") / "copy"
        fill(inside / "filler")
        page.get_by_role("button", name="Sheet 1 is laid", exact=True).click()
        send_now(page)
        page.wait_for_timeout(500)
        expect(page.locator("#outbox")).to_contain_text("■ 1 on this tablet, not sent")
        (inside / "filler").unlink()
        send_now(page)
        waiting(page, 0)
        assert [json.loads(one["body"])["sheet"] for one in stored_inside(inside, out, bed)] == ["1"]
        page.context.close()


def stored_inside(folder: Path, out: Path, bed: Bedside) -> list[dict[str, Any]]:
    """The server's records as they lie on its small disk, copied to where this process can open them."""
    out.mkdir()
    for file in folder.glob("castcourse.sqlite3*"):
        shutil.copyfile(file, out / file.name)
    return replace(bed, server=SimpleNamespace(data=out, address=bed.server.address)).stored()


def serving(server: KillableServer) -> int:
    """The process that serves: the wrapper has become it."""
    assert server.running
    return server.running.process.pid


def fill(file: Path) -> None:
    with file.open("wb", buffering=0) as opened:
        for size in (100_000, 4096, 512, 1):
            try:
                while opened.write(os.urandom(size)) == size:
                    pass
            except OSError:
                continue
