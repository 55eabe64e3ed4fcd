"""The cautions of a page: those of its tasks, and who decides in the end."""

from dataclasses import dataclass

from app.site.cautions import DEFERENCE, Caution, Task, cautions_for


@dataclass(frozen=True, slots=True)
class Cautions:
    rows: tuple[Caution, ...]
    deference: str = DEFERENCE


def cautions_of(*tasks: Task) -> Cautions:
    """Cautions task by task."""
    return Cautions(tuple(caution for task in tasks for caution in cautions_for(task)))
