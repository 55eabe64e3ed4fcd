"""What a PDF holds, read by two other programs: text and where it stands, and the bounds of what is drawn."""

from io import BytesIO

import pypdf
import pypdfium2

Box = tuple[float, float, float, float]


def page_texts(pdf: bytes) -> list[str]:
    """Each page's level text in one line."""
    pages = pypdfium2.PdfDocument(pdf)
    return [" ".join(page.get_textpage().get_text_range().split()) for page in pages]


def media_boxes(pdf: bytes) -> list[Box]:
    """Each page's media box, points."""
    return [tuple(map(float, page.mediabox)) for page in pypdf.PdfReader(BytesIO(pdf)).pages]


def text_starts(pdf: bytes) -> list[list[tuple[float, float, str]]]:
    """Where each run of text starts on each page, turned ones too, points from the lower left."""
    pages = []
    for page in pypdf.PdfReader(BytesIO(pdf)).pages:
        starts: list[tuple[float, float, str]] = []

        def note(text: str, cm: list[float], tm: list[float], _font: object, _size: object, to: list = starts) -> None:  # type: ignore[type-arg]
            if text.strip():
                a, b, c, d, e, f = (float(value) for value in cm)
                x, y = float(tm[4]), float(tm[5])
                to.append((a * x + c * y + e, b * x + d * y + f, text))

        page.extract_text(visitor_text=note)
        pages.append(starts)
    return pages


def letter_boxes(pdf: bytes) -> list[list[Box]]:
    """Left, bottom, right, top of each letter on each page, points."""
    document = pypdfium2.PdfDocument(pdf)
    pages = []
    for page in document:
        text = page.get_textpage()
        boxes = (text.get_charbox(k) for k in range(text.count_chars()))
        pages.append([box for box in boxes if box[2] > box[0]])
    return pages


def drawn_sizes(pdf: bytes, page: int) -> set[tuple[float, float]]:
    """Width and height of every path of a page, points to the hundredth."""
    found = pypdfium2.PdfDocument(pdf)[page].get_objects()
    boxes = (item.get_bounds() for item in found if item.type == pypdfium2.raw.FPDF_PAGEOBJ_PATH)
    return {(round(right - left, 2), round(top - bottom, 2)) for left, bottom, right, top in boxes}


def alternative_texts(pdf: bytes) -> list[str]:
    """What is said of each figure to those who do not see it, in order."""
    reader = pypdf.PdfReader(BytesIO(pdf))
    found: list[str] = []
    waiting = [reader.trailer["/Root"]["/StructTreeRoot"]]
    while waiting:
        node = waiting.pop().get_object()
        if isinstance(node, pypdf.generic.ArrayObject):
            waiting += list(reversed(node))
        elif isinstance(node, pypdf.generic.DictionaryObject):
            if "/Alt" in node:
                found.append(str(node["/Alt"]))
            if "/K" in node:
                waiting.append(node["/K"])
    return found
