"""Castcourse: layout of thin-brick faces on tilt-up and precast concrete panels."""
