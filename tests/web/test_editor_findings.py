"""Findings beside the drawing: what is open, what is accepted, and who says so."""

from typing import Any

import httpx
import pytest
from scenario import stored

from app.brickwork.findings import Finding
from app.panel.values import Accepted
from app.web.editor_findings import SHOWN, findings_part

pytestmark = pytest.mark.anyio

FOUND = (
    *(Finding("small-piece", "warning", k, 2.0, f"Piece {k}", "W1 left") for k in range(9)),
    Finding("missed-head", "warning", 4.0, 5.0, "Head of W1 off", "W1 head"),
    Finding("missed-head", "warning", 6.0, 5.0, "Head of W2 off", "W2 head"),
)


def test_findings_are_grouped_by_weight() -> None:
    part = findings_part(FOUND, ())
    assert [group.words for group in part.groups] == ["2 heads off the courses", "9 small pieces"]
    assert [len(group.first) for group in part.groups] == [2, SHOWN]
    assert (part.groups[1].more, part.open) == (9 - SHOWN, 11)


def test_errors_come_first_and_slivers_last() -> None:
    codes = ("left-out", "unsymmetrical-pier", "lap", "missed-sill", "small-piece")
    found = [Finding(code, "warning", 0.0, 0.0, code) for code in codes] + [Finding("empty-zone", "error", 0, 0, "")]
    order = [group.code for group in findings_part(found, ()).groups]
    assert order == ["empty-zone", "missed-sill", "lap", "small-piece", "unsymmetrical-pier", "left-out"]


def test_the_same_words_about_the_same_thing_are_one_line_with_all_places() -> None:
    found = [Finding("small-piece", "warning", k, 2.0, "A thin piece.", "W1 left") for k in range(39)]
    found.append(Finding("small-piece", "warning", 50.0, 2.0, "A thin piece.", "W2 left"))
    [group] = findings_part(found, ()).groups
    assert [line.text for line in group.first] == ["A thin piece, 39 times.", "A thin piece."]
    assert len(group.first[0].places.split()) == 2 * 39
    assert (group.words, group.more) == ("40 small pieces", 0)


def test_fits_in_vain_and_required_lines_have_names_of_their_own() -> None:
    fits = [Finding("fit-not-offered", "warning", 0.0, 0.0, "", f"fit {name}") for name in ("courses", "heads")]
    part = findings_part([*fits, Finding("required-missed", "error", 0.0, 0.0, "", "base")], ())
    assert [group.words for group in part.groups] == [
        "1 required line that is missed",
        "2 fits that the bond does not offer",
    ]


def test_one_kind_is_shown_whole_when_asked_for() -> None:
    part = findings_part(FOUND, (), "small-piece")
    assert (len(part.groups[1].first), part.groups[1].more) == (9, 0)


def test_an_accepted_finding_is_not_open_and_others_of_its_kind_are() -> None:
    taken = Accepted("missed-head", "W1 head", "R. Amsel", "lintel hides it")
    part = findings_part(FOUND, (taken,))
    assert part.open == 10
    assert [line.text for group in part.groups for line in group.first if group.code == "missed-head"] == [
        "Head of W2 off"
    ]
    [row] = part.accepted
    assert (row.by, row.reason, [place.x for place in row.places]) == ("R. Amsel", "lintel hides it", [4.0])


def test_an_accepted_finding_that_is_gone_says_so() -> None:
    [row] = findings_part((), (Accepted("missed-head", "W1 head", "R. Amsel", "seen"),)).accepted
    assert row.words.endswith("no longer found")
    assert row.places == ()


async def posted(client: httpx.AsyncClient, panel: str, base: int, **values: str) -> httpx.Response:
    form = values | {"base_revision": str(base)}
    return await client.post(f"/panels/{panel}/edits", data=form, headers={"hx-request": "true"})


async def test_accepting_moves_a_finding_and_withdrawing_brings_it_back(visitor: httpx.AsyncClient) -> None:
    ids: dict[str, Any] = await stored(visitor)
    panel = ids["walls"][0]["panels"][0]
    said = {"code": "lap", "about": "W1 left", "by": "R. Amsel", "reason": "seen on the <mock-up>"}
    accepted = await posted(visitor, panel, 1, edit="accept_finding", **said)
    assert accepted.status_code == 200, accepted.text
    assert f'hx-get="/panels/{panel}/findings/now"' in accepted.text
    now = await visitor.get(f"/panels/{panel}/findings/now")
    assert "R. Amsel" in now.text
    assert "seen on the &lt;mock-up&gt;" in now.text
    assert 'value="withdraw_acceptance"' in now.text
    back = await posted(visitor, panel, 2, edit="withdraw_acceptance", code="lap", about="W1 left")
    assert back.status_code == 200
    now = await visitor.get(f"/panels/{panel}/findings/now")
    assert "R. Amsel" not in now.text.split('id="findings"')[1]


async def test_an_acceptance_without_a_reason_is_refused(visitor: httpx.AsyncClient) -> None:
    ids: dict[str, Any] = await stored(visitor)
    panel = ids["walls"][0]["panels"][0]
    answer = await posted(visitor, panel, 1, edit="accept_finding", code="lap", about="W1 left", by="R. Amsel")
    assert answer.status_code == 422
    assert "reason: found" in answer.text


async def test_the_findings_of_one_kind_are_sent_whole(visitor: httpx.AsyncClient) -> None:
    ids: dict[str, Any] = await stored(visitor)
    panel = ids["walls"][0]["panels"][0]
    small = (await visitor.get(f"/api/panels/{panel}/layout")).json()["counts"]["small"]
    answer = await visitor.get(f"/panels/{panel}/findings", params={"code": "small-piece"})
    assert answer.text.count('data-code="small-piece"') == small > SHOWN
