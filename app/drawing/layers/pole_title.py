"""The words under a story pole."""

from collections.abc import Iterator

from app.drawing.layers.title import heading
from app.drawing.marks import Mark
from app.drawing.scene import Scene

FRAME = "view"

BELOW_MM = 6.0


def marks(scene: Scene) -> Iterator[Mark]:
    """Title, words and scale close under the pole's foot."""
    yield from heading(scene, BELOW_MM)
