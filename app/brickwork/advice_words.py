"""Words of advice: lengths, openings, what an idea saves and what it adds."""

from collections.abc import Sequence

from app.lengths import Length
from app.panel.wording import FEET_AND_INCHES, said

THINGS = ("cut", "small piece", "sliver")
FOLLOWS = "the wall's courses follow"


def length_in_words(length: Length, unit: str) -> str:
    """A length of either sign without its sign: `5/8 in.`, `1'-0 5/8"` or `16 mm`."""
    text = said(Length(abs(length.nm)), unit)
    return text if "'" in text or not text.endswith('"') else f"{text[:-1]} in."


def length_as_typed(length: Length, unit: str) -> str:
    """A length as a form's field takes it back, exact to the nanometre."""
    text = said(length, unit)
    if unit in FEET_AND_INCHES:
        return text if "≈" not in text else f'{length.inches:.10f}"'
    places = {"mm": 6, "cm": 7, "m": 9}[unit]
    whole, rest = divmod(abs(length.nm), 10**places)
    decimals = f"{rest:0{places}d}".rstrip("0")
    return f"{'-' if length.nm < 0 else ''}{whole}{'.' if decimals else ''}{decimals}"


def listed(names: Sequence[str]) -> str:
    """`W1`, `W1 and W2`, `W1, W2 and W3`."""
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def effect_in_words(changes: tuple[int, int, int], wall_follows: bool = False) -> str:
    """`22 cuts fewer, 8 small pieces fewer; 1 sliver more`, from changes of trimmed pieces, small pieces, slivers.

    Where `wall_follows`, `; the wall's courses follow` comes after: other panels of the wall change as well.
    """
    fewer, more = _parts(changes)
    parts = ", ".join(f"{part} fewer" for part in fewer), ", ".join(f"{part} more" for part in more)
    return "; ".join(filter(None, (*parts, FOLLOWS if wall_follows else "")))


def saving_in_words(changes: tuple[int, int, int]) -> str:
    """`It saves 22 cuts and 8 small pieces; it adds 1 sliver.`"""
    fewer, more = _parts(changes)
    saves = f"It saves {listed(fewer)}" if fewer else "It saves no piece"
    return f"{saves}; it adds {listed(more)}." if more else f"{saves}."


def _parts(changes: tuple[int, int, int]) -> tuple[list[str], list[str]]:
    counted = [(change, _counted(abs(change), thing)) for change, thing in zip(changes, THINGS, strict=True)]
    return [text for change, text in counted if change < 0], [text for change, text in counted if change > 0]


def _counted(count: int, thing: str) -> str:
    return f"{count:,} {thing}{'' if count == 1 else 's'}"
