"""By what an order is made up from counts."""

from dataclasses import dataclass

from app.panel.blend import Blend
from app.panel.project import Liner, Order, Project

KILOGRAMS_PER_POUND = 0.45359237
METRES_PER_INCH = 0.0254
"""Both exact by the international yard and pound agreement of 1959."""

INCHES_PER_FOOT = 12
CUBIC_INCHES_PER_CUBIC_FOOT = INCHES_PER_FOOT**3
CUBIC_FEET_PER_CUBIC_YARD = 27


@dataclass(frozen=True, slots=True)
class Rules:
    """The project's order, liner and blend, and the unit of its lengths: areas, lengths and weights go with it."""

    order: Order
    liner: Liner
    blend: Blend = Blend()  # noqa: RUF009 - Blend is frozen
    length_unit: str = "in"

    @classmethod
    def of(cls, project: Project) -> "Rules":
        """Those of a project."""
        return cls(project.order, project.liner, project.blend, project.length_unit)

    @property
    def is_metric(self) -> bool:
        return self.length_unit not in ("in", "ft")

    @property
    def weight_unit(self) -> str:
        return "kg" if self.is_metric else "lb"

    def weight(self, pounds: float) -> float:
        """Pounds in the project's unit of weight."""
        return pounds * KILOGRAMS_PER_POUND if self.is_metric else pounds

    def length(self, inches: float) -> tuple[float, str]:
        """Inches as feet, or as metres, and which."""
        return (inches * METRES_PER_INCH, "m") if self.is_metric else (inches / INCHES_PER_FOOT, "ft")

    def area(self, square_inches: float) -> tuple[float, str]:
        """Square inches as square feet, or as square metres, and which."""
        if self.is_metric:
            return square_inches * METRES_PER_INCH**2, "m2"
        return square_inches / INCHES_PER_FOOT**2, "sq ft"

    def volume(self, cubic_inches: float) -> tuple[float, str]:
        """Cubic inches as cubic yards, or as cubic metres, and which."""
        if self.is_metric:
            return cubic_inches * METRES_PER_INCH**3, "m3"
        return cubic_inches / CUBIC_INCHES_PER_CUBIC_FOOT / CUBIC_FEET_PER_CUBIC_YARD, "cu yd"

    def colour_name(self, colour: int) -> str:
        """The name of a colour that counts in the blend; "" for brick of one colour."""
        return self.blend.colours[colour].name if self.blend.colours else ""
