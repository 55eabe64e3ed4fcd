"""Readings: whoever does what the instructions say arrives within the band, or was told to lay again.

The bed here is laid joint by joint with its own arithmetic: where joints lie follows from the brick alone.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from math import ceil, floor, inf
from random import Random

import pytest
from shapes import rectangle

from app.brickwork.layout import Layout, lay_out
from app.lengths import Length
from app.liner.drift import drift
from app.liner.lines import held_lines
from app.liner.readings import judge
from app.liner.readings_ahead import joints_ahead
from app.liner.readings_checked import checked
from app.liner.readings_values import KINDS, Ahead, Reading, Verdict
from app.liner.tape import tapes
from app.liner.values import Checkpoint, Drift
from app.panel.laying import CORNERS, Laying
from app.panel.project import Day, Liner

LINER = Liner()
PANELS, SEQUENCES = 50, 20
BRICK, HEAD_JOINT, GAUGE, BED_JOINT = 7.625, 0.375, 8 / 3, 8 / 3 - 2.25
"""Modular brick: BIA Technical Notes 10B, Table 1; courses 3C = 8 in."""

STEEL = 6.45e-6
"""Growth of a steel tape per degree F, right at 68 F: surveying forum, *Steel Taping Puzzle*, printed example."""

NEAR = 1e-5
TICK = {"in": 1 / 64, "mm": 0.25 / 25.4}


@dataclass
class Bed:
    """One axis of a panel being laid: where its joints are, where it is read and held, and how far off it is."""

    joints: list[tuple[float, float]]
    points: list[Checkpoint]
    ends: list[float]
    liner: Liner
    is_celsius: bool
    unit: str
    error: float = 0.0
    at: float = 0.0
    changes: dict[float, float] = field(default_factory=dict)

    @property
    def each(self) -> float:
        """Inches that one joint may change: its give, and no more than a third of 3/8 in. (1/4 to 1/2 in.)."""
        joint = self.joints[0][1] - self.joints[0][0]
        return min(self.liner.joint_give.inches, joint / 3)

    def ahead(self, at: float) -> list[tuple[float, float]]:
        """Joints wholly between here and the next line that must be right."""
        end = next((end for end in self.ends if end > at + NEAR), at)
        return [joint for joint in self.joints if joint[0] > at - NEAR and joint[1] < end + NEAR]

    def lay_to(self, at: float, temperature: float) -> None:
        """Lays on at one temperature, with the joints changed as was last said."""
        rise = temperature - self.liner.reference_temperature
        self.error += (at - self.at) * self.liner.expansion_per_degree * rise
        self.error -= sum(by for start, by in self.changes.items() if self.at - NEAR < start < at - NEAR)
        self.at = at


def bed(rng: Random, layout: Layout, liner: Liner, found: Drift, axis: str, is_celsius: bool, unit: str) -> Bed:
    """Joints of running bond whose first brick lies in the face's lower left corner, as the tape meets them."""
    tape = next(tape for tape in tapes(layout, layout.panel.laying.corner) if tape.axis == axis)
    step, joint = (BRICK + HEAD_JOINT, HEAD_JOINT) if axis == "x" else (GAUGE, BED_JOINT)
    face = [(k * step - joint, k * step) for k in range(1, ceil(tape.reach / step - 1e-9))]
    joints = [(tape.reach - high, tape.reach - low) if tape.is_turned else (low, high) for low, high in face]
    points = [point for point in found.checkpoints if point.axis == axis]
    held = [at for at, _ in held_lines(layout, tape, liner)]
    ends = sorted({*(point.nominal for point in points if point.control), *held})
    return Bed(sorted(joints), points, ends, liner, is_celsius, unit, error=rng.gauss(0, 0.03))


def job(rng: Random) -> tuple[Layout, Liner, Day, bool, str]:
    """A random panel with openings, strips and fixings, its liner, its day and its units."""
    width, height = rng.randrange(96, 520), rng.randrange(40, 200)
    strips = [{"mark": "R1", "line": [[0, y], [width, y]], "width": 0.75} for y in rng.sample([21.5, 34], 1)]
    fixings = [{"line": [[x, 0], [x, height]], "by": "glue"} for x in rng.sample(range(20, width - 20), 2)]
    opening = {"mark": "W1", "rect": [width / 4, 8, rng.randrange(12, 40), 12.25]}
    more = {"strips": strips * rng.randrange(2), "fixings": fixings[: rng.randrange(3)]}
    panel = rectangle(width, height, openings=[opening] * rng.randrange(2), **more)
    is_celsius = rng.random() < 0.3
    liner = Liner(
        expansion_per_degree=rng.uniform(3e-5, 6e-5) * (1.8 if is_celsius else 1),
        reference_temperature=20 if is_celsius else 70,
        tolerance=Length.from_inches(rng.choice([1 / 16, 1 / 8, 3 / 16])),
        joint_give=Length.from_inches(rng.choice([0, 1 / 64, 1 / 32, 3 / 64, 1 / 4])),
    )
    day = Day(10, 45) if is_celsius else Day(50, 113)
    layout = lay_out(replace(panel, laying=Laying(rng.choice(CORNERS))))
    return layout, liner, day, is_celsius, rng.choice(["in", "mm"])


def shown(length: float, tape_temperature: float | None, is_celsius: bool) -> float:
    """What a steel tape of that temperature shows of a length."""
    if tape_temperature is None:
        return length
    fahrenheit = tape_temperature * 9 / 5 + 32 if is_celsius else tape_temperature
    return length / (1 + STEEL * (fahrenheit - 68))


def laid(rng: Random, at: Bed, layout: Layout, found: Drift, aheads: dict[str, Ahead], day: Day) -> Iterator[Verdict]:
    """Lays one axis from the hook to the far edge, reads at every checkpoint, and does what is said."""
    temperature, allowed = rng.uniform(day.bed_low, day.bed_high), inf
    for point in at.points:
        for end in [end for end in at.ends if at.at + NEAR < end < point.nominal + NEAR]:
            at.lay_to(end, temperature)
            assert abs(at.error) <= allowed + NEAR
            allowed, at.changes = inf, {}
            temperature = rng.uniform(day.bed_low, day.bed_high)
        at.lay_to(point.nominal, temperature)
        at.error += rng.choice([0, 0, 0.02, 0.08, 0.3]) * rng.gauss(0, 1)
        bed_read = rng.random() < 0.7
        tape = rng.choice([None, rng.uniform(day.bed_low, day.bed_high)])
        value = shown(point.nominal + at.error, tape, at.is_celsius)
        reading = Reading(point.mark, max(0.0, value), temperature if bed_read else None, tape)
        units = at.unit, "C" if at.is_celsius else "F"
        assert checked(reading, layout, at.liner, found, *units) == point
        verdict = judge(reading, point, aheads[point.mark], *units)
        if verdict.kind == "measure":
            assert not bed_read
            yield verdict
            verdict = judge(replace(reading, bed_temperature=temperature), point, aheads[point.mark], *units)
        assert_allowed(verdict, at, point)
        follow(verdict, at, point)
        allowed = promised(verdict, at)
        yield verdict


def promised(verdict: Verdict, at: Bed) -> float:
    """How far off the next control line may be: the band; no promise if it was told to lay again."""
    return inf if verdict.kind == "relay" else at.liner.tolerance.inches


def whole_ticks(at: Bed) -> float:
    """Inches that one joint may change by whole ticks."""
    return floor((at.each + 1e-9) / TICK[at.unit]) * TICK[at.unit]


def follow(verdict: Verdict, at: Bed, point: Checkpoint) -> None:
    """Does what the verdict says to the joints ahead; laying again makes the liner right here."""
    at.changes = {}
    if verdict.spread:
        joints = at.ahead(point.nominal)[: verdict.spread.joints]
        ticks = verdict.spread.each
        at.changes = {start: n * TICK[at.unit] for (start, _), n in zip(joints, ticks, strict=True)}
    if verdict.kind == "relay":
        at.error = 0.0


def assert_allowed(verdict: Verdict, at: Bed, point: Checkpoint) -> None:
    """No joint past its give or the next control line, ticks that make the total, and no relay without need."""
    joints, band = at.ahead(point.nominal), at.liner.tolerance.inches
    assert verdict.error == pytest.approx(at.error, abs=NEAR)
    arriving = verdict.error + verdict.coming
    if verdict.kind == "relay":
        best = max(0.0, abs(arriving) - len(joints) * whole_ticks(at)) - verdict.doubt
        assert best > band - NEAR
    if verdict.kind == "hold":
        assert abs(arriving) + verdict.doubt <= promised(verdict, at) + NEAR
        assert (
            abs(verdict.error) <= band + NEAR
            or abs(arriving) < TICK["in"]
            or len(joints) * whole_ticks(at) < TICK["in"]
        )
    assert (verdict.spread is not None) == (verdict.kind == "adjust")
    if verdict.spread:
        ticks = verdict.spread.each
        assert len(ticks) == verdict.spread.joints <= len(joints)
        assert sum(ticks) == verdict.spread.ticks == round(verdict.spread.total / TICK[at.unit]) != 0
        assert max(map(abs, ticks)) * TICK[at.unit] <= at.each + NEAR
        assert abs(verdict.spread.total) <= len(joints) * at.each + NEAR
        assert sum(n * size for n, size in verdict.spread.sizes) == abs(verdict.spread.ticks)
        assert_no_swing(verdict, ticks, len(joints), at.unit)


def assert_no_swing(verdict: Verdict, ticks: tuple[int, ...], joints: int, unit: str) -> None:
    """On the way no place is driven farther off than it is, or than the band."""
    error, worst = verdict.error, 0.0
    for n in ticks:
        error += verdict.coming / joints - n * TICK[unit]
        worst = max(worst, abs(error))
    assert worst <= max(abs(verdict.error), verdict.band) + 2 * TICK[unit]


def test_whoever_follows_the_instructions_is_right_at_the_next_control_line_or_was_told_to_lay_again() -> None:
    rng, told, sequences = Random(20251125), Counter[str](), 0
    for _ in range(PANELS):
        layout, liner, day, is_celsius, unit = job(rng)
        found = drift(layout, liner, day, "C" if is_celsius else "F")
        aheads = {point.mark: joints_ahead(layout, liner, found, point) for point in found.checkpoints}
        for _ in range(SEQUENCES):
            axis = rng.choice("xy")
            at = bed(rng, layout, liner, found, axis, is_celsius, unit)
            told.update(verdict.kind for verdict in laid(rng, at, layout, found, aheads, day))
            sequences += 1
    assert sequences == 1000
    assert min(told[kind] for kind in KINDS) > 200, told
