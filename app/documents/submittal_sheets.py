"""Where the knife goes: every stack of liner sheets that are cut alike in one row."""

from collections.abc import Sequence

from app.liner.knife_words import line_words
from app.liner.stack_words import piece_words, stack_words
from app.liner.told_lines import rest_words, told_lines
from app.liner.work_values import Stack

Row = dict[str, str]


def sheet_cut_rows(stacks: Sequence[Stack], unit: str) -> list[Row]:
    """Each stack with what it is laid as, and its cuts in order; no row where none is cut. `unit` is "in" or "mm"."""
    return [
        {
            "stack": f"{stack.mark}, {stack_words(stack)}",
            "sheets": "; ".join(piece_words(stack)),
            "cuts": "; ".join(_cut_words(stack, unit)),
        }
        for stack in stacks
    ]


def _cut_words(stack: Stack, unit: str) -> list[str]:
    """No more than are told beside the drawing: a row stays lower than a page."""
    told = dict.fromkeys(line_words(line, unit) for _, line in told_lines(stack))
    return [*told, *filter(None, [rest_words(stack)])]
