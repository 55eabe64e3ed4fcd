"""The sheet plan: which sheets are laid on a panel, in which order, and what is left of each. See `sheet_plan`."""

from app.brickwork.layout import Layout
from app.brickwork.regions import Region
from app.liner.bare_strips import RegionLaid, with_strips
from app.liner.covers import covers
from app.liner.mould import Mould, mould
from app.liner.places import outlines, sheet_places, starts
from app.liner.region_sheets import FullSheets, sheets_on
from app.liner.values import Sheet, SheetPlan, SheetType
from app.panel.project import Liner

Laid = tuple[Region, Mould, list[Sheet]]


def sheet_plan(layout: Layout, liner: Liner) -> SheetPlan:
    """Lay sheets over every region of the face, the field first, as the panel's laying says.

    A sheet lies where at least one piece of brick does, and its trim is what of it lies on the region's share of the
    brick field: the margin is plain concrete and gets none. A joint whose own sheet would hold no brick goes to a sheet
    beside it (see `with_strips`). Each sheet has a flange along its two far edges, and lies
    over those of sheets before it. No sheets for an empty layout.
    """
    laying = layout.panel.laying
    away = starts(laying.corner)
    before, shares = 0, list[RegionLaid]()
    laid: list[Laid] = []
    for zone, (region, cover) in enumerate(zip(layout.regions, covers(layout), strict=True)):
        shape = mould(region.bond, region.size, liner.columns, liner.rows)
        places = sheet_places(layout, zone, liner, laying)
        full = outlines(layout, zone, shape, places)
        given = FullSheets(region.mark, full, places.column, places.row, away, before)
        laid.append((region, shape, sheets_on(cover, given, layout.panel.mark)))
        shares.append(RegionLaid(cover, laid[-1][2], shape.turn))
        before += len(laid[-1][2])
    sheets, strips = with_strips(shares, liner.lap.inches)
    return SheetPlan(
        sheets=tuple(sheets),
        placed=len(sheets),
        corner=laying.corner,
        direction=laying.direction,
        lap=liner.lap.inches,
        columns=liner.columns,
        rows=liner.rows,
        types=_types(laid),
        strips=strips,
    )


def placed_sheets(layout: Layout, liner: Liner) -> int:
    """How many sheets `sheet_plan` places, without cutting them: 0 for an empty layout."""
    zones = range(len(layout.regions))
    return sum(len(sheet_places(layout, zone, liner, layout.panel.laying).column) for zone in zones)


def _types(laid: list[Laid]) -> tuple[SheetType, ...]:
    """One type for each size and bond, its sheets counted over all regions."""
    grouped: dict[tuple[str, str], list[Laid]] = {}
    for region, shape, sheets in laid:
        grouped.setdefault((region.size.name, region.bond.name), []).append((region, shape, sheets))
    return tuple(_type(size, bond, same) for (size, bond), same in grouped.items())


def _type(size: str, bond: str, same: list[Laid]) -> SheetType:
    shape = same[0][1]
    return SheetType(
        size=size,
        bond=bond,
        repeats=shape.repeats,
        width=shape.size[0],
        height=shape.size[1],
        area=shape.area,
        placed=sum(len(sheets) for _, _, sheets in same),
    )
