"""Soldiers: stretchers stood on end, side by side."""

from app.brickwork.bond import ZERO, Bond, P, S, soldier

BOND = Bond("soldier", "Soldiers", (soldier(),), across=(S, ZERO), up=(ZERO, P))
