"""The command as people and scripts run it: a process of its own, real files, a real database."""

import json
import os
import re
import signal
import socket
import sqlite3
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from broken_files import SOUND, Broken, broken_files, put, sound_text
from openpyxl import load_workbook
from pypdf import PdfReader

from app.__main__ import main
from app.storage import projects, reading, writing
from app.workflow.loading import load_project
from app.workflow.opening import open_data
from app.workflow.releasing import freeze, release

ROOT = Path(__file__).parents[1]
B1 = ROOT / "tests" / "cases" / "b1.json"


def started(*words: str | Path, temporary: Path | None = None, **more: Any) -> "subprocess.Popen[bytes]":
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONWARNINGS": "error"}
    environment |= {"TMPDIR": str(temporary)} if temporary else {}
    pipes = {"stdin": subprocess.DEVNULL, "stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
    return subprocess.Popen([sys.executable, "-m", "app", *map(str, words)], env=environment, **pipes | more)


def run(*words: str | Path) -> "subprocess.CompletedProcess[str]":
    with started(*words) as process:
        try:
            out, err = process.communicate(timeout=60)
        finally:
            process.kill()
    assert b"Traceback" not in err
    return subprocess.CompletedProcess(words, process.returncode, out.decode(), err.decode())


def answered(*words: str | Path) -> str:
    """What a command that must succeed prints."""
    done = run(*words)
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout


def refused(*words: str | Path) -> list[str]:
    """The lines of a command that must not succeed."""
    done = run(*words)
    assert (done.returncode, done.stdout) == (2, "")
    return done.stderr.splitlines()


@dataclass(frozen=True)
class Here:
    """The same in this process, which is quicker; the exit status and both streams are the real ones."""

    streams: "pytest.CaptureFixture[bytes]"

    def run(self, *words: str | Path) -> tuple[int, str, str]:
        status = main([str(word) for word in words])
        out, err = self.streams.readouterr()
        return status, out.decode(), err.decode()

    def answered(self, *words: str | Path) -> str:
        status, out, err = self.run(*words)
        assert (status, err) == (0, "")
        return out

    def refused(self, *words: str | Path) -> list[str]:
        status, out, err = self.run(*words)
        assert (status, out) == (2, "")
        return err.splitlines()


@pytest.fixture
def here(capsysbinary: "pytest.CaptureFixture[bytes]") -> Here:
    return Here(capsysbinary)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "two panels.json"
    path.write_text(sound_text(), encoding="utf-8")
    return path


class TestLayout:
    def test_prints_one_object_a_panel(self, file):
        assert [result["panel"] for result in json.loads(answered("layout", file))] == ["N1", "N2"]

    def test_of_b1_has_5144_whole_785_trimmed_177_small(self):
        (result,) = json.loads(answered("layout", B1))
        counts = result["counts"]
        assert (counts["whole"], counts["trimmed"], counts["small"]) == (5144, 785, 177)

    @pytest.mark.quiet
    def test_of_b1_takes_less_than_a_second_and_a_half(self):
        def seconds() -> float:
            start = time.perf_counter()
            answered("layout", B1)
            return time.perf_counter() - start

        assert min(seconds() for _ in range(3)) < 1.5

    def test_gives_metric_numbers_for_a_metric_file(self, tmp_path):
        metric = json.loads(B1.read_text(encoding="utf-8"))
        (panel,) = metric["walls"][0]["panels"]
        metric["length_unit"], metric["temperature_unit"] = "mm", "C"
        panel["outline"] = [[0, 0], [12192, 0], [12192, 9144], [0, 9144]]
        panel["thickness"], panel["openings"], metric["walls"][0]["joint"] = 184.15, [], 19.05
        path = tmp_path / "metric.json"
        path.write_text(json.dumps(metric), encoding="utf-8")
        (result,) = json.loads(answered("layout", path))
        assert result["length_unit"] == "mm"
        assert result["area"]["panel"] == pytest.approx(12192 * 9144)
        assert result["courses"][3] == {"course": 3, "bottom": 203.2, "top": 260.35}
        assert result["units"]["width"][0] == 193.675

    def test_of_one_panel_prints_that_panel_alone(self, file):
        assert [result["panel"] for result in json.loads(answered("layout", file, "--panel", "N2"))] == ["N2"]

    def test_refuses_a_panel_that_is_not_there_and_lists_those_that_are(self, file):
        assert refused("layout", file, "--panel", "N3") == [f"{file}: --panel: found 'N3', expected one of N1, N2"]

    def test_says_every_fault_on_a_line_of_its_own(self, tmp_path):
        path = tmp_path / "wrong.json"
        panel = {**SOUND["walls"][0]["panels"][1], "thickness": "7'14", "opennings": []}
        path.write_text(json.dumps({**SOUND, "walls": [{"mark": "A", "panels": [panel]}]}), encoding="utf-8")
        unknown, thickness = refused("layout", path)
        assert unknown.startswith(f"{path}: walls[0].panels[0].opennings: found the unknown key 'opennings', expected")
        assert thickness.startswith(f"{path}: walls[0].panels[0].thickness: found the text '7'14', at character 3 '14'")

    @pytest.mark.parametrize("case", broken_files(), ids=str)
    def test_refuses_every_broken_file_with_path_found_and_expected(self, case: Broken, tmp_path, here):
        path = tmp_path / "broken.json"
        path.write_bytes(case.text)
        (line,) = here.refused("layout", path)
        assert line.startswith(f"{path}: {case.path or 'file'}: found ")
        assert case.found in line
        assert case.expected in line

    @pytest.mark.parametrize("case", broken_files()[:: len(broken_files()) // 4], ids=str)
    def test_refuses_broken_files_as_a_process_too(self, case: Broken, tmp_path):
        path = tmp_path / "broken.json"
        path.write_bytes(case.text)
        (line,) = refused("layout", path)
        assert line.startswith(f"{path}: {case.path or 'file'}: found ")

    def test_refuses_a_file_that_is_not_there(self, tmp_path):
        missing = tmp_path / "missing.json"
        assert refused("layout", missing) == [f"{missing}: found no such file or directory, expected a file to read"]

    def test_refuses_a_folder(self, tmp_path):
        assert refused("layout", tmp_path) == [f"{tmp_path}: found is a directory, expected a file to read"]

    def test_ends_quietly_when_nobody_reads_on(self):
        process = started("layout", B1)
        process.stdout.read(10)
        process.stdout.close()
        with process.stderr as complaints:
            assert complaints.read() == b""
        assert process.wait(timeout=30) == 2

    def test_says_when_its_output_finds_no_room(self, file):
        with open("/dev/full", "wb") as full, started("layout", file, stdout=full) as process:
            _, err = process.communicate(timeout=60)
        assert process.returncode == 2
        assert err == b"standard output: found no space left on device, expected room to write\n"

    def test_reads_no_file_without_end(self, here):
        (line,) = here.refused("layout", "/dev/zero")
        assert line.startswith("/dev/zero: file: found more than 16,000,000 bytes, expected at most")


class TestWords:
    @pytest.mark.parametrize("words", [(), ("lay",), ("layout",), ("serve", "--port", "x"), ("layout", "a", "b")])
    def test_that_are_no_command_are_refused_in_one_line(self, words):
        (line,) = refused(*words)
        assert line.startswith("castcourse")
        assert "--help" in line

    def test_of_help_name_every_command(self):
        said = answered("--help")
        assert re.findall(r"^    (\w+)", said, re.MULTILINE) == [
            "demo",
            "serve",
            "layout",
            "import",
            "export",
            "backup",
            "verify",
            "restore",
            "user",
        ]


class TestFiles:
    def test_import_export_import_gives_the_same_file(self, file, tmp_path):
        data = tmp_path / "data"
        first = answered("import", file, "--data", data).strip()
        out = tmp_path / "out.json"
        assert answered("export", first, "--data", data, "--to", out) == ""
        second = answered("import", out, "--data", data).strip()
        assert second != first
        again = answered("export", second, "--data", data)
        assert again == out.read_text(encoding="utf-8")
        assert json.dumps(json.loads(again)) == sound_text()

    def test_a_project_goes_by_its_name_while_no_other_has_it(self, file, tmp_path, here):
        data = tmp_path / "data"
        first = here.answered("import", file, "--data", data).strip()
        assert json.loads(here.answered("export", "Two panels", "--data", data)) == SOUND
        second = here.answered("import", file, "--data", data).strip()
        (line,) = here.refused("export", "Two panels", "--data", data)
        assert "found 2 projects named 'Two panels'" in line
        assert first in line
        assert second in line

    def test_a_wrong_file_is_not_stored(self, tmp_path, here):
        path, data = tmp_path / "wrong.json", tmp_path / "data"
        path.write_bytes(put("walls[0].panels[1].thickness", 0))
        (line,) = here.refused("import", path, "--data", data)
        assert line.startswith(f'{path}: walls[0].panels[1].thickness: found 0", expected')
        assert not data.exists()

    def test_export_of_an_unknown_project_lists_those_there_are(self, file, tmp_path, here):
        data = tmp_path / "data"
        project = here.answered("import", file, "--data", data).strip()
        (line,) = here.refused("export", "nothing", "--data", data)
        assert line == f"export: PROJECT: found 'nothing', expected one of {project} (Two panels)"

    def test_export_without_a_database_makes_none(self, tmp_path, here):
        (line,) = here.refused("export", "anything", "--data", tmp_path / "data")
        assert "found no file, expected a database" in line
        assert not (tmp_path / "data").exists()

    def test_export_gives_the_submittal_as_pdf(self, file, tmp_path, here):
        data, out = tmp_path / "data", tmp_path / "two panels.pdf"
        project = here.answered("import", file, "--data", data).strip()
        assert here.answered("export", project, "--pdf", "--data", data, "--to", out) == ""
        text = "".join(page.extract_text() for page in PdfReader(out).pages)
        assert "Two panels" in text
        assert "N1" in text
        assert "N2" in text

    def test_export_gives_the_order_as_a_workbook(self, file, tmp_path, here):
        """Opened by openpyxl: a line of modular stretchers, and both panels by name."""
        data, out = tmp_path / "data", tmp_path / "order.xlsx"
        project = here.answered("import", file, "--data", data).strip()
        assert here.answered("export", project, "--xlsx", "--data", data, "--to", out) == ""
        book = load_workbook(out)
        assert "Thin brick modular, stretcher" in [cell.value for cell in book["Order"]["A"]]
        assert {cell.value for cell in book["By panel"]["B"]} == {"Panel", "N1", "N2"}

    def test_export_gives_every_panels_drawings_as_svg(self, file, tmp_path, here):
        data, out = tmp_path / "data", tmp_path / "drawings"
        project = here.answered("import", file, "--data", data).strip()
        said = here.answered("export", project, "--svg", "--data", data, "--to", out).split("\n")
        views = ("elevation", "bed", "sheets", "story-pole")
        names = [f"{mark}-{view}.svg" for mark in ("N1", "N2") for view in views]
        names.insert(3, "N1-returns.svg")
        assert said == [*(str(out / name) for name in names), ""]
        for name in names:
            assert ElementTree.parse(out / name).getroot().tag == "{http://www.w3.org/2000/svg}svg"
        assert sorted(path.name for path in out.iterdir()) == sorted(names)

    def test_export_of_one_panel_gives_its_drawings_and_its_order_alone(self, file, tmp_path, here):
        data, out, book = tmp_path / "data", tmp_path / "drawings", tmp_path / "order.xlsx"
        project = here.answered("import", file, "--data", data).strip()
        asked = ("--panel", "N2", "--data", data, "--to")
        said = here.answered("export", project, "--svg", *asked, out).split()
        assert sorted(said) == sorted(map(str, out.iterdir()))
        assert {path.name.partition("-")[0] for path in out.iterdir()} == {"N2"}
        here.answered("export", project, "--xlsx", *asked, book)
        assert {cell.value for cell in load_workbook(book)["By panel"]["B"]} == {"Panel", "N2"}

    @pytest.mark.parametrize("form", ["--svg", "--xlsx"])
    def test_export_of_an_unknown_panel_lists_those_there_are_and_writes_nothing(self, form, file, tmp_path, here):
        data, out = tmp_path / "data", tmp_path / "out"
        project = here.answered("import", file, "--data", data).strip()
        (line,) = here.refused("export", project, form, "--panel", "N3", "--data", data, "--to", out)
        assert line == "export: --panel: found 'N3', expected one of N1, N2"
        assert not out.exists()

    @pytest.mark.parametrize("more", [(), ("--pdf",)], ids=str)
    def test_a_panel_goes_with_drawings_or_the_order_alone(self, more, tmp_path, here):
        assert here.refused("export", "any", *more, "--panel", "N1", "--data", tmp_path) == [
            "export: --panel: found neither --svg nor --xlsx, expected one of them with it"
        ]

    @pytest.mark.parametrize("form", ["--xlsx", "--pdf", "--svg"])
    def test_export_of_an_unknown_project_is_refused_in_every_form(self, form, file, tmp_path, here):
        data, out = tmp_path / "data", tmp_path / "out"
        project = here.answered("import", file, "--data", data).strip()
        (line,) = here.refused("export", "nothing", form, "--data", data, "--to", out)
        assert line == f"export: PROJECT: found 'nothing', expected one of {project} (Two panels)"
        assert not out.exists()

    def test_export_of_drawings_wants_a_folder(self, tmp_path, here):
        assert here.refused("export", "any", "--svg", "--data", tmp_path) == [
            "export: --svg: found no --to, expected --to FOLDER for the drawings"
        ]

    def test_export_to_a_place_that_cannot_be_written_leaves_nothing(self, file, tmp_path, here):
        data = tmp_path / "data"
        project = here.answered("import", file, "--data", data).strip()
        (line,) = here.refused("export", project, "--data", data, "--to", tmp_path / "no folder" / "out.json")
        assert "no such file or directory" in line
        assert sorted(path.name for path in tmp_path.iterdir()) == ["data", "two panels.json"]

    def test_a_data_folder_that_is_a_file_is_refused(self, file, here):
        (line,) = here.refused("import", file, "--data", file)
        assert str(file) in line


class TestCopies:
    def test_what_was_backed_up_is_there_after_restore(self, file, tmp_path, here):
        data, copy = tmp_path / "data", tmp_path / "copy.sqlite3"
        first = here.answered("import", file, "--data", data).strip()
        here.answered("backup", copy, "--data", data)
        with closing(sqlite3.connect(copy)) as database:
            assert database.execute("pragma integrity_check").fetchone() == ("ok",)
        later = here.answered("import", file, "--data", data).strip()
        assert "is kept in" in here.answered("restore", copy, "--data", data)
        assert json.loads(here.answered("export", first, "--data", data)) == SOUND
        (line,) = here.refused("export", later, "--data", data)
        assert f"one of {first}" in line

    def test_a_copy_goes_into_a_fresh_folder(self, file, tmp_path, here):
        copy = tmp_path / "copy.sqlite3"
        project = here.answered("import", file, "--data", tmp_path / "one").strip()
        here.answered("backup", copy, "--data", tmp_path / "one")
        here.answered("restore", copy, "--data", tmp_path / "two" / "deep")
        assert json.loads(here.answered("export", project, "--data", tmp_path / "two" / "deep")) == SOUND

    def test_what_is_no_copy_is_refused(self, file, tmp_path, here):
        (line,) = here.refused("restore", file, "--data", tmp_path / "data")
        assert "expected a sound copy of a database" in line

    def test_backup_without_a_database_is_refused(self, tmp_path, here):
        (line,) = here.refused("backup", tmp_path / "copy.sqlite3", "--data", tmp_path / "data")
        assert "found no file, expected a database" in line
        assert not list(tmp_path.iterdir())


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@pytest.fixture
def servers() -> Iterator[list["subprocess.Popen[bytes]"]]:
    running: list[subprocess.Popen[bytes]] = []
    yield running
    for process in running:
        process.kill()
        process.communicate(timeout=30)


def read(address: str) -> tuple[int, bytes]:
    with urllib.request.urlopen(address, timeout=20) as answer:
        return answer.status, answer.read()


class TestServer:
    def test_demo_prints_the_address_it_answers_on_and_ends_by_ctrl_c(self, tmp_path, servers):
        process = started("demo", "--port", "0", temporary=tmp_path)
        servers.append(process)
        address = re.fullmatch(r"Castcourse is at (http://127\.0\.0\.1:\d+/)\n", process.stdout.readline().decode())
        assert address, "the first line has the address"
        assert read(address[1] + "healthz")[0] == 200
        assert read(address[1])[0] == 200
        process.send_signal(signal.SIGINT)
        _, err = process.communicate(timeout=30)
        assert (process.returncode, err) == (130, b"")

    def test_two_demos_have_addresses_and_data_of_their_own(self, tmp_path, servers):
        said = []
        for _ in range(2):
            servers.append(started("demo", temporary=tmp_path))
            said.append((servers[-1].stdout.readline(), servers[-1].stdout.readline()))
        (one, one_data), (other, other_data) = said
        assert one != other
        assert one_data != other_data

    def test_serve_keeps_to_its_data_folder(self, file, tmp_path, servers):
        data, port = tmp_path / "data", free_port()
        project = answered("import", file, "--data", data).strip()
        servers.append(started("serve", "--port", str(port), "--data", data))
        servers[0].stdout.readline()
        status, body = read(f"http://127.0.0.1:{port}/api/projects/{project}/file")
        assert (status, json.loads(body)) == (200, SOUND)

    def test_a_port_that_is_taken_is_refused(self, tmp_path, here):
        with socket.socket() as taken:
            taken.bind(("127.0.0.1", 0))
            taken.listen()
            port = taken.getsockname()[1]
            (line,) = here.refused("serve", "--port", str(port), "--data", tmp_path / "data")
        assert line == f"127.0.0.1, port {port}: found address already in use, expected an address to listen on"

    def test_a_port_past_every_port_is_refused(self, tmp_path, here):
        (line,) = here.refused("serve", "--port", "70000", "--data", tmp_path / "data")
        assert "found 70000, expected 0 to 65535" in line

    def test_an_address_that_other_machines_reach_is_refused(self, tmp_path, here):
        (line,) = here.refused("serve", "--host", "0.0.0.0", "--data", tmp_path / "data")
        assert line.startswith("host: found 0.0.0.0 without a name, expected --name NAME with it")
        assert not (tmp_path / "data").exists()

    def test_without_an_account_no_other_machine_is_served(self, tmp_path, here):
        words = ("serve", "--host", "0.0.0.0", "--name", "bed.yard.example", "--data", tmp_path / "data")
        (line,) = here.refused(*words)
        expected = "expected an owner: castcourse user add NAME --role owner"
        assert line == f"host: found 0.0.0.0 and no account, {expected}"

    def test_a_damaged_database_is_refused(self, tmp_path, here):
        (tmp_path / "castcourse.sqlite3").write_bytes(b"SQLite format 3\0" + b"\xff" * 5000)
        (line,) = here.refused("serve", "--port", "0", "--data", tmp_path)
        assert "damaged" in line


class TestUsers:
    """Accounts by command: passwords come from standard input, never as a word of the command."""

    def user(self, data, *words, given="a long enough word\n"):
        with started("user", *words, "--data", data, stdin=subprocess.PIPE) as process:
            out, err = process.communicate(given.encode(), timeout=60)
        assert b"Traceback" not in err
        return process.returncode, out.decode(), err.decode()

    def test_an_owner_is_made_and_then_another_machine_can_be_served(self, tmp_path):
        assert self.user(tmp_path, "add", "Olive Owner", "--role", "owner") == (0, "Olive Owner is owner\n", "")
        assert self.user(tmp_path, "list") == (0, "Olive Owner\towner\n", "")
        with socket.create_server(("127.0.0.1", 0)) as taken:
            port = taken.getsockname()[1]
        words = ("serve", "--host", "0.0.0.0", "--name", "bed.yard.example", "--port", port, "--data", tmp_path)
        with started(*words) as process:
            try:
                assert b"Castcourse is at" in process.stdout.readline()
                asked = urllib.request.Request(f"http://127.0.0.1:{port}/", headers={"host": "bed.yard.example"})
                with urllib.request.urlopen(asked, timeout=20) as answer:
                    assert answer.url.endswith("/sign-in?then=/")
                with pytest.raises(urllib.error.HTTPError, match="421"):
                    urllib.request.urlopen(f"http://127.0.0.1:{port}/", timeout=20)
            finally:
                process.kill()

    @pytest.mark.parametrize(
        ("words", "given", "found"),
        [
            (
                ("add", "Olive Owner", "--role", "owner"),
                "short\n",
                "user: password: found 5 characters, expected 10 to",
            ),
            (
                ("add", "Olive Owner", "--role", "king"),
                "a long enough word\n",
                "user: ROLE: found 'king', expected one of",
            ),
            (("role", "Nobody", "owner"), "", "user: NAME: found 'Nobody', expected a name; there is no account"),
        ],
    )
    def test_what_cannot_be_is_told_in_one_line(self, tmp_path, words, given, found):
        status, out, err = self.user(tmp_path, *words, given=given)
        assert (status, out, len(err.splitlines())) == (2, "", 1)
        assert err.startswith(found)

    def test_the_last_owner_stays_one(self, tmp_path):
        self.user(tmp_path, "add", "Olive Owner", "--role", "owner")
        for words in (("disable", "Olive Owner"), ("role", "Olive Owner", "viewer")):
            status, _, err = self.user(tmp_path, *words)
            assert status == 2
            assert "the last owner, who must stay one" in err
        self.user(tmp_path, "add", "Otto Owner", "--role", "owner")
        assert self.user(tmp_path, "disable", "Olive Owner") == (0, "Olive Owner is disabled\n", "")
        assert self.user(tmp_path, "role", "Otto Owner", "viewer")[0] == 2


class TestVerify:
    def test_a_changed_byte_in_the_store_is_found(self, tmp_path, here):
        (tmp_path / "one panel.json").write_text(sound_text())
        here.answered("import", tmp_path / "one panel.json", "--data", tmp_path)
        assert here.answered("verify", "--data", tmp_path) == "0 releases, each as it was released\n"
        release_all(tmp_path / "castcourse.sqlite3")
        assert re.fullmatch(r"[1-9] releases?, each as it was released\n", here.answered("verify", "--data", tmp_path))
        with closing(sqlite3.connect(tmp_path / "castcourse.sqlite3")) as connection:
            connection.execute("DROP TRIGGER release_part_stays_update")
            connection.execute("UPDATE release_part SET content = x'00' WHERE name = 'sheets.svg'")
            connection.commit()
        lines = here.refused("verify", "--data", tmp_path)
        assert any("sheets.svg: found nothing that can be read" in line for line in lines)


def release_all(database):
    """Every panel of the database frozen as rev A."""
    engine = open_data(database)
    with reading(engine) as session:
        found = [panel.id for line in projects.list_all(session) for panel in load_project(session, line.id).panels]
    for panel in found:
        with reading(engine) as session:
            frozen = freeze(session, panel)
        with writing(engine) as session:
            release(session, frozen, why="For casting", person="Detailer", now=datetime.now(UTC))
    engine.dispose()
