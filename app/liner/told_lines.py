"""Which cuts of a stack are told in words, the same in its drawing and in lists."""

from app.liner.work_values import KnifeLine, Stack

MOST_TOLD = 10
"""Lines told in words; of more, the longest."""


def told_lines(stack: Stack) -> list[tuple[int, KnifeLine]]:
    """Cuts, teeth and arcs by their numbers, from 1; all of them, or the longest of many. None for no cut."""
    longest = sorted(enumerate(stack.lines, start=1), key=lambda line: -line[1].length)
    return sorted(longest[:MOST_TOLD], key=lambda line: line[0])


def rest_words(stack: Stack) -> str:
    """How many more there are; "" for none."""
    left = len(stack.lines) - MOST_TOLD
    if left <= 0:
        return ""
    return f"and {left} shorter ones: follow the line" if left > 1 else "and a shorter one: follow the line"
