"""What is short for the next casting day: worked cases, and laws over many yards."""

from collections import Counter
from dataclasses import dataclass, replace
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.order.packs import overage, with_overage
from app.order.short import castings_so_far, short_list
from app.order.values import Casting, Line, ShortList
from app.panel.delivery import Delivery

BRICK, SHEET, TAPE = "Thin brick modular, stretcher", "Liner sheet modular, running", "Tape for the liner"
LINES = (
    Line(BRICK, "stretcher", "modular", 0, 0, 0, "each"),
    Line(SHEET, "", "modular", 0, 0, 0, "sheet"),
    Line(TAPE, "", "", 0.0, 0.0, 0.0, "ft"),
)
TODAY = "2026-11-30"
LAWS = settings(max_examples=60, deadline=None, derandomize=True)


@dataclass(frozen=True)
class Need:
    """A panel and what it takes. Trims of so many panels together come from fewer bricks: see `together`."""

    casting: Casting
    bricks: int
    trims: int = 0
    tape: float = 0.0

    @property
    def mark(self) -> str:
        return self.casting.mark

    @property
    def is_placed(self) -> bool:
        return self.casting.is_placed


def need(mark: str, bricks: int, cast_on: str = "", is_placed: bool = False, trims: int = 0, tape: float = 0) -> Need:
    return Need(Casting("N", mark, cast_on, is_placed), bricks, trims, tape)


def together(yard: list[Need]) -> dict[str, float]:
    """Three trims come from a brick, whoever's they are."""
    bricks, trims = sum(one.bricks for one in yard), sum(one.trims for one in yard)
    sheets, tape = sum(one.bricks // 50 for one in yard), sum(one.tape for one in yard)
    return {BRICK: bricks + ceil(trims / 3), SHEET: sheets, TAPE: tape}


def placed(one: Need) -> Need:
    return replace(one, casting=replace(one.casting, is_placed=True))


def of(yard: list[Need], deliveries: list[Delivery], percent: float = 5) -> ShortList:
    castings = [one.casting for one in yard]
    nets = [together([yard[k] for k in row]) for row in castings_so_far(castings)]
    return short_list(castings, nets, LINES, deliveries, percent, TODAY)


def ordered(yard: list[Need], percent: float = 5) -> dict[str, float]:
    return {item: with_overage(net, percent) for item, net in together(yard).items()}


def test_a_worked_yard() -> None:
    """1,000 bricks came; N1 took 400, so 600 are there. N1 to N3 take 900 and 5 percent, 45: 545 are still needed for
    the next day. All four take 1,100 and 55: 755 are needed, 155 short, which is what the order has above 1,000."""
    yard = [need("N4", 200, "2026-12-02"), need("N1", 400, "2026-11-30", True)]
    yard += [need("N2", 300, "2026-12-01"), need("N3", 200, "2026-12-01")]
    found = of(yard, [Delivery("2026-11-20", BRICK, 600), Delivery("2026-11-28", BRICK, 400)])
    bricks = found.stock[0]
    assert (found.day, found.panels, found.unknown) == ("2026-12-01", ("N2", "N3"), ())
    assert (bricks.delivered, bricks.used, bricks.on_hand, bricks.unnoted) == (1000, 400, 600, 0)
    assert (bricks.needed, bricks.short) == (545, 0)
    assert [(day.day, day.needed, day.short) for day in bricks.days] == [
        ("2026-12-01", 545, 0),
        ("2026-12-02", 755, 155),
    ]


def test_panels_of_two_days_share_cut_bricks() -> None:
    """Two trims and one come from one brick, so nothing is short on the second day where it came for the first."""
    found = of([need("A", 0, "2026-12-01", trims=2), need("B", 0, "2026-12-02", trims=1)], [], 0)
    assert [day.needed for day in found.stock[0].days] == [1, 1]


def test_far_days_are_taken_together_toward_ordering_early() -> None:
    """Of 100 days the first eight stand for themselves, the others for the last day of their quarter: 23 days each."""
    yard = [need(str(day), 10, f"2026-{1 + day // 28:02}-{1 + day % 28:02}") for day in range(100)]
    needed = [day.needed for day in of(yard, [], 0).stock[0].days]
    assert needed == [10, 20, 30, 40, 50, 60, 70, 80, *(10 * upto for upto in (31, 54, 77, 100) for _ in range(23))]
    assert len(set(castings_so_far([one.casting for one in yard]))) == 13


def test_cutting_that_was_found_worse_for_fewer_panels_is_not_asked_for() -> None:
    castings = [Casting("N", "A", "2026-12-01", False), Casting("N", "B", "2026-12-02", False)]
    found = short_list(castings, [{}, {BRICK: 12}, {BRICK: 11}], LINES, [], 0, TODAY)
    assert [day.needed for day in found.stock[0].days] == [11, 11]


def test_panels_without_a_day_come_last() -> None:
    found = of([need("A", 100), need("B", 100, "2026-12-09")], [])
    assert (found.day, found.panels) == ("2026-12-09", ("B",))
    assert [day.day for day in found.stock[0].days] == ["2026-12-09", ""]


def test_a_past_day_that_is_not_placed_is_still_the_next() -> None:
    found = of([need("A", 100, "2020-01-01"), need("B", 100, "2026-12-09")], [])
    assert (found.day, found.panels) == ("2020-01-01", ("A",))


def test_with_all_placed_nothing_is_short() -> None:
    found = of([need("A", 100, "2026-12-01", True)], [Delivery("2026-11-20", BRICK, 90)])
    bricks = found.stock[0]
    assert (found.day, found.panels) == (None, ())
    assert (bricks.on_hand, bricks.unnoted, bricks.short, bricks.days) == (0, 10, 0, ())


def test_what_is_no_line_of_the_order_is_told() -> None:
    assert of([], [Delivery("2026-12-01", "Sealant", 3), Delivery("2026-12-02", "Sealant", 1)]).unknown == ("Sealant",)


def test_lengths_are_needed_by_the_whole_foot() -> None:
    """10.2 ft and 5 percent are 10.71, so 11 ft."""
    found = of([need("A", 0, "2026-12-01", tape=10.2)], [Delivery("2026-11-01", TAPE, 4)])
    assert (found.stock[2].needed, found.stock[2].short) == (11, 7)


DAYS = ("", "2026-12-01", "2026-12-02", "2026-12-05")
needs = st.lists(
    st.builds(
        need,
        st.sampled_from("ABCDEFGH"),
        st.integers(0, 900),
        st.sampled_from(DAYS),
        st.booleans(),
        st.integers(0, 5),
        st.integers(0, 9_999).map(lambda tenths: tenths / 10),
    ),
    max_size=8,
)
CAME = ("2026-11-01", "2026-11-30", "2026-12-01", "2026-12-05")
"""Two days that are past today, or today, and two that are not yet."""
percents = st.sampled_from([0.0, 3.0, 5.0, 7.5, 10.0])
deliveries = st.lists(
    st.builds(Delivery, st.sampled_from(CAME), st.sampled_from([BRICK, SHEET, "Sealant"]), st.integers(1, 3000)),
    max_size=6,
)


@LAWS
@given(needs, deliveries)
def test_what_came_is_used_or_on_hand(yard: list[Need], came: list[Delivery]) -> None:
    for stock in of(yard, came).stock:
        assert stock.delivered == sum(one.count for one in came if one.item == stock.item and one.day <= TODAY)
        assert stock.delivered + stock.unnoted == stock.used + stock.on_hand
        assert not (stock.unnoted and stock.on_hand)
        for day in stock.days:
            assert day.short == pytest.approx(max(0, day.needed - stock.on_hand))


@LAWS
@given(needs, deliveries, percents)
def test_later_days_need_and_are_short_of_no_less_and_all_need_the_order(
    yard: list[Need], came: list[Delivery], percent: float
) -> None:
    order = ordered(yard, percent)
    for stock in of(yard, came, percent).stock:
        for rows in ([day.needed for day in stock.days], [day.short for day in stock.days]):
            assert rows == sorted(rows)
        if stock.days:
            assert stock.days[-1].needed + stock.used == pytest.approx(order[stock.item])


@LAWS
@given(needs, percents)
def test_with_everything_ordered_delivered_nothing_is_short(yard: list[Need], percent: float) -> None:
    """Whatever is placed, and to the piece: with one less of anything something is."""
    order = ordered(yard, percent)
    full = [Delivery("2026-11-01", item, int(count)) for item, count in order.items() if count]
    for stock in of(yard, full, percent).stock:
        assert not any(day.short for day in stock.days)
    for less in full:
        fewer = [replace(one, count=one.count - (one is less)) for one in full]
        (stock,) = (one for one in of(yard, fewer, percent).stock if one.item == less.item)
        if stock.days and stock.used <= stock.delivered:
            assert stock.days[-1].short == 1


@LAWS
@given(needs, deliveries, st.integers(0, 2))
def test_a_delivery_of_what_is_short_ends_it(yard: list[Need], came: list[Delivery], item: int) -> None:
    """After what placed panels took unnoted is noted as well."""
    before = of(yard, came).stock[item]
    last = before.days[-1].short if before.days else 0
    extra = int(last + before.unnoted)
    after = of(yard, [*came, *([Delivery("2026-11-30", before.item, extra)] if extra else [])]).stock[item]
    assert all(day.short == 0 for day in after.days)


@LAWS
@given(needs, deliveries, st.randoms(use_true_random=False))
def test_the_order_of_deliveries_and_their_parts_do_not_matter(yard, came, random) -> None:  # type: ignore[no-untyped-def]
    parts = [replace(one, count=count) for one in came for count in (1, one.count - 1) if count]
    random.shuffle(parts)
    of_parts, whole = of(yard, parts), of(yard, came)
    assert replace(of_parts, expected=()) == replace(whole, expected=())
    assert _counted(of_parts) == _counted(whole)


def _counted(found: ShortList) -> Counter[tuple[str, str]]:
    counts = Counter[tuple[str, str]]()
    for one in found.expected:
        counts[one.day, one.item] += one.count
    return counts


def test_a_delivery_of_a_later_day_is_expected_and_not_on_hand() -> None:
    came = [Delivery("2026-11-30", BRICK, 40), Delivery("2026-12-01", BRICK, 60)]
    found = of([need("A", 100, "2026-12-02")], came, percent=0)
    assert (found.stock[0].delivered, found.stock[0].short, found.expected) == (40, 60, (came[1],))


@LAWS
@given(needs, deliveries)
def test_placing_a_panel_makes_nothing_shorter_where_its_brick_was_there(
    yard: list[Need], came: list[Delivery]
) -> None:
    before = of(yard, came)
    open_ones = [k for k, one in enumerate(yard) if not one.is_placed]
    for k in open_ones:
        after = of([placed(one) if n == k else one for n, one in enumerate(yard)], came)
        for old, new in zip(before.stock, after.stock, strict=True):
            if new.used <= new.delivered and new.days:
                assert new.days[-1].short == old.days[-1].short


@LAWS
@given(st.lists(st.integers(0, 500), min_size=1, max_size=5), st.sampled_from([0.0, 3.0, 5.0, 10.0]))
def test_the_overage_of_a_day_is_taken_once(nets: list[int], percent: float) -> None:
    found = of([need(str(k), net, "2026-12-01") for k, net in enumerate(nets)], [], percent)
    assert found.stock[0].needed == sum(nets) + overage(sum(nets), percent)
