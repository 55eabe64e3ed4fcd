"""Growth at one checkpoint over the day's temperatures, and between which it stays in the band."""

from collections.abc import Iterator

from app.drawing.drawing import Drawing
from app.drawing.lettering import text_width_mm
from app.drawing.marks import Circle, Layer, Mark, Text, box, segments
from app.drawing.plot import LETTERS, LINE, PLOT, Frame, band_ground, boxed, side_figures, signed
from app.drawing.scales import Margins
from app.drawing.styles import Style
from app.drawing.views.growth import HIGH, SIDE, Warmth
from app.liner.drift_words import Units, point_window_words
from app.liner.values import Checkpoint

STEPS = (1, 2, 5, 10, 20, 50)
"""Degrees from one figure below to the next: the first that leaves room."""

AROUND = Margins(left=SIDE, right=6.0, bottom=24.0, top=LINE + 3.0)


def worst_checkpoint(points: tuple[Checkpoint, ...]) -> Checkpoint | None:
    """The checkpoint whose growth per degree is the largest, the first of equals; None for none."""
    return max(points, key=lambda point: point.grows_per_degree, default=None)


def growth_over_day(point: Checkpoint, warmth: Warmth, *, width: float = 140.0, unit: str = "in") -> Drawing:
    """Growth at one checkpoint against bed temperature: the window in which it is right shaded, the day's range below.

    The drawing is `width` mm wide.
    """
    frame = _frame(point, warmth, width - AROUND.left - AROUND.right)
    layers = (
        Layer("right-while", tuple(_window(frame, point, warmth))),
        Layer("limits", (*band_ground(frame, point.band), *side_figures(frame, point.band, unit))),
        Layer("degrees", tuple(_degrees(frame, warmth))),
        Layer("curves", tuple(_curve(frame, point, warmth, unit))),
    )
    return Drawing(f"Growth at {point.mark}", "growth over bed temperature", frame.width, HIGH, AROUND, PLOT, layers)


def _growth(point: Checkpoint, temperature: float) -> float:
    return point.grows_per_degree * (temperature - point.reference_temperature)


def _frame(point: Checkpoint, warmth: Warmth, wide: float) -> Frame:
    least, most = min(warmth.least, warmth.at), max(warmth.most, warmth.at)
    ends = _growth(point, least), _growth(point, most)
    beyond = 0.16 * (max(*ends, point.band) - min(*ends, -point.band))
    low = min(min(ends) - beyond / 4, -point.band - beyond)
    return Frame(wide, HIGH, least, most, low, max(max(ends) + beyond / 4, point.band + beyond))


def _window(frame: Frame, point: Checkpoint, warmth: Warmth) -> Iterator[Mark]:
    """The temperatures at which the checkpoint is right, as far as they are shown."""
    low, high = point.window or (frame.low_x, frame.high_x)
    left, right = (frame.x(min(max(end, frame.low_x), frame.high_x)) for end in (low, high))
    if right <= left:
        return
    yield box(left, 0.0, right - left, frame.height, "envelope")
    ends = [end for end in (low, high) if frame.low_x < end < frame.high_x]
    yield segments([(frame.x(end), 0.0, frame.x(end), frame.height) for end in ends], "rule")
    words = f"right {point_window_words(point.window, Units(temperature=warmth.unit))}"
    half = text_width_mm(words, LETTERS) / 2
    middle = min(max((left + right) / 2, half), frame.width - half)
    yield Text(middle, frame.height + 1.0 + LINE / 2, words, "text strong", LETTERS)


def _degrees(frame: Frame, warmth: Warmth) -> Iterator[Mark]:
    """Figures below, and the day's range as a bar with its words."""
    each = frame.width / (frame.high_x - frame.low_x)
    step = next((step for step in STEPS if step * each >= 12.0), STEPS[-1])
    first = int(-(-frame.low_x // step)) * step
    shown = [at for at in range(first, int(frame.high_x) + 1, step)]
    yield segments([(frame.x(at), 0.0, frame.x(at), -1.2) for at in shown], "rule")
    for at in shown:
        yield Text(frame.x(at), -1.6 - LINE / 2, f"{at}", "text quiet", LETTERS)
    low, high = frame.x(warmth.day_low), frame.x(warmth.day_high)
    y = -LINE - 5.0
    yield segments([(low, y, high, y), (low, y - 1.2, low, y + 1.2), (high, y - 1.2, high, y + 1.2)], "tick")
    words = f"the day: {warmth.day_low:g} to {warmth.said(warmth.day_high)}"
    half = text_width_mm(words, LETTERS) / 2
    middle = min(max((low + high) / 2, half), frame.width - half)
    yield Text(middle, y - 1.8 - LINE / 2, words, "text", LETTERS)


def _curve(frame: Frame, point: Checkpoint, warmth: Warmth, unit: str) -> Iterator[Mark]:
    ends = [(frame.x(at), frame.y(_growth(point, at))) for at in (frame.low_x, frame.high_x)]
    yield segments([(*ends[0], *ends[1])], "growth")
    x, grown = frame.x(warmth.at), _growth(point, warmth.at)
    yield segments([(x, 0.0, x, frame.y(grown))], "rule")
    yield Circle(x, frame.y(grown), 1.6, "checkpoint")
    words = f"{point.mark} at {warmth.said(warmth.at)}: {signed(grown, unit)}"
    style: Style = "text strong" if abs(grown) <= point.band else "text attention"
    is_left = x < frame.width / 2
    y = min(max(frame.y(grown) + (-LINE if is_left else LINE), LINE), frame.height - LINE)
    yield from boxed(x + (3.0 if is_left else -3.0), y, words, style, "start" if is_left else "end")
