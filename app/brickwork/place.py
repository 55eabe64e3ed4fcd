"""What a panel's layout takes from around it: its place in the wall, and how far a joint gives."""

from dataclasses import dataclass

from app.brickwork.stretch import Stretch

JOINT_GIVE = 1 / 32
"""Inches that a joint may be stretched or squeezed (common practice; a project may say otherwise)."""


@dataclass(frozen=True, slots=True)
class Place:
    """`origin` is the wall's bond in the panel's face frame, inches; None for the lower left of the brick field.

    `courses` maps the wall's course lines, face frame, where the wall's bed joints give; None leaves that to the panel.
    `wall` and `wall_courses` are the wall's bond and courses even for a panel that does not take them, so that a
    difference can be told.
    """

    origin: tuple[float, float] | None = None
    courses: Stretch | None = None
    wall: tuple[float, float] | None = None
    give: float = JOINT_GIVE
    wall_courses: Stretch | None = None


ALONE = Place()
