"""The list before concrete has what the trade looks at last, each with a reason, and two people sign it."""

import pytest

from app.site.before import BEFORE, BOUNDS, SIGN_OFFS

MUST = {  # common practice; keyed back up: bond of thin brick is by the shape of its back
    "Keyed back up": "keyed back up",
    "Corners held": "held against the form",
    "No steel near the face": "steel",
    "Openings formed": "formed in its place",
    "Sheets laid": "Every sheet of the plan",
    "Readings in band": "in its band",
    "Open findings seen": "Every open finding",
}


@pytest.mark.parametrize("name", list(MUST))
def test_what_must_be_looked_at_is_there_with_its_reason(name: str) -> None:
    (check,) = (check for check in BEFORE if check.name == name)
    assert MUST[name] in check.text
    assert check.why.endswith(".")


def test_no_name_comes_twice_and_none_raises_its_voice() -> None:
    assert len({check.name for check in BEFORE}) == len(BEFORE)
    assert not any("!" in check.text + check.why for check in BEFORE)


def test_two_different_people_sign_the_foreman_first() -> None:
    assert len(SIGN_OFFS) == 2
    assert SIGN_OFFS[0].who == "foreman"
    assert "inspector" in SIGN_OFFS[1].who
    assert "not the one who signed first" in SIGN_OFFS[1].says


def test_strength_and_steel_are_left_to_the_engineer_of_record() -> None:
    assert "licensed engineer of record" in BOUNDS
    assert "local codes" in BOUNDS
