"""What a submittal holds is chosen: each part brings its own sheets alone; shop sheets say what is computed."""

from dataclasses import replace

import pytest
from pdf_text import page_texts
from shapes import example
from submittals import ISSUE, computed, project_of

from app.documents.submittal import submittal_pdf
from app.documents.submittal_parts import APPROVAL, PARTS, SETS, parts_named
from app.documents.submittal_shop_tables import tape_rows
from app.liner.tape_table import tape_tables
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.takeoff import takeoff
from app.order.work import FaceWork, PanelWork
from app.panel.blend import Blend, Colour
from app.panel.laying import CORNERS, Laying
from app.panel.project import Project

SAID = {
    "drawings": "P1, elevation",
    "schedules": "P1, schedules",
    "order": "Overage from",
    "cut-sheets": "P1, sheets to cut",
    "growth": "P1, growth and checkpoints",
    "tape": "Courses and checkpoints up the panel",
    "saw": "Saw station",
}
"""What stands on the sheets of each part and on no other's."""


@pytest.fixture(scope="module")
def project() -> Project:
    return project_of(replace(example("window"), mark="P1"))


def _texts(project: Project, parts: frozenset[str], sheet: str = "ANSI B") -> list[str]:
    return page_texts(submittal_pdf(project, computed(project), ISSUE, sheet=sheet, parts=parts))


def test_every_part_has_a_witness() -> None:
    assert SAID.keys() == PARTS.keys()
    assert set().union(*SETS.values()) == PARTS.keys()


@pytest.mark.parametrize("part", PARTS)
def test_a_part_brings_its_own_sheets_alone(project: Project, part: str) -> None:
    # The index on the first sheet names what is in the set; witnesses are looked for behind it.
    texts = _texts(project, frozenset({part}))
    text = " ".join(texts[1:])
    assert SAID[part] in text
    assert not [name for name, words in SAID.items() if name != part and words in text]
    assert "Cautions" in texts[-1]


def test_approval_is_what_is_made_where_nothing_is_chosen(project: Project) -> None:
    assert submittal_pdf(project, computed(project), ISSUE) == submittal_pdf(
        project, computed(project), ISSUE, parts=APPROVAL
    )
    assert parts_named([]) == APPROVAL == parts_named(["approval"])


def test_names_of_sets_and_parts_add_up() -> None:
    assert parts_named(["shop", "order"]) == SETS["shop"] | {"order"}
    with pytest.raises(KeyError, match=r"part 'poems': expected one of approval, shop, drawings"):
        parts_named(["poems"])


@pytest.mark.parametrize("sheet", ["ANSI B", "A4", "A1"])
def test_the_index_and_the_title_blocks_count_all_sheets_of_all_parts(project: Project, sheet: str) -> None:
    texts = _texts(project, frozenset(PARTS), sheet)
    assert all(f" {number} of {len(texts)}" in text for number, text in enumerate(texts, start=1))
    for name in ("elevation", "sheets to cut", "schedules", "growth and checkpoints", "shop tables"):
        found = next(n + 1 for n, text in enumerate(texts) if n > 1 and f"P1, {name}" in text)
        assert f" {found}" in texts[0]


@pytest.mark.parametrize("corner", CORNERS)
def test_tape_tables_say_what_the_tape_reads_at_both_ends_of_the_day(corner: str) -> None:
    panel = replace(example("window"), laying=Laying(corner))
    project = project_of(panel)
    (results,) = computed(project)
    tables = tape_rows(results, project)
    found = tape_tables(results.layout, results.drift, project.liner, project.day.bed_high)
    assert [len(table["rows"]) for table in tables] == [len(table.rows) for table in found]
    for words, table in zip(tables, found, strict=True):
        assert f"hooked at the bed's {table.hook}" in words["words"]
        assert [row[0] for row in words["rows"]] == [row.mark for row in table.rows]
        away = [row.first if table.hook == table.ends[0] else row.second for row in table.rows]
        assert [reading.nominal for reading in away] == sorted(reading.nominal for reading in away)


def test_the_order_says_where_its_overage_is_from_and_what_the_brick_is_mixed_of() -> None:
    blend = Blend((Colour("umber", 60.0), Colour("chalk", 40.0)))
    project = replace(project_of(example("window")), blend=blend)
    text = " ".join(_texts(project, frozenset({"order"})))
    works = [PanelWork(FaceWork(one.layout, blend), one.plan, one.cutting) for one in computed(project)]
    rules = Rules.of(project)
    lines = takeoff(works, saw_list([work.face for work in works], rules), rules).lines
    assert any(line.reason for line in lines)
    assert all(line.reason in text for line in lines)
    assert "Blend: umber 60, chalk 40 percent" in text
