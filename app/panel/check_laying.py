"""Faults of how a panel's sheets are laid."""

from app.panel.faults import Fault
from app.panel.laying import CORNERS, DIRECTIONS, Laying
from app.panel.wording import one_of, quoted


def laying_faults(laying: Laying) -> list[Fault]:
    """A fault for an unknown corner and one for an unknown direction."""
    said = (("corner", laying.corner, CORNERS), ("direction", laying.direction, DIRECTIONS))
    return [
        Fault(f"laying.{name}", quoted(word), one_of(words, word)) for name, word, words in said if word not in words
    ]
