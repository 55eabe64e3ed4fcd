"""Results are kept until they weigh too much."""

from app.workflow.kept import Kept


def test_the_least_lately_used_is_given_up_first_and_the_newest_always_stays() -> None:
    made: list[int] = []

    def work(given: int) -> list[int]:
        made.append(given)
        return [given] * given

    kept = Kept(work, len, 10)
    assert kept(4) is kept(4)
    kept(5)
    kept(4)
    kept(3)
    assert made == [4, 5, 3]
    kept(4)
    assert made == [4, 5, 3]
    kept(5)
    assert made == [4, 5, 3, 5]
    assert len(kept(50)) == 50
    kept(50)
    assert made == [4, 5, 3, 5, 50]
