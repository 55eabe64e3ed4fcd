"""Joints that are asked to give in a bond whose joints cannot: nothing was fitted, so somebody should know."""

from collections.abc import Iterator

from app.brickwork.findings import Finding
from app.brickwork.fit_grids import course_grid, head_joint_grid
from app.brickwork.fit_lines import Grid1
from app.brickwork.layout import Layout

_WAYS = {
    "courses": "Take a bond in level courses of one height, or do not ask bed joints to give.",
    "heads": "Take a bond of level units all one length, or do not ask head joints to give.",
}


def check(layout: Layout, unit: str) -> Iterator[Finding]:
    """One finding each for bed and head joints asked to give in vain, at the lower left of the brick, with the reason;
    nothing for an empty layout."""
    del unit
    if layout.field.is_empty:
        return
    fit, args = layout.panel.fit, (layout.bond, layout.size, layout.origin)
    x, y = (float(side) for side in layout.field.bounds[:2])
    for name, is_asked, grid_of in (("courses", fit.courses, course_grid), ("heads", fit.heads, head_joint_grid)):
        grid = grid_of(*args) if is_asked else None
        if grid is not None and not isinstance(grid, Grid1):
            text = f"{grid[0].upper()}{grid[1:]}. {_WAYS[name]}"
            yield Finding("fit-not-offered", "warning", x, y, text, f"fit {name}")
