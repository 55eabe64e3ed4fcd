"""The submittal, read back by other programs: numbers equal the layout's, true scale, exact paper, nothing outside."""

from dataclasses import replace
from datetime import date
from io import BytesIO

import pypdf
import pytest
from pdf_text import alternative_texts, drawn_sizes, letter_boxes, media_boxes, page_texts, text_starts
from shapes import case, example, rectangle
from submittals import ISSUE, computed, project_of, twelve_panels

from app.documents.submittal import submittal_pdf
from app.documents.submittal_packing import packed
from app.documents.submittal_paper import fitting_scale, scales_for, sheet_named
from app.documents.submittal_schedules import trim_rows
from app.documents.submittal_words import PURPOSE
from app.drawing.scales import SHEETS, NoScaleFits
from app.drawing.views.assemble import AROUND
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.takeoff import takeoff
from app.order.work import FaceWork, PanelWork
from app.panel.project import Project
from app.site.cautions import CAUTIONS

MM = 72 / 25.4
"""Points in a millimetre."""

FRAME_LEFT, FRAME_OTHER = 20 * MM, 10 * MM
"""Filing margin and other margins: ISO 5457."""


def printed(project: Project, sheet: str = "ANSI B") -> bytes:
    return submittal_pdf(project, computed(project), ISSUE, sheet=sheet)


@pytest.fixture(scope="module")
def twelve() -> Project:
    return twelve_panels()


@pytest.fixture(scope="module")
def twelve_pdf(twelve: Project) -> bytes:
    return printed(twelve)


@pytest.fixture(scope="module")
def twelve_texts(twelve_pdf: bytes) -> list[str]:
    return page_texts(twelve_pdf)


@pytest.fixture(scope="module")
def b1_pdf() -> bytes:
    return printed(project_of(case("b1")))


def test_every_panel_is_there_with_the_counts_of_its_layout(twelve: Project, twelve_texts: list[str]) -> None:
    text = " ".join(twelve_texts)
    for results in computed(twelve):
        layout = results.layout
        counts = (
            f"Whole {layout.whole}, trimmed {len(layout.trims)}, of these small {layout.small};"
            f" liner sheets {results.cutting.used}"
        )
        assert f"{results.panel.mark}, elevation {counts}" in text
        assert f"{results.panel.mark}, schedules {counts}" in text


def test_the_reference_panel_is_printed_with_its_reference_counts(b1_pdf: bytes) -> None:
    # The reference case states 5,144 whole, 785 trimmed and 177 small pieces.
    assert any("Whole 5,144, trimmed 785, of these small 177;" in text for text in page_texts(b1_pdf))


def test_the_panel_schedule_adds_up(twelve: Project, twelve_texts: list[str]) -> None:
    results = computed(twelve)
    schedule = next(text for text in twelve_texts if "Panel schedule Submittal" in text)
    totals = (
        sum(one.layout.whole for one in results),
        sum(len(one.layout.trims) for one in results),
        sum(one.layout.small for one in results),
        sum(one.cutting.used for one in results),
        sum(len(one.findings) for one in results),
    )
    assert "Total " + " ".join(f"{total:,}" for total in totals) in schedule


def test_the_index_names_the_sheet_where_each_drawing_is(twelve: Project, twelve_texts: list[str]) -> None:
    for panel in twelve.walls[0].panels:
        names = [f"{panel.mark}, {name}" for name in ("elevation", "bed view", "sheet plan", "schedules")]
        sheets = [next(n + 1 for n, text in enumerate(twelve_texts) if name in text) for name in names]
        has_returns = any(edge.treatment == "return" for edge in panel.edges)
        for place, name in ((3, "returns"), (4, "return details")):
            found = next((n + 1 for n, text in enumerate(twelve_texts) if f"{panel.mark}, {name}" in text), None)
            assert (found is not None) == has_returns
            sheets.insert(place, found or "–")
        assert f'" = 1\'-0" {" ".join(map(str, sheets))}' in twelve_texts[0]


def test_ten_feet_at_a_quarter_inch_to_the_foot_are_two_and_a_half_inches_of_paper() -> None:
    """
        20 ft
    +----------+
    |  10 ft   |   at 1/4" = 1'-0" a foot is 18 pt, so 10 ft are 180 pt and 20 ft are 360 pt
    |  +----+  |
    |  |    |  |
    |  +----+  |
    +----------+
    """
    opening = {"mark": "W1", "rect": [60, 60, 120, 120]}
    pdf = printed(project_of(rectangle(240, 240, openings=[opening])))
    elevation = next(n for n, text in enumerate(page_texts(pdf)) if text.startswith("R, elevation"))
    assert 'Scale 1⁄4" = 1\'-0"' in page_texts(pdf)[elevation]
    sizes = drawn_sizes(pdf, elevation)
    assert {(360.0, 360.0), (180.0, 180.0)} <= sizes


@pytest.mark.parametrize("sheet", SHEETS)
def test_paper_is_exactly_the_size_of_the_sheet(sheet: str) -> None:
    size = SHEETS[sheet].landscape
    for left, bottom, right, top in media_boxes(printed(project_of(), sheet)):
        assert (left, bottom) == (0, 0)
        assert (right, top) == pytest.approx((size.width * MM, size.height * MM), abs=0.01)


def test_iso_names_may_be_said_in_full() -> None:
    assert media_boxes(printed(project_of(), "ISO A3")) == media_boxes(printed(project_of(), "A3"))


LONG = {
    "thirty wide letters": "W" * 30,
    "thirty characters": "Northern gable and stair tower",
    "the longest mark": "Northern gable, stair tower and loading dock, upper lift, 12",
}


@pytest.mark.parametrize("sheet", ["ANSI B", "A4"])
@pytest.mark.parametrize("name", LONG.values(), ids=LONG.keys())
def test_nothing_is_set_outside_the_frame(name: str, sheet: str) -> None:
    panel = replace(example("two windows"), mark=name)
    project = replace(project_of(panel, name=name * 2), walls=(replace(project_of(panel).walls[0], mark=name),))
    pdf = printed(project, sheet)
    for (_, _, right, top), starts, letters in zip(media_boxes(pdf), text_starts(pdf), letter_boxes(pdf), strict=True):
        assert starts
        assert letters
        for x, y, text in starts:
            assert FRAME_LEFT <= x <= right - FRAME_OTHER, text
            assert FRAME_OTHER <= y <= top - FRAME_OTHER, text
        assert min(box[0] for box in letters) >= FRAME_LEFT
        assert max(box[2] for box in letters) <= right - FRAME_OTHER
        assert min(box[1] for box in letters) >= FRAME_OTHER
        assert max(box[3] for box in letters) <= top - FRAME_OTHER


@pytest.mark.parametrize("sheet", ["ANSI B", "A4"])
def test_no_letter_of_a_drawing_lies_under_the_title_block(sheet: str) -> None:
    pdf = printed(project_of(example("two windows")), sheet)
    right = media_boxes(pdf)[2][2]
    block_left, block_top = right - FRAME_OTHER - 180 * MM, FRAME_OTHER + 36 * MM
    inside = [text.strip() for x, y, text in text_starts(pdf)[2] if x > block_left and y < block_top]
    assert "".join(inside).startswith("Legal owner")


def test_same_arguments_give_the_same_bytes(twelve: Project, twelve_pdf: bytes) -> None:
    assert printed(twelve) == twelve_pdf


def test_another_date_gives_another_document(b1_pdf: bytes) -> None:
    project = project_of(case("b1"))
    later = submittal_pdf(project, computed(project), replace(ISSUE, date=date(2026, 3, 3)))
    assert later != b1_pdf
    assert pypdf.PdfReader(BytesIO(later)).metadata["/CreationDate"].startswith("D:20260303")


def test_the_document_says_what_it_is(twelve_pdf: bytes) -> None:
    reader = pypdf.PdfReader(BytesIO(twelve_pdf))
    assert reader.metadata["/Title"] == "Dry Creek Depot, submittal, revision B"
    assert reader.metadata["/Subject"] == PURPOSE
    assert reader.metadata["/CreationDate"].startswith("D:20260302")
    assert reader.trailer["/Root"]["/Lang"] == "en"
    xmp = reader.xmp_metadata
    assert xmp is not None
    # ISO 14289-1 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a): the identifiers that a conforming file carries.
    raw = xmp.stream.get_data().decode()
    assert "<pdfuaid:part>1</pdfuaid:part>" in raw
    assert "<pdfaid:part>2</pdfaid:part>" in raw
    assert "<pdfaid:conformance>A</pdfaid:conformance>" in raw


def test_every_drawing_is_told_in_words(twelve: Project, twelve_pdf: bytes) -> None:
    texts = alternative_texts(twelve_pdf)
    wall, *faces = texts
    assert wall.startswith("Wall North")
    for panel in twelve.walls[0].panels:
        count = 5 if any(edge.treatment == "return" for edge in panel.edges) else 3
        alike, faces = faces[:count], faces[count:]
        assert all(text.startswith(panel.mark) and "Scale" in text and "Whole" in text for text in alike)
    assert not faces


def test_bed_views_say_that_they_are_mirrored(twelve: Project, twelve_texts: list[str]) -> None:
    views = [text for text in twelve_texts if ", bed view" in text[:60] or ", sheet plan" in text[:60]]
    assert len(views) == 2 * len(twelve.walls[0].panels)
    assert all("BED VIEW, mirrored" in text for text in views)


def test_title_blocks_have_the_fields_of_iso_7200(twelve_texts: list[str]) -> None:
    fields = ("Legal owner", "Identification number", "Revision", "Date of issue", "Sheet", "Title",
              "Supplementary title", "Approved by", "Created by", "Document type")  # fmt: skip
    for number, text in enumerate(twelve_texts):
        assert all(field in text for field in fields)
        assert f" {number + 1} of {len(twelve_texts)}" in text
        assert "2026-03-02" in text


def test_all_cautions_are_printed(twelve_texts: list[str]) -> None:
    assert all(caution.text in twelve_texts[-1] for caution in CAUTIONS)


def test_the_order_is_the_takeoff_of_all_panels_together(twelve: Project, twelve_texts: list[str]) -> None:
    works = [PanelWork(FaceWork(one.layout), one.plan, one.cutting) for one in computed(twelve)]
    rules = Rules.of(twelve)
    lines = takeoff(works, saw_list([work.face for work in works], rules), rules).lines
    assert lines
    for line in lines:
        numbers = f"{line.net:,.0f}" if line.net == round(line.net) else f"{line.net:,.1f}"
        assert f"{line.item} {numbers}" in twelve_texts[-2]
        assert line.note in twelve_texts[-2]


def test_trimmed_pieces_are_listed_with_all_that_the_layout_has(twelve: Project, twelve_texts: list[str]) -> None:
    for results in computed(twelve):
        rows, layout = trim_rows(results.layout, "in"), results.layout
        assert sum(int(row["count"]) for row in rows) == len(layout.trims)
        assert sum(int(row["count"]) for row in rows if row["small"]) == layout.small
        text = " ".join(twelve_texts)
        for row in rows:
            words = f"{row['kind']} {row['size']} {row['count']}"
            assert " ".join(words.split()) in text


def test_only_the_one_family_of_type_is_used(twelve_pdf: bytes) -> None:
    fonts = {
        font["/BaseFont"]
        for page in pypdf.PdfReader(BytesIO(twelve_pdf)).pages
        for font in (entry.get_object() for entry in page["/Resources"]["/Font"].values())
    }
    assert fonts
    assert all("SourceSansPro" in font for font in fonts)


def test_a_project_without_panels_still_has_its_sheets() -> None:
    texts = page_texts(printed(project_of()))
    assert len(texts) == 4
    assert "This project has no panels." in texts[0]


def test_a_name_in_letters_that_the_type_lacks_is_not_refused() -> None:
    pdf = printed(project_of(example("plain"), name="東 Depot"))
    assert "Depot" in page_texts(pdf)[0]


def test_a_metric_project_is_drawn_to_a_scale_of_iso_5455() -> None:
    texts = page_texts(printed(project_of(case("b1"), unit="mm"), "A2"))
    assert any("B1, elevation" in text and "Scale 1:50" in text for text in texts)


def test_a_panel_too_long_for_the_sheet_is_refused_by_name() -> None:
    with pytest.raises(NoScaleFits, match=r"panel R on sheet A4: .*choose a larger sheet"):
        fitting_scale((12_000, 40), AROUND, sheet_named("A4"), scales_for("in"), "R")


@pytest.mark.parametrize("sheet", sorted(SHEETS.keys() - {"A4"}))
def test_the_largest_panel_that_a_file_may_hold_fits_on_every_sheet_above_a4(sheet: str) -> None:
    for unit in ("in", "mm"):
        assert fitting_scale((1200, 1200), AROUND, sheet_named(sheet), scales_for(unit), "R").ratio <= 500


def test_an_unknown_sheet_is_refused_by_name() -> None:
    with pytest.raises(KeyError, match=r"sheet 'B5': expected one of .*ANSI B"):
        printed(project_of(), "B5")


def test_return_details_show_legs_at_an_inch_to_the_foot() -> None:
    # At 1" = 1'-0" an inch of face is 6 pt: 3 ft are 216 pt, and the short leg of a modular corner unit, 3-5/8 in.
    # (BIA Technical Notes 10B), is 21.75 pt long.
    pdf = printed(project_of(example("edges")))
    texts = page_texts(pdf)
    sheet = next(n for n, text in enumerate(texts) if ", return details" in text[:60])
    assert 'Scale 1" = 1\'-0"' in texts[sheet]
    sizes = drawn_sizes(pdf, sheet)
    assert (216.0, 216.0) in sizes
    assert (21.75, 216.0) in sizes


def test_packing_moves_nothing() -> None:
    course = "h8v2h-8z" + "m8 0h8v2h-8z" * 200
    svg = f'<svg><path d="M0 4{course}M-4 2{course}" fill="#DDBBA8" /></svg>'
    parts = [f'<path transform="translate({at})" d="M0 0{course}"/>' for at in ("0 4", "-4 2")]
    assert packed(svg) == f'<svg><g fill="#DDBBA8">{"".join(parts)}</g></svg>'


@pytest.mark.parametrize("worn", ['fill="url(#hatch-skew)"', 'fill="none" stroke="#000000"'])
def test_packing_leaves_hatched_paths_and_open_lines_alone(worn: str) -> None:
    close = "z" if "url" in worn else ""
    svg = f'<svg><path d="{("M0 4h8v2h-8" + close) * 300}" {worn} /></svg>'
    assert packed(svg) == svg


def test_progress_is_told_a_panel_at_a_time() -> None:
    told: list[tuple[int, int]] = []
    project = project_of(example("plain"), example("door"))
    submittal_pdf(project, computed(project), ISSUE, progress=lambda done, steps: told.append((done, steps)))
    assert told == [(1, 3), (2, 3), (3, 3)]
