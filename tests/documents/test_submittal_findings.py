"""Findings of a submittal told together: none is lost, each thing is named, and what differs stays apart."""

import re

import pytest
from shapes import SHAPES, example
from submittals import computed, panels_like_b1, project_of

from app.brickwork.findings import Finding
from app.documents.submittal_findings import finding_rows, runs_in_words


def _missed(mark: str, by: str = "1/4", what: str = "sill") -> Finding:
    text = f'{what.capitalize()} {mark} stands {by}" off the courses; {by}" higher it would course.'
    return Finding(f"missed-{what}", "warning", 0.0, 36.0, text, f"{what} {mark}")


@pytest.mark.parametrize("shape", SHAPES)
def test_rows_hold_every_finding_once(shape: str) -> None:
    (results,) = computed(project_of(example(shape)))
    assert sum(int(str(row["count"])) for row in finding_rows(results.findings, "in")) == len(results.findings)


def test_every_opening_that_is_found_at_fault_is_named() -> None:
    (results,) = computed(panels_like_b1(1))
    rows = finding_rows(results.findings, "in")
    said = " ".join(str(row["text"]) for row in rows)
    faulty = {one.about.split()[1] for one in results.findings if one.code in {"missed-sill", "missed-head"}}
    assert len(faulty) > 8
    assert all(re.search(rf"\b{mark}\b", said) for mark in faulty)
    # Its 216 findings are of a few sorts: a schedule is read only where it is short.
    assert len(rows) <= len(results.findings) / 10


def test_what_stands_alike_is_told_of_each() -> None:
    (row,) = finding_rows([_missed("W1"), _missed("W2"), _missed("W3")], "in")
    assert row["text"].startswith("Warning: Each of sill W1, W2, W3 stands 1⁄4")  # type: ignore[union-attr]
    assert row["count"] == "3"


def test_one_alone_keeps_its_own_words() -> None:
    (row,) = finding_rows([_missed("W1")], "in")
    assert row["text"].startswith("Warning: Sill W1 stands")  # type: ignore[union-attr]


def test_what_stands_unlike_stays_apart() -> None:
    assert len(finding_rows([_missed("W1"), _missed("W2", by="1/2"), _missed("W1", what="head")], "in")) == 3


def test_small_pieces_are_told_with_their_lengths_and_courses() -> None:
    pieces = [
        Finding(
            "small-piece", "warning", 1.0, 1.0, f'Piece {long}" long in course {course}; the least is 3 5/8".', name
        )
        for long, course, name in (("1 1/2", 4, "left edge"), ("1 3/4", 5, "left edge"), ("1 1/2", 8, "right edge"))
    ]
    (row,) = finding_rows(pieces, "in")
    words = str(row["text"]).replace("\u2009", " ")
    assert words == 'Warning: Piece 1 1⁄2", 1 3⁄4" long in courses 4 to 5, 8; the least is 3 5⁄8".'


def test_courses_run_together() -> None:
    assert runs_in_words([3, 4, 5, 9]) == "courses 3 to 5, 9"
    assert runs_in_words([7]) == "course 7"
    assert runs_in_words([]) == ""
