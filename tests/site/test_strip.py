"""The wash sheet: steps in the order of the work, figures from the takeoff, limits with their sources."""

from dataclasses import FrozenInstanceError

import pytest
from drawings import laid
from works import takeoff_of

from app.order.line_words import amount
from app.order.values import Takeoff
from app.site.cautions import TASKS, cautions_for
from app.site.strip import strip_steps

STEPS = strip_steps(takeoff_of([laid("door")]))


def test_liner_comes_off_before_hot_water_and_a_trial_comes_before_the_wash() -> None:
    """Heat deflection of high-impact polystyrene is at 160 to 189 F (published tables), wash water at 190 to 200 F."""
    names = [step.name for step in STEPS]
    assert names == ["Strip the liner", "Recycle the liner", "Try the wash", "Wash the face hot", "Look it over"]
    assert [step.number for step in STEPS] == [1, 2, 3, 4, 5]
    assert "160 to 189" in STEPS[0].limits


def test_figures_are_those_of_the_takeoff() -> None:
    lines = {line.item: line for line in takeoff_of([laid("door")]).lines}
    mass, face = lines["Liner to recycle"], lines["Wax wash, face to wash"]
    assert f"{amount(mass.net)} {mass.unit}" in STEPS[1].text
    assert f"{amount(face.net)} {face.unit}" in STEPS[3].text
    assert mass.net > 0


def test_a_figure_that_is_not_there_is_said() -> None:
    assert "an amount that the takeoff does not give" in strip_steps(Takeoff(()))[1].text


def test_limits_of_the_wash_are_those_in_use_and_the_brick_makers_data_govern() -> None:
    """At least 1,000 psi, 190 to 200 F, 30 to 45 degree fan, top down, soon: common practice. Cleaning masonry: at or
    under 1,000 psi, 25 to 40 degree tips: Masonry Magazine, July 2006, p. 43."""
    wash, trial = STEPS[3], STEPS[2]
    for words in ("1,000 psi", "190 to 200", "30 to 45"):
        assert words in wash.limits
    assert "soon" in wash.text
    assert "top down" in wash.text
    assert "brick maker's data govern" in trial.limits
    assert "25 to 40 degrees" in trial.limits
    assert "July 2006" in trial.source


def test_every_step_has_its_reason_its_source_and_cautions() -> None:
    for step in STEPS:
        assert step.why
        assert step.source
        assert step.task in TASKS
        assert cautions_for(step.task)
        with pytest.raises(FrozenInstanceError):
            step.why = ""
