"""Flemish bond: stretcher and header by turns, each header centred on the stretcher below."""

from app.brickwork.bond import ZERO, Bond, G, P, header, stretcher

BOND = Bond(
    "flemish",
    "Flemish bond",
    (stretcher(), header(P)),
    across=(3 * P / 2, ZERO),
    up=(3 * P / 4, G),
)
