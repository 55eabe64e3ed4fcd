"""Records from the bed: acknowledged means stored exactly once, whatever comes between; nothing that came is lost."""

import json
import sqlite3
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path
from shutil import rmtree
from tempfile import mkdtemp
from uuid import NAMESPACE_OID, uuid5

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from app.panel.faults import Refused
from app.panel.record import canonical, read_record, record_digest
from app.site.progress import Arrived, in_order, progress
from app.storage import backup, open_database, reading, records, releases, restore, writing
from app.workflow.field import ANOTHER, take
from app.workflow.opening import open_data
from app.workflow.releasing import freeze, release
from tests.workflow.conftest import NOW, PANEL, Editor, new_panel

SMALL = PANEL | {"outline": [[0, 0], [96, 0], [96, 64], [0, 64]], "openings": []}


def made(release_id, number=1, device="tablet-0001", kind="sheet", body=None, **more):
    value = {
        "id": f"{device}-{number:06d}",
        "device": device,
        "sequence": number,
        "release": release_id,
        "kind": kind,
        "body": body or {"by": "R. Foreman", "sheet": str(number), "state": "laid"},
        "at": "2031-05-06T10:42:07.000Z",
        "corrects": None,
        **more,
    }
    return value | {"digest": record_digest(value)}


def anywhere(_project, _panel):
    return True


def released(engine, panel_id):
    with reading(engine) as session:
        frozen = freeze(session, panel_id)
    with writing(engine) as session:
        return release(session, frozen, why="For casting", person="Detailer", now=NOW).id


def sent(engine, *values, may=anywhere):
    with writing(engine) as session:
        return [take(session, value, may, "link one", NOW) for value in values]


def held(engine, panel_id):
    with reading(engine) as session:
        return [one.record.id for one in records.of_panel(session, panel_id)]


@pytest.fixture
def rev_a(office):
    return released(office.engine, office.panel_id)


def test_the_same_record_again_gets_the_same_answer_and_is_stored_once(office, rev_a):
    one = made(rev_a)
    first, second = (sent(office.engine, one)[0] for _ in range(2))
    assert (first, first.state) == (second, "stored")
    assert held(office.engine, office.panel_id) == [one["id"]]


def test_the_same_id_with_other_content_is_refused_and_both_are_kept(office, rev_a, database):
    one = made(rev_a)
    other = made(rev_a, body={"by": "R. Foreman", "sheet": "9", "state": "laid"}) | {"id": one["id"]}
    other |= {"digest": record_digest(other)}
    first, second, again = sent(office.engine, one, other, other)
    assert (first.state, second.state, second.status, second.why) == ("stored", "refused", 422, ANOTHER)
    assert again == second
    with closing(sqlite3.connect(database)) as connection:
        kept = connection.execute("SELECT record_id, content FROM record_refused").fetchall()
    assert [(name, json.loads(content)["body"]["sheet"]) for name, content in kept] == [(one["id"], "9")]


def test_another_release_or_a_panel_that_the_link_does_not_open_is_not_there(office, rev_a):
    answers = sent(office.engine, made("0123456789abcdef"), made(rev_a, 2), may=lambda *_: False)
    assert [(one.state, one.status) for one in answers] == [("refused", 404)] * 2
    assert held(office.engine, office.panel_id) == []


def test_what_was_recorded_on_a_panel_that_was_removed_since_is_stored(office, rev_a):
    with writing(office.engine) as session:
        session.connection().exec_driver_sql("UPDATE panel SET removed_at = '2031-05-06T11:00:00.000Z'")
    assert sent(office.engine, made(rev_a))[0].state == "stored"


BROKEN = {
    "id": 5,
    "device": "x y",
    "sequence": 0,
    "release": None,
    "kind": "dance",
    "body": [],
    "at": "",
    "corrects": 7,
    "digest": "abc",
}


@pytest.mark.parametrize(("key", "value"), BROKEN.items())
def test_a_record_that_is_none_is_refused_by_the_key_that_is_wrong(office, rev_a, key, value):
    answer = sent(office.engine, made(rev_a) | {key: value})[0]
    assert answer.state == "refused"
    assert answer.why.startswith(f"{key}: found ")
    assert held(office.engine, office.panel_id) == []


@pytest.mark.parametrize("body", [{"by": "R"}, {"by": "R", "sheet": "1", "state": "flown"}, {"by": 1, "sheet": "1"}])
def test_a_body_that_is_none_is_refused(office, rev_a, body):
    assert sent(office.engine, made(rev_a, body=body))[0].why.startswith("body.")


def test_a_digest_that_is_not_of_the_record_is_refused(office, rev_a):
    answer = sent(office.engine, made(rev_a) | {"sequence": 2})[0]
    assert answer.why.startswith("digest: found ")


def test_a_record_that_is_too_large_is_refused(rev_a):
    body = {"by": "R. Foreman", "about": "x" * 400, "text": "x" * 401}
    with pytest.raises(Refused, match="text"):
        read_record(made(rev_a, kind="finding", body=body))


def test_the_canonical_text_sorts_keys_and_keeps_every_sign():
    """RFC 8785 writes strings and whole numbers so: keys sorted, no blanks, no needless escapes."""
    assert canonical({"b": "é\u2028€", "a": [1, None, True]}) == '{"a":[1,null,true],"b":"é\u2028€"}'.encode()


@pytest.mark.parametrize("table", ["record", "record_photo", "record_refused"])
@pytest.mark.parametrize(
    "change", ["UPDATE {} SET digest = ''", "DELETE FROM {}", "INSERT OR REPLACE INTO {0} SELECT * FROM {0}"]
)
def test_the_database_itself_refuses_to_alter_a_record(office, rev_a, database, table, change):
    one = made(rev_a)
    other = one | {"sequence": 2}
    sent(office.engine, one, other | {"digest": record_digest(other)})
    with writing(office.engine) as session:
        records.add_photo(session, one["id"], "0" * 64, b"photo", NOW)
    with closing(sqlite3.connect(database)) as connection, pytest.raises(sqlite3.IntegrityError, match="never altered"):
        connection.execute(change.format(table))


def test_order_is_by_device_and_arrival_never_by_a_clock():
    """B's second record arrives before its first; A's clock is three days ahead."""
    ahead, behind = "2031-05-09T00:00:00Z", "2031-05-06T08:00:00Z"
    arrived = [
        Arrived(read_record(made("release-1", 2, "tablet-000b", at=behind)), 1),
        Arrived(read_record(made("release-1", 1, "tablet-000a", at=ahead)), 2),
        Arrived(read_record(made("release-1", 1, "tablet-000b", at=behind)), 3),
    ]
    ordered = [(record.device[-1], record.sequence) for record in in_order(arrived)]
    assert ordered == [("a", 1), ("b", 1), ("b", 2)]


def test_a_correction_takes_the_place_of_what_it_corrects_and_a_withdrawal_leaves_nothing():
    first = made("release-1", 1, kind="reading", body=reading_of("X1", "adjust"))
    second = made("release-1", 2, kind="reading", body=reading_of("X1", "hold"), corrects=first["id"])
    third = made("release-1", 3, kind="withdraw", body={"by": "R", "why": "undo"}, corrects=second["id"])
    values = [Arrived(read_record(one), k) for k, one in enumerate((first, second, third), 1)]
    assert [one.body["verdict"] for one in progress(values[:2]).readings] == ["hold"]
    assert progress(values).readings == ()


def reading_of(mark, verdict):
    return {"by": "R", "checkpoint": mark, "reading": "12'-6\"", "bed": "94", "tape": "", "verdict": verdict}


@dataclass
class Device:
    """A tablet by its contract: numbers its records, keeps each until it is acknowledged, asks after a restore."""

    name: str
    release: str
    made: list = field(default_factory=list)
    waiting: list = field(default_factory=list)
    acknowledged: set = field(default_factory=set)

    def tap(self):
        number = len(self.made) + 1
        one = made(self.release, number, self.name, id=str(uuid5(NAMESPACE_OID, f"{self.name} {number}")))
        self.made.append(one)
        self.waiting.append(one)

    def hear(self, answers):
        stored = {answer.id for answer in answers if answer.state == "stored"}
        self.acknowledged |= stored
        self.waiting = [one for one in self.waiting if one["id"] not in stored]


class ThreeDevices(RuleBasedStateMachine):
    """Tap, send, drop, lose the answer, replay, restart, revise, restore: by three devices on one panel."""

    def __init__(self):
        super().__init__()
        self.folder = TemporaryFolder()
        self.engine = self.folder.engine()
        self.panel_id = new_panel(self.engine, SMALL)
        rev = released(self.engine, self.panel_id)
        self.devices = [Device(f"tablet-000{k}", rev) for k in range(3)]
        self.copy = None

    def teardown(self):
        self.engine.dispose()
        self.folder.remove()

    device = st.integers(0, 2)

    @rule(k=device)
    def tap(self, k):
        self.devices[k].tap()

    @rule(k=device, count=st.integers(1, 5))
    def send(self, k, count):
        device = self.devices[k]
        device.hear(sent(self.engine, *device.waiting[:count]))

    @rule(k=device, count=st.integers(1, 5))
    def the_answer_is_lost(self, k, count):
        sent(self.engine, *self.devices[k].waiting[:count])

    @rule(k=device, count=st.integers(1, 5))
    def cut_in_the_middle(self, k, count):
        with pytest.raises(ZeroDivisionError):
            self.cut(self.devices[k].waiting[:count])

    def cut(self, values):
        with writing(self.engine) as session:
            for value in values:
                take(session, value, anywhere, "link one", NOW)
            raise ZeroDivisionError

    @rule(k=device, pick=st.randoms())
    def replay_out_of_order(self, k, pick):
        again = list(self.devices[k].made)
        pick.shuffle(again)
        answers = sent(self.engine, *again[:4])
        assert all(answer.state == "stored" for answer in answers)
        self.devices[k].hear(answers)

    @rule()
    def restart(self):
        self.engine.dispose()
        self.engine = open_database(self.folder.path)

    @rule(margin=st.sampled_from([0.375, 0.5, 0.625]))
    def revise(self, margin):
        editor = Editor(self.engine, self.panel_id)
        if editor.now_shown().document.get("margin") != margin:
            editor.change(margin=margin)
            with reading(self.engine) as session:
                last = releases.newest_of_panel(session, self.panel_id)
                is_new = freeze(session, self.panel_id).inputs_digest != last.head.inputs_digest
            if is_new:
                rev = released(self.engine, self.panel_id)
                self.devices[0].release = rev

    @rule()
    def back_up(self):
        self.copy = self.folder.copy(self.engine)

    @precondition(lambda self: self.copy)
    @rule()
    def restore_an_older_copy(self):
        """Records on a release that the copy lacks cannot come back: that device shows its newest release again."""
        self.engine.dispose()
        self.engine = self.folder.put_back(self.copy)
        with reading(self.engine) as session:
            known = {row.id for row in releases.of_panel(session, self.panel_id)}
            for device in self.devices:
                missing = set(records.missing(session, [one["id"] for one in device.made]))
                device.acknowledged -= missing
                device.waiting = [one for one in device.made if one["id"] in missing and one["release"] in known]
                device.made = [one for one in device.made if one["release"] in known]
                device.release = device.release if device.release in known else next(iter(known))

    @invariant()
    def every_record_is_stored_once_or_shown_as_waiting(self):
        stored = held(self.engine, self.panel_id)
        assert len(stored) == len(set(stored))
        for device in self.devices:
            assert device.acknowledged <= set(stored)
            for one in device.made:
                assert one["id"] in stored or one in device.waiting


TestThreeDevices = ThreeDevices.TestCase
TestThreeDevices.settings = settings(
    max_examples=15, stateful_step_count=30, deadline=None, suppress_health_check=list(HealthCheck)
)


class TemporaryFolder:
    """A real database file, migrated once, and copies of it made by the backup that people use."""

    def __init__(self):
        self.folder = mkdtemp(prefix="castcourse-field-")

    @property
    def path(self):
        return Path(self.folder) / "castcourse.sqlite3"

    def engine(self):
        return open_data(self.path)

    def copy(self, engine):
        self.count = getattr(self, "count", 0) + 1
        return backup(engine, self.path.with_name(f"copy-{self.count}.sqlite3"))

    def put_back(self, copy):
        restore(copy, self.path)
        return open_database(self.path)

    def remove(self):
        rmtree(self.folder)


def test_the_panel_of_these_tests_has_sheets(office, rev_a):
    with reading(office.engine) as session:
        given = json.loads(releases.part(session, rev_a, "bed.json"))
    assert given["mark"] == PANEL["mark"]
    assert len(given["sheets"]) > 10
