"""Stacks in words: how many sheets, and as which laid sheets their pieces are laid."""

from collections.abc import Sequence
from string import ascii_lowercase

from app.liner.work_values import MOST_IN_STACK, Stack


def piece_names(stack: Stack) -> tuple[str, ...]:
    """What stands on each piece: the laid sheet's number, or a letter where several sheets are cut so; "" on the only
    piece of such a stack."""
    if stack.count == 1:
        return tuple(str(piece.numbers[0]) for piece in stack.pieces)
    if len(stack.pieces) == 1:
        return ("",)
    return tuple(_letter(k) for k in range(len(stack.pieces)))


def _letter(number: int) -> str:
    again, last = divmod(number, len(ascii_lowercase))
    return ascii_lowercase[last] * (again + 1)


def piece_words(stack: Stack) -> tuple[str, ...]:
    """As which laid sheets each piece of a stack is laid, named as on its drawing."""
    if stack.count == 1 or len(stack.pieces) == 1:
        return (run_words(stack.sheets),)
    rows = zip(piece_names(stack), stack.pieces, strict=True)
    return tuple(f"{name}: {run_words(piece.numbers)}" for name, piece in rows)


def stack_words(stack: Stack) -> str:
    """How many sheets a stack has, and in how many passes it is cut."""
    if stack.count == 1:
        return "one sheet"
    together = f"{stack.count} sheets"
    return together if stack.passes == 1 else f"{together}, {stack.passes} passes of at most {MOST_IN_STACK}"


def run_words(numbers: Sequence[int]) -> str:
    """Numbers in order, three or more that follow one another as a run: `7, 15, 102\u2013108`; empty for none."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}\u2013{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs)
