"""Verdicts in the words of tape and hand: what was read, and what to do about it."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, floor

from app.lengths import format_length
from app.liner.drift_words import Units
from app.liner.readings_spread import SETTABLE, TICKS, Need, most_given
from app.liner.readings_values import Ahead, Kind, Spread
from app.liner.values import Checkpoint

REPLACES = "This takes the place of what an earlier reading said for these joints."

EXACT = 1e-6
"""Parts of a tick: closer than this a length in millimetres is whole ticks."""


@dataclass(frozen=True, slots=True)
class Case:
    """One reading as it is told; lengths inches, temperatures in `degree`, "F" or "C"; `bed` None where not taken."""

    checkpoint: Checkpoint
    ahead: Ahead
    need: Need
    bed: float | None
    explained: float | None
    unit: str
    degree: str

    @property
    def band(self) -> str:
        return amount(self.need.band, self.unit)

    @property
    def day(self) -> str:
        return f"{self.checkpoint.bed_low:g} to {self.checkpoint.bed_high:g} °{self.degree}"

    @property
    def off(self) -> str:
        """The error here in words that never say it is the band where it is past it."""
        words = _off(self.need.error, self.unit)
        is_told_as_the_band = amount(self.need.error, self.unit) == self.band and not self.need.is_right_here
        return f"just over {words}" if is_told_as_the_band else words


def amount(inches: float, unit: str) -> str:
    """A length without its sign, to 1/64 in., or to 0.1 mm and whole ticks of 0.25 mm exactly."""
    ticks = abs(inches) / TICKS[unit]
    if round(ticks) and (unit == "in" or abs(ticks - round(ticks)) < EXACT):
        return f"{round(ticks) / 4:g} mm" if unit == "mm" else format_length(round(ticks) * TICKS[unit], unit, 64)
    if ticks < 1 / 2:
        return f"under {amount(TICKS[unit], unit)}" if inches else format_length(0.0, unit)
    return f"{round(abs(inches) * 25.4, 1):g} mm"


def said(case: Case, value: float, true: float, tape: float | None) -> str:
    """What was read, what it is by a steel tape of that temperature, and how far it is off."""
    corrected = ""
    if tape is not None and amount(value, case.unit) != amount(true, case.unit):
        corrected = f", {amount(true, case.unit)} by a steel tape at {tape:g} °{case.degree}"
    return f"{case.checkpoint.mark} reads {amount(value, case.unit)}{corrected}: {case.off}."


def instruction(case: Case, kind: Kind, spread: Spread | None) -> str:
    """What to do, in whole sentences: the heat's part where it matters, then what to change."""
    told = {"hold": _hold, "adjust": _adjust, "relay": _relay, "measure": _measure}[kind]
    heat = _heat(case) if kind != "hold" else ""
    return " ".join(words for words in (heat, *told(case, spread)) if words)


def _off(error: float, unit: str) -> str:
    if abs(error) < SETTABLE / 2:
        return "right"
    return f"{amount(error, unit)} {'long' if error > 0 else 'short'}"


def _hold(case: Case, _: Spread | None) -> Iterator[str]:
    if case.need.is_within:
        yield f"Hold: lay on as it is, within {case.band}{_there(case)}."
    else:
        yield f"Hold: past {case.band} here, but {_coming(case)}: it comes back by itself."
        yield "Lay on as it is and read again at the next checkpoint."
    if case.ahead.joints and case.ahead.before and not case.checkpoint.control:
        yield REPLACES


def _there(case: Case) -> str:
    """Where what is within the band now will also be."""
    if not case.ahead.line:
        return " here"
    if case.bed is None:
        return f" here and, with the bed at any of the day's {case.day}, at {case.ahead.line}"
    return f" here and at {case.ahead.line}"


def _coming(case: Case) -> str:
    if case.bed is None:
        ends = [case.need.coming + side * case.need.doubt for side in (-1, 1)]
        told = " to ".join(_moved(end, case.unit) for end in ends)
        return f"over the day's {case.day} the liner makes {told} up to {case.ahead.line}"
    grows = "grows" if case.need.coming > 0 else "shrinks"
    bed = f"{case.bed:g} °{case.degree}"
    return f"liner at {bed} {grows} {amount(case.need.coming, case.unit)} up to {case.ahead.line}"


def _moved(by: float, unit: str) -> str:
    return f"{amount(by, unit)} {'longer' if by > 0 else 'shorter'}"


def _heat(case: Case) -> str:
    """What temperature explains of an error past the band, and when waiting would do."""
    if case.bed is None or case.explained is None or case.need.is_right_here:
        return ""
    rest, reference = case.need.error - case.explained, case.checkpoint.reference_temperature
    degrees, name = case.bed - reference, "heat" if case.bed > reference else "cold"
    part = amount(case.explained, case.unit)
    if abs(rest) <= case.need.band:
        side = "over" if degrees > 0 else "under"
        rise, window = f"{abs(degrees):g} °{case.degree} {side} {reference:g}", _window(case, rest)
        is_all = abs(case.explained) > abs(case.need.error)
        makes = f"{rise} would make even {part}" if is_all else f"{part} of it comes from {rise}"
        return f"It is the {name}: {makes}. Wait for the window {window} and read again, or do this now."
    at_reference = f"at {reference:g} °{case.degree} it would be {_off(rest, case.unit)}"
    if abs(case.explained) < SETTABLE / 2:
        return "It does not come from the bed's temperature."
    if (case.explained > 0) == (case.need.error > 0):
        return f"The {name} makes {part} of it; {at_reference}."
    return f"The {name} hides {part} of it; {at_reference}."


def _window(case: Case, rest: float) -> str:
    """Whole degrees at which the rest with the growth of that temperature stays in the band."""
    rate, reference = case.checkpoint.grows_per_degree, case.checkpoint.reference_temperature
    low, high = ((side * case.need.band - rest) / rate for side in (-1, 1))
    return _degrees(reference + low, reference + high, case.degree)


def _degrees(low: float, high: float, degree: str) -> str:
    first, last = ceil(low), floor(high)
    if first > last:
        return f"{low:.1f} to {high:.1f} °{degree}"
    return f"{first} to {last} °{degree}"


def _adjust(case: Case, spread: Spread | None) -> Iterator[str]:
    if spread is None:
        return
    verb, unit, line = "squeeze" if spread.ticks > 0 else "stretch", case.unit, case.ahead.line
    if abs(case.need.coming) + case.need.doubt >= SETTABLE / 2:
        yield f"{_sentence(_coming(case))}."
    over = "the next joint" if spread.joints == 1 else f"the next {spread.joints} joints"
    yield f"Adjust: spread {amount(spread.total, unit)} over {over}: {verb} {_sizes(spread, unit)}."
    yield f"{_sentence(line)}, {Units(unit).said(case.ahead.nominal)}, then is {_arrived(case, spread)}."
    yield REPLACES


def _arrived(case: Case, spread: Spread) -> str:
    """How the next control line will be."""
    left = case.need.arriving - spread.total
    if case.bed is None:
        return f"within {case.band} with the bed at any of the day's {case.day}"
    return _off(left, case.unit) + ("" if abs(left) < SETTABLE / 2 else f", within {case.band}")


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]


def _sizes(spread: Spread, unit: str) -> str:
    """`each by 1/64"`, `5 joints by 1/64" and 4 by 1/32", mixed evenly`, `2 of them by 1/64", evenly apart`."""
    sizes = [(count, amount(ticks * spread.tick, unit)) for count, ticks in spread.sizes]
    if spread.joints == 1:
        return f"it by {sizes[0][1]}"
    if sizes[0][0] == spread.joints:
        return f"each by {sizes[0][1]}"
    if len(sizes) == 1:
        return f"{sizes[0][0]} of them by {sizes[0][1]}, evenly apart"
    (many, by), (few, other) = sizes
    return f"{many} {'joint' if many == 1 else 'joints'} by {by} and {few} by {other}, mixed evenly"


def _relay(case: Case, _: Spread | None) -> Iterator[str]:
    need, ahead, unit = case.need, case.ahead, case.unit
    if need.is_right_here:
        yield f"Stop: what is laid is right, but {_coming(case)}, and {_at_most(case)}."
        yield f"Lay on only while the bed is {_reachable(case)}."
        return
    past = need.least - 2 * need.doubt
    if ahead.joints:
        yield f"Relay: {_at_most(case)}, and {amount(past, unit)} is needed to come within {case.band}."
    else:
        yield "Relay: no joint lies ahead that could take it."
    if ahead.before:
        yield f"Lift the liner and lay it again from {ahead.before}, or the last checkpoint before it that held."
    else:
        yield "Lift the liner and lay it again from the starting corner."


def _measure(case: Case, _: Spread | None) -> Iterator[str]:
    here = f"within {case.band} here" if case.need.is_right_here else f"past {case.band} here"
    yield f"Take the bed's temperature and check again before you lay on or change a joint. It is {here}, but"
    yield f"{_coming(case)}, more than can be met unseen."


def _at_most(case: Case) -> str:
    give = amount(most_given(case.need, case.ahead, TICKS[case.unit]), case.unit)
    joints = f"{case.ahead.joints} joints" if case.ahead.joints > 1 else "one joint"
    return f"{joints} up to {case.ahead.line} can give {give} together"


def _reachable(case: Case) -> str:
    """Bed temperatures at which the joints ahead still reach the next control line."""
    rate, reference = case.ahead.grows_per_degree, case.checkpoint.reference_temperature
    need, count = case.need, case.ahead.joints
    low = -need.band - count * case.ahead.stretch - need.error
    high = need.band + count * case.ahead.squeeze - need.error
    return f"at {_degrees(reference + low / rate, reference + high / rate, case.degree)}"
