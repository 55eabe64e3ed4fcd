"""What weak signal, gloves and full disks do at the bed: acknowledged is stored exactly once, nothing recorded is lost.

The list is the project's own fault list for the bed; a real Chromium, a real server, a fault proxy on loopback.
"""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

import httpx
import pytest
from bedside import AFTER, FILE, NAME, Bedside, bedside, each_once, held, lay, send_now, task, waiting
from chromium import FLAGS, executable
from playwright.sync_api import Browser, BrowserContext, Page, expect

from app.panel.record import record_digest

pytestmark = pytest.mark.browser

EXPECTED = ("ERR_", "Failed to load resource", "Failed to fetch")


@pytest.fixture
def bed(server) -> Iterator[Bedside]:
    with bedside(server) as made:
        yield made


@pytest.fixture
def tablet(browser: Browser, troubles) -> Iterator[BrowserContext]:
    for words in EXPECTED:
        troubles.expect(words)
    opened = browser.new_context(viewport={"width": 1180, "height": 820}, has_touch=True, locale="en-US")
    opened.on("page", troubles.watch)
    yield opened
    opened.close()


@pytest.fixture
def page(tablet: BrowserContext, bed: Bedside) -> Page:
    return bed.open(tablet.new_page())


def test_what_is_tapped_is_stored_once(page: Page, bed: Bedside) -> None:
    lay(page, 3)
    waiting(page, 0)
    assert [json.loads(one["body"])["sheet"] for one in bed.stored()] == ["1", "2", "3"]
    each_once(bed, page)


def test_offline_in_the_middle_of_entry(page: Page, bed: Bedside) -> None:
    lay(page, 2)
    waiting(page, 0)
    bed.proxy.is_offline = True
    lay(page, 3, first=3)
    waiting(page, 3)
    assert len(bed.stored()) == 2
    bed.proxy.is_offline = False
    send_now(page)
    waiting(page, 0)
    assert [one["sequence"] for one in bed.stored()] == [1, 2, 3, 4, 5]
    each_once(bed, page)


FAULTS = ("drop", "lose", "cut", "500", "502", "503", "429", "portal", "redirect")


@pytest.mark.parametrize("fault", FAULTS)
def test_a_fault_on_the_way_leaves_the_record_here_and_then_there_once(page: Page, bed: Bedside, fault: str) -> None:
    bed.proxy.always = fault
    lay(page, 1)
    expect(page.locator("#outbox")).to_contain_text("■ 1 on this tablet, not sent")
    for _ in range(2):
        send_now(page)
        page.wait_for_timeout(100)
    expect(page.locator("#outbox")).to_contain_text("■ 1 on this tablet, not sent")
    bed.proxy.always = ""
    send_now(page)
    waiting(page, 0)
    assert set(bed.proxy.met) == {fault}
    each_once(bed, page)


def test_it_goes_again_by_itself(page: Page, bed: Bedside) -> None:
    bed.proxy.waiting.append("503")
    lay(page, 1)
    waiting(page, 0)
    each_once(bed, page)


def test_a_line_that_hangs_is_given_up_and_tried_again(tablet: BrowserContext, bed: Bedside) -> None:
    page = tablet.new_page()
    page.clock.install()
    bed.open(page)
    bed.proxy.waiting.append("hang")
    page.get_by_role("button", name="Sheet 1 is laid", exact=True).click()
    expect(page.locator("#bed-undo span")).to_have_text("Sheet 1 laid")
    page.clock.run_for(15_100)
    expect(page.locator("#outbox")).to_contain_text("■ 1 on this tablet, not sent")
    page.clock.run_for(4_000)
    waiting(page, 0)
    each_once(bed, page)


def test_a_double_tap_is_one_record(page: Page, bed: Bedside) -> None:
    page.get_by_role("button", name="Sheet 1 is laid", exact=True).dblclick()
    waiting(page, 0)
    page.wait_for_timeout(300)
    assert [json.loads(one["body"]) for one in bed.stored()] == [{"by": NAME, "sheet": "1", "state": "laid"}]


def test_two_tabs_send_each_record_once_and_in_order(tablet: BrowserContext, bed: Bedside) -> None:
    one, other = (bed.open(tablet.new_page()) for _ in range(2))
    bed.proxy.is_offline = True
    lay(one, 2)
    lay(other, 2, first=3)
    bed.proxy.is_offline = False
    for page in (one, other):
        send_now(page)
    waiting(one, 0)
    waiting(other, 0)
    assert [one["sequence"] for one in bed.stored()] == [1, 2, 3, 4]
    each_once(bed, one)


def test_a_reload_keeps_what_is_not_sent(page: Page, bed: Bedside) -> None:
    bed.proxy.always = "drop"
    lay(page, 2)
    page.reload()
    waiting(page, 2)
    expect(page.locator("#count-sheets")).to_contain_text("2 of")
    bed.proxy.always = ""
    send_now(page)
    waiting(page, 0)
    each_once(bed, page)


def test_back_keeps_what_is_not_sent(page: Page, bed: Bedside) -> None:
    bed.proxy.always = "drop"
    lay(page, 1)
    page.goto(f"{bed.proxy.address}/healthz")
    bed.proxy.always = ""
    page.go_back()
    waiting(page, 0)
    each_once(bed, page)


@pytest.mark.parametrize("wrong", [timedelta(hours=-2), timedelta(days=3)])
def test_a_wrong_clock_changes_no_order(tablet: BrowserContext, bed: Bedside, wrong: timedelta) -> None:
    page = tablet.new_page()
    bed.open(page)
    lay(page, 1)
    page.clock.set_system_time(datetime.now(UTC) + wrong)
    lay(page, 1, first=2)
    page.clock.set_system_time(datetime.now(UTC))
    lay(page, 1, first=3)
    waiting(page, 0)
    assert [one["sequence"] for one in bed.stored()] == [1, 2, 3]
    log = httpx.get(f"{bed.server.address}/panels/{bed.panel}/at-bed").text
    assert log.index("sheet 3 laid") < log.index("sheet 2 laid") < log.index("sheet 1 laid")


EDIT = """async () => {
  const open = indexedDB.open("castcourse-bed");
  const line = await new Promise((done) => (open.onsuccess = () => done(open.result)));
  const records = line.transaction("records", "readwrite").objectStore("records");
  const found = await new Promise((done) => { const all = records.getAll(); all.onsuccess = () => done(all.result); });
  const edited = { ...found[0], body: { ...found[0].body, sheet: "9" }, state: "here" };
  await new Promise((done) => (records.put(edited).onsuccess = done));
  line.close();
}"""


def test_the_same_id_with_other_content_needs_attention_and_both_are_kept(page: Page, bed: Bedside) -> None:
    lay(page, 1)
    waiting(page, 0)
    page.evaluate(EDIT)
    send_now(page)
    expect(page.locator("#outbox")).to_contain_text("◆ 1 needs attention")
    with closing(sqlite3.connect(bed.server.data / "castcourse.sqlite3")) as connection:
        kept = connection.execute("SELECT content FROM record_refused WHERE record_id = ?", (bed.stored()[0]["id"],))
        assert [json.loads(content)["body"]["sheet"] for (content,) in kept] == ["9"]
    assert json.loads(bed.stored()[0]["body"])["sheet"] == "1"
    assert held(page)[0]["body"]["sheet"] == "9"


def test_a_release_that_changed_meanwhile_is_told_and_a_moved_checkpoint_is_flagged(page: Page, bed: Bedside) -> None:
    task(page, "check")
    bed.proxy.is_offline = True
    read(page, "X2", "80")
    bed.change({"openings": [{"mark": "W1", "use": "window", "rect": [100, 40, 48, 48]}]})
    bed.release_again()
    bed.proxy.is_offline = False
    send_now(page)
    waiting(page, 0)
    expect(page.locator(".news")).to_contain_text("Rev B is released; this page shows rev A.")
    expect(page.locator("h1")).to_contain_text("REV A")
    office = httpx.get(f"{bed.server.address}/panels/{bed.panel}/at-bed").text
    assert "this checkpoint has moved since" in office
    page.get_by_role("button", name="Take rev B").click()
    expect(page.locator("h1")).to_contain_text("REV B")


def test_a_panel_that_was_removed_meanwhile_still_takes_its_records(page: Page, bed: Bedside) -> None:
    bed.proxy.is_offline = True
    lay(page, 1)
    tag = httpx.get(f"{bed.server.address}/api/panels/{bed.panel}").headers["etag"]
    assert httpx.delete(f"{bed.server.address}/api/panels/{bed.panel}", headers={"if-match": tag}).status_code == 204
    bed.proxy.is_offline = False
    send_now(page)
    waiting(page, 0)
    each_once(bed, page)


def linked(bed: Bedside, rights: str = "record") -> tuple[str, str]:
    """A link through the proxy, and the address that revokes it."""
    headers = {"sec-fetch-site": "same-origin"}
    at = f"{bed.server.address}/projects/{bed.project}"
    made = httpx.post(f"{at}/shares", data={"rights": rights, "lasts": "day"}, headers=headers).text
    token = made.partition("/s/")[2].partition("<")[0]
    share = httpx.get(at).text.partition("/shares/")[2].partition("/revoke")[0]
    return f"{bed.proxy.address}/s/{token}", f"{at}/shares/{share}/revoke"


def test_a_link_revoked_while_offline_keeps_the_records_and_gives_them_as_a_file(
    tablet: BrowserContext, bed: Bedside
) -> None:
    link, revoke = linked(bed)
    page = tablet.new_page()
    page.goto(link)
    bed.open(page)
    bed.proxy.is_offline = True
    lay(page, 2)
    httpx.post(revoke, headers={"sec-fetch-site": "same-origin"})
    bed.proxy.is_offline = False
    send_now(page)
    expect(page.locator("#outbox")).to_contain_text("link closed: Check the link, or ask the office for a new one.")
    expect(page.locator("#outbox")).to_contain_text("■ 2 on this tablet, not sent")
    with page.expect_download() as taken:
        page.get_by_role("button", name="Save what is not sent as a file").click()
    file = json.loads(taken.value.path().read_text())
    assert [one["body"]["sheet"] for one in file["records"]] == ["1", "2"]
    assert bed.stored() == []


def test_a_link_for_looking_only_records_nothing(tablet: BrowserContext, bed: Bedside) -> None:
    page = tablet.new_page()
    page.goto(linked(bed, "view")[0])
    bed.open(page)
    page.get_by_role("button", name="Sheet 1 is laid", exact=True).click()
    expect(page.locator("#bed-banner")).to_contain_text("for looking only")
    assert held(page) == []


FILL = """async () => {
  const open = indexedDB.open("castcourse-bed");
  const line = await new Promise((done) => (open.onsuccess = () => done(open.result)));
  let filled = 0;
  for (const size of [4_000_000, 400_000, 40_000, 4_000]) {
    for (let isRoom = true; isRoom; filled += isRoom) {
      const bytes = new Uint8Array(size);
      for (let at = 0; at < size; at += 65_536) crypto.getRandomValues(bytes.subarray(at, Math.min(size, at + 65_536)));
      const writing = line.transaction("device", "readwrite");
      writing.objectStore("device").put({ key: `filled ${filled}`, bytes });
      isRoom = await new Promise((done) => {
        writing.oncomplete = () => done(true);
        writing.onabort = () => done(false);
      });
    }
  }
  line.close();
  return filled;
}"""

EMPTY = """async (filled) => {
  const open = indexedDB.open("castcourse-bed");
  const line = await new Promise((done) => (open.onsuccess = () => done(open.result)));
  const writing = line.transaction("device", "readwrite");
  for (let k = 0; k < filled; k += 1) writing.objectStore("device").delete(`filled ${k}`);
  await new Promise((done) => (writing.oncomplete = done));
  line.close();
}"""


def test_a_full_tablet_says_so_before_anything_is_taken_in(browser: Browser, bed: Bedside, tmp_path: Path) -> None:
    """A disk of its own for the browser's profile, small enough to be filled for real."""
    with small_disk(browser, tmp_path, megabytes=100) as tablet:
        page = bed.open(tablet.new_page())
        lay(page, 1)
        waiting(page, 0)
        filled = page.evaluate(FILL)
        page.get_by_role("button", name="Sheet 2 is laid", exact=True).click()
        expect(page.locator("#bed-banner")).to_contain_text("This tablet is full")
        expect(page.locator("#count-sheets")).to_contain_text("1 of")
        page.evaluate(EMPTY, filled)
        page.wait_for_timeout(AFTER)
        lay(page, 1, first=2)
        waiting(page, 0)
        each_once(bed, page)


@contextmanager
def small_disk(browser: Browser, folder: Path, megabytes: int) -> Iterator[BrowserContext]:
    """A browser whose profile is on a disk in memory of so many MB, in a namespace that ends with it."""
    profile, script = folder / "profile", folder / "chromium"
    profile.mkdir()
    mounted = f"mount -t tmpfs -o size={megabytes}m tmpfs {profile}"
    chromium = executable(browser.browser_type.executable_path)
    script.write_text(f'#!/bin/sh\nexec unshare -rm sh -c \'{mounted} && exec {chromium} "$@"\' chromium "$@"\n')
    script.chmod(0o755)
    opened = browser.browser_type.launch_persistent_context(profile, executable_path=script, args=list(FLAGS))
    yield opened
    opened.close()


NEWER = """() => new Promise((done) => {
  const open = indexedDB.open("castcourse-bed", 2);
  open.onsuccess = () => (open.result.close(), done());
})"""


def test_a_database_that_is_closed_under_it_is_opened_again(page: Page, bed: Bedside) -> None:
    """Another tab asks for a newer form of it: this one lets go at once."""
    lay(page, 1)
    page.evaluate(NEWER)
    lay(page, 1, first=2)
    waiting(page, 0)
    each_once(bed, page)


FIVE_HUNDRED = """async ([release, panel]) => {
  const page = [...document.scripts].find((script) => script.src.includes("bed/page.js")).src;
  const { add } = await import(page.replace("page.js", "store.js"));
  for (let k = 1; k <= 500; k += 1) {
    await add({ id: crypto.randomUUID(), release, panel, kind: "sheet", at: new Date().toISOString(), corrects: null,
      body: { by: "R. Foreman", sheet: String(1 + (k % 40)), state: "laid" } }, null);
  }
}"""


def test_five_hundred_records_on_a_slow_line_that_loses(page: Page, bed: Bedside) -> None:
    bed.proxy.is_offline = True
    page.evaluate(FIVE_HUNDRED, [bed.release, bed.panel])
    send_now(page)
    waiting(page, 500)
    bed.proxy.is_offline, bed.proxy.lossy, bed.proxy.bytes_per_second = False, 0.4, 100_000
    for _ in range(200):
        send_now(page)
        page.wait_for_timeout(250)
        if "All sent" in page.locator("#outbox").inner_text():
            break
    waiting(page, 0)
    assert [one["sequence"] for one in bed.stored()] == list(range(1, 501))
    each_once(bed, page)


def test_a_locked_database_keeps_the_record_here_until_it_is_free(page: Page, bed: Bedside) -> None:
    with closing(sqlite3.connect(bed.server.data / "castcourse.sqlite3", isolation_level=None)) as connection:
        connection.execute("BEGIN IMMEDIATE")
        lay(page, 1)
        page.wait_for_timeout(5_500)
        expect(page.locator("#outbox")).to_contain_text("■ 1 on this tablet, not sent")
        connection.execute("ROLLBACK")
    send_now(page)
    waiting(page, 0)
    each_once(bed, page)


def test_a_server_put_back_from_an_older_copy_gets_what_it_lacks(page: Page, bed: Bedside) -> None:
    lay(page, 1)
    waiting(page, 0)
    file = bed.server.data / "castcourse.sqlite3"
    with closing(sqlite3.connect(file)) as connection, closing(sqlite3.connect(f"{file}.copy")) as copy:
        connection.backup(copy)
    lay(page, 2, first=2)
    waiting(page, 0)
    with closing(sqlite3.connect(f"{file}.copy")) as copy, closing(sqlite3.connect(file)) as connection:
        copy.backup(connection)
    assert len(bed.stored()) == 1
    page.reload()
    expect(page.locator("#outbox")).to_contain_text("✓ All sent")
    for _ in range(50):
        if len(bed.stored()) == 3:
            break
        page.wait_for_timeout(100)
    assert [one["sequence"] for one in bed.stored()] == [1, 2, 3]
    each_once(bed, page)


def read(page: Page, mark: str, keys: str) -> None:
    """A reading by the keypad: feet, inches, sixteenths, each as it is typed; a second press where it is asked for."""
    page.locator(".point-row", has=page.get_by_text(mark, exact=True)).click()
    for part, key in enumerate(keys.split(" ")):
        page.locator(".keypad-box").nth(part).click()
        for figure in key:
            page.locator("#keypad-keys").get_by_role("button", name=figure, exact=True).click()
    page.locator("#keypad-record").click()
    if page.locator("#keypad").is_visible():
        page.locator("#keypad-record").click()
    expect(page.locator("#bed-undo span")).to_contain_text(f"{mark} read")
    page.wait_for_timeout(AFTER)


def test_two_foremen_at_one_checkpoint_are_both_kept_and_the_difference_is_told(
    browser: Browser, bed: Bedside, troubles
) -> None:
    for name, reading in (("A. Mason", "8 0"), ("B. Layer", "8 0 9")):
        other = browser.new_context(viewport={"width": 1180, "height": 820}, has_touch=True)
        page = other.new_page()
        troubles.watch(page)
        bed.open(page)
        page.fill("#by", name)
        task(page, "check")
        page.fill("#bed-temperature", "70")
        read(page, "X2", reading)
        waiting(page, 0)
        other.close()
    office = httpx.get(f"{bed.server.address}/panels/{bed.panel}/at-bed").text
    assert "A. Mason" in office
    assert "B. Layer" in office
    assert office.count("differs from the reading before by more than its band") == 1


def test_hostile_oversize_another_panel_and_replay_after_revoke(tablet: BrowserContext, bed: Bedside) -> None:
    link, revoke = linked(bed)
    page = tablet.new_page()
    page.goto(link)
    bed.open(page)
    lay(page, 1)
    waiting(page, 0)
    cookies = {one["name"]: one["value"] for one in tablet.cookies()}
    other = bed.server.create(FILE)["walls"][0]["panels"][0]
    foreign = httpx.post(f"{bed.server.address}/api/panels/{other}/releases", json={"why": "x"}).json()["id"]
    sent = [dict(one) for one in captured(page, bed)]
    at = f"{bed.server.address}/api/field/records"
    with httpx.Client(cookies=cookies) as device:
        elsewhere = [resigned(sent[0] | {"id": "0" * 32, "release": foreign})]
        answer = device.post(at, json={"records": elsewhere}).json()["records"][0]
        assert (answer["state"], answer["status"]) == ("refused", 404)
        assert device.post(at, json={"records": sent * 51}).status_code == 400
        large = resigned(sent[0] | {"id": "1" * 32, "body": {"by": "x" * 401, "sheet": "1", "state": "laid"}})
        assert device.post(at, json={"records": [large]}).json()["records"][0]["state"] == "refused"
        httpx.post(revoke, headers={"sec-fetch-site": "same-origin"})
        assert device.post(at, json={"records": sent}).status_code == 404
        asked = {"device": "x", "ids": [sent[0]["id"]]}
        assert device.post(f"{bed.server.address}/api/field/known", json=asked).status_code == 404
    assert len(bed.stored()) == 1


def captured(page: Page, bed: Bedside) -> list[dict[str, object]]:
    """The record as the tablet sends it."""
    with page.expect_request("**/api/field/records") as sent:
        lay(page, 1, first=2)
    waiting(page, 0)
    body = sent.value.post_data_json["records"]
    with closing(sqlite3.connect(bed.server.data / "castcourse.sqlite3")) as connection:
        connection.execute("DROP TRIGGER record_stays_delete")
        connection.execute("DELETE FROM record WHERE id = ?", (body[0]["id"],))
        connection.execute(
            "CREATE TRIGGER record_stays_delete BEFORE DELETE ON record "
            "BEGIN SELECT RAISE(ABORT, 'a record is never altered'); END"
        )
        connection.commit()
    return body


def resigned(record: dict[str, object]) -> dict[str, object]:
    return record | {"digest": record_digest(record)}
