"""The face frame follows the outline: its origin is the lower left of the bounding box."""

from dataclasses import replace

from app.lengths import Length
from app.panel.moving import moved, moved_point, moved_points, moved_region, moved_shape
from app.panel.values import Band, Brickwork, Panel, Plate, Zone


def reframed(panel: Panel) -> Panel:
    """The same panel seen from the lower left of its outline; all places and the base move, nothing in the face does.

    A panel whose bounding box starts at 0, 0, or that has no points, comes back as it is.
    """
    left = min((x.nm for x, _ in panel.outline), default=0)
    bottom = min((y.nm for _, y in panel.outline), default=0)
    if left == 0 and bottom == 0:
        return panel
    return _shifted(panel, Length(-left), Length(-bottom))


def _shifted(panel: Panel, dx: Length, dy: Length) -> Panel:
    return replace(
        panel,
        outline=moved_points(panel.outline, dx, dy),
        base=moved(panel.base, Length(-dy.nm)),
        field=_work(panel.field, dx, dy),
        openings=tuple(replace(one, shape=moved_shape(one.shape, dx, dy)) for one in panel.openings),
        strips=tuple(replace(strip, line=moved_points(strip.line, dx, dy)) for strip in panel.strips),
        plates=tuple(Plate(plate.mark, moved_region(plate.shape, dx, dy)) for plate in panel.plates),
        zones=tuple(_zone(zone, dx, dy) for zone in panel.zones),
        fixings=tuple(replace(fixing, line=moved_points(fixing.line, dx, dy)) for fixing in panel.fixings),
    )


def _zone(zone: Zone, dx: Length, dy: Length) -> Zone:
    region = zone.region if isinstance(zone.region, Band) else moved_region(zone.region, dx, dy)
    return Zone(zone.mark, region, _work(zone.work, dx, dy))


def _work(work: Brickwork, dx: Length, dy: Length) -> Brickwork:
    return work if work.origin is None else replace(work, origin=moved_point(work.origin, dx, dy))
