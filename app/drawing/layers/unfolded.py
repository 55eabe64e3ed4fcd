"""The panel's edge and the rims of its openings where no return folds out: a fold is no cut edge."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.returns import returns
from app.drawing.marks import Lines, Mark
from app.drawing.scene import Scene
from app.drawing.styles import Style
from app.panel.rings import Rings, lines_less, opening_rings, rims

FRAME = "face"


def marks(scene: Scene) -> Iterator[Mark]:
    """As the outline, less the edges and sides at which a return folds out."""
    panel = scene.layout.panel
    folds = [((one.edge_at, one.bottom), (one.edge_at, one.top)) for one in returns(scene.layout)]
    drawn: list[tuple[Rings, Style]] = [(opening_rings(panel), "opening rim"), (rims(panel), "outline")]
    for rings, style in drawn:
        lines = lines_less(rings, folds)
        if lines:
            yield Lines(np.concatenate(lines), np.array([len(line) for line in lines]), style)
