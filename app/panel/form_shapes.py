"""Shapes as a form gives them: the field `shape` names the kind, and each kind has fields of its own."""

from app.panel.form import Form
from app.panel.shapes import Arch, Circle, Polygon, Rect, Shape
from app.panel.values import Band

OPENING_SHAPES = ("rect", "circle", "arch", "polygon")
PLATE_SHAPES = ("rect", "polygon")
ZONE_SHAPES = ("rect", "band", "polygon")


def opening_shape(form: Form) -> Shape:
    """rect: x, y, width, height; circle: x, y, radius; arch: x, y, width, height, rise; polygon: points."""
    match form.choice("shape", OPENING_SHAPES):
        case "circle":
            return Circle(form.length("x"), form.length("y"), form.length("radius"))
        case "arch":
            box = _rect(form)
            return Arch(box.x, box.y, box.width, box.height, form.length("rise"))
        case "polygon":
            return Polygon(form.points("points"))
        case "rect":
            return _rect(form)
    return Polygon(())


def zone_region(form: Form) -> Rect | Polygon | Band:
    """rect: x, y, width, height; band: course, courses; polygon: points."""
    match form.choice("shape", ZONE_SHAPES):
        case "band":
            return Band(form.number("course"), form.number("courses"))
        case "rect":
            return _rect(form)
        case "polygon":
            return Polygon(form.points("points"))
    return Polygon(())


def plate_shape(form: Form) -> Rect | Polygon:
    """rect: x, y, width, height; polygon: points."""
    match form.choice("shape", PLATE_SHAPES):
        case "rect":
            return _rect(form)
        case "polygon":
            return Polygon(form.points("points"))
    return Polygon(())


def _rect(form: Form) -> Rect:
    return Rect(form.length("x"), form.length("y"), form.length("width"), form.length("height"))
