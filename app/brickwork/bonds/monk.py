"""Monk bond: two stretchers and a header by turns, each header centred on the joint between two stretchers below."""

from app.brickwork.bond import ZERO, Bond, G, P, header, stretcher

BOND = Bond(
    "monk",
    "Monk bond, two stretchers to a header",
    (stretcher(), stretcher(P), header(2 * P)),
    across=(5 * P / 2, ZERO),
    up=(5 * P / 4, G),
)
