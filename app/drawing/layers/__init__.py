"""Every layer; a file in this folder with `FRAME` and `marks(scene)` adds to them.

`FRAME` "face": marks are given in the face frame, and the bed view mirrors them. "view": the layer builds its marks in
the frame of the view itself (the pole, the tape and the words stay where they are read).
"""

from collections.abc import Callable, Iterator
from importlib import import_module
from pkgutil import iter_modules
from types import ModuleType

from app.drawing.marks import Layer, Mark
from app.drawing.mirror import mirrored
from app.drawing.scene import Scene

Marks = Callable[[Scene], Iterator[Mark]]

LAYERS: dict[str, ModuleType] = {
    entry.name: import_module(f"{__name__}.{entry.name}")
    for entry in sorted(iter_modules(__path__), key=lambda e: e.name)
}


def layer(name: str, scene: Scene) -> Layer:
    """One layer in the frame of its view; raises KeyError for a name that is no layer."""
    module = LAYERS[name]
    marks = tuple(module.marks(scene))
    if scene.frame == "bed" and module.FRAME == "face":
        marks = tuple(mirrored(mark, scene.width) for mark in marks)
    return Layer(name, marks)
