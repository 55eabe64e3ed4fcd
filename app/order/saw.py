"""The saw list: pieces to cut, grouped; and the fewest bricks that give them."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from app.brickwork.layout import Layout
from app.brickwork.returns import Return, returns
from app.lengths import format_length
from app.order.saw_corners import corner_cuts
from app.order.saw_optimum import Yield, fewest
from app.order.saw_pieces import FlatPiece, flat_pieces
from app.order.saw_steps import inches, nm, outline_to_step, step_of, to_step
from app.order.saw_stock import Item, Stock, Way
from app.order.saw_values import Cut, Pattern, Point, SawList, SawPiece, Seat
from app.panel.faults import Fault, Refused
from app.panel.project import Order


@dataclass(frozen=True, slots=True, order=True)
class _Key:
    """Pieces that are equal here are cut alike; lengths in nm."""

    size: str
    kind: str
    whole: tuple[int, int]
    cut: str
    length: int
    height: int
    has_factory_end: bool
    outline: tuple[Point, ...]


_Stock = tuple[str, str, tuple[int, int]]
Places = Counter[tuple[str, str, int]]


def saw_list(layouts: Sequence[Layout], order: Order, length_unit: str = "in") -> SawList:
    """Everything to cut for these panels together, by the order's kerf; measures to 1/16 in., or to 1 mm where metric.

    Pieces cut to length share bricks, with at most two factory ends a brick; a rip, a notch and a skew cut take a
    brick each; a corner unit is cut from a corner unit. No panels and no cuts give an empty list. Raises Refused for a
    kerf that a brick to cut is no longer than.
    """
    around = [returns(layout) for layout in layouts]
    groups = _grouped(layouts, around, step_of(length_unit))
    rows = {cut: tuple(_rows(groups, cut)) for cut in ("length", "height", "notch", "skew")}
    yields = _yields(groups, order, length_unit)
    patterns = tuple(_patterns(yields, nm(order.kerf.inches)))
    bricks_by = Counter[tuple[str, str]]()
    for pattern in patterns:
        bricks_by[pattern.size, pattern.kind] += pattern.times
    for piece in (*rows["height"], *rows["notch"], *rows["skew"]):
        bricks_by[piece.size, piece.kind] += piece.count
    single = sum(piece.count for cut in ("height", "notch", "skew") for piece in rows[cut])
    return SawList(
        kerf=order.kerf.inches,
        bricks=bricks_by.total(),
        bound=sum(found.bound for found in yields.values()) + single,
        first_fit=sum(found.first_fit for found in yields.values()) + single,
        bricks_by=dict(sorted(bricks_by.items())),
        patterns=patterns,
        pieces=rows["length"],
        rips=rows["height"],
        notches=rows["notch"],
        skews=rows["skew"],
        corners=corner_cuts(layouts, around, step_of(length_unit)),
    )


def _grouped(layouts: Sequence[Layout], around: Sequence[tuple[Return, ...]], step: int) -> Mapping[_Key, Places]:
    """Where the pieces of each group go, panels in their order and courses as they come."""
    groups: defaultdict[_Key, Places] = defaultdict(Counter)
    for layout, found in zip(layouts, around, strict=True):
        for piece in flat_pieces(layout, found):
            groups[_key(piece, step)][layout.panel.mark, piece.zone, piece.course] += 1
    return groups


def _key(piece: FlatPiece, step: int) -> _Key:
    length, height = piece.whole
    return _Key(
        size=piece.size,
        kind=piece.kind,
        whole=(nm(length), nm(height)),
        cut=piece.cut,
        length=to_step(piece.length, length, step),
        height=to_step(piece.height, height, step),
        has_factory_end=piece.has_factory_end,
        outline=outline_to_step(piece.outline, piece.whole, step),
    )


def _rows(groups: Mapping[_Key, Places], cut: str) -> Iterator[SawPiece]:
    """Groups of one cut class by size and kind, the longest first."""
    chosen = sorted(key for key in groups if key.cut == cut)
    for key in sorted(chosen, key=lambda key: (key.size, key.kind, -key.length, -key.height)):
        places = groups[key]
        yield SawPiece(
            size=key.size,
            kind=key.kind,
            cut=cut,
            length=inches(key.length),
            height=inches(key.height),
            count=places.total(),
            has_factory_end=key.has_factory_end,
            whole=(inches(key.whole[0]), inches(key.whole[1])),
            outline=key.outline or _box(inches(key.length), inches(key.height)),
            seats=tuple(Seat(*place, count) for place, count in places.items()),
        )


def _box(length: float, height: float) -> tuple[Point, ...]:
    return (0.0, 0.0), (length, 0.0), (length, height), (0.0, height)


def _yields(groups: Mapping[_Key, Places], order: Order, length_unit: str) -> Mapping[_Stock, Yield]:
    """The fewest bricks of each sort for the pieces that are cut to length, and how they are cut up."""
    wanted: defaultdict[_Stock, Counter[Item]] = defaultdict(Counter)
    for key, places in groups.items():
        if key.cut == "length":
            wanted[key.size, key.kind, key.whole][Item(key.length, key.has_factory_end)] += places.total()
    kerf = nm(order.kerf.inches)
    for size, kind, whole in sorted(wanted):
        if kerf >= whole[0]:
            unit = "mm" if length_unit not in ("in", "ft") else "in"
            found, most = format_length(order.kerf, unit), format_length(inches(whole[0]), unit)
            raise Refused([Fault("order.kerf", found, f"less than {most}, the length of a {size} {kind}")])
    return {stock: fewest(Stock(stock[2][0], kerf), wanted[stock]) for stock in sorted(wanted)}


def _patterns(yields: Mapping[_Stock, Yield], kerf: int) -> Iterator[Pattern]:
    for (size, kind, whole), found in yields.items():
        stock = Stock(whole[0], kerf)
        for times, way in sorted(found.ways, key=lambda row: (-row[0], [-item.nm for item in row[1]])):
            pieces = tuple(Cut(inches(item.nm), item.has_factory_end) for item in _along(way))
            left_over = inches(stock.left_over(way))
            yield Pattern(times, size, kind, (inches(whole[0]), inches(whole[1])), pieces, left_over)


def _along(way: Way) -> Way:
    """From the brick's left end: a piece with a factory end first, a second one last, the others between."""
    ends = [item for item in way if item.has_factory_end]
    return (*ends[:1], *(item for item in way if not item.has_factory_end), *ends[1:])
