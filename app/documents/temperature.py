"""Temperatures of a project file, in its own unit."""

from dataclasses import dataclass
from typing import Any

from app.documents.kinds import Number, Setting
from app.panel.faults import Fault, Refused
from app.panel.temperatures import LIMITS


@dataclass(frozen=True, slots=True)
class Temperature:
    """A temperature in the file's unit, told with it."""

    what: str

    def read(self, value: Any, setting: Setting) -> float:
        low, high = LIMITS[setting.temperature_unit]
        expected = f"{self.what} from {low} to {high} degrees {setting.temperature_unit}"
        try:
            return float(Number(expected, low, high).read(value, setting))
        except Refused as refused:
            is_number = isinstance(value, int | float) and not isinstance(value, bool)
            unit = f" degrees {setting.temperature_unit}" if is_number else ""
            found = "; ".join(fault.found for fault in refused.faults)
            raise Refused([Fault("", f"{found}{unit}", expected)]) from None

    def write(self, value: float, setting: Setting, like: Any) -> int | float:
        return Number(self.what).write(value, setting, like)
