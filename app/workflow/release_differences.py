"""What differs between two releases of a panel, in words: the panel, its wall, its project."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from app.brickwork.layout import Layout
from app.panel.things import changes
from app.panel.things_in_words import in_words
from app.storage import Session, releases
from app.storage.releases import StoredRelease
from app.workflow.compute import Computed, compute
from app.workflow.releasing import INPUTS, given_of, released_values


@dataclass(frozen=True, slots=True)
class Differences:
    """Two releases as computed again from their inputs, and what differs in words; nothing for a first release."""

    earlier: Computed | None
    later: Computed
    words: tuple[str, ...]

    @property
    def layouts(self) -> tuple[Layout | None, Layout]:
        return self.earlier.layout if self.earlier else None, self.later.layout


def differences(session: Session, later: StoredRelease, earlier: StoredRelease | None) -> Differences:
    """Against the release before; raises NotFound where the inputs of one cannot be read."""
    now = releases.part(session, later.id, INPUTS)
    if earlier is None:
        return Differences(None, compute(*released_values(now)), ())
    was = releases.part(session, earlier.id, INPUTS)
    words = tuple(_words(given_of(was), given_of(now)))
    return Differences(compute(*released_values(was)), compute(*released_values(now)), words)


def _words(was: Mapping[str, Any], now: Mapping[str, Any]) -> list[str]:
    parts = [_parts(given) for given in (was, now)]
    said = []
    for name, before, after in zip(("", "wall: ", "project: "), *parts, strict=True):
        said += [f"{name}{words}" for words in in_words(changes(before, after))]
    return said


def _parts(given: Mapping[str, Any]) -> tuple[dict[str, Any], dict[str, Any], dict[str, Any]]:
    """The panel's document, its wall's own values, the project's own values."""
    project = given["project"]
    wall = project["walls"][0]
    panel = next(one for one in wall["panels"] if one["mark"] == given["panel"])
    others = [one["mark"] for one in wall["panels"]]
    own = {key: value for key, value in wall.items() if key != "panels"} | {"panels": others}
    return panel, own, {key: value for key, value in project.items() if key != "walls"}
