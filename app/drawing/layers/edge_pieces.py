"""Finishing edge pieces: a thick line where a course stops in the open."""

from collections.abc import Iterator

from app.drawing.marks import Mark, segments
from app.drawing.scene import Scene

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """All runs as one mark; none where nobody worked them out."""
    runs = scene.work.edge_pieces.runs if scene.work else ()
    if runs:
        yield segments([(*run.start, *run.end) for run in runs], "edge piece")
