"""English cross bond: English bond with every other stretcher course moved by half a stretcher."""

from app.brickwork.bond import ZERO, Bond, G, P, header, stretcher

BOND = Bond(
    "english-cross",
    "English cross bond",
    (stretcher(), header(P / 4, G), header(3 * P / 4, G)),
    across=(P, ZERO),
    up=(P / 2, 2 * G),
)
