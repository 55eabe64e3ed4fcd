"""Printing the submittal of 50 panels like B1: time from files to bytes, size, memory, same pieces on the sheets."""

import resource
import sys
from time import perf_counter

from bench.timing import report
from pdf_text import page_texts
from submittals import ISSUE, computed, panels_like_b1

from app.documents.submittal import AT_ONCE, submittal_pdf

PANELS = 50
STEPS_OF_SETTING = PANELS // AT_ONCE
SECONDS, MEGABYTES, MEMORY_MEGABYTES = 12, 10, 600
COUNTS = "Whole 5144, trimmed 785, of these small 177;"
"""What the reference panel's layout holds; each panel's elevation must say it."""


def same_counts(pdf: bytes) -> None:
    """Raise unless every panel's elevation is printed with the reference panel's counts."""
    told = sum(f"elevation {COUNTS}" in text for text in page_texts(pdf))
    if told != PANELS:
        raise AssertionError(f"{told} elevations with {COUNTS!r}, expected {PANELS}")


def peak_megabytes() -> float:
    """The most memory that this process has held so far, MB."""
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return peak / 1024 / (1024 if sys.platform == "darwin" else 1)


def measure() -> dict[str, float]:
    """Seconds, megabytes and the steps of progress told."""
    project = panels_like_b1(PANELS)
    steps: list[float] = []
    start = perf_counter()
    results = computed(project)
    laid = perf_counter()
    pdf = submittal_pdf(project, results, ISSUE, progress=lambda _done, _steps: steps.append(perf_counter()))
    end = perf_counter()
    peak = peak_megabytes()
    same_counts(pdf)
    if len(steps) != PANELS + STEPS_OF_SETTING:
        raise AssertionError(f"progress told {len(steps)} times, expected {PANELS + STEPS_OF_SETTING}")
    return {
        "computing 50 panels, s": laid - start,
        "drawing them, s": steps[PANELS - 1] - laid,
        "setting the sheets, s": end - steps[PANELS - 1],
        f"whole, from files to PDF, at most {SECONDS}, s": end - start,
        f"size, at most {MEGABYTES}, MB": len(pdf) / 1e6,
        f"memory at most {MEMORY_MEGABYTES}, MB": peak,
    }


def main() -> None:
    report("submittal", measure(), unit="")
