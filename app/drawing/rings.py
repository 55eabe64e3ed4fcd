"""Rings of corners as marks."""

from collections.abc import Sequence

import numpy as np

from app.drawing.marks import Areas, Floats
from app.drawing.styles import Style


def areas_of(rings: Sequence[Floats], style: Style) -> Areas:
    """All rings as one mark, holes included (even-odd); no rings for none."""
    points = np.concatenate(rings) if rings else np.zeros((0, 2))
    return Areas(points, np.array([len(ring) for ring in rings], dtype=np.int64), style)
