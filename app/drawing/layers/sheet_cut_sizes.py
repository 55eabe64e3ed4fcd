"""How far from its sheet's starting corner each cut is, in whole pockets or courses and inches, where there is room."""

from collections.abc import Iterator

from app.drawing.board import Board, text_box
from app.drawing.layers.sheet_numbers import numbers
from app.drawing.lettering import lettered
from app.drawing.marks import SMALL, Mark, Text, box
from app.drawing.scene import Scene
from app.liner.knife import GUIDED
from app.liner.label_places import label_places
from app.liner.values import Sheet
from app.liner.work_values import KnifeCut

FRAME = "face"

Ends = tuple[float, float, float, float]

CLEAR_MM = 1.0
"""From the cut to the words beside it, mm."""


def marks(scene: Scene) -> Iterator[Mark]:
    """Words beside upright and level cuts, none over another or over a sheet's number; the longest cuts first."""
    if scene.plan is None or scene.work is None:
        return
    board = Board(scene.mm(10), [text_box(scene, number) for number in numbers(scene)])
    knife = scene.work.knife
    middles = label_places(scene.plan.sheets).tolist()
    rows = [
        (_ends(scene, sheet, cut), cut, middle)
        for sheet, middle in zip(scene.plan.sheets, middles, strict=True)
        for cut in knife.get(sheet.number, ())
        if cut.cut.axis != "skew"
    ]
    for ends, cut, middle in sorted(rows, key=lambda row: -_length(row[0])):
        text = _beside(scene, ends, middle, size_words(cut, scene.unit), cut.cut.axis)
        taken = text_box(scene, text)
        if board.took(taken):
            yield box(taken[0], taken[1], taken[2] - taken[0], taken[3] - taken[1], "label")
            yield text


def _ends(scene: Scene, sheet: Sheet, knife: KnifeCut) -> Ends:
    """A cut of the nominal sheet where it lies on the face, once joints gave."""
    region = next(region for region in scene.layout.regions if region.mark == sheet.region)
    (right, up), cut = sheet.away, knife.cut
    x = min(region.across.nominal(x) * right for x, _ in sheet.outline)
    y = min(region.up.nominal(y) * up for _, y in sheet.outline)
    (x0, y0), (x1, y1) = (
        (float(region.across.real((x + along) * right)), float(region.up.real((y + rise) * up)))
        for along, rise in (cut.start, cut.end)
    )
    return x0, y0, x1, y1


def _length(ends: Ends) -> float:
    x0, y0, x1, y1 = ends
    return abs(x1 - x0) + abs(y1 - y0)


def size_words(knife: KnifeCut, unit: str) -> str:
    """Like 3p 5 5/8": three pockets, and so far past the third one's far edge; c for courses."""
    counted, letter = (knife.along, "p") if knife.cut.axis == "x" else (knife.up, "c")
    if not counted or not counted[0].pockets:
        return lettered(knife.cut.at, unit)
    past = f" {lettered(counted[0].past, unit)}" if counted[0].past > GUIDED else ""
    return f"{counted[0].pockets}{letter}{past}"


def _beside(scene: Scene, ends: Ends, middle: list[float], words: str, axis: str) -> Text:
    """On the side of the cut where the trim's middle is."""
    x, y = (ends[0] + ends[2]) / 2, (ends[1] + ends[3]) / 2
    clear = scene.mm(CLEAR_MM)
    if axis == "x":
        is_right = middle[0] > x
        return Text(x + (clear if is_right else -clear), y, words, "text", SMALL, "start" if is_right else "end")
    rise = clear + scene.mm(SMALL / 2)
    return Text(x, y + (rise if middle[1] > y else -rise), words, "text", SMALL)
