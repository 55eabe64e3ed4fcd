"""Every broken project file is refused with its place, what was found and what was expected."""

import time

import pytest
from broken_files import SOUND, Broken, broken_files, put, sound_text

from app.documents.project_file import read_project, read_text
from app.panel.faults import Refused


def refusal(text: bytes) -> Refused:
    with pytest.raises(Refused) as caught:
        read_project(read_text(text))
    return caught.value


def test_the_file_that_they_are_made_from_is_sound():
    assert read_project(read_text(sound_text())).walls[0].panels[1].mark == "N2"


def test_there_are_at_least_40():
    assert len({case.text for case in broken_files()}) == len({case.name for case in broken_files()}) >= 40


@pytest.mark.parametrize("case", broken_files(), ids=str)
def test_a_broken_file_has_one_fault_with_path_found_and_expected(case: Broken):
    (fault,) = refusal(case.text).faults
    assert fault.path == case.path
    assert case.found in fault.found
    assert case.expected in fault.expected


@pytest.mark.parametrize("case", broken_files(), ids=str)
def test_a_fault_is_one_line_of_bearable_length(case: Broken):
    line = str(refusal(case.text))
    assert "\n" not in line
    assert len(line) < 700
    assert line.isprintable()


def test_every_fault_of_a_file_is_found_at_once():
    document = {
        **SOUND,
        "name": 3,
        "walls": [
            {"mark": "A", "panels": [{**SOUND["walls"][0]["panels"][0], "thickness": "7'14", "base": None, "x": 1}]},
            {"mark": "A", "panels": [{**SOUND["walls"][0]["panels"][1], "outline": [[0, 0], [1, 1]]}, 5]},
        ],
    }
    with pytest.raises(Refused) as caught:
        read_project(document)
    assert [fault.path for fault in caught.value.faults] == [
        "name",
        "walls[0].panels[0].x",
        "walls[0].panels[0].thickness",
        "walls[0].panels[0].base",
        "walls[1].panels[0].outline",
        "walls[1].panels[1]",
        "walls[1].mark",
    ]


@pytest.mark.quiet
def test_a_file_of_nothing_but_faults_is_refused_soon():
    text = put("walls[0].panels[0].outline", [[]] * 2000)
    many = read_text(text)
    many["walls"] = [many["walls"][0]] * 200
    start = time.perf_counter()
    with pytest.raises(Refused) as caught:
        read_project(many)
    assert time.perf_counter() - start < 2
    assert len(caught.value.faults) < 1_000


def test_a_file_past_the_largest_is_refused_unread():
    (fault,) = refusal(b" " * 16_000_001).faults
    assert (fault.found, fault.expected) == ("more than 16,000,000 bytes", "at most 16,000,000 bytes")


def test_a_byte_order_mark_is_no_fault():
    assert read_text(b"\xef\xbb\xbf" + sound_text().encode()) == SOUND
