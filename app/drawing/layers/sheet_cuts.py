"""Where liner sheets are cut: a bold line along each cut."""

from collections.abc import Iterator

from app.drawing.marks import Mark, segments
from app.drawing.scene import Scene
from app.liner.values import Sheet

FRAME = "face"

Ends = tuple[float, float, float, float]


def marks(scene: Scene) -> Iterator[Mark]:
    """The cuts of all trimmed sheets as one mark; none without a plan or trims."""
    ends = [end for sheet in (scene.plan.sheets if scene.plan else ()) for end in cut_ends(sheet)]
    if ends:
        yield segments(ends, "knife")


def cut_ends(sheet: Sheet) -> Iterator[Ends]:
    """The cuts of a sheet where they lie on the face."""
    right, up = sheet.away
    x = min(x * right for x, _ in sheet.outline)
    y = min(y * up for _, y in sheet.outline)
    for cut in sheet.cuts:
        (x0, y0), (x1, y1) = cut.start, cut.end
        yield (x + x0) * right, (y + y0) * up, (x + x1) * right, (y + y1) * up
