"""The card beside the drawing: the values of the chosen thing as forms, and what can be done to it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from app.lengths import Length, format_length
from app.panel.shapes import Point
from app.panel.size import BrickSize


@dataclass(frozen=True, slots=True)
class Option:
    """One of several; `day` and `night` are the addresses of its picture where it has one."""

    value: str
    words: str
    day: str = ""
    night: str = ""


@dataclass(frozen=True, slots=True)
class Field:
    """One labelled value; `echo` says how a typed length was understood, `holder` what a blank means.

    `options` make it a list, with `pictured` one of little pictures; `tick` makes it a box that is ticked or not.
    `ends` are, as JSON by option, the values that other fields of the form take when it is chosen.
    """

    name: str
    label: str
    value: str = ""
    echo: str = ""
    holder: str = ""
    options: tuple[Option, ...] = ()
    wide: bool = False
    pictured: bool = False
    tick: bool = False
    ends: str = ""

    @property
    def chosen(self) -> Option:
        """The option that the value names; an option of that name where the value is none of them."""
        return next((option for option in self.options if option.value == self.value), Option(self.value, self.value))


@dataclass(frozen=True, slots=True)
class Draw:
    """The same edit with its box drawn in the drawing instead of typed."""

    edit: str
    values: str
    words: str
    act: str


@dataclass(frozen=True, slots=True)
class CardForm:
    """One edit as a form, folded or not; `words` say how things stand, `why_not` why it cannot be done now."""

    edit: str
    act: str
    fields: tuple[Field, ...] = ()
    hidden: tuple[tuple[str, str], ...] = ()
    legend: str = ""
    words: str = ""
    folded: bool = False
    remove: bool = False
    why_not: str | None = None
    draw: Draw | None = None

    def under(self, legend: str) -> "CardForm":
        """The same form, folded under a legend."""
        return replace(self, legend=legend, folded=True)


@dataclass(frozen=True, slots=True)
class CardThing:
    """A thing that can be chosen from the card."""

    key: str
    name: str
    words: str


@dataclass(frozen=True, slots=True)
class Card:
    title: str
    words: str
    forms: tuple[CardForm, ...]
    things: tuple[CardThing, ...] = ()


@dataclass(frozen=True, slots=True)
class Stock:
    """What the project has to lay, and the unit in which its lengths are typed."""

    sizes: Mapping[str, BrickSize]
    bonds: tuple[Option, ...]
    unit: str


def length_field(name: str, label: str, length: Length | None, unit: str, holder: str = "") -> Field:
    """A length as typed, with what it was understood as where that differs."""
    if length is None:
        return Field(name, label, holder=holder)
    understood = format_length(length, unit)
    value = length.typed if isinstance(length.typed, str) else understood.removeprefix("≈ ")
    if isinstance(length.typed, str) or not understood.startswith("≈"):
        echo = understood if understood.startswith("≈") else f"= {understood}"
        return Field(name, label, value, echo="" if understood == value else echo, holder=holder)
    exact = f"{length.inches:.8f}" if unit == "in" else f"{length.millimetres:.6f}"
    exact = f"{exact.rstrip('0').rstrip('.')} {unit}"
    return Field(name, label, exact, echo=understood, holder=holder)


def choice_field(name: str, label: str, value: str, options: Sequence[tuple[str, str]], wide: bool = True) -> Field:
    """One of several."""
    return Field(name, label, value, options=tuple(Option(*option) for option in options), wide=wide)


def picture_field(name: str, label: str, value: str, options: Sequence[Option]) -> Field:
    """One of several, shown as little pictures."""
    return Field(name, label, value, options=tuple(options), wide=True, pictured=True)


def tick_field(name: str, label: str, ticked: bool) -> Field:
    """A box that is ticked or not."""
    return Field(name, label, "yes" if ticked else "", wide=True, tick=True)


def points_text(points: Sequence[Point], unit: str) -> str:
    """Points as a form takes them: `x, y; x, y`."""
    return "; ".join(f"{_plain(x, unit)}, {_plain(y, unit)}" for x, y in points)


def _plain(length: Length, unit: str) -> str:
    if isinstance(length.typed, str):
        return length.typed
    understood = format_length(length, unit)
    return f"{length.inches:.8f} in" if understood.startswith("≈") else understood
