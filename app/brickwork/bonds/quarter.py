"""Quarter bond: a lap of a quarter, raked (always the same way) or alternating."""

from app.brickwork.bond import ZERO, Bond, G, P, stretcher

BONDS = (
    Bond("quarter-raked", "Quarter bond, raked", (stretcher(),), across=(P, ZERO), up=(P / 4, G)),
    Bond(
        "quarter-alternating",
        "Quarter bond, alternating",
        (stretcher(), stretcher(P / 4, G)),
        across=(P, ZERO),
        up=(ZERO, 2 * G),
    ),
)
