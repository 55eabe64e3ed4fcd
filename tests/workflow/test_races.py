"""Many writers at once, and a writer killed in the middle: what was acknowledged is stored, exactly once."""

import json
import multiprocessing
import signal
import sqlite3
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from threading import Barrier

import pytest

from app.panel.things import apply_changes, from_json
from app.storage import commands, open_database, panels, reading, writing
from app.workflow.editing import save
from app.workflow.refusals import Stale

NOW = datetime(2031, 5, 6, tzinfo=UTC)
ROOT = Path(__file__).parents[2]


def try_to_save(engine, panel_id, document, base_revision, command_id):
    """The revision made, or None when stale."""
    asked = {"base_revision": base_revision, "command_id": command_id, "person": "office", "label": "margin"}
    try:
        with writing(engine) as session:
            return save(session, panel_id, document=document, now=NOW, **asked).revision
    except Stale:
        return None


def log_of(editor):
    with reading(editor.engine) as session:
        return commands.since(session, editor.panel_id, 0)


def test_of_two_threads_on_one_revision_exactly_one_wins_in_every_round(office, panel):
    start = Barrier(2, timeout=10)

    def one_side(side):
        won = []
        for base in range(1, 61):
            start.wait()
            won.append(try_to_save(office.engine, office.panel_id, panel | {side: base}, base, f"{side} {base}"))
        return won

    with ThreadPoolExecutor(2) as pool:
        left, right = pool.map(one_side, ["left", "right"])
    assert [(one is None) + (other is None) for one, other in zip(left, right, strict=True)] == [1] * 60
    assert [one or other for one, other in zip(left, right, strict=True)] == list(range(2, 62))
    assert len(log_of(office)) == 60


def one_process(file, panel_id, document, side, start, answers):
    engine = open_database(file)
    for base in range(1, 31):
        start.wait()
        answers.put((base, try_to_save(engine, panel_id, document | {side: base}, base, f"{side} {base}")))
    engine.dispose()


def test_of_two_processes_on_one_revision_exactly_one_wins_in_every_round(office, panel, database):
    spawn = multiprocessing.get_context("spawn")
    start, answers = spawn.Barrier(2, timeout=20), spawn.Queue()
    sides = [
        spawn.Process(target=one_process, args=(database, office.panel_id, panel, side, start, answers), daemon=True)
        for side in ("left", "right")
    ]
    for side in sides:
        side.start()
    given = [answers.get(timeout=25) for _ in range(60)]
    for side in sides:
        side.join(timeout=10)
    assert [side.exitcode for side in sides] == [0, 0]
    made = sorted((base, revision) for base, revision in given if revision)
    assert made == [(base, base + 1) for base in range(1, 31)]
    assert sum(revision is None for _, revision in given) == 30


def test_one_command_sent_20_times_at_once_is_stored_once(office, panel):
    start = Barrier(20, timeout=10)

    def send(_):
        start.wait()
        return office.save(panel | {"margin": 0.5}, base=1, command_id="a")

    with ThreadPoolExecutor(20) as pool:
        answers = list(pool.map(send, range(20)))
    assert all(answer == answers[0] for answer in answers)
    assert (answers[0].revision, len(log_of(office)), office.now_shown().revision) == (2, 1, 2)


WRITER = """
import sys
import time
from datetime import UTC, datetime
from app.storage import open_database, panels, writing
from app.workflow.editing import save
engine, panel_id, hang_at = open_database(sys.argv[1]), sys.argv[2], int(sys.argv[3])
base = 1
while True:
    with writing(engine) as session:
        for _ in range(5):
            document = panels.find(session, panel_id).document | {"base": base}
            save(session, panel_id, base_revision=base, command_id=f"command {base}", person="office", label="base",
                 document=document, now=datetime.now(UTC))
            base += 1
            if base == hang_at:
                print(0, flush=True)
                time.sleep(60)
    print(base, flush=True)
"""


def kill_while_writing(file, panel_id, answers, hang_at):
    """Kills a writer after so many answers; returns the last revision that it said was stored."""
    command = [sys.executable, "-c", WRITER, str(file), panel_id, str(hang_at)]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True) as writer:
        told = [writer.stdout.readline() for _ in range(answers)]
        writer.send_signal(signal.SIGKILL)
        told += writer.stdout.readlines()
    return max(int(line) for line in told if line.endswith("\n"))


NEVER = -1


@pytest.mark.parametrize(("answers", "hang_at"), [(7, NEVER), (3, 14), (1, 3)])
def test_a_writer_killed_in_a_batch_leaves_whole_commands_only(office, panel, database, answers, hang_at):
    office.engine.dispose()
    told = kill_while_writing(database, office.panel_id, answers, hang_at)
    with closing(sqlite3.connect(database)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
    office.engine = open_database(database)
    shown, log = office.now_shown(), log_of(office)
    assert shown.revision >= told
    assert hang_at == NEVER or shown.revision == max(told, 1)
    assert (shown.revision - 1) % 5 == 0
    assert [command.revision for command in log] == list(range(shown.revision, 1, -1))
    document = json.loads(json.dumps(panel))
    for command in reversed(log):
        document = apply_changes(document, from_json(command.before, command.after))
    assert document == shown.document
    assert office.change(margin=0.5).revision == shown.revision + 1
    office.engine.dispose()


def test_a_block_of_several_saves_is_stored_whole_or_not_at_all(office, panel):
    def block():
        with writing(office.engine) as session:
            for place, base in enumerate((1, 2, 2)):
                document = panels.find(session, office.panel_id).document | {"base": place}
                asked = {"base_revision": base, "command_id": str(place), "person": "office", "label": "base"}
                save(session, office.panel_id, document=document, now=NOW, **asked)

    with pytest.raises(Stale, match="found revision 3"):
        block()
    assert (office.now_shown().document, log_of(office)) == (panel, ())
