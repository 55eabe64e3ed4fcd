"""Sheets for the saw station: how bricks are cut up, and every rip, notch and skew cut with its measures."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.drawing.drawing import Drawing
from app.drawing.lettering import fitting, text_width_mm, with_fractions
from app.drawing.marks import LARGE, NORMAL, SMALL, Layer, Mark, Text, box, line
from app.drawing.moved import moved
from app.drawing.saw_figure import LINE_MM, Figure, Pen
from app.drawing.saw_pattern import pattern_figure
from app.drawing.saw_places import places_in_words
from app.drawing.saw_shape import shape_figure
from app.drawing.scales import ISO_SCALES, US_SCALES, Margins, Scale
from app.drawing.styles import CUT_LETTERS, CUT_STYLES
from app.order.saw_values import SawList, SawPiece

PAGE_MM = (249.4, 166.0)
"""Room for figures on a sheet of ANSI A or A4 that lies before us, title and notes left out, mm."""

AROUND = Margins(left=2.0, right=2.0, bottom=16.0, top=14.0)
"""Title above, key and note below, mm."""

GAP_MM, ROW_MM = 4.0, 5.0

NOTE = (
    "Stationary saw with water fed to the blade, guard over it, short pieces in a jig, eyes and ears covered."
    " Local code, the makers' data and the safety officer govern."
)

WORDS = "FACE UP, a standing unit lying with its foot at the left; measures from the brick's lower left corner"


def usual_scale(unit: str) -> Scale:
    """3 in. to the foot, or 1:5 for a project in metric."""
    return ISO_SCALES[2] if unit == "mm" else US_SCALES[0]


def saw_station(
    saw: SawList,
    *,
    unit: str = "in",
    title: str = "",
    scale: Scale | None = None,
    page_mm: tuple[float, float] = PAGE_MM,
) -> tuple[Drawing, ...]:
    """The saw list as sheets, figures in rows from the upper left; lengths in words in `unit`, "in" or "mm".

    None where nothing is cut. A figure larger than `page_mm` stands alone and runs over.
    """
    pen = Pen(scale or usual_scale(unit), unit)
    wide, high = (pen.mm(side) for side in page_mm)
    pages = _pages(list(_blocks(saw, pen, wide)), pen, wide, high)
    named = title or "Saw station"
    return tuple(
        Drawing(
            title=named,
            words=WORDS,
            width=wide,
            height=high,
            margins=AROUND,
            scale=pen.scale,
            layers=(Layer("saw", tuple(marks)), Layer("title", tuple(_title(pen, wide, high, named, k, len(pages))))),
        )
        for k, marks in enumerate(pages, start=1)
    )


@dataclass(frozen=True, slots=True)
class _Block:
    """A figure; one that is a heading keeps with what follows, one that is a line has a row of its own."""

    figure: Figure
    is_line: bool = False
    is_heading: bool = False


def _blocks(saw: SawList, pen: Pen, wide: float) -> Iterator[_Block]:
    sections: list[tuple[str, list[Figure]]] = [
        ("Bricks cut up across", [pattern_figure(pattern, saw.kerf, pen) for pattern in saw.patterns]),
        ("Rips: a brick each", [shape_figure(piece, pen) for piece in saw.rips]),
        ("Notches: a brick each", [shape_figure(piece, pen) for piece in saw.notches]),
        ("Skew cuts: a brick each", [shape_figure(piece, pen) for piece in saw.skews]),
    ]
    if saw.pieces:
        yield _heading("Where the lengths go: panel and course, pieces in brackets where more than one", pen, wide)
        yield from (_Block(_piece_line(piece, pen, wide), is_line=True) for piece in saw.pieces)
    if saw.rubs:
        yield _Block(_rubbed_line(saw, pen, wide), is_line=True)
    for name, figures in sections:
        if figures:
            yield _heading(name, pen, wide)
            yield from (_Block(figure) for figure in figures)


def _heading(words: str, pen: Pen, wide: float) -> _Block:
    high = pen.mm(7.0)
    marks = Text(0.0, pen.mm(3.0), words, "text strong", NORMAL, "start"), line([(0, 0), (wide, 0)], "rule")
    return _Block(Figure(marks, wide, high), is_line=True, is_heading=True)


def _piece_line(piece: SawPiece, pen: Pen, wide: float) -> Figure:
    """Length, how many, from what, whether with a factory end, and where."""
    end = "one factory end" if piece.has_factory_end else "cut at both ends"
    columns = (
        (0.0, pen.words(piece.length), "text strong"),
        (22.0, f"{piece.count:,}", "text"),
        (36.0, fitting(piece.brick, 44.0, SMALL), "text"),
        (82.0, end, "text"),
        (110.0, places_in_words(piece.seats, wide / pen.mm(1) - 112.0), "text quiet"),
    )
    middle = pen.mm(LINE_MM) / 2
    marks = tuple(Text(pen.mm(x), middle, words, style, SMALL, "start") for x, words, style in columns)  # type: ignore[arg-type]
    return Figure(marks, wide, pen.mm(LINE_MM))


def _rubbed_line(saw: SawList, pen: Pen, wide: float) -> Figure:
    """All bricks that the saw leaves alone in one line."""
    bricks = f"{saw.rubbed:,} whole {'brick' if saw.rubbed == 1 else 'bricks'}"
    words = f"Rub off by hand, corner smaller than the kerf: {bricks}"
    room = wide / pen.mm(1) - text_width_mm(words, SMALL) - 4.0
    where = places_in_words([seat for piece in saw.rubs for seat in piece.seats], room)
    middle, x = pen.mm(LINE_MM) / 2, pen.mm(text_width_mm(words, SMALL) + 3.0)
    marks = (
        Text(0.0, middle, words, "text strong", SMALL, "start"),
        Text(x, middle, where, "text quiet", SMALL, "start"),
    )
    return Figure(marks, wide, pen.mm(LINE_MM))


def _pages(blocks: Sequence[_Block], pen: Pen, wide: float, high: float) -> list[list[Mark]]:
    """Rows of figures from the top, as many as a page holds; a heading never stands last on a page."""
    pages, left = list[list[Mark]](), 0.0
    rows = _rows(blocks, wide, pen.mm(GAP_MM))
    for k, row in enumerate(rows):
        tall = max(block.figure.height for block in row)
        gap = 0.0 if row[0].is_line and not row[0].is_heading else pen.mm(ROW_MM) / 2
        after = max(block.figure.height for block in rows[k + 1]) if row[0].is_heading and k + 1 < len(rows) else 0.0
        if not pages or left - tall - gap - after < 0:
            pages.append([])
            left, gap = high, 0.0
        left -= tall + gap
        x = 0.0
        for block in row:
            lift = left + tall - block.figure.height
            pages[-1] += [moved(mark, x, lift) for mark in block.figure.marks]
            x += block.figure.width + pen.mm(GAP_MM)
    return pages


def _rows(blocks: Sequence[_Block], wide: float, gap: float) -> list[list[_Block]]:
    rows, x = list[list[_Block]](), 0.0
    for block in blocks:
        is_new = not rows or block.is_line or rows[-1][0].is_line or x + block.figure.width > wide
        if is_new:
            rows.append([])
            x = 0.0
        rows[-1].append(block)
        x += block.figure.width + gap
    return rows


def _title(pen: Pen, wide: float, high: float, title: str, page: int, pages: int) -> Iterator[Mark]:
    yield Text(0.0, high + pen.mm(9.5), title, "text strong", LARGE, "start")
    scale = f"Scale {with_fractions(pen.scale.words)}; page {page} of {pages}"
    yield Text(wide, high + pen.mm(9.5), scale, "text", SMALL, "end")
    yield Text(0.0, high + pen.mm(4.0), WORDS, "text", SMALL, "start")
    x, y = 0.0, -pen.mm(5.0)
    for name, letter in CUT_LETTERS.items():
        yield box(x, y - pen.mm(1.4), pen.mm(5), pen.mm(2.8), CUT_STYLES[name])
        yield Text(x + pen.mm(6), y, f"{letter} {name}", "text", SMALL, "start")
        x += pen.mm(19)
    yield box(x, y - pen.mm(1.4), pen.mm(0.8), pen.mm(2.8), "solid")
    yield Text(x + pen.mm(2), y, "kerf, crossed: left over", "text", SMALL, "start")
    yield line([(x + pen.mm(38), y - pen.mm(2)), (x + pen.mm(38), y + pen.mm(2))], "outline")
    words = "F factory end: laid toward the neighbour, the cut end toward edge or jamb"
    yield Text(x + pen.mm(40), y, words, "text", SMALL, "start")
    yield Text(0.0, y - pen.mm(5.5), NOTE, "text", SMALL, "start")
