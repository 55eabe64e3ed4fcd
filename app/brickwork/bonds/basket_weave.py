"""Basket weave: blocks of lying units by turns with blocks of standing ones.

Pairs with their broad faces out make a square block with every brick. Three stretchers are a square only where three
courses make a head module (modular, utility); elsewhere the blocks step past each other like a herringbone.
"""

from app.brickwork.bond import ZERO, Bond, Cell, G, P, sailor, shiner, stretcher

_THREE = 3 * G

BONDS = (
    Bond(
        "basket-weave",
        "Basket weave, two by two, broad faces out",
        (shiner(), shiner(ZERO, P / 2), sailor(P), sailor(3 * P / 2)),
        across=(2 * P, ZERO),
        up=(P, P),
    ),
    Bond(
        "basket-weave-3",
        "Basket weave, three stretchers by three soldiers",
        (
            *(stretcher(ZERO, k * G) for k in range(3)),
            *(Cell("soldier", P + k * G, _THREE - P, G, P) for k in range(3)),
        ),
        across=(_THREE, _THREE),
        up=(-P, P),
    ),
)
