"""What is short for the next casting day: worked cases, and laws over many yards."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from app.order.packs import overage
from app.order.short import short_list
from app.order.values import Line, Need, ShortList
from app.panel.delivery import Delivery

BRICK, SHEET, TAPE = "Thin brick modular, stretcher", "Liner sheet modular, running", "Tape for the liner"
LINES = (
    Line(BRICK, "stretcher", "modular", 0, 0, 0, "each"),
    Line(SHEET, "", "modular", 0, 0, 0, "sheet"),
    Line(TAPE, "", "", 0.0, 0.0, 0.0, "ft"),
)
LAWS = settings(max_examples=60, deadline=None, derandomize=True)


def need(mark: str, bricks: int, cast_on: str = "", is_placed: bool = False) -> Need:
    return Need("N", mark, cast_on, is_placed, {BRICK: bricks, SHEET: bricks // 50})


def of(needs: list[Need], deliveries: list[Delivery], percent: float = 5) -> ShortList:
    return short_list(needs, LINES, deliveries, percent)


def test_a_worked_yard() -> None:
    """1,000 bricks came; N1 took 400, so 600 are there. N2 and N3 are cast next: 500 and 5 percent, 25, are less; with
    N4's 200 and 10 a day later 735 are needed and 135 short."""
    yard = [need("N4", 200, "2026-12-02"), need("N1", 400, "2026-11-30", True)]
    yard += [need("N2", 300, "2026-12-01"), need("N3", 200, "2026-12-01")]
    found = of(yard, [Delivery("2026-11-20", BRICK, 600), Delivery("2026-11-28", BRICK, 400)])
    bricks = found.stock[0]
    assert (found.day, found.panels, found.unknown) == ("2026-12-01", ("N2", "N3"), ())
    assert (bricks.delivered, bricks.used, bricks.on_hand, bricks.unnoted) == (1000, 400, 600, 0)
    assert (bricks.needed, bricks.short) == (525, 0)
    assert [(day.day, day.needed, day.short) for day in bricks.days] == [
        ("2026-12-01", 525, 0),
        ("2026-12-02", 735, 135),
    ]


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
    found = of([Need("N", "A", "2026-12-01", False, {TAPE: 10.2})], [Delivery("2026-11-01", TAPE, 4)])
    assert (found.stock[2].needed, found.stock[2].short) == (11, 7)


DAYS = ("", "2026-12-01", "2026-12-02", "2026-12-05")
needs = st.lists(
    st.builds(need, st.sampled_from("ABCDEFGH"), st.integers(0, 900), st.sampled_from(DAYS), st.booleans()), max_size=8
)
deliveries = st.lists(
    st.builds(Delivery, st.sampled_from(DAYS[1:]), st.sampled_from([BRICK, SHEET, "Sealant"]), st.integers(1, 3000)),
    max_size=6,
)


@LAWS
@given(needs, deliveries)
def test_what_came_is_used_or_on_hand(yard: list[Need], came: list[Delivery]) -> None:
    for stock in of(yard, came).stock:
        assert stock.delivered == sum(one.count for one in came if one.item == stock.item)
        assert stock.delivered + stock.unnoted == stock.used + stock.on_hand
        assert not (stock.unnoted and stock.on_hand)
        for day in stock.days:
            assert day.short == max(0, day.needed - stock.on_hand)


@LAWS
@given(needs, deliveries)
def test_later_days_need_no_less(yard: list[Need], came: list[Delivery]) -> None:
    for stock in of(yard, came).stock:
        needed = [day.needed for day in stock.days]
        assert needed == sorted(needed)
        total = sum(one.net.get(stock.item, 0) for one in yard if not one.is_placed)
        assert not needed or total <= needed[-1] <= total + total * 0.05 + len(needed)


@LAWS
@given(needs, deliveries, st.integers(0, 2))
def test_a_delivery_of_what_is_short_ends_it(yard: list[Need], came: list[Delivery], item: int) -> None:
    """After what placed panels took unnoted is noted as well."""
    before = of(yard, came).stock[item]
    last = before.days[-1].short if before.days else 0
    extra = int(last + before.unnoted)
    after = of(yard, [*came, *([Delivery("2026-12-03", before.item, extra)] if extra else [])]).stock[item]
    assert all(day.short == 0 for day in after.days)


@LAWS
@given(needs, deliveries, st.randoms(use_true_random=False))
def test_the_order_of_deliveries_and_their_parts_do_not_matter(yard, came, random) -> None:  # type: ignore[no-untyped-def]
    parts = [replace(one, count=count) for one in came for count in (1, one.count - 1) if count]
    random.shuffle(parts)
    assert of(yard, parts) == of(yard, came)


@LAWS
@given(needs, deliveries)
def test_placing_a_panel_makes_nothing_shorter_where_its_brick_was_there(
    yard: list[Need], came: list[Delivery]
) -> None:
    before = of(yard, came)
    open_ones = [k for k, one in enumerate(yard) if not one.is_placed]
    for k in open_ones:
        after = of([replace(one, is_placed=True) if n == k else one for n, one in enumerate(yard)], came)
        for old, new in zip(before.stock, after.stock, strict=True):
            if old.on_hand >= yard[k].net.get(old.item, 0) and new.days:
                assert new.days[-1].short <= old.days[-1].short


@LAWS
@given(st.lists(st.integers(0, 500), min_size=1, max_size=5), st.sampled_from([0.0, 3.0, 5.0, 10.0]))
def test_the_overage_of_a_day_is_taken_once(nets: list[int], percent: float) -> None:
    found = of([need(str(k), net, "2026-12-01") for k, net in enumerate(nets)], [], percent)
    assert found.stock[0].needed == sum(nets) + overage(sum(nets), percent)
