"""Which temperatures somebody asks the Drift screen for, and the way back to it after an edit."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from app.panel.faults import Fault
from app.panel.project import Project
from app.panel.temperatures import LIMITS
from app.panel.wording import quoted
from app.web.problems import KINDS, Failure, Problem

_NUMBER = re.compile(r"[-\u2212]?\d{1,4}(?:[.,]\d{1,3})?")


@dataclass(frozen=True, slots=True)
class Asked:
    """Temperatures in the project's unit: of the bed, and of the steel tape (None: nobody took it)."""

    bed: float
    tape: float | None
    faults: tuple[Fault, ...] = ()

    @property
    def query(self) -> str:
        """The same as an address asks for it."""
        tape = {} if self.tape is None else {"tape": f"{self.tape:g}"}
        return urlencode({"temperature": f"{self.bed:g}", **tape})


def asked_of(temperature: str | None, tape: str | None, project: Project) -> Asked:
    """What was typed; the day's highest bed temperature where nothing was, and instead of what cannot be read.

    An empty field for the tape says that its temperature was not taken.
    """
    unit, usual, faults = project.temperature_unit, project.day.bed_high, []
    bed = usual if temperature is None else _degrees(temperature.strip(), "temperature", "a bed temperature", unit)
    steel = None if not tape or not tape.strip() else _degrees(tape.strip(), "tape", "a temperature of the tape", unit)
    faults = [value for value in (bed, steel) if isinstance(value, Fault)]
    return Asked(usual if isinstance(bed, Fault) else bed, None if isinstance(steel, Fault) else steel, tuple(faults))


def bed_asked(temperature: str, project: Project) -> float:
    """The bed temperature that an address asks readings for; raises Failure with what was found and expected."""
    asked = asked_of(temperature, None, project)
    if asked.faults:
        raise Failure(Problem(KINDS["refused"], "No readings are shown.", asked.faults))
    return asked.bed


def _degrees(text: str, name: str, what: str, unit: str) -> float | Fault:
    low, high = LIMITS[unit]
    expected = f"{what} from {low} to {high} °{unit}"
    if not _NUMBER.fullmatch(text):
        return Fault(name, quoted(text), expected)
    value = float(text.replace("\u2212", "-").replace(",", "."))
    return value if low <= value <= high else Fault(name, f"{value:g} °{unit}", expected)


def page_after(panel: str, form: Mapping[str, str]) -> str:
    """Where a plain form leads after its edit: back to the Drift screen at the temperatures shown there, for a form
    from there; else to `panel`, the editor's address."""
    if form.get("then") != "drift":
        return panel
    asked = {name: form[name] for name in ("temperature", "tape") if form.get(name)}
    return f"{panel}/drift?{urlencode(asked)}" if asked else f"{panel}/drift"
