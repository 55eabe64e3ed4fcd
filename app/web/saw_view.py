"""What the Saw list screen shows, made from the saw list of some panels of one project."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from app.drawing.saw_figure import Figure, Pen, as_drawing
from app.drawing.saw_pattern import pattern_figure
from app.drawing.saw_places import places_in_words
from app.drawing.saw_shape import shape_figure
from app.drawing.svg import svg_layers, svg_patterns
from app.drawing.views.saw_station import WORDS, saw_station, usual_scale
from app.lengths import format_length
from app.order.saw_saved import Saved
from app.order.saw_values import Pattern, SawList, SawPiece
from app.web.caution_list import cautions_of
from app.web.page_links import project_links, project_path
from app.web.saw_rows import SawRow, rows_of
from app.web.scope import ScopePage, query_of, scope_groups
from app.web.words import counted
from app.workflow.loading import LoadedPanel, LoadedProject

PIXELS_PER_MM = 5.0
"""CSS pixels for a millimetre of paper, so that the smallest letters are as high as small print on a page."""

KEY = (
    "L length, H height, N notch, S skew. Solid: the kerf. Crossed out: left over. F with a heavy line: an end as the"
    " maker left it, laid toward the neighbour."
)


@dataclass(frozen=True, slots=True)
class Total:
    """A figure with its name, and what is to be said of it; `is_proven` where it is shown to be the least."""

    name: str
    figure: str
    words: str
    is_proven: bool = False


@dataclass(frozen=True, slots=True)
class SawFigure:
    """One brick as an svg, in pixels, and what somebody hears who does not see it."""

    label: str
    view_box: str
    width: str
    height: str
    markup: Markup


@dataclass(frozen=True, slots=True)
class SawSection:
    """Figures of one sort with their heading and what is to be known of them."""

    name: str
    anchor: str
    words: str
    figures: tuple[SawFigure, ...]


@dataclass(frozen=True, slots=True)
class SheetLink:
    """A sheet for the saw station as a file."""

    words: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SawPage(ScopePage):
    """What is cut for some panels of a project."""

    totals: tuple[Total, ...]
    saved: str
    rows: tuple[SawRow, ...]
    sections: tuple[SawSection, ...]
    key: str
    face: str
    patterns: Markup
    sheets: tuple[SheetLink, ...]


def page_of(
    loaded: LoadedProject, of: str, title: str, panels: Sequence[LoadedPanel], saw: SawList, saved: Saved
) -> SawPage:
    """The page for some panels of a project; a scope without panels or cuts says so in words."""
    project = loaded.project
    unit = project.length_unit
    pen = Pen(usual_scale(unit), unit)
    steps = "1 mm" if unit == "mm" else "1/16 in."
    kerf = format_length(project.order.kerf, unit, 64)
    return SawPage(
        title=f"Saw list, {title}",
        path=project_path(loaded.id, project.name, "Saw list"),
        links=project_links(f"/projects/{loaded.id}", ("Order", f"order?{query_of(of)}"), ("Settings", "settings")),
        scope=title,
        lead=f"{counted(len(panels), 'panel')}; kerf {kerf}; measures to {steps}",
        groups=scope_groups(loaded, "saw", of),
        empty=_empty(saw, title, panels),
        totals=tuple(_totals(saw)),
        saved=saved.words,
        rows=rows_of(saw, unit),
        sections=tuple(_sections(saw, pen)),
        key=KEY,
        face=f"{WORDS[0]}{WORDS[1:].lower()}.",
        patterns=Markup(svg_patterns(pen.scale)),
        sheets=tuple(_sheets(loaded, of, saw)),
        cautions=cautions_of("sawing brick"),
    )


def _empty(saw: SawList, title: str, panels: Sequence[LoadedPanel]) -> str:
    """Why there is no list; "" where there is one."""
    if not panels:
        day = title.startswith("Casting day")
        return f"{title}: no panel is cast on it." if day else f"{title}: there are no panels in it yet."
    return "" if saw.flat_pieces or saw.rubs or saw.corners else "No brick of these panels is cut."


def _totals(saw: SawList) -> Iterator[Total]:
    proof = "no way of cutting takes fewer: proven" if saw.is_proven else f"at least {saw.bound:,} are needed"
    yield Total("Bricks to cut up", f"{saw.bricks:,}", proof, saw.is_proven)
    yield Total("Fewest there can be", f"{saw.bound:,}", "bound of a mixed-integer program")
    saved = saw.first_fit - saw.bricks
    yield Total("Longest piece first", f"{saw.first_fit:,}", f"{saved:,} more" if saved else "as many here")
    yield Total("A brick a piece", f"{saw.flat_pieces:,}", f"{saw.flat_pieces - saw.bricks:,} saved")
    if saw.rubs:
        yield Total("Rubbed off by hand", f"{saw.rubbed:,}", "corner smaller than the kerf, not in the bricks")
    corners = sum(corner.count for corner in saw.corners)
    if corners:
        yield Total("Corner units cut", f"{corners:,}", "one unit each, not in the bricks")


def _sections(saw: SawList, pen: Pen) -> Iterator[SawSection]:
    patterns = tuple(_pattern(pattern, saw.kerf, pen) for pattern in saw.patterns)
    if patterns:
        words = (
            "Each drawing is one way to cut a brick. A piece for an edge or a jamb keeps one end as the maker left it."
        )
        yield SawSection("Bricks cut up across", "across", words, patterns)
    shapes = (("Rips", "rips", saw.rips), ("Notches", "notches", saw.notches), ("Skew cuts", "skews", saw.skews))
    for name, anchor, pieces in shapes:
        if pieces:
            count = sum(piece.count for piece in pieces)
            words = f"{counted(count, 'piece')} of {counted(len(pieces), 'shape')}, a brick each."
            yield SawSection(name, anchor, words, tuple(_shape(piece, pen) for piece in pieces))


def _pattern(pattern: Pattern, kerf: float, pen: Pen) -> SawFigure:
    lengths = " and ".join(format_length(piece.length, pen.unit) for piece in pattern.pieces)
    label = f"{counted(pattern.times, 'brick')}, {pattern.brick}, cut into {lengths}"
    return _figure(pattern_figure(pattern, kerf, pen), pen, label)


def _shape(piece: SawPiece, pen: Pen) -> SawFigure:
    size = f"{format_length(piece.length, pen.unit)} x {format_length(piece.height, pen.unit)}"
    places = places_in_words(piece.seats[:4])
    label = f"{counted(piece.count, 'piece')}, {piece.brick}, {piece.cut} cut, {size}; {places}"
    return _figure(shape_figure(piece, pen), pen, label)


def _figure(figure: Figure, pen: Pen, label: str) -> SawFigure:
    drawn = as_drawing(figure, pen, label, "")
    wide, high = (f"{side * PIXELS_PER_MM:.0f}" for side in drawn.paper)
    box = " ".join(f"{side:.4f}" for side in drawn.view_box)
    return SawFigure(label, box, wide, high, Markup(svg_layers(drawn)["saw"]))


def _sheets(loaded: LoadedProject, of: str, saw: SawList) -> Iterator[SheetLink]:
    count = len(saw_station(saw, unit=loaded.project.length_unit))
    for number in range(1, count + 1):
        yield SheetLink(f"{number}", f"/projects/{loaded.id}/saw/sheet-{number}.svg?{query_of(of)}")
