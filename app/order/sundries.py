"""Lines of what holds the liner, and of the wash: adhesive, fixings, tape, seam tape, wax wash."""

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from math import ceil, hypot, pi

from app.lengths import format_length
from app.order.measured import measured_line
from app.order.packs import overage, reason
from app.order.rules import Rules
from app.order.values import TOPICS, Line
from app.order.work import PanelWork
from app.panel.geometry import inches
from app.panel.tolerance import TOLERANCE
from app.panel.values import Fixing

CUBIC_INCHES_PER_FLUID_OUNCE = 231 / 128
"""A US gallon is 231 cubic inches and 128 fluid ounces, both exact."""

FIXINGS_NOTE = (
    "plastic or stainless first: steel near the face rusts through it; thin aluminium only where the engineer accepts "
    "it (common practice in liners, but ACI 303R-12 advises against aluminium in architectural concrete), never steel"
)
WASH_NOTE = (
    "hot wash of the face, openings taken out, soon after stripping and from the top down (common practice); try it on "
    "the mock-up, the brick maker's data govern; hot water and jets injure: see the cautions"
)


def sundry_lines(works: Sequence[PanelWork], rules: Rules) -> Iterator[Line]:
    """Adhesive, fixings and tape of the fixing lines, and tape of seams, a line each where there is any, then the wax
    wash."""
    held = {by: _lengths(works, by) for by in ("glue", "nails", "tape")}
    unsaid = sum(_lengths(works, None))
    makers: tuple[tuple[str, Callable[[list[float], Rules], Line]], ...] = (
        ("glue", _adhesive),
        ("nails", _nails),
        ("tape", _tape),
    )
    yield from (make(held[by], rules) for by, make in makers if held[by])
    if unsaid:
        yield _unsaid(unsaid, rules)
    yield from _seams(works, rules)
    yield _wash(works, rules)


def _lengths(works: Sequence[PanelWork], by: str | None) -> list[float]:
    """Lengths of the fixing lines held in one way, inches."""
    return [length_of(fixing) for work in works for fixing in work.layout.panel.fixings if fixing.by == by]


def length_of(fixing: Fixing) -> float:
    """Length of a fixing line, inches."""
    return sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(inches(fixing.line)))


def _adhesive(lengths: list[float], rules: Rules) -> Line:
    """Cartridges for a round bead along the lines; one that is begun is counted."""
    order, total = rules.order, sum(lengths)
    section = pi / 4 * order.bead.inches**2
    cartridge = order.cartridge_fl_oz * CUBIC_INCHES_PER_FLUID_OUNCE
    needed = total * section / cartridge
    bead = format_length(order.bead, "mm" if rules.is_metric else "in", 64)
    area, holds, volume = (_small(value, rules) for value in ((section, 2), (cartridge, 3), (total * section, 3)))
    note = (
        f"{_run(total, rules)} of glue line with a round bead of {bead} ({area}) = {volume}; a cartridge of "
        f"{order.cartridge_fl_oz:g} fl oz holds {holds}: {needed:.2f} cartridges"
    )
    return _counted("Adhesive cartridge", ceil(needed - 1e-9), "cartridge", note, rules)


def _nails(lengths: list[float], rules: Rules) -> Line:
    """Fixings at the spacing or closer, one at both ends of each line."""
    spacing = rules.order.nail_spacing
    net = sum(ceil(length / spacing.inches - TOLERANCE) + 1 for length in lengths)
    words = format_length(spacing, "mm" if rules.is_metric else "in")
    where = f"{len(lengths)} line" if len(lengths) == 1 else f"{len(lengths)} lines"
    note = f"{_run(sum(lengths), rules)} in {where}, {words} apart or closer, one at each end; {FIXINGS_NOTE}"
    return _counted("Fixings, plastic or stainless", net, "each", note, rules)


def _tape(lengths: list[float], rules: Rules) -> Line:
    return measured_line("Tape for the liner", sum(lengths), "along the fixing lines held by tape", rules, TOPICS[3])


def _seams(works: Sequence[PanelWork], rules: Rules) -> Iterator[Line]:
    """Tape where sheets butt, net from the plans; no line where all lap."""
    seams = [seam for work in works for seam in work.taped]
    if seams:
        many = f"{len(seams)} seams" if len(seams) > 1 else "one seam"
        note = f"on {many} where a sheet is cut from inside another, so that no flange is left under the next one"
        yield measured_line("Seam tape", sum(seam.length for seam in seams), note, rules, TOPICS[3])


def _unsaid(total: float, rules: Rules) -> Line:
    length, unit = rules.length(total)
    note = "the panel does not say what holds these: glue, tape or nails; nothing is ordered for them"
    return Line("Fixing lines without a means", "", "", length, 0, length, unit, note=note, topic=TOPICS[4])


def _wash(works: Sequence[PanelWork], rules: Rules) -> Line:
    area, unit = rules.area(sum(work.layout.area.panel - work.layout.area.openings for work in works))
    return Line("Wax wash, face to wash", "", "", area, 0, area, unit, note=WASH_NOTE, topic=TOPICS[3])


def _counted(item: str, net: int, unit: str, note: str, rules: Rules) -> Line:
    percent = rules.order.overage_percent
    extra = overage(net, percent)
    words = reason(net, percent)
    return Line(item, "", "", net, extra, net + extra, unit, note=note, reason=words, topic=TOPICS[3])


def _small(value: tuple[float, int], rules: Rules) -> str:
    """Square (2) or cubic (3) inches in words: metric as mm2 or ml."""
    inches, power = value
    if not rules.is_metric:
        return f"{inches:.3f} sq in." if power == 2 else f"{inches:,.1f} cu in."
    return f"{inches * 25.4**2:.1f} mm2" if power == 2 else f"{inches * 2.54**3:,.0f} ml"


def _run(total: float, rules: Rules) -> str:
    length, unit = rules.length(total)
    return f"{length:,.1f} {unit}"
