"""From the strip to the clean face: what is done in which order, and what each step rests on."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Step:
    """One step in its order, its limits in words, and where the statement comes from; `name` never changes."""

    name: str
    words: str
    limits: str
    source: str


STRIP: tuple[Step, ...] = (
    Step(
        "lifted",
        "Lifted and braced",
        "Only when the engineer of record lets it: strength at lift, rigging and bracing are not from here.",
        "by the licensed engineer of record",
    ),
    Step(
        "peeled",
        "Liner peeled off",
        "From the top down, sheet by sheet, before the wash: hot water softens liner that is left on the face.",
        "heat deflection of polystyrene at 264 psi: 160 to 189 degrees F, published tables",
    ),
    Step(
        "washed",
        "Washed hot, and soon",
        "The same day or the next: wax comes off hot. From the top down, so that what runs off is washed again."
        " Pressure, heat and distance as tried on the mock-up and as the brick's maker allows.",
        "common practice",
    ),
    Step(
        "looked-at",
        "Looked at, dry",
        "In daylight, from the distance that the specification names; what is found is recorded with a photo.",
        "common practice",
    ),
    Step(
        "recycled",
        "Liner to recycling",
        "Clean polystyrene is kept apart from wood and concrete; its mass is in the order.",
        "common practice",
    ),
)
