"""True scale: in the SVG's own numbers, and through a PDF read by another program."""

from io import BytesIO
from pathlib import Path

import font_source_sans_pro
import pypdf
import pytest
import typst
from drawings import drawn, laid
from pdf_text import drawn_sizes
from shapes import rectangle

from app.brickwork.layout import lay_out
from app.drawing.scales import ISO_SCALES, QUARTER_INCH, SHEETS, US_SCALES, Margins, NoScaleFits, largest_scale, usable
from app.drawing.svg import svg_document
from app.drawing.views.elevation import elevation

FONTS = Path(font_source_sans_pro.__file__).parent / "files"
NONE = Margins(0, 0, 0, 0)


def pdf_of(svg: str, folder: Path) -> bytes:
    (folder / "drawing.svg").write_text(svg, encoding="utf-8")
    page = folder / "page.typ"
    page.write_text('#set page(width: auto, height: auto, margin: 0mm)\n#image("drawing.svg")', encoding="utf-8")
    return bytes(typst.compile(page, font_paths=[FONTS], ignore_system_fonts=True))


def test_ten_feet_at_a_quarter_inch_to_the_foot_measure_180_points_in_a_pdf(tmp_path: Path) -> None:
    """10 ft / 48 = 2.5 in. = 180 pt, by arithmetic; the ground of concrete is drawn without a pen."""
    layout = lay_out(rectangle(120, 96))
    pdf = pdf_of(svg_document(elevation(layout, scale=QUARTER_INCH)), tmp_path)
    assert any(abs(wide - 180) < 0.02 and abs(high - 144) < 0.02 for wide, high in drawn_sizes(pdf, 0))
    wide, high = elevation(layout).paper
    box = pypdf.PdfReader(BytesIO(pdf)).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((wide * 72 / 25.4, high * 72 / 25.4), abs=0.05)


def test_hatching_and_true_fractions_arrive_in_the_pdf(tmp_path: Path) -> None:
    pdf = pdf_of(svg_document(drawn("elevation", "door")), tmp_path)
    page = pypdf.PdfReader(BytesIO(pdf)).pages[0]
    assert "/Pattern" in page["/Resources"]
    assert "1\u20098\u2044" not in page.extract_text()
    assert "D, elevation" in page.extract_text()
    assert "\u2044" in page.extract_text()


def test_the_svg_s_own_millimetres_are_those_of_its_view_box() -> None:
    drawing = elevation(laid("door"), scale=US_SCALES[2])
    wide, high = drawing.paper
    document = svg_document(drawing)
    assert f'width="{wide:.4f}mm"' in document
    assert f'viewBox="0 0 {wide:.4f} {high:.4f}"' in document
    around = drawing.margins
    assert wide == pytest.approx(132 * 25.4 / 12 + around.left + around.right)


def test_scales_are_those_of_the_standards() -> None:
    """ISO 5455 reductions; US inches to the foot as listed in common practice, from 3 in. to 1/16 in."""
    assert [scale.words for scale in ISO_SCALES[:8]] == [f"1:{n}" for n in (1, 2, 5, 10, 20, 50, 100, 200)]
    assert US_SCALES[0].ratio == 12 / 3
    assert US_SCALES[-1].ratio == 12 / (1 / 16)
    assert QUARTER_INCH.words == '1/4" = 1\'-0"'
    assert QUARTER_INCH.ratio == 48


def test_sheet_sizes_are_those_of_the_standards() -> None:
    """ISO 216 (A0 841 x 1189), ANSI/ASME Y14.1 and architectural sizes, mm."""
    assert (SHEETS["A3"].landscape.width, SHEETS["A3"].landscape.height) == (420, 297)
    rounded = {name: (round(sheet.width), round(sheet.height)) for name, sheet in SHEETS.items()}
    assert rounded["ANSI B"] == (279, 432)
    assert rounded["ARCH D"] == (610, 914)
    assert rounded["ARCH E1"] == (762, 1067)
    assert usable(SHEETS["A4"]) == (180, 277)


def test_the_largest_scale_that_fits_is_taken_and_the_next_larger_does_not_fit() -> None:
    paper = usable(SHEETS["ANSI B"].landscape)
    for width, height in ((132, 96), (480, 360), (1200, 400)):
        scale = largest_scale(width, height, paper, NONE)
        assert width * scale.mm_per_inch <= paper[0] + 1e-6
        larger = US_SCALES[US_SCALES.index(scale) - 1]
        assert width * larger.mm_per_inch > paper[0] or height * larger.mm_per_inch > paper[1]


def test_a_drawing_that_fits_by_no_scale_is_refused_with_the_sizes() -> None:
    with pytest.raises(NoScaleFits, match="1200 x 1200 in: no scale fits in 100 x 50 mm"):
        largest_scale(1200, 1200, (100, 50), NONE)
