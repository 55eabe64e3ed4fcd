"""Herringbone: a lying and a standing stretcher, each ending against the other's side; square or turned 45 degrees."""

from app.brickwork.bond import ZERO, Bond, Cell, P, S, soldier

_CELLS = (Cell("stretcher", ZERO, ZERO, P, S), soldier(P, S - P))

BONDS = (
    Bond("herringbone-90", "Herringbone, square", _CELLS, across=(S, S), up=(-P, P)),
    Bond("herringbone-45", "Herringbone, at 45 degrees", _CELLS, across=(S, S), up=(-P, P), turn=45.0),
)
