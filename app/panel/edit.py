"""What every edit is: a change of a panel, said in words, with the reason when it is not possible."""

from abc import ABC, abstractmethod
from typing import ClassVar, Self

from app.panel.check import checked
from app.panel.faults import Refused
from app.panel.form import Form
from app.panel.values import Panel


class Edit(ABC):
    """One change that a person makes; frozen, and the panel it is applied to is never changed."""

    __slots__ = ()

    name: ClassVar[str]
    """Stable: forms and stored commands know the edit by it."""

    @classmethod
    @abstractmethod
    def read(cls, form: Form) -> Self:
        """The edit that a form's fields say; what is wrong is noted in the form."""

    @abstractmethod
    def label(self, panel: Panel, unit: str = "in", /) -> str:
        """What the list of changes says of the edit made on `panel`, lengths in the project's `unit`; never raises."""

    @abstractmethod
    def changed(self, panel: Panel) -> Panel:
        """The panel after the edit, not yet checked; raises Refused when the edit names what is not there."""

    def apply(self, panel: Panel, unit: str = "in") -> Panel:
        """The panel after the edit; raises Refused when it names what is not there or makes a panel that is wrong."""
        return checked(self.changed(panel), unit=unit)

    def why_not(self, panel: Panel, unit: str = "in") -> str | None:
        """Why the edit cannot be made, or None when it can."""
        try:
            self.apply(panel, unit)
        except Refused as refused:
            first, *others = refused.faults
            more = f" ({len(others)} more)" if others else ""
            return f"Found {first.found}, expected {first.expected}.{more}"
        return None
