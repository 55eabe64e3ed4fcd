"""Third bond: a lap of a third, raked (always the same way) or alternating."""

from app.brickwork.bond import ZERO, Bond, G, P, stretcher

BONDS = (
    Bond("third-raked", "Third bond, raked", (stretcher(),), across=(P, ZERO), up=(P / 3, G)),
    Bond(
        "third-alternating",
        "Third bond, alternating",
        (stretcher(), stretcher(P / 3, G)),
        across=(P, ZERO),
        up=(ZERO, 2 * G),
    ),
)
