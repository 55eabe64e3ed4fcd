"""Medians measured side by side in one run, as a table and as JSON."""

import gc
import json
import statistics
from collections.abc import Callable
from pathlib import Path
from time import perf_counter
from typing import Any

RESULTS = Path(__file__).parent / "results"


def median_ms(runs: dict[str, tuple[Callable[[], Any], int]]) -> dict[str, float]:
    """Median milliseconds of each callable over its number of rounds (at least 5), after one warm-up."""
    times: dict[str, list[float]] = {name: [] for name in runs}
    for run, _ in runs.values():
        run()
    gc.collect()
    # By turns, so that a slow moment of the machine falls on all of them.
    for turn in range(max(max(5, rounds) for _, rounds in runs.values())):
        for name, (run, rounds) in runs.items():
            if turn < max(5, rounds):
                times[name].append(_once(run))
    return {name: statistics.median(found) for name, found in times.items()}


def _once(run: Callable[[], Any]) -> float:
    start = perf_counter()
    run()
    return (perf_counter() - start) * 1000


def report(name: str, rows: dict[str, float], unit: str = "ms") -> None:
    """Print one table and write it as JSON beside the others."""
    print(f"\n{name}")
    for label, value in rows.items():
        print(f"  {label:<44}{value:>12.2f} {unit if 'x' not in label.split()[-1:] else ''}")
    RESULTS.mkdir(exist_ok=True)
    (RESULTS / f"{name}.json").write_text(json.dumps(rows, indent=1))
