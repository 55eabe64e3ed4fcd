"""What is counted of one panel: its results, and the colours that its bricks get."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from app.brickwork.blend import colours_of, turns
from app.brickwork.clusters import Colours
from app.brickwork.layout import Layout
from app.brickwork.returns import Return, returns
from app.liner.edge_pieces import edge_pieces
from app.liner.offcut_values import CuttingPlan
from app.liner.seam_tape import seam_tape
from app.liner.values import SheetPlan
from app.liner.work_values import EdgePieces, TapedSeam
from app.panel.blend import Blend


@dataclass(frozen=True)
class FaceWork:
    """One panel's brick as it is counted and cut: its layout in the colours of a blend."""

    layout: Layout
    blend: Blend = Blend()  # noqa: RUF009 - Blend is frozen

    @cached_property
    def around(self) -> tuple[Return, ...]:
        """The returns of the face."""
        return returns(self.layout)

    @cached_property
    def colours(self) -> Colours:
        """The colour of every unit of the face, counting in the blend."""
        return colours_of(self.layout, self.blend)

    @cached_property
    def return_colours(self) -> Colours:
        """The colour of every brick behind a corner unit, return by return: always the one that lags most behind,
        of equal ones the one whose turn it is by the panel's mark."""
        count = sum(len(one.pieces) for one in self.around)
        shares = np.array([colour.percent for colour in self.blend.colours] or [100.0]) / 100
        given, colours = np.zeros(len(shares)), np.zeros(count, dtype=np.int8)
        first = np.argsort(turns(self.layout.panel.mark, len(shares)), kind="stable")
        for place in range(count):
            behind = np.round(shares * (place + 1) - given, 9)
            colours[place] = first[behind[first].argmax()]
            given[colours[place]] += 1
        return colours


@dataclass(frozen=True)
class PanelWork:
    """One panel as the order counts it; everything else about it is found when it is asked for."""

    face: FaceWork
    plan: SheetPlan
    cutting: CuttingPlan

    @property
    def layout(self) -> Layout:
        return self.face.layout

    @cached_property
    def edges(self) -> EdgePieces:
        """Where courses stop in the open."""
        return edge_pieces(self.layout)

    @cached_property
    def taped(self) -> tuple[TapedSeam, ...]:
        """Seams of the liner that butt, as the flange was cut away."""
        return seam_tape(self.layout, self.plan, self.cutting)
