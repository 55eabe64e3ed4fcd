"""Header bond: courses of headers alone, each half a header on from the one below."""

from app.brickwork.bond import ZERO, Bond, G, P, header

BOND = Bond("header", "Header bond, headers only", (header(),), across=(P / 2, ZERO), up=(P / 4, G))
