"""Every term has one sentence and a picture, and no label means two of them."""

from collections import Counter
from xml.etree import ElementTree

import pytest

from app.drawing.terms import HIGH, WIDE, term_of, term_picture, terms


@pytest.mark.parametrize("slug", terms())
@pytest.mark.parametrize("palette", ["paper", "night"])
def test_a_picture_is_a_drawing_with_something_in_it(slug: str, palette: str) -> None:
    root = ElementTree.fromstring(term_picture(slug, palette))
    assert sum(1 for _ in root.iter("{http://www.w3.org/2000/svg}path")) >= 1


@pytest.mark.parametrize("term", terms().values(), ids=terms())
def test_a_sentence_is_one_sentence(term) -> None:
    assert term.sentence[0].isupper()
    assert term.sentence.endswith(".")
    assert len(term.sentence) <= 120


@pytest.mark.parametrize("term", terms().values(), ids=terms())
def test_what_is_pointed_at_lies_in_the_window(term) -> None:
    for part in term.picture.split(";"):
        kind, *words = part.split()
        if kind == "bond":
            continue
        x, y, across, up = map(float, words[-4:])
        far = (x + across, y + up) if kind == "box" else (max(x, across), max(y, up))
        assert 0 <= x <= far[0] <= WIDE
        assert 0 <= y <= far[1] <= HIGH


def test_no_label_means_two_terms() -> None:
    labels = Counter(label for term in terms().values() for label in {term.name, *term.labels} if label)
    assert [label for label, count in labels.items() if count > 1] == []


def test_a_label_without_help_is_none() -> None:
    assert term_of("Removed") is None
    assert term_of("") is None
