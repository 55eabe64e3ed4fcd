"""Things: the smallest parts of a panel document that two people may change independently."""

import json
from copy import deepcopy
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.panel.things import (
    ABSENT,
    Change,
    apply_changes,
    as_json,
    changes,
    composed,
    conflicts,
    from_json,
    inverse,
    things,
)
from app.panel.things_in_words import in_words


def opening(mark, x=60, y=96, width=48, height=64, **more):
    return {"mark": mark, **more, "rect": [x, y, width, height]}


PANEL = {
    "mark": "N1",
    "thickness": 7.25,
    "outline": [[0, 0], [360, 0], [360, 384], [0, 384]],
    "margin": 0.375,
    "edges": [{"edge": 1, "treatment": "return", "depth": 3.625}],
    "openings": [opening("W1", use="window"), opening("W2", x=200), opening("W3", x=280)],
    "field": {"size": "modular", "bond": "running", "origin": [0.375, 0.375]},
    "fit": {"courses": False, "heads": False},
    "fixings": [{"line": [[180, 0], [180, 384]], "by": "glue"}],
}


ACCEPTED = {"code": "missed-head", "about": "W1 head", "by": "A. Mason", "reason": "Hidden."}
QUESTION = {"mark": "Q1", "text": "Why?"}


def panel(**replaced):
    document = deepcopy(PANEL) | replaced
    return {key: value for key, value in document.items() if value is not ABSENT}


def openings(*marks):
    known = {item["mark"]: item for item in PANEL["openings"]}
    return [known.get(mark) or opening(mark, x=1) for mark in marks]


def marks(document):
    return [item["mark"] for item in document["openings"]]


def test_each_item_with_a_mark_is_a_thing_and_every_other_key_is_one_whole():
    assert list(things(PANEL)) == [
        *["mark", "thickness", "outline", "margin", "edges/", "edges/1"],
        *["openings/", "openings/W1", "openings/W2", "openings/W3", "field", "fit", "fixings/", "fixings/0"],
    ]
    assert things(PANEL)["openings/W2"] == opening("W2", x=200)
    assert things({}) == {}


@pytest.mark.parametrize(
    "items",
    [[opening("W1"), opening("W1")], [{"rect": [1, 2, 3, 4]}], ["W1"], [opening("")], None, "W1", {"mark": "W1"}],
    ids=["mark twice", "no mark", "text", "empty mark", "null", "a text", "an object"],
)
def test_a_list_whose_items_cannot_be_told_apart_is_one_thing(items):
    document = panel(openings=items)
    assert things(document)["openings"] == items
    back = changes(PANEL, document)
    assert apply_changes(PANEL, back) == document
    assert apply_changes(document, inverse(back)) == PANEL


def test_only_what_differs_is_a_change():
    assert changes(PANEL, panel()) == {}
    assert changes(PANEL, panel(margin=0.5)) == {"margin": Change(0.375, 0.5)}
    assert changes(PANEL, panel(margin=ABSENT)) == {"margin": Change(0.375, ABSENT)}
    assert changes(PANEL, dict(reversed(PANEL.items()))) == {}


def test_values_differ_as_typed():
    assert set(changes(panel(base=12), panel(base=12.0))) == {"base"}
    assert set(changes(panel(base=1), panel(base=True))) == {"base"}
    assert set(changes(panel(base="1'"), panel(base="12"))) == {"base"}


def test_the_change_of_an_opening_names_this_opening_alone():
    moved = panel(openings=[opening("W1", use="window"), opening("W2", x=210), opening("W3", x=280)])
    assert changes(PANEL, moved) == {"openings/W2": Change(opening("W2", x=200), opening("W2", x=210))}


def test_a_thing_that_is_not_there_has_no_key_in_the_stored_form():
    changed = changes(PANEL, panel(margin=ABSENT, base=2))
    before, after = as_json(changed)
    assert (before, after) == ({"margin": 0.375}, {"base": 2})
    assert from_json(*json.loads(json.dumps([before, after]))) == changed


def test_an_opening_comes_back_at_its_old_place():
    without = panel(openings=openings("W1", "W3"))
    removal = changes(PANEL, without)
    assert apply_changes(without, inverse(removal)) == PANEL


def test_an_opening_comes_back_behind_its_old_neighbour_in_a_list_that_has_changed():
    removal = changes(PANEL, panel(openings=openings("W1", "W3")))
    now = panel(openings=openings("D1", "W1", "D2", "W3"))
    assert marks(apply_changes(now, inverse(removal))) == ["D1", "W1", "W2", "D2", "W3"]


def test_an_opening_whose_neighbours_are_gone_comes_back_at_the_front():
    removal = changes(PANEL, panel(openings=openings("W1", "W3")))
    assert marks(apply_changes(panel(openings=openings("D1")), inverse(removal))) == ["W2", "D1"]


@pytest.mark.parametrize("start", [ABSENT, []], ids=["no list", "empty list"])
def test_the_first_opening_and_back_leaves_the_list_as_it_was(start):
    bare = panel(openings=start)
    added = changes(bare, PANEL)
    assert apply_changes(bare, added) == PANEL
    assert apply_changes(PANEL, inverse(added)) == bare


def test_two_first_openings_do_not_meet():
    bare = panel(openings=ABSENT)
    mine = changes(bare, panel(openings=openings("W1")))
    theirs = changes(bare, panel(openings=openings("D1")))
    assert conflicts(mine, theirs) == []
    assert marks(apply_changes(panel(openings=openings("D1")), mine)) == ["W1", "D1"]


def test_a_later_order_of_zones_is_kept_as_typed():
    zones = [{"mark": mark, "rect": [0, 0, 8, 8]} for mark in ("S1", "S2", "S3")]
    before, after = panel(zones=zones), panel(zones=[zones[2], zones[0], zones[1]])
    assert apply_changes(before, changes(before, after)) == after
    assert in_words(changes(before, after)) == ["zones put in another order"]


def test_a_new_order_leaves_what_others_added_in_its_place():
    turned = changes(PANEL, panel(openings=openings("W3", "W2", "W1")))
    assert marks(apply_changes(panel(openings=openings("W1", "D1", "W2", "W3")), turned)) == ["W3", "D1", "W2", "W1"]


@pytest.mark.parametrize(
    ("mine", "theirs", "met"),
    [
        (panel(margin=0.5), panel(base=2), []),
        (panel(margin=0.5), panel(margin=0.25), ["margin"]),
        (panel(margin=0.5), panel(margin=0.5), []),
        (panel(margin=ABSENT), panel(margin=0.5), ["margin"]),
        (panel(openings=openings("W1", "W2")), panel(openings=openings("W2", "W3")), []),
        (panel(openings=openings("W3", "W2", "W1")), panel(openings=openings("W2", "W1", "W3")), ["openings/"]),
        (panel(openings=openings("W3", "W2", "W1")), panel(openings=openings("W1", "W2", "W3", "D1")), []),
        (panel(openings=None), panel(openings=openings("W1", "W2")), ["openings/W3", "openings/"]),
        (panel(edges=[]), panel(outline=[[0, 0], [360, 0], [0, 384]]), ["edges/1"]),
        (panel(edges=[]), panel(outline=[[0, 0], [350, 0], [350, 384], [0, 384]]), []),
    ],
    ids=[
        *["two things", "one thing", "same value", "removed and changed", "two removed", "two orders"],
        *["order and addition", "whole list and item", "edge of a recounted outline", "edge of a widened outline"],
    ],
)
def test_two_changes_meet_only_on_the_same_thing(mine, theirs, met):
    assert sorted(conflicts(changes(PANEL, mine), changes(PANEL, theirs))) == sorted(met)
    assert sorted(conflicts(changes(PANEL, theirs), changes(PANEL, mine))) == sorted(met)


def test_two_openings_of_the_same_mark_meet():
    mine, theirs = (panel(openings=[*PANEL["openings"], opening("D1", x=x)]) for x in (1, 2))
    assert conflicts(changes(PANEL, mine), changes(PANEL, theirs)) == ["openings/D1"]


@pytest.mark.parametrize("mark", ["W/1", "/", "W1/", "é", "fixings/0"])
def test_any_mark_can_be_told_apart(mark):
    named = panel(openings=[opening(mark)])
    assert apply_changes(PANEL, changes(PANEL, named)) == named
    assert apply_changes(named, changes(named, PANEL)) == PANEL


@pytest.mark.parametrize(
    ("after", "words"),
    [
        (panel(), []),
        (panel(margin=0.5), ["margin changed from 0.375 to 0.5"]),
        (panel(margin=ABSENT), ["margin removed: 0.375"]),
        (panel(base="1'-6\""), ["base added: 1'-6\""]),
        (panel(mark="N2"), ["mark changed from N1 to N2"]),
        (panel(least_piece=4), ["least piece added: 4"]),
        (panel(outline=[[0, 0], [350, 0], [350, 384], [0, 384]]), ["outline changed"]),
        (panel(openings=openings("W1", "W2", "W3", "D1")), ["opening D1 added"]),
        (panel(openings=openings("W1", "W3")), ["opening W2 removed"]),
        (panel(openings=[*openings("W1", "W2"), opening("W3", x=284)]), ["W3 moved from 280, 96 to 284, 96"]),
        (
            panel(openings=[*openings("W1", "W2"), opening("W3", x=280, height=60)]),
            ["W3 resized from 48, 64 to 48, 60"],
        ),
        (panel(openings=[*openings("W1", "W2"), opening("W3", x=1, height=60)]), ["W3 moved and resized"]),
        (panel(openings=[*openings("W1", "W2"), opening("V3", x=280)]), ["opening W3 renamed V3"]),
        (
            panel(openings=[opening("W1", use="louver"), *openings("W2", "W3")]),
            ["W1 changed: use from window to louver"],
        ),
        (
            panel(openings=[{"mark": "W1", "circle": [9, 9, 4]}, *openings("W2", "W3")]),
            ["W1 changed: use, rect, circle"],
        ),
        (panel(field=PANEL["field"] | {"origin": [0, 0]}), ["field changed: origin"]),
        (panel(field=PANEL["field"] | {"bond": "stack"}), ["field changed: bond from running to stack"]),
        (panel(field={"size": "roman", "bond": "stack", "origin": [0, 0]}), ["field changed: size, bond, origin"]),
        (panel(fit={"courses": True, "heads": False}), ["fit changed: courses from off to on"]),
        (panel(fixings=[]), ["fixing 1 removed"]),
        (
            panel(edges=[{"edge": 1, "treatment": "flush", "depth": 3.625}]),
            ["edge 1 changed: treatment from return to flush"],
        ),
        (panel(zones=[]), ["empty list zones added"]),
        (panel(released=True), ["released from the wall"]),
        (panel(released=False), ["released added: off"]),
        (panel(questions=[QUESTION]), ["question Q1 added"]),
        (panel(accepted=[ACCEPTED]), ["finding missed-head W1 head accepted"]),
        (panel(fit=PANEL["fit"] | {"matter": {"heads": "free"}}), ["fit changed: matter heads"]),
        (panel(openings=[opening("W1", use="window", sides=[]), *openings("W2", "W3")]), ["W1 changed: sides"]),
    ],
)
def test_changes_read_as_short_sentences(after, words):
    assert in_words(changes(PANEL, after)) == words


def test_what_came_is_told_when_it_goes_again():
    full = panel(released=True, questions=[QUESTION], accepted=[ACCEPTED], fit={"matter": {"heads": "free"}})
    lower = full | {"fit": {"matter": {"heads": "required"}}}
    assert in_words(changes(full, lower)) == ["fit changed: matter heads from free to required"]
    bare = full | {"released": False, "questions": [], "accepted": []}
    assert in_words(changes(full, bare)) == [
        "joined to the wall",
        "question Q1 removed",
        "finding missed-head W1 head no longer accepted",
    ]
    assert in_words(changes(full, full | {"questions": [QUESTION | {"mark": "Q2"}]})) == ["question Q1 renamed Q2"]


def test_two_findings_accepted_at_once_do_not_meet_and_one_accepted_twice_does():
    mine = changes(PANEL, panel(accepted=[ACCEPTED]))
    other = changes(PANEL, panel(accepted=[ACCEPTED | {"about": "D1 head"}]))
    again = changes(PANEL, panel(accepted=[ACCEPTED | {"by": "B. Bond"}]))
    assert conflicts(mine, other) == []
    assert apply_changes(panel(accepted=[ACCEPTED]), other)["accepted"] == [ACCEPTED | {"about": "D1 head"}, ACCEPTED]
    assert conflicts(mine, again) == ["accepted/missed-head W1 head"]


VALUES = st.one_of(st.integers(0, 3), st.sampled_from(["1'", "2'-6\""]), st.booleans(), st.just(ABSENT))
MARKED = st.lists(st.sampled_from(["W1", "W2", "D1", "V1"]), unique=True).flatmap(
    lambda names: st.tuples(*(st.integers(0, 3).map(lambda x, name=name: opening(name, x=x)) for name in names)).map(
        list
    )
)
FIXINGS = st.lists(st.integers(0, 2).map(lambda x: {"line": [[x, 0], [x, 9]]}), max_size=3)
DOCUMENTS = st.fixed_dictionaries(
    {"margin": VALUES, "openings": MARKED | st.just(ABSENT), "zones": MARKED, "fixings": FIXINGS | st.just(ABSENT)}
).map(lambda found: {key: value for key, value in found.items() if value is not ABSENT})


@given(DOCUMENTS, DOCUMENTS)
@settings(max_examples=100, deadline=None)
def test_changes_lead_there_and_back_and_survive_storage(before, after):
    changed = changes(before, after)
    stored = from_json(*json.loads(json.dumps(as_json(changed))))
    assert apply_changes(before, stored) == after
    assert apply_changes(after, inverse(stored)) == before


@given(st.lists(DOCUMENTS, min_size=1, max_size=5))
@settings(max_examples=100, deadline=None)
def test_changes_one_after_another_are_one_change(states):
    steps = [changes(before, after) for before, after in pairwise(states)]
    assert composed(steps) == changes(states[0], states[-1])
    assert apply_changes(states[0], composed(steps)) == states[-1]
    assert apply_changes(states[-1], inverse(composed(steps))) == states[0]


@given(DOCUMENTS, DOCUMENTS, DOCUMENTS)
@settings(max_examples=100, deadline=None)
def test_changes_that_do_not_meet_give_the_same_values_in_either_order(base, mine, theirs):
    ours, others = changes(base, mine), changes(base, theirs)
    if any(key.startswith("fixings") for key in ours | others) or conflicts(ours, others):
        return
    one, other = things(apply_changes(mine, others)), things(apply_changes(theirs, ours))
    values = {key: value for key, value in one.items() if not key.endswith("/")}
    assert values == {key: value for key, value in other.items() if not key.endswith("/")}
    orders = {key for key in one | other if key.endswith("/")}
    assert all(sorted(one.get(key, [])) == sorted(other.get(key, [])) for key in orders)
