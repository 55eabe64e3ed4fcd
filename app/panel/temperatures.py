"""Temperatures that can be: of a bed, of a steel tape, of the store in which liner lies."""

LIMITS = {"F": (-60, 250), "C": (-51, 121)}
"""Lowest and highest, colder and hotter than any of these (common practice); C to the nearest degree."""
