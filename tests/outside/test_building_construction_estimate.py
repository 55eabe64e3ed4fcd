"""A facing-brick estimate with openings worked in print, from the areas of laid panels.

Source: *Building Construction* vol. 4 (technical-library textbook, c. 1900s), "Estimating the Brickwork": facing 125
ft x 8 ft 9 in at 7-1/2 bricks a sq ft, 8,203; openings 309.5 sq ft (9 windows of 32 ft total width x 6 ft 6; 2
casements of 7 ft 4 total x 8 ft; one 2 ft 6 x 5 ft 6; a door 3 ft 5 x 8 ft 6), 2,321; net 5,882; 5 % waste 294; total
6,176.
The book gives totals of widths only: here eight windows of 3 ft 6 and one of 4 ft. The wall is two panels of 62 ft 6
in.
"""

from shapes import rectangle

from app.brickwork.layout import lay_out
from app.order.packs import overage

PER_SQUARE_FOOT = 7.5
HALF = 62.5 * 12
HEIGHT = 105


def _hole(mark: str, x: float, y: float, width: float, height: float) -> dict[str, object]:
    return {"mark": mark, "rect": [x, y, width, height]}


def _panels() -> list[tuple[float, float]]:
    """Area of panel and of openings of both panels, sq ft, as laid."""
    east = [_hole(f"W{k}", 24 + 70 * k, 24, 42, 78) for k in range(8)]
    west = [
        _hole("W9", 24, 24, 48, 78),
        _hole("C1", 120, 6, 44, 96),
        _hole("C2", 220, 6, 44, 96),
        _hole("S1", 320, 30, 30, 66),
        _hole("D1", 420, 0, 41, 102),
    ]
    areas = [lay_out(rectangle(HALF, HEIGHT, openings=openings)).area for openings in (east, west)]
    return [(area.panel / 144, area.openings / 144) for area in areas]


def test_the_openings_measure_309_5_square_feet() -> None:
    assert round(sum(openings for _, openings in _panels()), 1) == 309.5


def test_bricks_gross_for_openings_net_and_with_waste() -> None:
    panels = _panels()
    gross = PER_SQUARE_FOOT * sum(panel for panel, _ in panels)
    out = PER_SQUARE_FOOT * sum(openings for _, openings in panels)
    assert (round(gross), round(out)) == (8203, 2321)
    net = round(gross - out)
    waste = round(0.05 * net)
    assert (net, waste, net + waste) == (5882, 294, 6176)


def test_the_order_takes_the_bricks_that_the_book_takes() -> None:
    """5 % of 5,882 is 294.1, in the book and in an order 294: 6,176 in all."""
    net = round(sum(PER_SQUARE_FOOT * (panel - openings) for panel, openings in _panels()))
    assert (net, overage(net, 5), net + overage(net, 5)) == (5882, 294, 6176)
