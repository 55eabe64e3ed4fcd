"""English bond: courses of stretchers and of headers by turns, headers centred on stretchers and on their joints."""

from app.brickwork.bond import ZERO, Bond, G, P, header, stretcher

BOND = Bond(
    "english",
    "English bond",
    (stretcher(), header(P / 4, G), header(3 * P / 4, G)),
    across=(P, ZERO),
    up=(ZERO, 2 * G),
)
