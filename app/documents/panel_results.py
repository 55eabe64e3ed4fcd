"""What a document is made from: one panel with everything computed for it, and who issues the document."""

from dataclasses import dataclass
from datetime import date

from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.liner.offcut_values import CuttingPlan
from app.liner.values import Drift, SheetPlan
from app.order.values import Takeoff
from app.panel.project import Wall
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class PanelResults:
    """All results of one panel at one revision; `digest` names the layout they were made from."""

    wall: Wall
    panel: Panel
    layout: Layout
    plan: SheetPlan
    cutting: CuttingPlan
    drift: Drift
    takeoff: Takeoff
    findings: tuple[Finding, ...]
    revision: str
    digest: str


TO_FILL = "To be filled by the issuer"


@dataclass(frozen=True, slots=True)
class Issue:
    """What a title block says of a document's issue (fields of ISO 7200); what is not known is left to the issuer."""

    date: date
    revision: str = "-"
    identification: str = TO_FILL
    owner: str = TO_FILL
    creator: str = TO_FILL
