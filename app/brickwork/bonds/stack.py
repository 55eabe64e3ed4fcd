"""Stack bond: head joints in line."""

from app.brickwork.bond import ZERO, Bond, G, P, stretcher

BOND = Bond("stack", "Stack bond, head joints in line", (stretcher(),), across=(P, ZERO), up=(ZERO, G))
