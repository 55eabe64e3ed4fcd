"""The face with its returns folded out into its plane."""

from collections.abc import Sequence

from app.brickwork.layout import Layout
from app.brickwork.returns import returns
from app.drawing.drawing import Drawing
from app.drawing.layers.pole import FAR_MM
from app.drawing.layers.returns import ROOM_MM, WORDS_MM
from app.drawing.scales import QUARTER_INCH, Margins, Scale
from app.drawing.scene import Scene
from app.drawing.views.assemble import assemble

WORDS = "FACE, seen from outside; returns folded out beside their edges"

LAYERS = ("concrete", "openings", "brick", "cuts", "unfolded", "letters", "returns", "orientation", "title", "key")
"""From the lowest up."""


def returns_view(
    layout: Layout,
    *,
    scale: Scale = QUARTER_INCH,
    unit: str = "in",
    title: str = "",
    layers: Sequence[str] = LAYERS,
) -> Drawing:
    """The face of one panel with every return beside its edge, depth written; lengths in words in `unit`.

    A panel without returns is drawn alone. Raises KeyError for a name that is no layer.
    """
    scene = Scene(layout, "face", scale, None, None, unit, title or f"{layout.panel.mark}, returns", WORDS)
    return assemble(scene, layers, _around(scene))


def _around(scene: Scene) -> Margins:
    """Room at either side for the deepest return there and its words, at the left at least that of all titles."""
    room = {"left": 0.0, "right": 0.0}
    for one in returns(scene.layout):
        beyond = one.depth - (scene.width - one.edge_at if one.hand == "right" else one.edge_at)
        room[one.hand] = max(room[one.hand], beyond / scene.mm(1) + WORDS_MM + ROOM_MM)
    return Margins(left=max(FAR_MM, room["left"]) + 3.0, right=room["right"] + 8.0, bottom=63.0, top=13.0)
