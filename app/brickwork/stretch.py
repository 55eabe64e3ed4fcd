"""Where the lines of a grid really stand once joints have given: a piecewise linear map along one axis."""

from dataclasses import dataclass
from typing import overload

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Stretch:
    """Grid positions `nominal` stand at `real`, both rising, inches; lines between them share the difference evenly.

    Outside the first and last knot the grid is only moved. No knots leave everything where it is.
    """

    nominal_knots: tuple[float, ...] = ()
    real_knots: tuple[float, ...] = ()

    @property
    def is_identity(self) -> bool:
        return not self.nominal_knots

    @overload
    def real(self, at: float) -> float: ...
    @overload
    def real(self, at: Floats) -> Floats: ...
    def real(self, at: float | Floats) -> float | Floats:
        """Where grid positions really stand, inches."""
        return _mapped(at, self.nominal_knots, self.real_knots)

    @overload
    def nominal(self, at: float) -> float: ...
    @overload
    def nominal(self, at: Floats) -> Floats: ...
    def nominal(self, at: float | Floats) -> float | Floats:
        """The grid positions of what really stands there, inches."""
        return _mapped(at, self.real_knots, self.nominal_knots)

    def moved(self, by: float) -> "Stretch":
        """The same map in a frame whose positions are all larger by `by` inches."""
        return Stretch(tuple(k + by for k in self.nominal_knots), tuple(k + by for k in self.real_knots))


IDENTITY = Stretch()


def _mapped(at: float | Floats, given: tuple[float, ...], wanted: tuple[float, ...]) -> float | Floats:
    if not given:
        return at
    places = np.asarray(at, dtype=np.float64)
    inner = np.interp(places, given, wanted)
    below, above = places < given[0], places > given[-1]
    found = np.where(below, places - given[0] + wanted[0], np.where(above, places - given[-1] + wanted[-1], inner))
    return float(found) if np.ndim(at) == 0 else found
