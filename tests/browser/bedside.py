"""A released panel, a tablet at its bed through the fault proxy, and what the server has in the end."""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from typing import Any

import httpx
from faults import FaultProxy
from playwright.sync_api import Page, expect

PANEL: dict[str, Any] = {
    "mark": "N1",
    "thickness": 7.25,
    "outline": [[0, 0], [240, 0], [240, 120], [0, 120]],
    "openings": [{"mark": "W1", "use": "window", "rect": [96, 40, 48, 48]}],
    "field": {"size": "modular", "bond": "running"},
}
FILE: dict[str, Any] = {
    "format": "castcourse-project/1",
    "name": "Shed by the canal",
    "length_unit": "in",
    "temperature_unit": "F",
    "walls": [{"mark": "East", "datum": 0, "joint": 0.75, "panels": [PANEL]}],
}
NAME = "R. Foreman"

AFTER = 310
"""Milliseconds: a second press in the same place is taken for a new one after 300."""

HELD = """async () => {
  const open = indexedDB.open("castcourse-bed");
  const line = await new Promise((done) => (open.onsuccess = () => done(open.result)));
  if (!line.objectStoreNames.contains("records")) return line.close(), [];
  const asked = line.transaction("records").objectStore("records").getAll();
  const found = await new Promise((done) => (asked.onsuccess = () => done(asked.result)));
  line.close();
  return found;
}"""


@dataclass(frozen=True)
class Bedside:
    """One released panel on a running server, and the proxy before it."""

    server: Any
    proxy: FaultProxy
    project: str
    panel: str
    release: str

    @property
    def address(self) -> str:
        return f"{self.proxy.address}/bed/{self.panel}"

    def open(self, page: Page) -> Page:
        page.goto(self.address)
        page.fill("#by", NAME)
        task(page, "sheets")
        return page

    def stored(self) -> list[dict[str, Any]]:
        """Every record in the server's file, in the order of arrival."""
        with closing(sqlite3.connect(self.server.data / "castcourse.sqlite3")) as connection:
            asked = "SELECT id, device, sequence, kind, body, release_id FROM record WHERE release_id IN"
            asked += " (SELECT id FROM release WHERE panel_id = ?) ORDER BY arrival"
            names = ("id", "device", "sequence", "kind", "body", "release")
            return [dict(zip(names, row, strict=True)) for row in connection.execute(asked, (self.panel,))]

    def change(self, patch: dict[str, Any]) -> None:
        at = f"{self.server.address}/api/panels/{self.panel}"
        tag = httpx.get(at).headers["etag"]
        headers = {"if-match": tag, "content-type": "application/merge-patch+json"}
        answer = httpx.patch(at, content=json.dumps(patch), headers=headers)
        assert answer.status_code == 200, answer.text

    def release_again(self, why: str = "Changed") -> dict[str, Any]:
        return released(self.server.address, self.panel, why)


@contextmanager
def bedside(server: Any, file: dict[str, Any] = FILE) -> Iterator[Bedside]:
    ids = server.create(file)
    panel = ids["walls"][0]["panels"][0]
    row = released(server.address, panel, "For casting")
    with FaultProxy(server.address) as proxy:
        yield Bedside(server, proxy, ids["id"], panel, row["id"])


def released(address: str, panel: str, why: str) -> dict[str, Any]:
    answer = httpx.post(f"{address}/api/panels/{panel}/releases", json={"why": why}, timeout=60)
    assert answer.status_code == 201, answer.text
    row: dict[str, Any] = answer.json()
    return row


def task(page: Page, name: str) -> None:
    page.locator(f"nav [data-task={name}]").click()


def lay(page: Page, count: int, first: int = 1) -> None:
    """Sheets laid one by one with the big button, each once its record shows."""
    for number in range(first, first + count):
        page.get_by_role("button", name=f"Sheet {number} is laid", exact=True).click()
        expect(page.locator("#bed-undo span")).to_have_text(f"Sheet {number} laid")
        page.wait_for_timeout(AFTER)


def waiting(page: Page, count: int) -> None:
    words = f"■ {count} on this tablet, not sent" if count else "✓ All sent"
    expect(page.locator("#outbox")).to_contain_text(words, timeout=20_000)


def held(page: Page) -> list[dict[str, Any]]:
    """What is in the tablet's own database."""
    found: list[dict[str, Any]] = page.evaluate(HELD)
    return found


def send_now(page: Page) -> None:
    """As the browser does when it believes in the line again."""
    page.evaluate("window.dispatchEvent(new Event('online'))")


def each_once(bed: Bedside, page: Page) -> None:
    """Everything that the tablet holds as sent is stored exactly once, and nothing else came from it."""
    sent = [one["id"] for one in held(page) if one["state"] == "sent"]
    stored = [one["id"] for one in bed.stored()]
    assert sorted(sent) == sorted(stored)
    assert len(set(stored)) == len(stored)
