"""Sailors: units stood on end, broad face out, side by side."""

from app.brickwork.bond import ZERO, Bond, P, sailor

BOND = Bond("sailor", "Sailors", (sailor(),), across=(P / 2, ZERO), up=(ZERO, P))
