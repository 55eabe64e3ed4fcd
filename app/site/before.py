"""What is checked before concrete, the last moment at which a mistake is cheap, and who signs that it was."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Check:
    """One line of the list: a key that never changes, a short name, what must be so, and why."""

    key: str
    name: str
    text: str
    why: str


@dataclass(frozen=True, slots=True)
class SignOff:
    """One of the two who sign: a key that never changes, who it is, and what the name under the list says."""

    key: str
    who: str
    says: str


BEFORE: tuple[Check, ...] = (
    Check(
        "sheets-laid",
        "Sheets laid",
        "Every sheet of the plan is laid and ticked off, lap over lap, and every lane is filled.",
        "Where a sheet or a brick is missing, concrete comes through to the face.",
    ),
    Check(
        "keyed-back",
        "Keyed back up",
        "Every brick lies face down, its keyed back up, seated on the floor of its pocket.",
        "Concrete holds on to the keyed back only; a brick turned over comes off, and one that rides high lets paste"
        " onto its face.",
    ),
    Check(
        "corners-held",
        "Corners held",
        "Corner units and bricks at returns are held against the form so that they cannot tip or float.",
        "Nothing beside them holds them, and the concrete reaches them from the side.",
    ),
    Check(
        "clean-dry",
        "Clean and dry",
        "No standing water, sawdust, nails or tie wire lie on the liner or the brick.",
        "What lies in a pocket or a joint shows in the face for good.",
    ),
    Check(
        "no-steel",
        "No steel near the face",
        "No bar, wire, chair or fixing of steel is nearer to the face than the drawings of the engineer of record"
        " allow, and none touches brick or liner.",
        "Steel near the face rusts through it, and a chair that stands on brick pushes it out of its place.",
    ),
    Check(
        "openings-formed",
        "Openings formed",
        "Every opening, strip and plate is formed in its place, braced, and tight to the liner.",
        "A form that moves or leaks cannot be put right once the concrete is in.",
    ),
    Check(
        "readings-in-band",
        "Readings in band",
        "Every checkpoint is read by tape at today's bed temperature, and the last reading of each is in its band.",
        "Liner grows and shrinks with temperature; what has moved is cast where it lies.",
    ),
    Check(
        "findings-seen",
        "Open findings seen",
        "Every open finding of this release is read, and each is put right or accepted by name.",
        "A finding that nobody saw is found when the wall stands.",
    ),
    Check(
        "head-depth",
        "Depth of the head known",
        "The vibrator's crew knows the grid, how deep the head goes in this panel, and where the first drop is.",
        "A head that goes too deep moves the brick, and a stream on bare brick turns it over.",
    ),
)
"""In the order in which they are looked at (common practice)."""

SIGN_OFFS: tuple[SignOff, ...] = (
    SignOff("foreman", "foreman", "I have looked at every line on this bed, against the release named here."),
    SignOff(
        "second",
        "second person, such as the inspector",
        "I have looked at every line for myself, and am not the one who signed first.",
    ),
)
"""Two people sign, the foreman first (common practice): four eyes see what two have got used to."""

BOUNDS = (
    "This list is about the brick face. Reinforcement, inserts, bracing and strength are checked against the drawings"
    " of the licensed engineer of record; local codes and the project's specification govern."
)
