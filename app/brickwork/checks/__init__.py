"""Every check; a file in this folder with `check(layout, unit) -> Iterator[Finding]` adds to them."""

from collections.abc import Callable, Iterator
from importlib import import_module
from pkgutil import iter_modules

from app.brickwork.findings import Finding
from app.brickwork.layout import Layout

Check = Callable[[Layout, str], Iterator[Finding]]

CHECKS: tuple[Check, ...] = tuple(
    import_module(f"{__name__}.{entry.name}").check
    for entry in sorted(iter_modules(__path__), key=lambda entry: entry.name)
)


def findings(layout: Layout, unit: str = "in") -> tuple[Finding, ...]:
    """What all checks find on a face, check by check; nothing for an empty layout. Lengths in words in `unit`."""
    return tuple(finding for check in CHECKS for finding in check(layout, unit))
