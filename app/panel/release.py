"""What a release says of itself, and the digest over it and over every byte of its parts."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import sha256

FORMAT = "castcourse-release/1"

LETTERS = "ABCDEFGHJKLMNPRTUVWY"
"""Letters of revisions: without I, O, Q, S, X and Z, which are misread (ASME Y14.35, from memory)."""


@dataclass(frozen=True, slots=True)
class ReleaseHead:
    """Which panel was frozen at which of its revisions, as which release, by whom, when and why.

    `at` is an instant in UTC as ISO 8601 writes it. `previous` is the digest of the release before, "" for the first,
    so that none can be taken out unseen; `parts` has the SHA-256 of every part by its file name; `inputs_digest` is the
    digest of what the results rest on.
    """

    panel_id: str
    mark: str
    number: int
    revision: int
    person: str
    why: str
    at: str
    engine: str
    inputs_digest: str
    previous: str
    parts: Mapping[str, str]

    @property
    def letter(self) -> str:
        return letter_of(self.number)


def letter_of(number: int) -> str:
    """The letters of release 1, 2, 3 …: A, B, … Y, AA, AB …; raises ValueError below one."""
    if number < 1:
        raise ValueError(f"release number: found {number}, expected 1 or more")
    letters, rest = "", number
    while rest:
        rest, place = divmod(rest - 1, len(LETTERS))
        letters = LETTERS[place] + letters
    return letters


def part_digest(content: bytes) -> str:
    """SHA-256 of a part in hexadecimal (FIPS 180-4)."""
    return sha256(content).hexdigest()


def release_digest(head: ReleaseHead) -> str:
    """`sha256:` and 64 hexadecimal figures over the head, and so over every part."""
    said = {
        "format": FORMAT,
        "panel_id": head.panel_id,
        "mark": head.mark,
        "number": head.number,
        "revision": head.revision,
        "person": head.person,
        "why": head.why,
        "at": head.at,
        "engine": head.engine,
        "inputs": head.inputs_digest,
        "previous": head.previous,
        "parts": dict(head.parts),
    }
    text = json.dumps(said, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    return f"sha256:{sha256(text.encode()).hexdigest()}"


def faults_of(head: ReleaseHead, digest: str, contents: Mapping[str, bytes | None]) -> tuple[str, ...]:
    """What is no longer as it was released, in words; nothing for a release that is whole.

    A part that is missing or cannot be unpacked has None for its content.
    """
    names = dict.fromkeys([*head.parts, *contents])
    faults = [fault for name in names if (fault := _part_fault(name, head.parts.get(name), contents.get(name)))]
    if release_digest(head) != digest:
        faults.append(f"head: found digest {release_digest(head)[:23]}, expected {digest[:23]}")
    return tuple(faults)


def _part_fault(name: str, expected: str | None, content: bytes | None) -> str:
    found = "nothing that can be read" if content is None else f"SHA-256 {part_digest(content)[:16]}"
    if expected is None:
        return f"{name}: found {found}, expected no such part"
    if content is not None and part_digest(content) == expected:
        return ""
    return f"{name}: found {found}, expected SHA-256 {expected[:16]}"
