"""Advice: what to change so that fewer pieces are cut or small, each idea really laid out. See `advise`."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from app.brickwork.advice_cost import WEIGHTS
from app.brickwork.advice_ideas import Idea, Values, face_ideas
from app.brickwork.advice_openings import opening_ideas
from app.brickwork.advice_words import effect_in_words, saving_in_words
from app.brickwork.bond import Bond
from app.brickwork.layout import Layout, lay_out
from app.brickwork.place import Place
from app.brickwork.stretch import IDENTITY
from app.panel.edits import edit_from
from app.panel.size import BrickSize
from app.panel.tolerance import TOLERANCE
from app.panel.values import Panel

LAID = 4
"""Ideas about openings that are laid out, the best by estimate: keeps the advice for a face of 6,000 pieces quick."""


@dataclass(frozen=True, slots=True)
class Advice:
    """One idea and what laying it out has shown: changes of trimmed pieces, small pieces, and slivers left as joint.

    (x, y) is where in the face frame, inches. `edit` and `values` are an edit's name and fields, lengths in the
    project's unit; `question` asks the architect the same.
    """

    text: str
    effect: str
    trimmed: int
    small: int
    left_out: int
    x: float
    y: float
    edit: str
    values: Values
    question: str

    @property
    def score(self) -> float:
        """What the change costs, below 0 for better: a small piece or a sliver counts as ten cuts."""
        return WEIGHTS.small * self.small + WEIGHTS.cut * self.trimmed + WEIGHTS.left_out * self.left_out


def advise(
    layout: Layout,
    sizes: Mapping[str, BrickSize],
    bonds: Mapping[str, Bond],
    unit: str = "in",
    most: int = 8,
    place_of: Callable[[Panel], Place] | None = None,
    is_shared: bool = True,
) -> tuple[Advice, ...]:
    """At most `most` ideas that make the face better, the best first, then the smallest move.

    Every idea is laid out with `sizes` and `bonds`, and its numbers are counted. `place_of` tells where the changed
    panel stands in its wall, for a wall whose courses may change with it; None leaves it in the panel's own place.
    Where they change and the wall `is_shared` by panels of the same courses, the effect says so. Lengths in words and
    in fields are in the project's `unit`. Nothing for an empty field.
    """
    if layout.field.is_empty:
        return ()

    def again(panel: Panel) -> Layout:
        return lay_out(panel, sizes, bonds, place_of(panel) if place_of else layout.place)

    found = [(_laid(idea, layout, again, unit, is_shared), idea.move) for idea in _ideas(layout, unit)]
    better = [(advice, move) for advice, move in found if advice.score < 0]
    better.sort(key=lambda pair: (pair[0].score, pair[1]))
    return tuple(advice for advice, _ in better[:most])


def _ideas(layout: Layout, unit: str) -> Iterator[Idea]:
    yield from opening_ideas(layout, unit, LAID)
    yield from face_ideas(layout, unit)


def _laid(idea: Idea, layout: Layout, again: Callable[[Panel], Layout], unit: str, is_shared: bool) -> Advice:
    changed = again(edit_from(idea.edit, dict(idea.values), unit).changed(layout.panel))
    before, after = _counts(layout), _counts(changed)
    trimmed, small, left_out = (new - old for old, new in zip(before, after, strict=True))
    changes = (trimmed, small, left_out)
    follows = is_shared and _wall_follows(layout.place, changed.place)
    return Advice(
        text=idea.text,
        effect=effect_in_words(changes, follows),
        trimmed=trimmed,
        small=small,
        left_out=left_out,
        x=idea.x,
        y=idea.y,
        edit=idea.edit,
        values=idea.values,
        question=f"{idea.ask} {saving_in_words(changes)}",
    )


def _counts(layout: Layout) -> tuple[int, int, int]:
    """Trimmed pieces, small pieces, slivers left as joint."""
    return len(layout.trims), layout.small, len(layout.left_out.unit)


def _wall_follows(before: Place, after: Place) -> bool:
    """Whether the wall's course lines, or where its bond starts, have moved by more than the tolerance."""
    if before.origin is None or after.origin is None:
        return False
    old, new = before.courses or IDENTITY, after.courses or IDENTITY
    moves = [old.real(at) - new.real(at) for at in (*old.nominal_knots, *new.nominal_knots)]
    moves += [a - b for a, b in zip(before.origin, after.origin, strict=True)]
    return any(abs(move) > TOLERANCE for move in moves)
