"""Hazards that the trade and the regulations name are each there, beside their task, and somebody else decides."""

from dataclasses import FrozenInstanceError

import pytest

from app.site.cautions import CAUTIONS, DEFERENCE, FOR_INFORMATION, OUTSIDE, TASKS, cautions_for

HAZARDS = {
    "sawing brick": ("silica", "guard"),  # 29 CFR 1926.1153 Table 1; 29 CFR 1926.702(i)
    "washing": ("140 degrees", "jet"),  # scald tables: 140 F under 5 s; public advice on pressure washers
    "walking on the bed": ("slippery",),  # common practice
    "placing concrete": ("burns skin",),  # common practice
    "lifting": ("nobody", "bracing"),  # 29 CFR 1926.704: nobody under a panel being tilted
    "cutting liner": ("knife",),  # common practice
    "fixing liner": ("never steel", "aluminium"),  # common practice; ACI 303R-12
}


@pytest.mark.parametrize("task", TASKS)
def test_every_task_names_its_hazards(task: str) -> None:
    words = " ".join(caution.text for caution in cautions_for(task)).lower()
    assert all(hazard in words for hazard in HAZARDS[task])


def test_every_caution_says_who_decides_and_where_it_comes_from() -> None:
    deciders = ("local codes", "engineer", "maker's data", "safety officer")
    for caution in CAUTIONS:
        assert any(word in caution.decides for word in deciders), caution
        assert caution.source, caution


def test_the_list_defers_to_codes_engineer_makers_and_safety_officer() -> None:
    for words in ("Local codes", "licensed engineer of record", "makers' data", "safety officer"):
        assert words in DEFERENCE
    for part in ("Lifting", "bracing", "reinforcement", "panel strength", "connections", "sealants"):
        assert part in OUTSIDE
    assert "not for lifting design" in FOR_INFORMATION


def test_no_caution_raises_its_voice() -> None:
    assert not any("!" in caution.text + caution.hazard for caution in CAUTIONS)


def test_the_tasks_make_up_the_list_in_its_order() -> None:
    assert tuple(caution for task in TASKS for caution in cautions_for(task)) == CAUTIONS


def test_an_unknown_task_is_refused_by_name() -> None:
    with pytest.raises(KeyError, match=r"painting.*washing"):
        cautions_for("painting")


def test_cautions_cannot_be_changed() -> None:
    with pytest.raises(FrozenInstanceError):
        CAUTIONS[0].text = "fine"
