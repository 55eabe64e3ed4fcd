"""The command `castcourse export`: a project file, a submittal, an order or drawings out of the data folder.

What makes each of them is imported once it is asked for.
"""

import sys
from argparse import Namespace
from dataclasses import replace
from datetime import date
from json import dumps
from pathlib import Path
from typing import TYPE_CHECKING

from app.panel.wording import one_of, quoted
from app.troubles import Trouble, database_of, faults_named, storage_named

if TYPE_CHECKING:
    from app.workflow.loading import LoadedProject


def export(arguments: Namespace) -> None:
    """What is asked for, to a file or folder or to standard output; raises Trouble."""
    if arguments.panel is not None and not (arguments.svg or arguments.xlsx):
        raise Trouble("export: --panel: found neither --svg nor --xlsx, expected one of them with it")
    if arguments.svg:
        _export_drawings(arguments)
        return
    with faults_named("export"), storage_named():
        content = _exported(arguments)
        if arguments.to is not None:
            _write(arguments.to, content)
            return
    sys.stdout.buffer.write(content)


def _exported(arguments: Namespace) -> bytes:
    if arguments.pdf:
        return _submittal(arguments)
    return _workbook(arguments) if arguments.xlsx else _project_text(arguments)


def _project_text(arguments: Namespace) -> bytes:
    from app.workflow.exchange import export_file

    document = export_file(database_of(arguments), arguments.project)
    return f"{dumps(document, indent=1, ensure_ascii=False)}\n".encode()


def _submittal(arguments: Namespace) -> bytes:
    from app.documents.submittal_parts import parts_named
    from app.drawing.scales import NoScaleFits
    from app.workflow.exchange import export_values
    from app.workflow.issuing import submittal_of

    _refuse_screen(arguments, "--pdf")
    loaded = export_values(database_of(arguments), arguments.project)
    try:
        return submittal_of(loaded, date.today(), parts=parts_named(filter(None, arguments.parts.split(","))))
    except KeyError as unknown:
        raise Trouble(f"export: --parts: {unknown.args[0]}") from unknown
    except NoScaleFits as unfit:
        raise Trouble(f"export: --pdf: {unfit}") from unfit


def _workbook(arguments: Namespace) -> bytes:
    from app.workflow.exchange import export_values
    from app.workflow.ordering import order_workbook

    _refuse_screen(arguments, "--xlsx")
    loaded, panel = export_values(database_of(arguments), arguments.project), arguments.panel
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


def _refuse_screen(arguments: Namespace, option: str) -> None:
    if arguments.to is None and sys.stdout.isatty():
        raise Trouble(f"export: {option}: found a screen to write to, expected --to FILE or a pipe")


def _export_drawings(arguments: Namespace) -> None:
    from app.workflow.exchange import export_values
    from app.workflow.issuing import drawing_files

    folder: Path | None = arguments.to
    if folder is None:
        raise Trouble("export: --svg: found no --to, expected --to FOLDER for the drawings")
    with faults_named("export"), storage_named():
        loaded = export_values(database_of(arguments), arguments.project)
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
