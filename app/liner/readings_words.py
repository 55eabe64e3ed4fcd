"""Verdicts in the words of tape and hand: what was read, and what to do about it."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, floor

from app.lengths import format_length
from app.liner.readings_spread import TICKS, Need, most_ticks
from app.liner.readings_values import Ahead, Kind, Spread
from app.liner.values import Checkpoint

NO_TEMPERATURE = "Without the bed's temperature, what heat or cold adds ahead is not counted."


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


def amount(inches: float, unit: str) -> str:
    """A length without its sign, to the tick a hand can set: 1/64 in. or 0.5 mm."""
    ticks = round(abs(inches) / TICKS[unit])
    if not ticks:
        return f"under {amount(TICKS[unit], unit)}" if inches else format_length(0.0, unit)
    return f"{ticks / 2:g} mm" if unit == "mm" else format_length(ticks * TICKS[unit], unit, 64)


def said(case: Case, value: float, true: float, tape: float | None) -> str:
    """What was read, what it is by a steel tape of that temperature, and how far it is off."""
    corrected = ""
    if tape is not None and amount(value, case.unit) != amount(true, case.unit):
        corrected = f", {amount(true, case.unit)} by a steel tape at {tape:g} °{case.degree}"
    off = _off(case.need.error, case.unit)
    return f"{case.checkpoint.mark} reads {amount(value, case.unit)}{corrected}: {off}."


def instruction(case: Case, kind: Kind, spread: Spread | None) -> str:
    """What to do, in whole sentences: the heat's part where it matters, then what to change."""
    told = {"hold": _hold, "adjust": _adjust, "relay": _relay}[kind]
    heat = _heat(case) if kind != "hold" else ""
    counted = NO_TEMPERATURE if case.bed is None and case.ahead.joints else ""
    return " ".join(words for words in (heat, *told(case, spread), counted) if words)


def _off(error: float, unit: str) -> str:
    if abs(error) < TICKS[unit] / 2:
        return "right"
    return f"{amount(error, unit)} {'long' if error > 0 else 'short'}"


def _hold(case: Case, _: Spread | None) -> Iterator[str]:
    if case.need.is_right_here:
        there = f" here and at {case.ahead.line}" if case.ahead.line else " here"
        yield f"Hold: lay on as it is, within {case.band}{there}."
        return
    yield f"Hold: past {case.band} here, but {_coming(case)}: it comes back by itself."
    yield "Lay on as it is and read again at the next checkpoint."


def _coming(case: Case) -> str:
    grows = "grows" if case.need.coming > 0 else "shrinks"
    bed = f"{case.bed:g} °{case.degree}"
    return f"liner at {bed} {grows} {amount(case.need.coming, case.unit)} up to {case.ahead.line}"


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
    if abs(case.explained) < TICKS[case.unit] / 2:
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
    if abs(case.need.coming) >= TICKS[unit] / 2:
        yield f"{_sentence(_coming(case))}."
    over = "the next joint" if spread.joints == 1 else f"the next {spread.joints} joints"
    yield f"Adjust: spread {amount(spread.total, unit)} over {over}: {verb} {_sizes(spread, unit)}."
    left = case.need.arriving - spread.total
    there = f"{_sentence(line)}, {format_length(case.ahead.nominal, unit).removeprefix('≈ ')}, then is"
    yield f"{there} {_off(left, unit)}{'' if abs(left) < TICKS[unit] / 2 else f', within {case.band}'}."


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
    past = abs(need.arriving) - need.band
    if ahead.joints:
        yield f"Relay: {_at_most(case)}, and {amount(past, unit)} is needed to come within {case.band}."
    else:
        yield "Relay: no joint lies ahead that could take it."
    if ahead.before:
        yield f"Lift the liner and lay it again from {ahead.before}, or the last checkpoint before it that held."
    else:
        yield "Lift the liner and lay it again from the starting corner."


def _at_most(case: Case) -> str:
    tick = TICKS[case.unit]
    stretched, squeezed = most_ticks(case.ahead, tick)
    give = amount((squeezed if case.need.arriving > 0 else stretched) * tick, case.unit)
    joints = f"{case.ahead.joints} joints" if case.ahead.joints > 1 else "one joint"
    return f"{joints} up to {case.ahead.line} can give {give} together"


def _reachable(case: Case) -> str:
    """Bed temperatures at which the joints ahead still reach the next control line."""
    rate, reference = case.ahead.grows_per_degree, case.checkpoint.reference_temperature
    tick, need = TICKS[case.unit], case.need
    stretched, squeezed = most_ticks(case.ahead, tick)
    low, high = -need.band - stretched * tick - need.error, need.band + squeezed * tick - need.error
    return f"at {_degrees(reference + low / rate, reference + high / rate, case.degree)}"
