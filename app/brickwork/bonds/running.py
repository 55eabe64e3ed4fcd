"""Running bond: each course half a module on from the one below."""

from app.brickwork.bond import ZERO, Bond, G, P, stretcher

BOND = Bond("running", "Running bond, half lap", (stretcher(),), across=(P, ZERO), up=(P / 2, G))
