"""What a change costs: the figures that it would give against those that are there."""

from dataclasses import dataclass

from app.workflow.compute import Computed


@dataclass(frozen=True, slots=True)
class Cost:
    """One figure as it would be; `change` says how that differs from now, `state` is "more", "fewer" or ""."""

    words: str
    figure: str
    change: str
    state: str


def costs_of(before: Computed, after: Computed) -> tuple[Cost, ...]:
    """Cut pieces, small pieces and sheets against before."""
    figures = (
        ("cut", len(before.layout.trims), len(after.layout.trims)),
        ("small", before.layout.small, after.layout.small),
        ("sheets", before.placed, after.placed),
    )
    return tuple(_cost(words, was, now) for words, was, now in figures)


def _cost(words: str, was: int, now: int) -> Cost:
    if now == was:
        return Cost(words, f"{now:,}", "as before", "")
    state = "more" if now > was else "fewer"
    return Cost(words, f"{now:,}", f"{abs(now - was):,} {state}", state)
