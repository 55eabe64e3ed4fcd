"""Where pieces of the saw list go, in the order in which they are laid."""

from collections.abc import Mapping

from app.order.saw_values import Seat


def seats_of(places: Mapping[tuple[str, str, int], int]) -> tuple[Seat, ...]:
    """How many pieces at each panel, zone and course: panels and zones as they come, their courses from the foot up."""
    first = {place: k for k, place in enumerate(dict.fromkeys(place[:2] for place in places))}
    panels = {panel: k for k, panel in enumerate(dict.fromkeys(panel for panel, _ in first))}
    rows = sorted(places, key=lambda place: (panels[place[0]], first[place[:2]], place[2]))
    return tuple(Seat(*place, places[place]) for place in rows)
