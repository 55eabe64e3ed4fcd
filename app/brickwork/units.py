"""Columns of units and trims: what a layout is made of."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.brickwork.lattice import Floats, Ints
from app.brickwork.pieces import Pieces


@dataclass(frozen=True, slots=True)
class Units:
    """Pieces of brick side by side: whole units first, then trimmed ones in the order of `Layout.trims`.

    `x, y, width, height` bound the piece in the face frame, inches; `kind` counts in `KINDS`, `zone` in
    `Layout.regions`; `cell`, `i`, `j` say which unit of the region's lattice it is; `course` counts from the origin.
    """

    x: Floats
    y: Floats
    width: Floats
    height: Floats
    kind: NDArray[np.int8]
    zone: NDArray[np.int16]
    cell: NDArray[np.int16]
    i: NDArray[np.int32]
    j: NDArray[np.int32]
    course: NDArray[np.int32]
    is_trimmed: NDArray[np.bool_]

    def __len__(self) -> int:
        return len(self.x)


@dataclass(frozen=True, slots=True)
class Trims:
    """Trimmed pieces: which unit, cut class (counts in `CUTS`), length and height along the unit's axes, outline."""

    unit: Ints
    cut: NDArray[np.int8]
    length: Floats
    height: Floats
    is_small: NDArray[np.bool_]
    pieces: Pieces

    def __len__(self) -> int:
        return len(self.unit)
