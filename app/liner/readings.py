"""Readings of the tape: what an error at a checkpoint means, and what to do before the next control line."""

from app.liner.readings_spread import TICKS, Need, most_given, spread_over
from app.liner.readings_values import Ahead, Kind, Reading, Spread, Verdict
from app.liner.readings_words import Case, instruction, said
from app.liner.tape import fahrenheit, steel_tape_correction
from app.liner.values import Checkpoint
from app.panel.tolerance import TOLERANCE


def judge(
    reading: Reading, checkpoint: Checkpoint, ahead: Ahead, length_unit: str = "in", temperature_unit: str = "F"
) -> Verdict:
    """The verdict on a reading that `checked` let through; lengths in words in `length_unit`.

    The whole error counts, warm or cold: brick is placed and concrete cast at about this temperature, and what is cast
    does not come back when the bed cools. So is what the liner ahead will add at this temperature. The part of the
    error that temperature explains only tells whether waiting or shade would do as well. Verdicts: `hold`, within the
    band here and, laid on as it is, at the next control line; `adjust`, joints ahead squeezed or stretched so that the
    next control line is right; `relay`, no such change reaches the band. Without a bed temperature nothing is
    explained, and those verdicts are given only where they hold at every bed temperature of the day; else `measure`.

    Arithmetic, of a joint line 96 in. from the corner, read as 96 3/16 in. at 94 F; liner of 4.5e-5 per F at 70 F,
    band 1/8 in., next control line 72 in. or 9 joints on: error 0.1875; explained 96 x 4.5e-5 x 24 = 0.1037, rest
    0.0838, so it is the heat; coming 72 x 4.5e-5 x 24 = 0.0778; arriving 0.2653, nearest to 17/64 in.; 9 joints take
    that as 8 by 2/64 and 1 by 1/64, and 0.0004 in. stay.
    """
    true = true_value(reading, temperature_unit)
    explained, coming, doubt = _temperature(reading, checkpoint, ahead)
    need = Need(true - checkpoint.nominal, coming, checkpoint.band, doubt)
    kind, spread = _decided(need, ahead, TICKS[length_unit])
    case = Case(checkpoint, ahead, need, reading.bed_temperature, explained, length_unit, temperature_unit)
    return Verdict(
        mark=checkpoint.mark,
        axis=checkpoint.axis,
        nominal=checkpoint.nominal,
        kind=kind,
        error=need.error,
        explained=explained,
        rest=None if explained is None else need.error - explained,
        coming=coming,
        doubt=doubt,
        band=checkpoint.band,
        spread=spread,
        said=said(case, reading.value, true, reading.tape_temperature),
        instruction=instruction(case, kind, spread),
    )


def _temperature(reading: Reading, checkpoint: Checkpoint, ahead: Ahead) -> tuple[float | None, float, float]:
    """The error that the bed's temperature explains, what it adds up to the next control line, and how far that may
    be off where nobody took it and any of the day's may be so; inches."""
    if reading.bed_temperature is None:
        middle = (checkpoint.bed_low + checkpoint.bed_high) / 2 - checkpoint.reference_temperature
        half = (checkpoint.bed_high - checkpoint.bed_low) / 2
        return None, ahead.grows_per_degree * middle, abs(ahead.grows_per_degree * half)
    degrees = reading.bed_temperature - checkpoint.reference_temperature
    return checkpoint.grows_per_degree * degrees, ahead.grows_per_degree * degrees, 0.0


def true_value(reading: Reading, temperature_unit: str = "F") -> float:
    """The length that was read, right by the steel tape's own growth where its temperature was taken; inches."""
    tape = reading.tape_temperature
    if tape is None:
        return reading.value
    return steel_tape_correction(reading.value, fahrenheit(tape, temperature_unit))


def differs(one: Reading, other: Reading, checkpoint: Checkpoint, temperature_unit: str = "F") -> bool:
    """Whether two readings at one checkpoint differ by more than its band.

    Both right by the steel tape; and where both bed temperatures are known, less what temperature explains, as a liner
    that has warmed up in between may well read longer.
    """
    values = [true_value(each, temperature_unit) for each in (one, other)]
    if one.bed_temperature is not None and other.bed_temperature is not None:
        values[1] -= checkpoint.grows_per_degree * (other.bed_temperature - one.bed_temperature)
    return abs(values[0] - values[1]) > checkpoint.band + TOLERANCE


def _decided(need: Need, ahead: Ahead, tick: float) -> tuple[Kind, Spread | None]:
    if need.is_within:
        return "hold", None
    spread = spread_over(need, ahead, tick)
    if spread is None:
        is_hopeless = need.least - 2 * need.doubt > most_given(need, ahead, tick) + TOLERANCE
        return ("relay" if is_hopeless or not need.doubt else "measure"), None
    return ("adjust", spread) if spread.ticks else ("hold", None)
