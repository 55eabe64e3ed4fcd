"""Every bond by name; a file in this folder with `BOND` or `BONDS` adds to them."""

from importlib import import_module
from pkgutil import iter_modules

from app.brickwork.bond import Bond


def _found() -> dict[str, Bond]:
    bonds: dict[str, Bond] = {}
    for entry in sorted(iter_modules(__path__), key=lambda entry: entry.name):
        module = import_module(f"{__name__}.{entry.name}")
        for bond in getattr(module, "BONDS", ()) or (module.BOND,):
            bonds[bond.name] = bond
    return bonds


BONDS = _found()
