"""Where pieces of the saw list go, in few words."""

from collections.abc import Sequence
from itertools import pairwise

from app.drawing.lettering import text_width_mm
from app.drawing.marks import SMALL
from app.order.saw_values import Seat


def places_in_words(seats: Sequence[Seat], room_mm: float = 0.0) -> str:
    """Panel and courses, how many pieces in brackets where more than one: `N1 course 4, 6 (2); N2 S1 course 0`.

    With `room_mm` only the first that have room as small lettering, and how many more places there are; "" for none.
    """
    words = [_first(seat) for seat in seats[:1]]
    words += [_next(before, seat) for before, seat in pairwise(seats)]
    for kept in range(len(words), 1, -1) if room_mm else ():
        said = "".join(words[:kept]) + _more(len(words) - kept)
        if text_width_mm(said, SMALL) <= room_mm:
            return said
    return "".join(words[:1]) + _more(len(words) - 1) if room_mm else "".join(words)


def _more(count: int) -> str:
    return f" and {count:,} more" if count > 0 else ""


def _first(seat: Seat) -> str:
    zone = f" {seat.zone}" if seat.zone else ""
    return f"{seat.panel}{zone} course {_course(seat)}"


def _next(before: Seat, seat: Seat) -> str:
    is_same = (before.panel, before.zone) == (seat.panel, seat.zone)
    return f", {_course(seat)}" if is_same else f"; {_first(seat)}"


def _course(seat: Seat) -> str:
    return f"{seat.course} ({seat.count})" if seat.count > 1 else f"{seat.course}"
