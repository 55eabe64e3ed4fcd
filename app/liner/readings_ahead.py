"""What lies between a checkpoint and the next control line: how many joints, and how far each may yet give."""

import numpy as np

from app.brickwork.fit import Limits
from app.brickwork.lattice import Floats
from app.brickwork.layout import Layout
from app.liner.lines import held_lines
from app.liner.readings_values import Ahead
from app.liner.tape import Tape, joint_lines, tapes
from app.liner.values import Checkpoint, Drift
from app.panel.project import Liner
from app.panel.tolerance import TOLERANCE


def joints_ahead(layout: Layout, liner: Liner, drift: Drift, checkpoint: Checkpoint) -> Ahead:
    """Joints between a checkpoint and the next control line along its axis, or the next line that holds the liner.

    A joint counts where it lies wholly between the two and inside the brick field. Joints are those of the field's
    bond; a bond without level courses counts one joint each time its pattern comes back, which is on the safe side. No
    control ahead gives no joints. `drift` must be of this layout and liner, from the panel's starting corner.
    """
    tape = next(each for each in tapes(layout, layout.panel.laying.corner) if each.axis == checkpoint.axis)
    points = [point for point in drift.checkpoints if point.axis == checkpoint.axis]
    name, end = _next_line(layout, tape, liner, points, checkpoint)
    lines = _joints_between(layout, tape, liner, checkpoint.nominal, end)
    changes = _changes(layout, tape, lines)
    allowed = Limits(liner.joint_give.inches).allowed(_joint(layout, tape))
    at_end = [point.mark for point in points if point.control and abs(point.nominal - end) <= TOLERANCE]
    earlier = [point.mark for point in points if point.nominal < checkpoint.nominal - TOLERANCE]
    return Ahead(
        control=name,
        mark=at_end[0] if name and at_end else "",
        nominal=end,
        joints=len(lines),
        joint=_joint(layout, tape),
        squeeze=max(0.0, allowed + float(changes.min(initial=0.0))),
        stretch=max(0.0, allowed - float(changes.max(initial=0.0))),
        grows_per_degree=(end - checkpoint.nominal) * liner.expansion_per_degree,
        before=earlier[-1] if earlier else "",
    )


def _next_line(
    layout: Layout, tape: Tape, liner: Liner, points: list[Checkpoint], checkpoint: Checkpoint
) -> tuple[str, float]:
    """Name and running dimension of the nearest control or held line ahead; "" and the checkpoint itself for none."""
    lines = [(point.nominal, point.control) for point in points if point.control]
    lines += [(at, name) for at, name in held_lines(layout, tape, liner)]
    ahead = [(at, name) for at, name in lines if at > checkpoint.nominal + TOLERANCE]
    at, name = min(ahead, default=(checkpoint.nominal, ""))
    return name, at


def _joint(layout: Layout, tape: Tape) -> float:
    return layout.size.head_joint.inches if tape.axis == "x" else layout.size.bed_joint


def _joints_between(layout: Layout, tape: Tape, liner: Liner, start: float, end: float) -> Floats:
    """Joint lines, face frame, whose joints lie between two running dimensions.

    A joint line is the left or lower edge of a unit, and its joint lies left of it or below it. At the very end of the
    brick field a joint has no brick beyond it and moves none.
    """
    running = joint_lines(layout, tape, liner)
    lines = tape.reach - running if tape.is_turned else running
    low, high = sorted((tape.running(start), tape.running(end)))
    joints = _joint(layout, tape) + _changes(layout, tape, lines)
    has_brick = (lines - joints > tape.low + TOLERANCE) & (lines < tape.high - TOLERANCE)
    return np.asarray(lines[has_brick & (lines - joints >= low - TOLERANCE) & (lines <= high + TOLERANCE)])


def _changes(layout: Layout, tape: Tape, lines: Floats) -> Floats:
    """How far the fit has already widened the joint at each line, inches; below zero where it is squeezed."""
    stretch = layout.lines.across if tape.axis == "x" else layout.lines.up
    nominal = np.asarray(stretch.nominal(lines))
    return np.asarray(lines - stretch.real(nominal - tape.module) - tape.module)
