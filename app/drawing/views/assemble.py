"""A drawing put together from named layers."""

from collections.abc import Sequence

from app.drawing.drawing import Drawing
from app.drawing.layers import layer
from app.drawing.scales import Margins
from app.drawing.scene import Scene

AROUND = Margins(left=44.0, right=28.0, bottom=63.0, top=13.0)
"""Room for the pole at the left, checkpoints at the right, tape and words below, the top edge's name above, mm."""


def assemble(scene: Scene, names: Sequence[str], margins: Margins = AROUND) -> Drawing:
    """The scene with the named layers, the first lowest; raises KeyError for a name that is no layer."""
    return Drawing(
        title=scene.title,
        words=scene.words,
        width=scene.width,
        height=scene.height,
        margins=margins,
        scale=scene.scale,
        layers=tuple(layer(name, scene) for name in names),
    )
