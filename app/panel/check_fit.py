"""Faults of what is said to matter where courses and bricks meet control lines."""

from dataclasses import fields

from app.panel.faults import Fault
from app.panel.values import Matter
from app.panel.wording import one_of, quoted

MATTERS = tuple(part.name for part in fields(Matter))
"""The kinds of control lines: heads, sills, jambs, edges, strips, zones."""

WORDS = ("required", "wanted", "free")


def matter_faults(matter: Matter) -> list[Fault]:
    """A fault for every kind of control line with a word that says nothing known; none for a sound matter."""
    said = {name: getattr(matter, name) for name in MATTERS}
    return [
        Fault(f"fit.matter.{name}", quoted(word), one_of(WORDS, word))
        for name, word in said.items()
        if word not in WORDS
    ]
