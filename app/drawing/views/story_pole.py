"""The pole by itself: every course's height from the panel's foot, heads and sills as notches with their words."""

from app.drawing.scales import Margins

WORDS = "STORY POLE, from the foot of the panel up; the same seen from outside and on the bed"

AROUND = Margins(left=8.0, right=80.0, bottom=26.0, top=13.0)

POLE_MM = 22.0
"""Width of the pole as drawn, mm."""
