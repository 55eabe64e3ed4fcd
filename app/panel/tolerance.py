"""The one tolerance of the engine."""

TOLERANCE = 1e-6
"""Inches (25 nm): two lines closer than this are one line; far under 1/64 in., far over float round-off at 100 ft."""
