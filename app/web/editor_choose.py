"""Which card belongs to a thing's key."""

from collections.abc import Callable, Sequence
from functools import partial

from app.brickwork.layout import Layout
from app.documents.project_file import sizes_of
from app.web.editor_bonds import bond_options
from app.web.editor_card_panel import panel_card
from app.web.editor_card_several import several_card
from app.web.editor_card_things import fixing_card, opening_card, outline_card, plate_card, strip_card, zone_card
from app.web.editor_cards import Card, Stock
from app.web.editor_things import things_of
from app.workflow.loading import LoadedPanel


def card_of(loaded: LoadedPanel, layout: Layout, chosen: Sequence[str] = ()) -> Card:
    """The card of the thing with a key, or of several openings; the panel's own for none and where it is gone."""
    marks = {f"openings/{one.mark}": one.mark for one in loaded.panel.openings}
    if len(chosen) > 1 and all(one in marks for one in chosen):
        return several_card(tuple(marks[one] for one in chosen))
    key = chosen[0] if chosen else ""
    project, panel, unit = loaded.project, loaded.panel, loaded.project.length_unit
    stock = Stock(sizes_of(project), bond_options(project, loaded.project_id), unit)
    cards: dict[str, Callable[[], Card]] = {"outline": lambda: outline_card(panel, unit)}
    cards |= {f"openings/{item.mark}": partial(opening_card, panel, item, stock) for item in panel.openings}
    cards |= {f"zones/{item.mark}": partial(zone_card, panel, item, stock) for item in panel.zones}
    cards |= {f"strips/{item.mark}": partial(strip_card, item, unit) for item in panel.strips}
    cards |= {f"plates/{item.mark}": partial(plate_card, item, unit) for item in panel.plates}
    cards |= {f"fixings/{k}": partial(fixing_card, k, item, unit) for k, item in enumerate(panel.fixings)}
    return cards[key]() if key in cards else panel_card(loaded.wall, panel, things_of(layout, unit), stock)
