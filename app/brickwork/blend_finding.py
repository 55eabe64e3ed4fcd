"""What is found about the colours of a face: groups of one colour that are larger than asked."""

from collections.abc import Iterator

import numpy as np

from app.brickwork.clusters import Colours, clusters, neighbours
from app.brickwork.findings import Finding
from app.brickwork.layout import Layout
from app.brickwork.touching import touching
from app.panel.blend import Blend


def blend_findings(layout: Layout, blend: Blend, colours: Colours) -> Iterator[Finding]:
    """One finding for all groups above `blend.cluster`, at a brick of the largest; none for fewer than two colours."""
    if len(blend.colours) < 2 or not len(layout.units):
        return
    now = clusters(neighbours(len(colours), touching(layout)), colours)
    groups = int(np.count_nonzero(now.size > blend.cluster))
    if groups:
        units, brick = layout.units, int(now.standing.argmax())
        x, y = units.x[brick] + units.width[brick] / 2, units.y[brick] + units.height[brick] / 2
        text = _words(blend, groups, int(now.size.max()), int(colours[brick]))
        yield Finding("blend-cluster", "note", float(x), float(y), text, about="blend")


def _words(blend: Blend, groups: int, largest: int, colour: int) -> str:
    name = blend.colours[colour].name
    found = "1 group" if groups == 1 else f"{groups} groups"
    way_out = f"allow groups of {largest}, or give {name} less than {blend.colours[colour].percent:g} percent"
    return (
        f"{found} of one colour above {blend.cluster} bricks, the largest {largest} of {name}: that is what was "
        f"reached with these shares, there may be better; {way_out}."
    )
