"""After the lift: how the liner comes off, where it goes, and how the wax is washed from the face."""

from dataclasses import dataclass

from app.order.line_words import amount
from app.order.values import Line, Takeoff
from app.site.cautions import Task

RECYCLED, WASHED = "Liner to recycle", "Wax wash, face to wash"
"""The lines of the takeoff that these steps speak of."""

COMMON = "common practice"


@dataclass(frozen=True, slots=True)
class Step:
    """One step: its number, a key that never changes, its name, what is done, why, its limits ("" for none), and where
    the statement comes from.

    `task` names the cautions that stand beside it (`cautions.cautions_for`).
    """

    number: int
    key: str
    name: str
    text: str
    why: str
    limits: str
    source: str
    task: Task


def strip_steps(takeoff: Takeoff) -> tuple[Step, ...]:
    """Strip, recycle, try, wash and look over, in this order, with the liner's mass and the face's area of a takeoff.

    Where the takeoff has no such line the step says so instead of a figure.
    """
    mass, area = _said(takeoff, RECYCLED), _said(takeoff, WASHED)
    return tuple(Step(number, *rest) for number, rest in enumerate(_steps(mass, area), 1))


def _said(takeoff: Takeoff, item: str) -> str:
    line: Line | None = next((line for line in takeoff.lines if line.item == item), None)
    return "an amount that the takeoff does not give" if line is None else f"{amount(line.net)} {line.unit}"


_Row = tuple[str, str, str, str, str, str, Task]


def _steps(mass: str, area: str) -> tuple[_Row, ...]:
    return (
        (
            "strip",
            "Strip the liner",
            "Once the panel is lifted, set and made safe by those in charge of the lift, peel the liner off by hand"
            " from an upper corner, sheet by sheet.",
            "It lets go most easily while it is whole, and hot wash water softens what is left on the face.",
            "Nobody works under or in the way of a panel that is not braced. Polystyrene softens at 160 to 189 degrees"
            " F, below the heat of the wash: no liner stays on for it.",
            f"{COMMON}; published tables for high-impact polystyrene; 29 CFR 1926.704 for the lift",
            "lifting",
        ),
        (
            "recycle",
            "Recycle the liner",
            f"Shake off laitance, stack the sheets and bale them: {mass}, offcuts with them.",
            "It is one plastic throughout and cast on once, so it can be melted again.",
            "Keep fixings, tape and brick out of the bale; the recycler's rules govern.",
            f"{COMMON}; mass from the takeoff",
            "cutting liner",
        ),
        (
            "try",
            "Try the wash",
            "Wash the mock-up, or a place that nobody will see, and let it dry before anything else is washed.",
            "What takes wax off one brick takes the face off another.",
            "The brick maker's data govern. Guidance for cleaning masonry stays at or under 1,000 psi with tips of 25"
            " to 40 degrees; a hot wash for wax is commonly at 1,000 psi or more.",
            f"{COMMON}; Masonry Magazine, July 2006, p. 43",
            "washing",
        ),
        (
            "wash",
            "Wash the face hot",
            f"Wash the whole face, {area}, soon after stripping, from the top down, with even strokes and the fan kept"
            " moving.",
            "Wax and laitance come off while they are young; washed from below, what runs down sets on clean brick.",
            "Water of 190 to 200 degrees F at the washer, a fan of 30 to 45 degrees, at least 1,000 psi where the trial"
            " and the brick maker allow it.",
            COMMON,
            "washing",
        ),
        (
            "look",
            "Look it over",
            "When the face is dry look for wax that is left, loose brick and open joints, and note its place.",
            "Wax shows as a shine only when it is dry, and what is noted now can still be reached.",
            "Repairs by the project's specification.",
            COMMON,
            "washing",
        ),
    )
