"""The command `castcourse`. What is wrong goes to standard error, one line a fault, and ends it with status 2.

The server and the database are imported by the commands that need them: `layout` starts in a third of the time.
"""

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import UTC, datetime
from json import dumps
from pathlib import Path
from tempfile import mkdtemp
from typing import NoReturn, TypeAlias

from app.accounting import add_user_commands
from app.documents.json_text import LARGEST_BYTES
from app.documents.project_file import read_project, read_text
from app.documents.results import layout_result
from app.exporting import export
from app.panel.project import Project, Wall
from app.panel.values import Panel
from app.panel.wording import one_of, quoted
from app.settings import AddressRefused, Settings
from app.troubles import Trouble, database_of, faults_named, storage_named, why
from app.workflow.compute import compute

BAD_INPUT = 2
STOPPED = 130
DATA = Path.home() / "castcourse"


Commands: TypeAlias = "argparse._SubParsersAction[_Parser]"


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
        print(f"standard output: found {why(error)}, expected room to write", file=sys.stderr)
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
    add_user_commands(commands, _add_data)
    return parser


def _add_server_commands(commands: Commands) -> None:
    demo = commands.add_parser("demo", help="the demo project in a fresh data folder, on this machine only")
    demo.add_argument("--port", type=int, default=None, help="default: 8350, or a free one where that is taken")
    demo.set_defaults(run=_demo)
    serve = commands.add_parser("serve", help="the server")
    serve.add_argument("--host", default="127.0.0.1", help="default: 127.0.0.1")
    serve.add_argument("--port", type=int, default=8350, help="default: 8350")
    names = "name by which browsers on other machines call this server; again for more"
    serve.add_argument("--name", metavar="NAME", action="append", default=[], help=names)
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
    out = commands.add_parser("export", help="a project out of the data folder")
    out.add_argument("project", metavar="PROJECT", help="the project's id or name")
    form = out.add_mutually_exclusive_group()
    form.add_argument("--pdf", action="store_true", help="the submittal as PDF, not the project file")
    out.add_argument("--parts", metavar="NAMES", default="", help="of the PDF, with commas: approval (usual), shop")
    form.add_argument("--svg", action="store_true", help="every panel's drawings as SVG files in the folder PATH")
    form.add_argument("--xlsx", action="store_true", help="the order as a workbook")
    out.add_argument("--panel", metavar="MARK", help="this panel only, of the drawings or the order")
    out.add_argument("--to", metavar="PATH", type=Path, help="file or folder; default: standard output")
    _add_data(out)
    out.set_defaults(run=export)


def _add_copy_commands(commands: Commands) -> None:
    backup = commands.add_parser("backup", help="a checked copy of the database, safe while the server runs")
    backup.add_argument("copy", metavar="DEST", type=Path, help="file to write the copy to")
    _add_data(backup)
    backup.set_defaults(run=_backup)
    check = commands.add_parser("verify", help="whether every release is byte by byte as it was released")
    _add_data(check)
    check.set_defaults(run=_verify)
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
    with faults_named(str(file)):
        return read_project(read_text(_bytes(file)))


def _bytes(file: Path) -> bytes:
    try:
        with file.open("rb") as opened:
            return opened.read(LARGEST_BYTES + 1)
    except OSError as error:
        raise Trouble(f"{file}: found {why(error)}, expected a file to read") from error


def _import(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import import_file

    with faults_named(str(arguments.file)), storage_named():
        project = import_file(database_of(arguments), read_text(_bytes(arguments.file)), datetime.now(UTC))
    print(project)


def _backup(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import back_up

    with storage_named():
        copy = back_up(database_of(arguments), arguments.copy)
    print(copy)


def _verify(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import verify_releases

    with storage_named():
        count, faults = verify_releases(database_of(arguments))
    if faults:
        raise Trouble(*faults)
    print(f"{count} release{'' if count == 1 else 's'}, each as it was released")


def _restore(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import put_back

    with storage_named():
        kept = put_back(arguments.copy, database_of(arguments))
    print(f"Restored {database_of(arguments)}" + (f"; what it held is kept in {kept}" if kept else ""))


def _demo(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import bring_in_demonstration

    settings = Settings(data=Path(mkdtemp(prefix="castcourse-demo-")))
    with storage_named():
        bring_in_demonstration(settings.database, datetime.now(UTC))
    may_move = arguments.port is None
    _run_server(settings if may_move else replace(settings, port=arguments.port), may_move)


def _serve(arguments: argparse.Namespace) -> None:
    from app.workflow.exchange import prepare

    settings = Settings(arguments.data, arguments.host, arguments.port, names=tuple(arguments.name))
    try:
        settings.checked()
    except AddressRefused as refused:
        raise Trouble(str(refused)) from refused
    with storage_named():
        has_owner = prepare(settings.database)
    if settings.needs_sign_in and not has_owner:
        way = "castcourse user add NAME --role owner"
        raise Trouble(f"host: found {settings.host} and no account, expected an owner: {way}")
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
