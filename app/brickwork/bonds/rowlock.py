"""Rowlocks: headers stood on edge, side by side."""

from app.brickwork.bond import ZERO, Bond, P, S, rowlock

BOND = Bond("rowlock", "Rowlocks", (rowlock(),), across=(S, ZERO), up=(ZERO, P / 2))
