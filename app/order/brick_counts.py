"""How many flat bricks of each size, kind and colour some panels take: whole ones, and those that are cut up."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from app.brickwork.bond import KINDS
from app.brickwork.returns import corner_units, size_of
from app.order.rules import Rules
from app.order.saw_values import Brick, SawList
from app.order.work import FaceWork


@dataclass(frozen=True, slots=True)
class BrickCount:
    """Bricks of one size, kind and colour: set whole, of these `rubbed` with a corner rubbed off, cut up, and the
    pieces that those are cut into."""

    size: str
    kind: str
    colour: str
    whole: int
    cut_up: int
    pieces: int
    rubbed: int = 0

    @property
    def bricks(self) -> int:
        """Whole or not, as they are bought."""
        return self.whole + self.cut_up


def brick_counts(faces: Sequence[FaceWork], saw: SawList, rules: Rules) -> tuple[BrickCount, ...]:
    """Flat bricks of the panels together, `saw` being their saw list: sizes by name, kinds in the order of `KINDS`,
    colours as in the blend.

    Corner units are no flat bricks, but bricks behind them are.
    """
    whole, pieces, rubbed = Counter[Brick](), Counter[Brick](), Counter[Brick]()
    for face in faces:
        whole += _whole(face, rules) + _whole_behind_corners(face, rules)
    for piece in saw.rubs:
        rubbed[piece.size, piece.kind, piece.colour] += piece.count
    for piece in saw.groups:
        pieces[piece.size, piece.kind, piece.colour] += piece.count
    whole += rubbed
    colours = [colour.name for colour in rules.blend.colours] or [""]
    bricks = sorted(
        {*whole, *saw.bricks_by}, key=lambda brick: (brick[0], KINDS.index(brick[1]), colours.index(brick[2]))
    )
    return tuple(
        BrickCount(*brick, whole[brick], saw.bricks_by.get(brick, 0), pieces[brick], rubbed[brick]) for brick in bricks
    )


def _whole(face: FaceWork, rules: Rules) -> Counter[Brick]:
    """Whole units of the face, corner units left out."""
    layout, units = face.layout, face.layout.units
    is_flat = ~units.is_trimmed
    is_flat[corner_units(face.around)] = False
    found = Counter[Brick]()
    for zone, region in enumerate(layout.regions):
        chosen = is_flat & (units.zone == zone)
        pairs = np.column_stack([units.kind[chosen], face.colours[chosen]])
        kinds, counts = np.unique(pairs, axis=0, return_counts=True)
        for (kind, colour), count in zip(kinds.tolist(), counts.tolist(), strict=True):
            found[region.size.name, KINDS[kind], rules.colour_name(colour)] += count
    return found


def _whole_behind_corners(face: FaceWork, rules: Rules) -> Counter[Brick]:
    """Whole bricks of the return faces: stretchers of the corner unit's size."""
    pieces = [piece for one in face.around for piece in one.pieces]
    return Counter(
        (size_of(face.layout, piece.unit).name, "stretcher", rules.colour_name(colour))
        for piece, colour in zip(pieces, face.return_colours.tolist(), strict=True)
        if not piece.is_trimmed
    )
