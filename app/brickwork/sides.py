"""Where an opening's sides meet whole brick: the lines of the field's courses and half modules, less the margin."""

from collections.abc import Iterator
from math import ceil, floor

from app.brickwork.bonds import BONDS
from app.brickwork.layout import Layout
from app.panel.geometry import kept_margin

Lines = tuple[tuple[float, str], ...]


def meeting_lines(layout: Layout) -> dict[str, Lines]:
    """For "left", "right", "bottom" and "top" of an opening: positions in inches and what is met there.

    A head sits a margin under the foot of a course, a sill a margin over the top of one, a jamb a margin from the end
    of a brick or half bat. Empty for an empty field; no jamb lines in a turned bond.
    """
    margin = kept_margin(layout.panel, layout.size.head_joint.inches)
    courses = layout.courses
    return {
        "bottom": tuple((course.top + margin, f"sill on course {course.course}") for course in courses),
        "top": tuple((course.bottom - margin, f"head under course {course.course}") for course in courses),
        "left": tuple(_jambs(layout, margin - layout.size.head_joint.inches, "left jamb at the end of a brick")),
        "right": tuple(_jambs(layout, -margin, "right jamb at the start of a brick")),
    }


def _jambs(layout: Layout, shift: float, words: str) -> Iterator[tuple[float, str]]:
    if layout.field.is_empty or BONDS[layout.panel.field.bond].turn:
        return
    half, origin = layout.size.head_module / 2, layout.origin[0]
    low, high = layout.field.bounds[0], layout.field.bounds[2]
    for k in range(ceil((low - origin) / half), floor((high - origin) / half) + 1):
        yield origin + k * half + shift, words
