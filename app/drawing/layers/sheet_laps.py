"""Laps of liner sheets: the strips in which one lies over the flange of another, hatched, on the sheet on top."""

from collections.abc import Iterator

import numpy as np

from app.drawing.marks import Mark
from app.drawing.rings import areas_of
from app.drawing.scene import Scene

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """All laps as one mark; none where nobody worked them out."""
    if scene.work is not None and scene.work.laps:
        yield areas_of([np.asarray(ring) for lap in scene.work.laps for ring in lap.rings], "lap")
