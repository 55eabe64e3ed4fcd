"""How many flat bricks of each size, kind and colour some panels take: whole ones, and those that are cut up."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from app.brickwork.bond import KINDS
from app.brickwork.returns import corner_units, size_of
from app.order.rules import Rules
from app.order.saw_optimum import fewest
from app.order.saw_pieces import FlatPiece, flat_pieces
from app.order.saw_steps import nm, step_of, to_step
from app.order.saw_stock import Item, Stock, bricks_of
from app.order.work import PanelWork

Brick = tuple[str, str, int]
"""Size, kind, and colour counting in the blend."""


@dataclass(frozen=True, slots=True)
class BrickCounts:
    """Bricks set whole, bricks cut up, and the pieces they are cut into."""

    whole: Counter[Brick]
    cut_up: Counter[Brick]
    pieces: Counter[Brick]

    def bricks(self) -> list[Brick]:
        """Every brick there is: sizes by name, kinds in the order of `KINDS`, colours as in the blend."""
        return sorted({*self.whole, *self.cut_up}, key=lambda key: (key[0], KINDS.index(key[1]), key[2]))


def brick_counts(works: Sequence[PanelWork], rules: Rules) -> BrickCounts:
    """Flat bricks of the panels together; corner units are no flat bricks, but bricks behind them are.

    Pieces of one colour are cut from bricks of that colour, the fewest that give them all (as the saw list does for
    brick of one colour).
    """
    whole, pieces = Counter[Brick](), Counter[Brick]()
    cut_up, wanted = Counter[Brick](), defaultdict[tuple[str, str, int, int], Counter[Item]](Counter)
    step = step_of(rules.length_unit)
    for work in works:
        whole += _whole(work) + _whole_behind_corners(work)
        for piece, colour in coloured_pieces(work):
            pieces[piece.size, piece.kind, colour] += 1
            if piece.cut == "length":
                item = Item(to_step(piece.length, piece.whole[0], step), piece.has_factory_end)
                wanted[piece.size, piece.kind, nm(piece.whole[0]), colour][item] += 1
            else:
                cut_up[piece.size, piece.kind, colour] += 1
    kerf = nm(rules.order.kerf.inches)
    for (size, kind, length, colour), items in wanted.items():
        cut_up[size, kind, colour] += bricks_of(fewest(Stock(length, kerf), items).ways)
    return BrickCounts(whole, cut_up, pieces)


def coloured_pieces(work: PanelWork) -> Iterator[tuple[FlatPiece, int]]:
    """Every piece that is cut from a flat brick, with its colour."""
    layout, trims = work.layout, work.layout.trims
    is_flat = ~np.isin(trims.unit, corner_units(work.around))
    zone = layout.units.zone[trims.unit]
    of_face = [work.colours[trims.unit[is_flat & (zone == k)]] for k in range(len(layout.regions))]
    is_cut = [piece.is_trimmed for one in work.around for piece in one.pieces]
    behind = work.return_colours[np.array(is_cut, dtype=np.bool_)]
    colours = np.concatenate([*of_face, behind]).tolist()
    return zip(flat_pieces(layout, work.around), colours, strict=True)


def _whole(work: PanelWork) -> Counter[Brick]:
    """Whole units of the face, corner units left out."""
    layout, units = work.layout, work.layout.units
    is_flat = ~units.is_trimmed
    is_flat[corner_units(work.around)] = False
    found = Counter[Brick]()
    for zone, region in enumerate(layout.regions):
        chosen = is_flat & (units.zone == zone)
        pairs = np.column_stack([units.kind[chosen], work.colours[chosen]])
        kinds, counts = np.unique(pairs, axis=0, return_counts=True)
        for (kind, colour), count in zip(kinds.tolist(), counts.tolist(), strict=True):
            found[region.size.name, KINDS[kind], colour] += count
    return found


def _whole_behind_corners(work: PanelWork) -> Counter[Brick]:
    """Whole bricks of the return faces: stretchers of the corner unit's size."""
    pieces = [piece for one in work.around for piece in one.pieces]
    return Counter(
        (size_of(work.layout, piece.unit).name, "stretcher", colour)
        for piece, colour in zip(pieces, work.return_colours.tolist(), strict=True)
        if not piece.is_trimmed
    )
