"""The submittal as a PDF: drawings at true scale, schedules, order and cautions, each sheet framed and titled."""

from collections.abc import Callable, Iterator, Sequence
from typing import Any
from zlib import decompress

from app.documents.panel_results import Issue, PanelResults
from app.documents.pdf_join import joined
from app.documents.submittal_data import SubmittalData, submittal_data
from app.documents.submittal_parts import APPROVAL
from app.documents.submittal_setting import PLAIN, STANDARDS, Leaf, leaf_counted, leaf_set
from app.panel.project import Project

Progress = Callable[[int, int], None]

AT_ONCE = 5
"""Panels whose sheets are set together: the typesetter holds some 10 MB of each until it is done with them."""


def submittal_pdf(
    project: Project,
    computed: Sequence[PanelResults],
    issue: Issue,
    *,
    sheet: str = "ANSI B",
    parts: frozenset[str] = APPROVAL,
    progress: Progress | None = None,
) -> bytes:
    """The submittal of a project's panels on one size of sheet, a name in `drawing.scales.SHEETS`, with these parts.

    The same arguments give the same bytes. `progress` hears (steps done, steps): one a panel drawn and one for each
    few panels set. No panels gives the sheets of the whole project alone. Raises KeyError for an unknown sheet and
    NoScaleFits, naming the panel, for one too large for the sheet at any scale.
    """
    told = _Told(len(computed) + _leaf_count(len(computed)), progress or (lambda _done, _steps: None))
    data = submittal_data(project, computed, issue, sheet, parts, told.step)
    leaves = _numbered(list(_leaves(data)))
    pdf = joined(_set(data, leaves, issue, STANDARDS, told) or _set(data, leaves, issue, PLAIN, told))
    told.end()
    return pdf


class _Told:
    """Progress so far; a second try tells no more than the first."""

    def __init__(self, steps: int, tell: Progress) -> None:
        self._done, self._steps, self._tell = 0, steps, tell

    def step(self) -> None:
        if self._done < self._steps - 1:
            self._done += 1
            self._tell(self._done, self._steps)

    def end(self) -> None:
        self._tell(self._steps, self._steps)


def _leaf_count(panels: int) -> int:
    return max(1, -(-panels // AT_ONCE))


def _leaves(data: SubmittalData) -> Iterator[dict[str, Any]]:
    """Values of the sheets that are set together: a few panels each, what is of the whole project at both ends."""
    count = _leaf_count(len(data.panels))
    for k in range(count):
        panels = list(data.panels[k * AT_ONCE : (k + 1) * AT_ONCE])
        is_first, is_last = k == 0, k == count - 1
        index = data.panels if is_first else ()
        yield data.common | {"panels": panels, "index": list(index), "is-first": is_first, "is-last": is_last}


def _numbered(leaves: Sequence[dict[str, Any]]) -> list[dict[str, Any]]:
    """The leaves with the number of their first sheet, of all sheets, and of each that the index names."""
    counted = [leaf_counted(leaf | {"first": 1, "total": 1, "places": {}}) for leaf in leaves]
    firsts = [1 + sum(one.sheets for one in counted[:k]) for k in range(len(counted))]
    total = sum(one.sheets for one in counted)
    places = {
        name: first - 1 + at for one, first in zip(counted, firsts, strict=True) for name, at in one.places.items()
    }
    return [
        leaf | {"first": first, "total": total, "places": places if leaf["is-first"] else {}}
        for leaf, first in zip(leaves, firsts, strict=True)
    ]


def _set(
    data: SubmittalData, leaves: Sequence[dict[str, Any]], issue: Issue, standards: tuple[str, ...], told: _Told
) -> list[bytes]:
    """Each leaf as a PDF; none where one cannot be set to the standards."""
    done = list[bytes]()
    for values in leaves:
        drawn = [one for panel in values["panels"] for one in (*panel["drawings"], *panel["plots"])]
        drawn += values["walls"] if values["is-first"] else []
        drawn += values["saw"] if values["is-last"] else []
        files = [one["file"] for one in drawn]
        drawings = {name: decompress(data.drawings[name]).decode() for name in files}
        pdf = leaf_set(Leaf(values, drawings), issue.date, standards)
        if pdf is None:
            return []
        done.append(pdf)
        told.step()
    return done
