"""The saw list: pieces to cut, grouped; and the fewest bricks that give them."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from app.lengths import format_length
from app.order.rules import Rules
from app.order.saw_corners import corner_cuts
from app.order.saw_optimum import Yield, fewest
from app.order.saw_pieces import FlatPiece, flat_pieces
from app.order.saw_rubbed import is_rubbed
from app.order.saw_seats import seats_of
from app.order.saw_steps import inches, nm, outline_to_step, step_of, to_step
from app.order.saw_stock import Item, Stock, Way, bricks_of
from app.order.saw_values import Brick, Cut, Pattern, Point, SawList, SawPiece
from app.order.work import FaceWork
from app.panel.faults import Fault, Refused


@dataclass(frozen=True, slots=True, order=True)
class _Key:
    """Pieces that are equal here are cut alike; lengths in nm."""

    size: str
    kind: str
    colour: int
    whole: tuple[int, int]
    cut: str
    length: int
    height: int
    has_factory_end: bool
    outline: tuple[Point, ...]


_Stock = tuple[str, str, int, tuple[int, int]]
Places = Counter[tuple[str, str, int]]


def saw_list(faces: Sequence[FaceWork], rules: Rules) -> SawList:
    """Everything to cut for these panels together, by the order's kerf; measures to 1/16 in., or to 1 mm where metric.

    A piece comes from a brick of its own size, kind and colour.
    Pieces cut to length share bricks, with at most two factory ends a brick; a rip, a notch and a skew cut take a
    brick each; a corner unit is cut from a corner unit. A notch or skew cut smaller than the kerf is no cut: its brick
    is rubbed off by hand. No panels and no cuts give an empty list. Raises Refused for a
    kerf that a brick to cut is no longer than.
    """
    groups = _grouped(faces, step_of(rules.length_unit), rules.order.kerf.inches)
    rows = {cut: tuple(_rows(groups, cut, rules)) for cut in ("length", "height", "notch", "skew", "rub")}
    yields = _yields(groups, rules)
    patterns = tuple(_patterns(yields, rules))
    single = sum(piece.count for cut in ("height", "notch", "skew") for piece in rows[cut])
    bricks_by = _bricks_by(groups, yields, rules)
    return SawList(
        kerf=rules.order.kerf.inches,
        bricks=sum(bricks_by.values()),
        bound=sum(found.bound for found in yields.values()) + single,
        first_fit=sum(found.first_fit for found in yields.values()) + single,
        bricks_by=bricks_by,
        patterns=patterns,
        pieces=rows["length"],
        rips=rows["height"],
        notches=rows["notch"],
        skews=rows["skew"],
        rubs=rows["rub"],
        corners=corner_cuts(faces, rules),
    )


def _bricks_by(groups: Mapping[_Key, Places], yields: Mapping[_Stock, Yield], rules: Rules) -> Mapping[Brick, int]:
    """Bricks by size, kind and colour as in the blend: those cut across, and one for each other piece that is cut."""
    bricks = Counter[tuple[str, str, int]]()
    for (size, kind, colour, _), found in yields.items():
        bricks[size, kind, colour] += bricks_of(found.ways)
    for key, places in groups.items():
        if key.cut not in ("length", "rub"):
            bricks[key.size, key.kind, key.colour] += places.total()
    named = Counter[Brick]()
    for (size, kind, k), count in sorted(bricks.items()):
        named[size, kind, rules.colour_name(k)] += count
    return named


def _grouped(faces: Sequence[FaceWork], step: int, kerf: float) -> Mapping[_Key, Places]:
    """Where the pieces of each group go, panels in their order and courses as they come."""
    groups: defaultdict[_Key, Places] = defaultdict(Counter)
    for face in faces:
        for piece in flat_pieces(face):
            groups[_key(piece, step, kerf)][face.layout.panel.mark, piece.zone, piece.course] += 1
    return groups


def _key(piece: FlatPiece, step: int, kerf: float) -> _Key:
    """How a piece is cut; of one that is rubbed only from what."""
    length, height = piece.whole
    outline = outline_to_step(piece.outline, piece.whole, step)
    if outline and is_rubbed(outline, piece.whole, kerf):
        whole = nm(length), nm(height)
        return _Key(piece.size, piece.kind, piece.colour, whole, "rub", *whole, has_factory_end=False, outline=())
    return _Key(
        size=piece.size,
        kind=piece.kind,
        colour=piece.colour,
        whole=(nm(length), nm(height)),
        cut=piece.cut,
        length=to_step(piece.length, length, step),
        height=to_step(piece.height, height, step),
        has_factory_end=piece.has_factory_end,
        outline=outline,
    )


def _rows(groups: Mapping[_Key, Places], cut: str, rules: Rules) -> Iterator[SawPiece]:
    """Groups of one cut class by size, kind and colour, the longest first."""
    chosen = sorted(key for key in groups if key.cut == cut)
    for key in sorted(chosen, key=lambda key: (key.size, key.kind, key.colour, -key.length, -key.height)):
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
            seats=seats_of(places),
            colour=rules.colour_name(key.colour),
        )


def _box(length: float, height: float) -> tuple[Point, ...]:
    return (0.0, 0.0), (length, 0.0), (length, height), (0.0, height)


def _yields(groups: Mapping[_Key, Places], rules: Rules) -> Mapping[_Stock, Yield]:
    """The fewest bricks of each sort for the pieces that are cut to length, and how they are cut up."""
    wanted: defaultdict[_Stock, Counter[Item]] = defaultdict(Counter)
    for key, places in groups.items():
        if key.cut == "length":
            wanted[key.size, key.kind, key.colour, key.whole][Item(key.length, key.has_factory_end)] += places.total()
    kerf = nm(rules.order.kerf.inches)
    for size, kind, _, whole in sorted(wanted):
        if kerf >= whole[0]:
            unit = "mm" if rules.is_metric else "in"
            found, most = format_length(rules.order.kerf, unit), format_length(inches(whole[0]), unit)
            raise Refused([Fault("order.kerf", found, f"less than {most}, the length of a {size} {kind}")])
    return {stock: fewest(Stock(stock[-1][0], kerf), wanted[stock]) for stock in sorted(wanted)}


def _patterns(yields: Mapping[_Stock, Yield], rules: Rules) -> Iterator[Pattern]:
    for (size, kind, colour, whole), found in yields.items():
        stock, name = Stock(whole[0], nm(rules.order.kerf.inches)), rules.colour_name(colour)
        for times, way in sorted(found.ways, key=lambda row: (-row[0], [-item.nm for item in row[1]])):
            pieces = tuple(Cut(inches(item.nm), item.has_factory_end) for item in _along(way))
            left_over = inches(stock.left_over(way))
            yield Pattern(times, size, kind, (inches(whole[0]), inches(whole[1])), pieces, left_over, name)


def _along(way: Way) -> Way:
    """From the brick's left end: a piece with a factory end first, a second one last, the others between."""
    ends = [item for item in way if item.has_factory_end]
    return (*ends[:1], *(item for item in way if not item.has_factory_end), *ends[1:])
