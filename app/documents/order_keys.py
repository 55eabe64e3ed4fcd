"""The keys of a project file about buying: the order's rules, the blend of colours, what was delivered."""

from collections.abc import Iterator

from app.documents.kinds import Day, Number, Setting, Text, number_in_words, small
from app.documents.records import Key, Listed, Record, always
from app.panel.blend import Blend, Colour
from app.panel.delivery import Delivery
from app.panel.faults import Fault
from app.panel.project import Order
from app.panel.wording import quoted

LONGEST_ITEM = 120
MOST_COLOURS = 12
MOST_DELIVERIES = 2_000

_PIECES = Number("pieces", 1, 1_000_000, is_whole=True)
_ORDER = Order()

ORDER = Record(
    "an order",
    Order,
    (
        Key("overage_percent", Number("overage in percent", 0, 100), always(_ORDER.overage_percent)),
        Key("kerf", small("a kerf", 0, "0 or more"), always(_ORDER.kerf)),
        Key("per_carton", _PIECES, always(_ORDER.per_carton)),
        Key("cartons_per_pallet", Number("cartons", 1, 1_000_000, is_whole=True), always(_ORDER.cartons_per_pallet)),
        Key(
            "brick_density_lb_ft3",
            Number("a density in lb/ft3", more_than=0, most=1_000),
            always(_ORDER.brick_density_lb_ft3),
        ),
        Key("sheets_per_pack", Number("sheets", 1, 1_000_000, is_whole=True), always(_ORDER.sheets_per_pack)),
        Key("bead", small("a bead of adhesive", 1, "more than 0"), always(_ORDER.bead)),
        Key(
            "cartridge_fl_oz",
            Number("a cartridge in US fluid ounces", more_than=0, most=1_000),
            always(_ORDER.cartridge_fl_oz),
        ),
        Key(
            "nail_spacing",
            small("a spacing of nails", 25_400_000, "at least 1 in (25.4 mm)"),
            always(_ORDER.nail_spacing),
        ),
    ),
)

COLOUR = Record(
    "a colour",
    Colour,
    (
        Key("name", Text("a colour's name", LONGEST_ITEM)),
        Key("percent", Number("a share in percent", more_than=0, most=100)),
    ),
)


def _blend_faults(blend: Blend, _setting: Setting) -> tuple[Fault, ...]:
    return (*_equal_names(blend), *_wrong_sum(blend))


def _equal_names(blend: Blend) -> Iterator[Fault]:
    """Bricks are ordered by the colour's name, so that two of one name could not be told apart."""
    first: dict[str, int] = {}
    for place, colour in enumerate(blend.colours):
        before = first.setdefault(colour.name.strip().casefold(), place)
        if before != place:
            expected = f"a name of its own: colour {before + 1} has it too, capitals and spaces around it aside"
            yield Fault(f"colours[{place}].name", quoted(colour.name), expected)


def _wrong_sum(blend: Blend) -> Iterator[Fault]:
    whole = sum(colour.percent for colour in blend.colours)
    if blend.colours and abs(whole - 100) >= 1e-6:
        found = f"shares of {number_in_words(whole)} percent together"
        yield Fault("colours", found, "shares of 100 percent together")


_BLEND = Blend()
BLEND = Record(
    "a blend",
    Blend,
    (
        Key("colours", Listed("colours", COLOUR, MOST_COLOURS, "name"), always(())),
        Key("cluster", Number("bricks in a cluster", 1, 1_000, is_whole=True), always(_BLEND.cluster)),
    ),
    faults=_blend_faults,
)

DELIVERY = Record(
    "a delivery",
    Delivery,
    (
        Key("day", Day("a day")),
        Key("item", Text("an item of the order", LONGEST_ITEM)),
        Key("count", _PIECES),
    ),
)
