"""The order of a project's panels as a workbook."""

from collections.abc import Sequence
from datetime import date

from app.documents.digest import panel_digest
from app.documents.order_book import BookPanel, OrderBook
from app.documents.workbook import workbook
from app.workflow.compute import Computed, compute, saw_list_of, takeoff_of
from app.workflow.issuing import revision_of
from app.workflow.loading import LoadedPanel, LoadedProject
from app.workflow.stock import casting_of, short_of


def order_workbook(loaded: LoadedProject, scope: str, panels: Sequence[LoadedPanel], day: date) -> bytes:
    """The order of some panels as a workbook, made on `day`; `scope` names them on its cover."""
    return workbook(order_book(loaded, scope, panels, day))


def order_book(loaded: LoadedProject, scope: str, panels: Sequence[LoadedPanel], day: date) -> OrderBook:
    """Everything that the workbook says."""
    project, computed = loaded.project, [_computed(panel) for panel in panels]
    return OrderBook(
        project=project,
        scope=scope,
        revision=revision_of(loaded),
        day=day,
        takeoff=takeoff_of(project, computed),
        panels=tuple(map(_book_panel, panels, computed)),
        saw=saw_list_of(project, computed),
        short=short_of(loaded, day),
    )


def _book_panel(loaded: LoadedPanel, computed: Computed) -> BookPanel:
    return BookPanel(
        casting=casting_of(loaded),
        digest=panel_digest(loaded.project, loaded.wall, loaded.panel),
        work=computed.work,
        takeoff=computed.takeoff,
        saw=computed.saw,
    )


def _computed(loaded: LoadedPanel) -> Computed:
    return compute(loaded.project, loaded.wall, loaded.panel)
