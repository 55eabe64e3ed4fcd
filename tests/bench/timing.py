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
    found = {}
    for name, (run, rounds) in runs.items():
        run()
        gc.collect()
        found[name] = statistics.median(_once(run) for _ in range(max(5, rounds)))
    return found


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
