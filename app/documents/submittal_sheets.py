"""Where the knife goes: every stack of liner sheets that are cut alike in one row."""

from collections.abc import Sequence

from app.liner.knife_words import line_words
from app.liner.stack_words import piece_words, stack_words
from app.liner.work_values import Stack

Row = dict[str, str]


def sheet_cut_rows(stacks: Sequence[Stack], unit: str) -> list[Row]:
    """Each stack with what it is laid as, and its cuts in order; no row where none is cut. `unit` is "in" or "mm"."""
    return [
        {
            "stack": f"{stack.mark}, {stack_words(stack)}",
            "sheets": "; ".join(piece_words(stack)),
            "cuts": "; ".join(dict.fromkeys(line_words(line, unit) for line in stack.lines)),
        }
        for stack in stacks
    ]
