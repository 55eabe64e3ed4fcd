"""What the list of changes says of an edit."""

import pytest
from panels import FULL

from app.brickwork.bonds import BONDS
from app.brickwork.sizes import CATALOGUE
from app.panel.edits import edit_from

GOLDEN = [
    ("move_opening", "opening=W2 dy=5/8", 'Move W2 5/8" up'),
    ("move_opening", "opening=W2 dx=-1 dy=-0.625", 'Move W2 1" left and 5/8" down'),
    ("move_opening", "opening=W2", "Move W2 by nothing"),
    ("reshape_opening", "opening=W1 side=top_left dx=4", 'Move top left of W1 4" right'),
    ("add_opening", "use=window shape=rect x=9 y=9 width=9 height=9", "Add window W2"),
    ("add_opening", "shape=circle x=9 y=9 radius=9", "Add opening O1"),
    ("add_opening", "mark=H1 use=hatch shape=circle x=9 y=9 radius=9", "Add hatch H1"),
    (
        "place_opening",
        "opening=W1 shape=rect x=60 y=96 width=48 height=64",
        "Set W1 to 4'-0\" x 5'-4\" at 5'-0\", 8'-0\"",
    ),
    ("place_opening", "opening=V1 shape=circle x=60 y=96 radius=9", 'Set V1 to radius 9" at 5\'-0", 8\'-0"'),
    (
        "place_opening",
        "opening=A1 shape=arch x=60 y=96 width=48 height=64 rise=8",
        'Set A1 to 4\'-0" x 5\'-4", rise 8", at 5\'-0", 8\'-0"',
    ),
    ("rename_opening", "opening=W1 mark=W9 use=window", "Rename W1 to W9"),
    ("rename_opening", "opening=W1 mark=W1 use=door", "Set use of W1 to door"),
    ("rename_opening", "opening=W1 mark=W1", "Set use of W1 to none"),
    ("remove_opening", "opening=W1", "Remove W1"),
    ("set_outline", "width=360 height=384", "Set outline to 30'-0\" x 32'-0\"; all edges back to the margin"),
    ("set_outline", "points=0,0;9,0;9,9;5,12;0,9", 'Set outline to 5 points, 9" x 1\'-0"'),
    ("move_point", "point=2 x=360 y=302", "Move point 2 to 30'-0\", 25'-2\""),
    ("move_corner", "thing=openings/L1 point=1 x=360 y=302", "Move point 1 of L1 to 30'-0\", 25'-2\""),
    ("move_edge", "thing=outline edge=1 dx=2", 'Move edge 1 of outline 2" right'),
    ("move_line", "thing=strips/R1 dy=2.25", 'Move R1 2 1/4" up'),
    ("move_line", "thing=fixings/0 dx=-1", 'Move fixing 1 1" left'),
    ("align_openings", "marks=W1,V1 line=sill", "Line up sills of V1 with W1"),
    ("distribute_openings", "marks=W1,D1,V1 way=across", "Space W1, D1, V1 evenly across"),
    ("copy_openings", "marks=W1 dx=48 count=3", "Copy W1 3 times 4'-0\" right"),
    ("mirror_openings", "marks=W1", "Mirror W1 about the panel's middle"),
    ("mirror_openings", "marks=W1 axis=60", "Mirror W1 about a line at 5'-0\""),
    ("grid_openings", "opening=W1 columns=3 rows=2", "Repeat W1 in 3 columns and 2 rows"),
    ("set_dimension", "thing=openings/W1 dimension=width length=48.5", "Set width of W1 to 4'-0 1/2\""),
    ("put_row", "thing=openings/W1 kind=opening mark=W1 x=9 y=9 width=9 height=9", "Set W1"),
    ("put_row", "kind=opening mark=W9 x=9 y=9 width=9 height=9", "Add W9"),
    ("move_zone", "zone=S1 dy=-1", 'Move zone S1 1" down'),
    ("set_rise", "opening=A1 rise=9", 'Set rise of A1 to 9"'),
    ("place_fixing", "fixing=0 line=9,0;9,99 by=glue", 'Set fixing 1 by glue, 9", 0" to 9", 8\'-3"'),
    ("add_point", "edge=1", "Add point on edge 1 at its middle"),
    ("remove_point", "point=3", "Remove point 3"),
    ("set_panel", "mark=N2 thickness=8", 'Set thickness to 8"'),
    ("set_panel", "mark=N3 thickness=7.25 base=12", "Set mark to N3, base to 1'-0\""),
    ("set_margin", "margin=1/2", 'Set margin to 1/2"'),
    ("set_margin", "", "Set margin to one head joint"),
    ("set_edge", "edge=1 treatment=return depth=3.625", 'Set edge 1 to return 3 5/8" deep'),
    ("set_edge", "edge=1 treatment=margin margin=2", 'Set edge 1 to margin of 2"'),
    ("set_brickwork", "part=field size=modular bond=flemish", "Set bond of field to flemish"),
    ("set_brickwork", "part=S1 size=norman bond=soldier", "Set brick of S1 to norman"),
    ("set_brickwork", "part=field size=norman bond=stack", "Set field to norman in stack"),
    ("set_origin", "part=field x=3/8 y=3/8", 'Start bond of field at 3/8", 3/8"'),
    ("set_origin", "part=S1", "Start bond of S1 at its lower left"),
    ("add_zone", "shape=band course=6 courses=3 size=modular bond=soldier", "Add zone Z1 in soldier"),
    ("place_zone", "zone=B1 shape=band course=6 courses=3", "Set B1 to courses 6 to 8"),
    ("place_zone", "zone=B1 shape=band course=6 courses=1 mark=B2", "Set B1 to course 6, renamed B2"),
    ("remove_zone", "zone=S1", "Remove zone S1"),
    ("soldier_band", "opening=A1", "Add soldier band S2 over A1"),
    ("add_strip", "line=0,9;9,9 width=3/4", 'Add strip R2, 3/4" wide'),
    ("place_strip", "strip=R1 line=0,9;9,9 width=3/4", 'Set R1 to 3/4" wide, 0", 9" to 9", 9"'),
    ("remove_strip", "strip=R1", "Remove strip R1"),
    ("add_plate", "shape=rect x=9 y=9 width=9 height=9", "Add plate P2"),
    (
        "place_plate",
        "plate=P1 shape=rect x=60 y=96 width=8 height=9 mark=E1",
        'Set P1 to 8" x 9" at 5\'-0", 8\'-0", renamed E1',
    ),
    ("move_plate", "plate=P1 dx=1", 'Move plate P1 1" right'),
    ("remove_plate", "plate=P1", "Remove plate P1"),
    ("add_fixing", "line=9,0;9,99 by=glue", 'Add fixing line by glue, 9", 0" to 9", 8\'-3"'),
    ("add_fixings", "lines=9,0;9,99|0,9;99,9 by=glue", "Add 2 fixing lines by glue"),
    ("add_fixings", "lines=9,0;9,99", "Add 1 fixing line"),
    ("remove_fixing", "fixing=0", "Remove fixing 1"),
    ("set_limits", "smallest_cut=3/8", 'Set smallest cut to 3/8", least piece to half bat'),
    ("set_fit", "courses=yes heads=on matter_heads=required", "Set fit: bed joints on, head joints on, heads required"),
    ("set_fit", "closers=true", "Set fit: closers on"),
    ("set_fit", "", "Set fit: as it is"),
    ("release_panel", "", "Release N2 from the wall"),
    ("join_wall", "", "Join N2 to the wall"),
    (
        "set_side",
        "opening=W1 side=left treatment=return depth=3.625",
        'Set left of W1 to return 3 5/8" deep',
    ),
    ("set_side", "opening=W1 side=head treatment=margin margin=1", 'Set head of W1 to margin of 1"'),
    ("set_side", "opening=W1 side=sill treatment=margin", "Set sill of W1 to margin"),
    (
        "place_opening",
        "opening=W1 shape=circle x=60 y=96 radius=9",
        'Set W1 to radius 9" at 5\'-0", 8\'-0"; all sides back to the margin',
    ),
    (
        "accept_finding",
        "code=small-piece about=W1_head by=A._Mason reason=Covered.",
        "Accept small-piece of W1 head, by A. Mason",
    ),
    ("withdraw_acceptance", "code=missed-head about=W1_head", "Withdraw acceptance of missed-head of W1 head"),
    ("ask_question", "text=Why", "Ask question Q2"),
    ("remove_question", "question=Q1", "Remove question Q1"),
    ("raise_zone", "zone=S1", "Raise zone S1 over B1"),
    ("raise_zone", "zone=B1", "Raise zone B1"),
    ("lower_zone", "zone=B1", "Lower zone B1 under S1"),
    ("move_openings", "marks=W1,V1,W1 dy=-0.625", 'Move W1, V1 5/8" down'),
    ("resize_openings", "marks=W1,D1 side=head by=2", 'Move head of W1, D1 2" up'),
    ("set_laying", "corner=bed_upper_right direction=up", "Lay sheets from bed upper right, in columns up"),
    ("set_casting", "cast_on=2026-12-01 placed=yes", "Set casting day of N2 to 2026-12-01; brick placed"),
    ("set_casting", "", "Set casting day of N2 to none"),
    ("resize_openings", "marks=W1 side=left by=-2", 'Move left of W1 2" left'),
]


def form(typed: str) -> dict[str, str]:
    """`opening=W2 side=top_left` as a form's fields."""
    pairs = (field.split("=") for field in typed.split())
    return {name: value.replace("_", " ") for name, value in pairs}


@pytest.mark.parametrize(("name", "typed", "label"), GOLDEN, ids=[case[2] for case in GOLDEN])
def test_an_edit_is_told_in_words_with_exact_lengths(name, typed, label):
    assert edit_from(name, form(typed), "in", CATALOGUE, BONDS).label(FULL) == label


def test_lengths_are_told_in_millimetres_in_a_metric_project():
    edit = edit_from("move_opening", {"opening": "W1", "dx": "-25"}, "mm")
    assert edit.label(FULL, "mm") == "Move W1 25 mm left"
