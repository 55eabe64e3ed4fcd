"""The command `castcourse`. What is wrong goes to standard error, one line a fault, and ends it with status 2.

The server and the database are imported by the commands that need them: `layout` starts in a third of the time.
"""

import argparse
import os
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, date, datetime
from json import dumps
from pathlib import Path
from tempfile import mkdtemp
from typing import TYPE_CHECKING, NoReturn, TypeAlias

from app.documents.json_text import LARGEST_BYTES
from app.documents.project_file import read_project, read_text
from app.documents.results import layout_result
from app.panel.faults import Refused
from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.panel.wording import one_of, quoted
from app.settings import AddressRefused, Settings
from app.workflow.compute import compute

if TYPE_CHECKING:
    from app.workflow.loading import LoadedProject

BAD_INPUT = 2
STOPPED = 130
DATA = Path.home() / "castcourse"


Commands: TypeAlias = "argparse._SubParsersAction[_Parser]"


class Trouble(Exception):
    """What a command cannot do, one line each."""

    def __init__(self, *lines: str) -> None:
        self.lines = lines
        super().__init__("\n".join(lines))


def main(words: Sequence[str] | None = None) -> int:
    """Runs one command; returns its exit status."""
    arguments = _parser().parse_args(words)
    run: Callable[[argparse.Namespace], None] = arguments.run
    try:
        run(arguments)
        sys.stdout.flush()
    except Trouble as trouble:
        for line in trouble.lines:
            print(line, file=sys.stderr)
        return BAD_INPUT
    except BrokenPipeError:
        _say_no_more()
        return BAD_INPUT
    except OSError as error:
        print(f"standard output: found {_why(error)}, expected room to write", file=sys.stderr)
        _say_no_more()
        return BAD_INPUT
    except KeyboardInterrupt:
        return STOPPED
    return 0


def _say_no_more() -> None:
    """What takes our output has gone or is full; the interpreter must not try again as it ends."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


class _Parser(argparse.ArgumentParser):
    """Says what is wrong with the words of a command in one line."""

    def error(self, message: str) -> NoReturn:
        self.exit(BAD_INPUT, f"{self.prog}: {message}; {self.prog} --help says what is expected\n")


def _parser() -> _Parser:
    parser = _Parser(prog="castcourse", description="Layout of thin-brick faces on tilt-up and precast panels.")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    _add_server_commands(commands)
    _add_file_commands(commands)
    _add_copy_commands(commands)
    return parser


def _add_server_commands(commands: Commands) -> None:
    demo = commands.add_parser("demo", help="the demo project in a fresh data folder, on this machine only")
    demo.add_argument("--port", type=int, default=None, help="default: 8350, or a free one where that is taken")
    demo.set_defaults(run=_demo)
    serve = commands.add_parser("serve", help="the server")
    serve.add_argument("--host", default="127.0.0.1", help="default: 127.0.0.1")
    serve.add_argument("--port", type=int, default=8350, help="default: 8350")
    _add_data(serve)
    serve.set_defaults(run=_serve)


def _add_file_commands(commands: Commands) -> None:
    layout = commands.add_parser("layout", help="compute a project file's panels; JSON on standard output")
    layout.add_argument("file", metavar="FILE", type=Path, help="project file")
    layout.add_argument("--panel", metavar="MARK", help="this panel only")
    layout.set_defaults(run=_layout)
    bring_in = commands.add_parser("import", help="a project file into the data folder; prints the project's id")
    bring_in.add_argument("file", metavar="FILE", type=Path, help="project file")
    _add_data(bring_in)
    bring_in.set_defaults(run=_import)
    export = commands.add_parser("export", help="a project out of the data folder")
    export.add_argument("project", metavar="PROJECT", help="the project's id or name")
    form = export.add_mutually_exclusive_group()
    form.add_argument("--pdf", action="store_true", help="the submittal as PDF, not the project file")
    export.add_argument("--parts", metavar="NAMES", default="", help="of the PDF, with commas: approval (usual), shop")
    form.add_argument("--svg", action="store_true", help="every panel's drawings as SVG files in the folder PATH")
    form.add_argument("--xlsx", action="store_true", help="the order as a workbook")
    export.add_argument("--panel", metavar="MARK", help="this panel only, of the drawings or the order")
    export.add_argument("--to", metavar="PATH", type=Path, help="file or folder; default: standard output")
    _add_data(export)
    export.set_defaults(run=_export)


def _add_copy_commands(commands: Commands) -> None:
    backup = commands.add_parser("backup", help="a checked copy of the database, safe while the server runs")
    backup.add_argument("copy", metavar="DEST", type=Path, help="file to write the copy to")
    _add_data(backup)
    backup.set_defaults(run=_backup)
    restore = commands.add_parser("restore", help="a copy in place of the database, safe while the server runs")
    restore.add_argument("copy", metavar="SRC", type=Path, help="file that backup wrote")
    _add_data(restore)
    restore.set_defaults(run=_restore)


def _add_data(parser: _Parser) -> None:
    parser.add_argument("--data", metavar="FOLDER", type=Path, default=DATA, help=f"default: {DATA}")


def _layout(arguments: argparse.Namespace) -> None:
    project = _project(arguments.file)
    results = [_result(project, wall, panel) for wall, panel in _chosen(project, arguments)]
    print(dumps(results, allow_nan=False))


def _result(project: Project, wall: Wall, panel: Panel) -> dict[str, object]:
    done = compute(project, wall, panel)
    parts = done.layout, done.plan, done.cutting, done.drift, done.takeoff, done.saw
    return layout_result(project, wall, panel, *parts)


def _chosen(project: Project, arguments: argparse.Namespace) -> list[tuple[Wall, Panel]]:
    panels = [(wall, panel) for wall in project.walls for panel in wall.panels]
    wanted: str | None = arguments.panel
    chosen = [pair for pair in panels if wanted in (None, pair[1].mark)]
    if wanted is not None and not chosen:
        known = one_of([panel.mark for _, panel in panels], wanted)
        raise Trouble(f"{arguments.file}: --panel: found {quoted(wanted)}, expected {known}")
    return chosen


def _project(file: Path) -> Project:
    with _faults_named(str(file)):
        return read_project(read_text(_bytes(file)))


def _bytes(file: Path) -> bytes:
    try:
        with file.open("rb") as opened:
            return opened.read(LARGEST_BYTES + 1)
    except OSError as error:
        raise Trouble(f"{file}: found {_why(error)}, expected a file to read") from error


def _why(error: OSError) -> str:
    return (error.strerror or str(error)).lower()


@contextmanager
def _faults_named(name: str) -> Iterator[None]:
    """Every fault as a line that begins with the name of what it is in."""
    try:
        yield
    except Refused as refused:
        raise Trouble(*(f"{name}: {fault}" for fault in refused.faults)) from refused


@contextmanager
def _storage_named() -> Iterator[None]:
    from app.storage.errors import StorageError

    try:
        yield
    except StorageError as error:
        raise Trouble(str(error)) from error
    except OSError as error:
        raise Trouble(f"{error.filename}: found {_why(error)}, expected a place to write") from error


def _import(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import import_file

    with _faults_named(str(arguments.file)), _storage_named():
        project = import_file(_database(arguments), read_text(_bytes(arguments.file)), datetime.now(UTC))
    print(project)


def _export(arguments: argparse.Namespace) -> None:
    if arguments.panel is not None and not (arguments.svg or arguments.xlsx):
        raise Trouble("export: --panel: found neither --svg nor --xlsx, expected one of them with it")
    if arguments.svg:
        _export_drawings(arguments)
        return
    with _faults_named("export"), _storage_named():
        content = _exported(arguments)
        if arguments.to is not None:
            _write(arguments.to, content)
            return
    sys.stdout.buffer.write(content)


def _exported(arguments: argparse.Namespace) -> bytes:
    if arguments.pdf:
        return _submittal(arguments)
    return _workbook(arguments) if arguments.xlsx else _project_text(arguments)


def _project_text(arguments: argparse.Namespace) -> bytes:
    from app.workflow.exchange import export_file

    document = export_file(_database(arguments), arguments.project)
    return f"{dumps(document, indent=1, ensure_ascii=False)}\n".encode()


def _submittal(arguments: argparse.Namespace) -> bytes:
    from app.documents.submittal_parts import parts_named
    from app.drawing.scales import NoScaleFits
    from app.workflow.exchange import export_values
    from app.workflow.issuing import submittal_of

    _refuse_screen(arguments, "--pdf")
    loaded = export_values(_database(arguments), arguments.project)
    try:
        return submittal_of(loaded, date.today(), parts=parts_named(filter(None, arguments.parts.split(","))))
    except KeyError as unknown:
        raise Trouble(f"export: --parts: {unknown.args[0]}") from unknown
    except NoScaleFits as unfit:
        raise Trouble(f"export: --pdf: {unfit}") from unfit


def _workbook(arguments: argparse.Namespace) -> bytes:
    from app.workflow.exchange import export_values
    from app.workflow.ordering import order_workbook

    _refuse_screen(arguments, "--xlsx")
    loaded, panel = export_values(_database(arguments), arguments.project), arguments.panel
    title = "Whole project" if panel is None else f"Panel {panel}"
    return order_workbook(loaded, title, _asked(loaded, panel).panels, date.today())


def _asked(loaded: "LoadedProject", mark: str | None) -> "LoadedProject":
    """The project with the panel asked for alone, or with all."""
    known = [panel.panel.mark for panel in loaded.panels]
    if mark is None:
        return loaded
    if mark not in known:
        expected = one_of(known, mark) if known else "a project with panels"
        raise Trouble(f"export: --panel: found {quoted(mark)}, expected {expected}")
    walls = (
        replace(wall, panels=tuple(panel for panel in wall.panels if panel.panel.mark == mark)) for wall in loaded.walls
    )
    return replace(loaded, walls=tuple(walls))


def _refuse_screen(arguments: argparse.Namespace, option: str) -> None:
    if arguments.to is None and sys.stdout.isatty():
        raise Trouble(f"export: {option}: found a screen to write to, expected --to FILE or a pipe")


def _export_drawings(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import export_values
    from app.workflow.issuing import drawing_files

    folder: Path | None = arguments.to
    if folder is None:
        raise Trouble("export: --svg: found no --to, expected --to FOLDER for the drawings")
    with _faults_named("export"), _storage_named():
        loaded = export_values(_database(arguments), arguments.project)
        drawings = drawing_files(_asked(loaded, arguments.panel))
        folder.mkdir(parents=True, exist_ok=True)
        for name, svg in drawings.items():
            _write(folder / name, svg.encode())
    print(*(folder / name for name in drawings), sep="\n")


def _write(path: Path, content: bytes) -> None:
    """The whole file or none of it."""
    part = path.with_name(f".{path.name}.part")
    try:
        part.write_bytes(content)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def _backup(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import back_up

    with _storage_named():
        copy = back_up(_database(arguments), arguments.copy)
    print(copy)


def _restore(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import put_back

    with _storage_named():
        kept = put_back(arguments.copy, _database(arguments))
    print(f"Restored {_database(arguments)}" + (f"; what it held is kept in {kept}" if kept else ""))


def _database(arguments: argparse.Namespace) -> Path:
    return Settings(data=arguments.data).database


def _demo(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import bring_in_demonstration

    settings = Settings(data=Path(mkdtemp(prefix="castcourse-demo-")))
    with _storage_named():
        bring_in_demonstration(settings.database, datetime.now(UTC))
    may_move = arguments.port is None
    _run_server(settings if may_move else replace(settings, port=arguments.port), may_move)


def _serve(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import prepare

    settings = Settings(data=arguments.data, host=arguments.host, port=arguments.port)
    try:
        settings.checked()
    except AddressRefused as refused:
        raise Trouble(str(refused)) from refused
    with _storage_named():
        prepare(settings.database)
    _run_server(settings, may_move=False)


def _run_server(settings: Settings, may_move: bool) -> None:
    from app.main import create_app
    from app.web.serving import AddressTaken, listener, serve

    try:
        held = listener(settings.host, settings.port, may_move)
    except AddressTaken as taken:
        raise Trouble(str(taken)) from taken
    settings = replace(settings, port=held.getsockname()[1])
    print(f"Castcourse is at {settings.address}\nIts data are in {settings.data}; Ctrl-C ends it.", flush=True)
    serve(create_app(settings), held)


if __name__ == "__main__":
    sys.exit(main())
