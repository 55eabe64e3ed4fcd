"""Faults of openings: one by one, one against another, and all against the panel."""

import shapely

from app.panel.check_outline import is_thin
from app.panel.check_shapes import outside_faults, shape_faults, shape_path
from app.panel.faults import Fault
from app.panel.geometry import shape_polygon
from app.panel.values import Opening
from app.panel.wording import said_size

Sound = dict[int, shapely.Polygon]


def opening_faults(openings: tuple[Opening, ...], face: shapely.Polygon | None, unit: str) -> list[Fault]:
    """Every fault of the openings; `face` is the sound outline, None when there is none."""
    alone = {k: shape_faults(opening.shape, f"openings[{k}]", unit) for k, opening in enumerate(openings)}
    sound = {k: shape_polygon(openings[k].shape) for k, faults in alone.items() if not faults}
    faults = [fault for found in alone.values() for fault in found]
    faults += _overlaps(openings, sound, unit)
    if face is None:
        return faults
    for k in sound:
        faults += outside_faults(openings[k].shape, face, f"openings[{k}]", unit)
    return faults + _nothing_left(openings, sound, face, unit)


def _overlaps(openings: tuple[Opening, ...], sound: Sound, unit: str) -> list[Fault]:
    """A fault at the later of two openings that share more than an edge."""
    numbers, polygons = list(sound), list(sound.values())
    pairs = shapely.STRtree(polygons).query(polygons, predicate="intersects") if polygons else None
    faults = []
    for a, b in sorted((int(a), int(b)) for a, b in pairs.T if a < b) if pairs is not None else ():
        shared = polygons[a].intersection(polygons[b])
        if not is_thin(shared):
            faults.append(_overlap(openings, numbers[a], numbers[b], shared, unit))
    return faults


def _overlap(openings: tuple[Opening, ...], a: int, b: int, shared: shapely.Geometry, unit: str) -> Fault:
    x0, y0, x1, y1 = shared.bounds
    found = f"{openings[b].mark} overlapping {openings[a].mark} by {said_size(x1 - x0, y1 - y0, unit)}"
    return Fault(shape_path(openings[b].shape, f"openings[{b}]"), found, "openings that do not overlap")


def _nothing_left(openings: tuple[Opening, ...], sound: Sound, face: shapely.Polygon, unit: str) -> list[Fault]:
    if not sound or not is_thin(face.difference(shapely.union_all(list(sound.values())))):
        return []
    x0, y0, x1, y1 = face.bounds
    whole = [k for k, polygon in sound.items() if is_thin(face.difference(polygon))]
    path = shape_path(openings[whole[0]].shape, f"openings[{whole[0]}]") if whole else "openings"
    return [Fault(path, f"the whole panel of {said_size(x1 - x0, y1 - y0, unit)} taken", "some of the panel left")]
