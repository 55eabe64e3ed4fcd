"""A panel's mark under its foot, for drawings of several panels."""

from collections.abc import Iterator

from app.drawing.marks import NORMAL, Mark, Text
from app.drawing.scene import Scene

FRAME = "view"

BELOW_MM = 4.5


def marks(scene: Scene) -> Iterator[Mark]:
    """One word, in the middle."""
    yield Text(scene.width / 2, -scene.mm(BELOW_MM), scene.layout.panel.mark, "text strong", NORMAL)
