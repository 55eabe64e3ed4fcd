"""The project: walls of panels, and what they share (liner, order, day)."""

from dataclasses import dataclass

from app.lengths import Length, Unit
from app.panel.blend import Blend
from app.panel.delivery import Delivery
from app.panel.own_bond import OwnBond
from app.panel.size import BrickSize
from app.panel.values import Panel


@dataclass(frozen=True, slots=True)
class Liner:
    """The liner as its maker states it; expansion per degree of the project's temperature unit.

    Defaults: 6 x 9 cells, 0.021 in., 4.5e-5 per degree F at 70 F (middle of published tables for high-impact
    polystyrene, 80e-6 per C typical), tolerance 1/8 in., 1/32 in. a joint, 65 lb/ft3, laps of 1 in. (common practice).
    """

    columns: int = 6
    rows: int = 9
    thickness: Length = Length(533_400)  # noqa: RUF009
    expansion_per_degree: float = 4.5e-5
    reference_temperature: float = 70.0
    tolerance: Length = Length(3_175_000)  # noqa: RUF009
    joint_give: Length = Length(793_750)  # noqa: RUF009
    density_lb_ft3: float = 65.0
    lap: Length = Length(25_400_000)  # noqa: RUF009


@dataclass(frozen=True, slots=True)
class Order:
    """How the order is made up from net counts.

    Thin brick of 120 lb/ft3 (5.0 lb/ft2 at 1/2 in.: BIA Technical Notes 28C); a bead of adhesive 1/4 in. thick from a
    cartridge of 10.1 fl oz, nails 12 in. apart, sheets in packs of `sheets_per_pack` (common practice; 1: loose).
    """

    overage_percent: float = 5.0
    kerf: Length = Length(3_175_000)  # noqa: RUF009
    per_carton: int = 50
    cartons_per_pallet: int = 48
    brick_density_lb_ft3: float = 120.0
    sheets_per_pack: int = 1
    bead: Length = Length(6_350_000)  # noqa: RUF009
    cartridge_fl_oz: float = 10.1
    nail_spacing: Length = Length(304_800_000)  # noqa: RUF009


@dataclass(frozen=True, slots=True)
class Day:
    """Lowest and highest bed temperature expected while laying, in the project's temperature unit."""

    bed_low: float = 55.0
    bed_high: float = 105.0


@dataclass(frozen=True, slots=True)
class Wall:
    mark: str
    panels: tuple[Panel, ...]
    datum: Length = Length(0)  # noqa: RUF009
    joint: Length = Length(19_050_000)  # noqa: RUF009


@dataclass(frozen=True, slots=True)
class Project:
    """Everything the project file holds, as values. `temperature_unit` is "F" or "C"."""

    name: str
    walls: tuple[Wall, ...]
    length_unit: Unit = "in"
    temperature_unit: str = "F"
    sizes: tuple[BrickSize, ...] = ()
    bonds: tuple[OwnBond, ...] = ()
    liner: Liner = Liner()
    order: Order = Order()
    day: Day = Day()
    blend: Blend = Blend()  # noqa: RUF009 - Blend is frozen
    deliveries: tuple[Delivery, ...] = ()
