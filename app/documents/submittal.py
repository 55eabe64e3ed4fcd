"""The submittal as a PDF: drawings at true scale, schedules, order and cautions, each sheet framed and titled."""

import json
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, time
from importlib.resources import files
from pathlib import Path
from typing import cast

import font_source_sans_pro
import typst

from app.documents.panel_results import Issue, PanelResults
from app.documents.submittal_data import Progress, SubmittalData, submittal_data
from app.panel.project import Project

TEMPLATES = (
    "submittal.typ",
    "submittal_cover.typ",
    "submittal_frame.typ",
    "submittal_tables.typ",
    "submittal_walls.typ",
)

STANDARDS = ("a-2a", "ua-1")
"""For the archive (ISO 19005-2) and for readers by ear (ISO 14289-1)."""

_COMPILE = cast(Callable[..., bytes], typst.compile)
"""It takes files by name as well, which its stubs do not say."""


def submittal_pdf(
    project: Project,
    computed: Sequence[PanelResults],
    issue: Issue,
    *,
    sheet: str = "ANSI B",
    progress: Progress | None = None,
) -> bytes:
    """The whole submittal of a project's panels on one size of sheet, a name in `drawing.scales.SHEETS`.

    The same arguments give the same bytes. `progress` hears (steps done, steps): one a panel drawn and one for the
    setting. No panels gives the sheets of the whole project alone. Raises KeyError for an unknown sheet and
    NoScaleFits, naming the panel, for one too large for the sheet at any scale.
    """
    tell = progress or (lambda _done, _steps: None)
    data = submittal_data(project, computed, issue, sheet, tell)
    pdf = _set(data, issue)
    tell(len(computed) + 1, len(computed) + 1)
    return pdf


def _set(data: SubmittalData, issue: Issue) -> bytes:
    try:
        return _compiled(data, issue, STANDARDS)
    except typst.TypstError as refused:
        if "could not be displayed with font" not in str(refused):
            raise
    # A name in letters that the font lacks: the standards forbid their empty boxes, a plain PDF shows the rest.
    return _compiled(data, issue, ())


def _compiled(data: SubmittalData, issue: Issue, standards: Sequence[str]) -> bytes:
    here = files("app.documents")
    parts = {name: here.joinpath(name).read_bytes() for name in TEMPLATES}
    parts |= {name: svg.encode() for name, svg in data.drawings.items()}
    parts["data.json"] = json.dumps(data.values).encode()
    main = {"main.typ": parts.pop("submittal.typ"), **parts}
    return _COMPILE(
        main,
        format="pdf",
        font_paths=[_fonts()],
        ignore_system_fonts=True,
        pdf_standards=list(standards),
        timestamp=datetime.combine(issue.date, time(), UTC),
    )


def _fonts() -> str:
    return str(Path(font_source_sans_pro.SourceSansPro).parent)
