"""Where grid lines really stand, once joints have given: a piecewise linear map between control lines."""

from dataclasses import dataclass
from itertools import pairwise
from typing import overload

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Stretch:
    """Knots at `nominal` places stand at `real` ones, inches, both rising; joints between two knots change alike.

    Below the first knot and above the last all keep their distance from it. No knots at all: nothing moves. Raises
    ValueError where the knots are not as many on both sides or do not rise.
    """

    nominal_knots: tuple[float, ...] = ()
    real_knots: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        if len(self.nominal_knots) != len(self.real_knots):
            counts = f"{len(self.nominal_knots)} nominal and {len(self.real_knots)} real knots"
            raise ValueError(f"stretch: {counts} found, as many of both expected")
        for knots in (self.nominal_knots, self.real_knots):
            for low, high in pairwise(knots):
                if not low < high:
                    raise ValueError(f"stretch: knot at {high} in. after {low} in., rising ones expected")

    @property
    def is_identity(self) -> bool:
        """Whether nothing moves."""
        return self.nominal_knots == self.real_knots

    @overload
    def real(self, at: float) -> float: ...
    @overload
    def real(self, at: Floats) -> Floats: ...
    def real(self, at: float | Floats) -> float | Floats:
        """Where what is nominally at `at` really stands, inches; a number or an array of them; exact at knots."""
        return _mapped(at, self.nominal_knots, self.real_knots)

    @overload
    def nominal(self, at: float) -> float: ...
    @overload
    def nominal(self, at: Floats) -> Floats: ...
    def nominal(self, at: float | Floats) -> float | Floats:
        """What stands nominally where `at` really is, inches: `real` the other way round."""
        return _mapped(at, self.real_knots, self.nominal_knots)

    def moved(self, by: float) -> "Stretch":
        """The same map in a frame whose zero lies `by` inches lower: every knot goes up by that."""
        return Stretch(tuple(at + by for at in self.nominal_knots), tuple(at + by for at in self.real_knots))


def _mapped(at: float | Floats, source: tuple[float, ...], target: tuple[float, ...]) -> float | Floats:
    if source == target:
        return at
    before, after = np.minimum(at - source[0], 0.0), np.maximum(at - source[-1], 0.0)
    mapped = np.interp(at, source, target) + before + after
    return mapped if isinstance(at, np.ndarray) else float(mapped)


IDENTITY = Stretch()
"""Nothing moves."""
