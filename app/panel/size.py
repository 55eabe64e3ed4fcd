"""A brick size: face, joint and how its courses make a height."""

from dataclasses import dataclass

from app.lengths import Length


@dataclass(frozen=True, slots=True)
class BrickSize:
    """Face length L and height H, thickness, head joint, and `courses` courses in the height `per`."""

    name: str
    length: Length
    height: Length
    thickness: Length
    head_joint: Length
    courses: int
    per: Length
    source: str = ""

    @property
    def gauge(self) -> float:
        """Height of one course with its bed joint, inches: `per / courses`, never rounded."""
        return self.per.inches / self.courses

    @property
    def head_module(self) -> float:
        """Length of one unit with its head joint, inches."""
        return self.length.inches + self.head_joint.inches

    @property
    def bed_joint(self) -> float:
        """Gauge less face height, inches (modular: 5/12, not 3/8): BIA Technical Notes 10B, Table 1 footnote."""
        return self.gauge - self.height.inches

    @property
    def half_bat(self) -> float:
        """Face length of a half bat, inches: half a head module less one head joint."""
        return self.head_module / 2 - self.head_joint.inches
