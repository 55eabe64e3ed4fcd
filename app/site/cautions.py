"""What can hurt somebody at the bed, task by task, in words of our own. Nothing here replaces who must decide."""

from dataclasses import dataclass
from typing import Literal, get_args

Task = Literal[
    "walking on the bed",
    "cutting liner",
    "sawing brick",
    "fixing liner",
    "placing concrete",
    "lifting",
    "washing",
]

TASKS: tuple[Task, ...] = get_args(Task)
"""In the order of the work."""

DEFERENCE = (
    "These cautions are reminders, not instructions. Local codes, the licensed engineer of record, the makers' data"
    " and the site's safety officer govern in every case."
)

OUTSIDE = (
    "Lifting, bracing, reinforcement, panel strength, connections and panel-joint sealants are outside this document:"
    " by the licensed engineer of record."
)

FOR_INFORMATION = "Weight and centre of gravity, where shown, are for information, not for lifting design."


@dataclass(frozen=True, slots=True)
class Caution:
    """One hazard of a task: what can happen and the usual care, who decides, and where the statement comes from."""

    task: Task
    hazard: str
    text: str
    decides: str
    source: str


_COMMON = "common practice"

CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "walking on the bed",
        "Slips",
        "Liner is slippery, more so when wet or dusty. Kneel and walk in the open lanes only, never on set brick.",
        "the site's safety officer",
        _COMMON,
    ),
    Caution(
        "walking on the bed",
        "Heat",
        "In full sun a bed stands far above the air temperature. Measure it before kneeling; plan shade and water.",
        "the site's safety officer",
        "Temperature Profiles of Sunlight-Exposed Surfaces in a Desert Climate, J Burn Care Res 2022",
    ),
    Caution(
        "cutting liner",
        "Knife cuts",
        "Cut on a board, away from the body, with a retracting knife and a glove on the hand that holds.",
        "the site's safety officer",
        _COMMON,
    ),
    Caution(
        "sawing brick",
        "Silica dust",
        "Dry cutting sets free silica that scars the lungs. Use a stationary saw with water fed to the blade; a"
        " hand-held saw needs more protection, depending on place and time.",
        "local codes and the site's safety officer",
        "29 CFR 1926.1153, Table 1",
    ),
    Caution(
        "sawing brick",
        "Kickback",
        "Keep the guard over the blade, hold a short piece in a jig and not by hand, and let the blade stop before"
        " taking it away.",
        "the saw maker's data and the site's safety officer",
        "29 CFR 1926.702(i) for the guard; common practice",
    ),
    Caution(
        "sawing brick",
        "Eyes and ears",
        "Chips fly and the blade is loud. Cover eyes and ears, at the saw and beside it; mind the slurry underfoot and"
        " the cable out of it.",
        "the saw maker's data and the site's safety officer",
        _COMMON,
    ),
    Caution(
        "fixing liner",
        "Metal near the face",
        "Steel rusts through the face: never steel. Plastic or stainless first; thin aluminium, though commonly used,"
        " only where the engineer accepts it, because it can react with fresh concrete.",
        "the licensed engineer of record",
        "ACI 303R-12 for aluminium; common practice",
    ),
    Caution(
        "placing concrete",
        "Burns",
        "Fresh concrete burns skin and eyes, slowly and without warning. Wear boots, gloves and eye cover; wash at once"
        " with much clean water.",
        "the concrete maker's data and the site's safety officer",
        _COMMON,
    ),
    Caution(
        "placing concrete",
        "Moved brick",
        "Let the stream fall on covered area only and do not dump. Keep the vibrator's head no more than 3 in."
        " below the surface over brick.",
        "the licensed engineer of record",
        _COMMON,
    ),
    Caution(
        "lifting",
        "Crane work",
        "Nobody stands under a panel or in its way while it is tilted, moved or set. Inserts, rigging, strength at"
        " lift and bracing are never taken from this document.",
        "the licensed engineer of record and the lift's supervisor",
        "29 CFR 1926.704",
    ),
    Caution(
        "washing",
        "Scalds",
        "Water of 140 degrees F burns skin in under 5 seconds, and a wax wash is hotter still. Cover face, arms and"
        " feet, and keep everyone else out of the spray.",
        "the washer maker's data and the site's safety officer",
        "published scald tables: 130 degrees F about 30 s, 140 degrees F under 5 s",
    ),
    Caution(
        "washing",
        "Injection",
        "A jet goes through skin; the wound looks minor and is not. Never aim at anybody; after a hit go to hospital"
        " at once and say that it was a pressure washer.",
        "the washer maker's data and the site's safety officer",
        "public health advice on pressure washers",
    ),
    Caution(
        "washing",
        "Damage to the brick",
        "Try pressure, heat and distance on the mock-up first.",
        "the brick maker's data",
        _COMMON,
    ),
)


def cautions_for(task: Task) -> tuple[Caution, ...]:
    """The cautions of one task in their order; raises KeyError for a task that is not in TASKS."""
    if task not in TASKS:
        raise KeyError(f"task {task!r}: expected one of {', '.join(TASKS)}")
    return tuple(caution for caution in CAUTIONS if caution.task == task)
