"""Which revision a request means."""

import pytest

from app.web.conditions import base_revision, tag
from app.web.problems import Failure


def test_the_tag_of_a_revision_is_read_back() -> None:
    assert base_revision(tag(37)) == 37


@pytest.mark.parametrize(
    ("header", "status"), [(None, 428), ("*", 428), ('W/"rev-3"', 400), ("rev-3", 400), ('"rev-0"', 400)]
)
def test_anything_else_is_refused(header: str | None, status: int) -> None:
    with pytest.raises(Failure) as refusal:
        base_revision(header)
    assert refusal.value.problem.kind.status == status
