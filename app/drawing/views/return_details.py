"""Every return of a face with some face beside it, at a scale at which the legs of its corner units can be read."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.brickwork.layout import Layout
from app.brickwork.returns import Return, returns
from app.drawing.drawing import Drawing
from app.drawing.layers import layer
from app.drawing.lettering import fitting, lettered, text_width_mm, with_fractions
from app.drawing.marks import LARGE, NORMAL, SMALL, Layer, Mark, Text, line, segments
from app.drawing.moved import moved
from app.drawing.scales import ISO_SCALES, US_SCALES, Margins, Scale
from app.drawing.scene import Scene
from app.drawing.windowed import Window, windowed

FACE = 36.0
"""Inches of face beside a return, and of its height: more than two lengths of brick and four of its courses."""

BETWEEN_MM = (12.0, 9.0)
FOOT_MM, HEAD_MM = 9.0, 13.0
"""Between details across and up; room for dimensions under one and for its words above, mm."""

LEAST_MM = 150.0
"""Room for the title over a single detail, mm."""

AROUND = Margins(left=8.0, right=8.0, bottom=6.0, top=24.0)
"""Room for the title above and the edge of the paper, mm."""

WORDS = "FACE, seen from outside; each return folded out beside its edge"

SHOWN = ("concrete", "openings", "brick", "cuts", "unfolded", "letters", "returns")
"""Layers of a detail, from the lowest up."""


@dataclass(frozen=True, slots=True)
class _Detail:
    """A return with its window in the face frame."""

    of: Return
    window: Window

    @property
    def size(self) -> tuple[float, float]:
        left, bottom, right, top = self.window
        return right - left, top - bottom


def usual_scale(unit: str) -> Scale:
    """1 in. to the foot, or 1:10 for a project in metric."""
    return ISO_SCALES[3] if unit == "mm" else US_SCALES[2]


def return_details(
    layout: Layout, *, scale: Scale | None = None, unit: str = "in", title: str = "", paper_mm: float = 380.0
) -> Drawing:
    """All returns in rows from the upper left, the outline's edges first; lengths in words in `unit`, "in" or "mm".

    A panel without returns gives a drawing of nothing. A detail wider than `paper_mm` stands alone and runs over.
    """
    chosen, panel = scale or usual_scale(unit), layout.panel
    named = title or f"{panel.mark}, return details"
    scene = Scene(layout, "face", chosen, None, None, unit, named, WORDS)
    details = [_detail(one) for one in returns(layout)]
    places = list(_places(details, scene, paper_mm))
    wide = max((x + one.size[0] for one, x, _ in places), default=0.0)
    high = max((down + one.size[1] + scene.mm(FOOT_MM) for one, _, down in places), default=0.0)
    marks = [(name, tuple(_layer(name, scene, places, high))) for name in SHOWN]
    words = tuple(mark for one, x, down in places for mark in _words(scene, one, x, high - down))
    title_marks = tuple(_title(scene, high, named))
    layers = [*(Layer(name, shown) for name, shown in marks), Layer("title", (*words, *title_marks))]
    wide = max(wide, scene.mm(LEAST_MM))
    return Drawing(named, WORDS, wide, high, AROUND, chosen, tuple(layers))


def _detail(one: Return) -> _Detail:
    """From as much face to the far edge of the return, over its lowest part."""
    top = min(one.top, one.bottom + FACE)
    if one.hand == "right":
        return _Detail(one, (one.edge_at - FACE, one.bottom, one.edge_at + one.depth, top))
    return _Detail(one, (one.edge_at - one.depth, one.bottom, one.edge_at + FACE, top))


def _places(details: Sequence[_Detail], scene: Scene, paper_mm: float) -> Iterator[tuple[_Detail, float, float]]:
    """Each with its upper left corner, from the drawing's upper left; a row is as high as its highest."""
    across, down = (scene.mm(between) for between in BETWEEN_MM)
    x, top, row = 0.0, scene.mm(HEAD_MM), 0.0
    for one in details:
        wide, high = one.size
        if x > 0 and x + wide > scene.mm(paper_mm):
            x, top, row = 0.0, top + row + down + scene.mm(FOOT_MM + HEAD_MM), 0.0
        yield one, x, top
        x, row = x + wide + across, max(row, high)


def _layer(name: str, scene: Scene, places: Sequence[tuple[_Detail, float, float]], high: float) -> Iterator[Mark]:
    """One layer of all details, each cut to its window and moved to its place; words of its own stand beside it."""
    drawn = [mark for mark in layer(name, scene).marks if not isinstance(mark, Text)]
    for one, x, down in places:
        left, bottom, _, _ = one.window
        for mark in drawn:
            for shown in windowed(mark, one.window):
                yield moved(shown, x - left, high - down - one.size[1] - bottom)


def _words(scene: Scene, one: _Detail, x: float, top: float) -> Iterator[Mark]:
    """What it is above; dimensions of the face shown and of the return's depth below."""
    of, (wide, high) = one.of, one.size
    face, foot = wide - of.depth, top - high
    fold = x + (face if of.hand == "right" else of.depth)
    cut = f", {len(of.cut)} of them cut" if of.cut else ""
    named = f"Return {of.name}, {lettered(of.depth, scene.unit)} deep"
    where = f"{of.hand} end of {'the pier at ' + of.opening if of.opening else 'the face'}; {len(of.legs)} corner units"
    room = wide / scene.mm(1) + BETWEEN_MM[0] - 2.0
    yield Text(x, top + scene.mm(8.0), fitting(named, room, NORMAL), "text strong", NORMAL, "start")
    yield Text(x, top + scene.mm(3.4), fitting(f"{where}{cut}", room, SMALL), "text", SMALL, "start")
    y, tick = foot - scene.mm(3.0), scene.mm(1.2)
    ends = (x, fold, x + wide)
    yield segments([(x, y, x + wide, y), *((end, y - tick, end, y + tick) for end in ends)], "rule")
    sides = (
        ((x, fold, face), (fold, x + wide, of.depth))
        if of.hand == "right"
        else ((x, fold, of.depth), (fold, x + wide, face))
    )
    for near, far, length in sides:
        yield Text((near + far) / 2, y - scene.mm(3.0), lettered(length, scene.unit), "text", SMALL)
    yield from _legs(scene, one, fold, foot)
    if of.top > of.bottom + high:
        yield line([(x, top), (x + wide, top)], "band")


def _legs(scene: Scene, one: _Detail, fold: float, foot: float) -> Iterator[Text]:
    """What the lowest two corner units show on the return and on the face, where that can be written on them."""
    out = 1 if one.of.hand == "right" else -1
    for leg in [leg for leg in one.of.legs if leg.bottom + leg.height <= one.window[3]][:2]:
        y = foot + leg.bottom - one.window[1] + leg.height / 2
        for length, way in ((leg.return_leg, out), (leg.face_leg, -out)):
            words = lettered(length, scene.unit)
            if text_width_mm(words, SMALL) <= length / scene.mm(1):
                yield Text(fold + way * length / 2, y, words, "cut letter", SMALL)


def _title(scene: Scene, high: float, named: str) -> Iterator[Mark]:
    def at(above: float) -> float:
        return high + scene.mm(above)

    yield Text(0, at(18), named, "text strong", LARGE, "start")
    yield Text(0, at(12), WORDS, "text strong", NORMAL, "start")
    words = (
        f"Scale {with_fractions(scene.scale.words)}. TOP is up. A broken line at the top: the return goes on above it."
    )
    yield Text(0, at(6.5), words, "text", SMALL, "start")
