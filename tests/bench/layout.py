"""Laying out B1, B2 and B3 against the plain loop and against Clipper, same pieces."""

import numpy as np
from bench import cases, rivals
from bench.timing import median_ms, report
from loop import assert_equal_to_loop

from app.brickwork.layout import lay_out
from app.panel.values import Panel


def same_pieces(panel: Panel) -> None:
    """Raise unless both rivals find the very pieces that the engine finds; the loop unit by unit."""
    assert_equal_to_loop(panel)
    ours = np.sort(rivals.piece_areas(lay_out(panel)))
    for name, rival in {"loop": rivals.loop, "clipper": rivals.clipper}.items():
        theirs = np.sort(rival(panel)())
        if len(ours) != len(theirs) or not np.allclose(ours, theirs, atol=1e-4):
            raise AssertionError(f"{name}: {len(theirs)} pieces, ours {len(ours)}")


def measure() -> dict[str, float]:
    """Medians in ms and the ratios to hold."""
    b1, b2, b3 = cases.b1(), cases.b2(), cases.b3()
    same_pieces(b1)
    same_pieces(b3)
    times = median_ms(
        {
            "B1 engine": (rivals.engine(b1), 31),
            "B1 per-unit shapely loop": (rivals.loop(b1), 5),
            "B1 clipper, one call": (rivals.clipper(b1), 7),
            "B2 engine": (rivals.engine(b2), 21),
            "B3 engine": (rivals.engine(b3), 31),
            "B3 per-unit shapely loop": (rivals.loop(b3), 5),
            "B3 clipper, one call": (rivals.clipper(b3), 7),
        }
    )
    ratios = {
        "B1 loop / engine, at least 90 x": times["B1 per-unit shapely loop"] / times["B1 engine"],
        "B1 clipper / engine, at least 12 x": times["B1 clipper, one call"] / times["B1 engine"],
        "B2 / B1 engine, at most 11 x": times["B2 engine"] / times["B1 engine"],
        "B3 clipper / engine x": times["B3 clipper, one call"] / times["B3 engine"],
    }
    return times | ratios


def main() -> None:
    report("layout", measure())
