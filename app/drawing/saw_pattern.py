"""A brick cut up across: its pieces, the kerfs between them, and what is left over."""

from collections.abc import Iterator
from itertools import groupby

from app.drawing.lettering import text_width_mm
from app.drawing.marks import SMALL, Mark, Text, segments
from app.drawing.saw_figure import Figure, Pen, factory_end, framed, rim, shown, spans
from app.drawing.styles import CUT_LETTERS, Style
from app.order.saw_values import Cut, Pattern
from app.panel.tolerance import TOLERANCE

LETTER_MM = 3.0
"""A piece at least this wide on paper has its letter in it, mm."""

Place = tuple[float, Cut]


def pattern_figure(pattern: Pattern, kerf: float, pen: Pen) -> Figure:
    """One pattern with how often it is cut."""
    brick = pattern.whole
    marks = (rim(brick), *_pieces(pattern, pen), *_between(pattern, kerf), *_ends(pattern, pen), *_spans(pattern, pen))
    return framed(pen, brick, marks, _words(pattern, pen))


def _words(pattern: Pattern, pen: Pen) -> tuple[tuple[str, Style], ...]:
    bricks = f"{pattern.times:,} {'brick' if pattern.times == 1 else 'bricks'}, {pattern.brick}"
    is_whole = pattern.pieces[0].length >= pattern.whole[0] - TOLERANCE
    rest = f"{pen.words(pattern.left_over)} left over" if pattern.left_over > TOLERANCE else "nothing left over"
    return (bricks, "text strong"), ("whole, no cut" if is_whole else rest, "text quiet")


def _places(pattern: Pattern) -> list[Place]:
    """Each piece with its left end: from the left one after the other, a second factory end at the right."""
    pieces, length = pattern.pieces, pattern.whole[0]
    last_is_right = len(pieces) > 1 and pieces[0].has_factory_end and pieces[-1].has_factory_end
    from_left = pieces[:-1] if last_is_right else pieces
    kerfs = _gap(pattern)
    places, x = list[Place](), 0.0
    for piece in from_left:
        places.append((x, piece))
        x += piece.length + kerfs
    return [*places, (length - pieces[-1].length, pieces[-1])] if last_is_right else places


def _gap(pattern: Pattern) -> float:
    """The kerf, or a little less where a last kerf hangs over: what lies between neighbours from the left."""
    count = len(pattern.pieces) if pattern.left_over > TOLERANCE else len(pattern.pieces) - 1
    taken = pattern.whole[0] - pattern.left_over - sum(piece.length for piece in pattern.pieces)
    return taken / count if count else 0.0


def _pieces(pattern: Pattern, pen: Pen) -> Iterator[Mark]:
    height = pattern.whole[1]
    for x, piece in _places(pattern):
        yield from shown(x, 0.0, piece.length, height, "trimmed length")
        if piece.length >= pen.mm(LETTER_MM):
            yield Text(x + piece.length / 2, height / 2, CUT_LETTERS["length"], "cut letter", SMALL)


def _between(pattern: Pattern, kerf: float) -> Iterator[Mark]:
    """Behind each piece the kerf, black where the blade goes, and what is left over, crossed out."""
    length, height = pattern.whole
    places = _places(pattern)
    for k, (x, piece) in enumerate(places):
        start = x + piece.length
        is_last = k + 1 == len(places)
        until = length if is_last else places[k + 1][0]
        near = min(kerf, until - start)
        far = 0.0 if is_last else min(kerf, until - start - near)
        yield from shown(start, 0.0, near, height, "solid")
        yield from shown(until - far, 0.0, far, height, "solid")
        rest = start + near, until - far
        if rest[1] - rest[0] > TOLERANCE:
            yield segments([(rest[0], 0.0, rest[1], height), (rest[0], height, rest[1], 0.0)], "rule")


def _ends(pattern: Pattern, pen: Pen) -> Iterator[Mark]:
    length, height = pattern.whole
    pieces = pattern.pieces
    if pieces[0].has_factory_end:
        yield from factory_end(pen, 0.0, height, is_left=True)
    if len(pieces) > 1 and pieces[0].has_factory_end and pieces[-1].has_factory_end:
        yield from factory_end(pen, length, height, is_left=False)


def _spans(pattern: Pattern, pen: Pen) -> Iterator[Mark]:
    """A length under each piece, equal neighbours together where there is no room for each."""
    runs = list[tuple[float, float, str]]()
    for length, group in groupby(_places(pattern), key=lambda place: place[1].length):
        row, text = list(group), pen.words(length)
        if length >= pen.mm(text_width_mm(text, SMALL)) or len(row) == 1:
            runs += [(x, x + length, text) for x, _ in row]
        else:
            runs.append((row[0][0], row[-1][0] + length, f"{len(row)} of {text}"))
    yield from spans(pen, runs)
