"""A panel's results say what the layout holds, in the file's unit, and are named by what they are computed from."""

import json
from dataclasses import replace
from typing import Any

import pytest
import shapely
from broken_files import SOUND
from shapes import CASES

from app.documents.digest import panel_digest
from app.documents.project_file import read_project, read_text
from app.documents.results import layout_result
from app.lengths import Length
from app.panel.own_bond import OwnBond, OwnCell
from app.panel.project import Order, Project
from app.panel.values import Accepted, Brickwork, Fit, Matter, Question
from app.workflow.compute import compute

IN_MM = 25.4


def project_of(name: str) -> Project:
    return read_project(read_text((CASES / f"{name}.json").read_bytes()))


def result_of(project: Project, place: int = 0) -> dict[str, Any]:
    wall = project.walls[0]
    panel = wall.panels[place]
    done = compute(project, wall, panel)
    parts = done.layout, done.plan, done.cutting, done.drift, done.takeoff, done.saw
    return layout_result(project, wall, panel, *parts)


@pytest.fixture(scope="module")
def b1() -> dict[str, Any]:
    return result_of(project_of("b1"))


def test_the_keys_are_those_of_the_contract(b1):
    assert list(b1) == [
        "panel",
        "length_unit",
        "digest",
        "area",
        "counts",
        "courses",
        "units",
        "trims",
        "left_out",
        "fit",
        "returns",
        "sheets",
        "drift",
        "saw",
        "takeoff",
        "findings",
    ]
    assert list(b1["area"]) == ["panel", "openings", "field", "brick", "left_out"]
    assert list(b1["units"]) == ["x", "y", "width", "height", "kind", "course", "zone", "state"]
    assert {"mark", "column", "row", "trimmed", "outline", "from"} <= set(b1["sheets"]["list"][0])
    assert list(b1["sheets"])[:6] == ["used", "placed", "area_bound", "bound", "proven", "naive"]
    assert set(b1["sheets"]["cut_sheets"][0]) == {"owner", "size", "bond", "taken"}
    assert set(b1["sheets"]["cut_sheets"][0]["taken"][0]) == {"mark", "steps", "rings", "area"}
    assert {"mark", "axis", "nominal", "held_from", "expected", "band"} <= set(b1["drift"]["checkpoints"][0])
    assert {"item", "kind", "net", "overage", "order", "unit"} <= set(b1["takeoff"]["lines"][0])
    assert list(b1["findings"][0]) == ["code", "severity", "where", "text", "about", "accepted"]


def test_the_saw_list_takes_a_brick_a_piece_at_most_and_says_what_is_proven(b1):
    saw = b1["saw"]
    assert {"bricks", "bound", "proven", "first_fit", "patterns", "pieces", "rips", "notches", "skews"} <= set(saw)
    assert saw["bound"] == saw["bricks"] <= saw["first_fit"] <= saw["flat_pieces"] == b1["counts"]["trimmed"] == 785
    assert saw["proven"] is True
    assert list(saw["patterns"][0]) == ["times", "size", "kind", "colour", "length", "pieces", "left_over"]
    whole = sum(len(pattern["pieces"]) * pattern["times"] for pattern in saw["patterns"])
    assert whole == sum(piece["count"] for piece in saw["pieces"])


def test_every_control_line_says_whether_it_is_met(b1):
    assert [row["control"] for row in b1["fit"]["vertical"] if row["control"] in ("base", "top")] == ["base", "top"]
    row = b1["fit"]["vertical"][0]
    assert list(row) == ["control", "at", "matter", "met", "off", "nearest", "cut", "joint_change"]
    assert len(b1["fit"]["horizontal"]) >= 2 * 12


def test_a_return_edge_lists_its_corner_units_long_and_short_by_turns():
    document = json.loads((CASES / "door.json").read_text("utf-8"))
    panel = document["walls"][0]["panels"][0]
    panel |= {"outline": [[0, 0], [127.625, 0], [127.625, 96], [0, 96]], "openings": []}
    panel["edges"] = [{"edge": 1, "treatment": "return", "depth": 3.625}]
    (row,) = result_of(read_project(document))["returns"]
    assert (row["at"], row["hand"], row["corner_units"], row["cut"]) == ("edge 1", "right", 36, 0)
    assert [leg["face"] for leg in row["legs"][:4]] == [7.625, 3.625, 7.625, 3.625]
    assert [leg["return"] for leg in row["legs"][:4]] == [3.625, 3.625, 3.625, 3.625]


def test_b1_has_the_counts_of_the_reference(b1):
    assert b1["counts"] == {
        "whole": 5144,
        "trimmed": 785,
        "small": 177,
        "by_kind": {"stretcher": {"whole": 5144, "trimmed": 785}},
    }


def test_columns_run_side_by_side_and_only_trimmed_units_have_a_row(b1):
    assert {len(column) for column in b1["units"].values()} == {5144 + 785}
    rows = [unit for unit, state in enumerate(b1["units"]["state"]) if state == "trimmed"]
    assert [row["unit"] for row in b1["trims"]] == rows
    assert set(b1["units"]["zone"]) == {"field"}


def test_a_trims_outline_lies_in_the_box_of_its_unit(b1):
    units = b1["units"]
    for row in b1["trims"]:
        x, y = units["x"][row["unit"]], units["y"][row["unit"]]
        box = (x, y, x + units["width"][row["unit"]], y + units["height"][row["unit"]])
        assert shapely.Polygon(row["outline"]).bounds == pytest.approx(box, abs=1e-6)


def test_small_pieces_are_counted_marked_and_found(b1):
    assert sum(row["small"] for row in b1["trims"]) == 177
    assert sum(finding["code"] == "small-piece" for finding in b1["findings"]) == 177


def test_brick_area_is_the_sum_of_its_pieces(b1):
    """By the outlines that are written, with shapely: 5144 faces of 7-5/8 x 2-1/4 in and every trim."""
    trimmed = sum(shapely.Polygon(row["outline"]).area for row in b1["trims"])
    assert b1["area"]["brick"] == pytest.approx(5144 * 7.625 * 2.25 + trimmed, abs=1e-6)
    assert b1["area"]["panel"] == 480 * 360


def test_courses_are_three_to_8_inches(b1):
    assert b1["courses"][0] == {"course": 0, "bottom": 0, "top": 2.25}
    assert b1["courses"][3] == {"course": 3, "bottom": 8, "top": 10.25}
    assert b1["courses"][-1]["course"] == 134


def test_the_same_face_in_millimetres_has_the_same_counts_and_lengths_times_25_4(b1):
    metric = result_of(replace(project_of("b1"), length_unit="mm"))
    assert metric["length_unit"] == "mm"
    assert metric["counts"] == b1["counts"]
    assert metric["units"]["x"] == pytest.approx([x * IN_MM for x in b1["units"]["x"]], abs=1e-6)
    assert metric["area"]["panel"] == pytest.approx(b1["area"]["panel"] * IN_MM**2, abs=1e-6)
    assert metric["courses"][3]["bottom"] == pytest.approx(203.2, abs=1e-9)
    assert metric["trims"][0]["length"] == pytest.approx(b1["trims"][0]["length"] * IN_MM, abs=1e-6)
    checkpoints = zip(metric["drift"]["checkpoints"], b1["drift"]["checkpoints"], strict=True)
    for there, here in checkpoints:
        assert there["nominal"] == pytest.approx(here["nominal"] * IN_MM, abs=1e-6)
        assert there["expected"]["high"] == pytest.approx(here["expected"]["high"] * IN_MM, abs=1e-6)
    assert "mm" in metric["findings"][0]["text"]


def test_results_are_plain_json(b1):
    assert json.loads(json.dumps(b1, allow_nan=False)) == b1


def test_zones_go_by_their_marks():
    result = result_of(read_project(SOUND))
    assert set(result["units"]["zone"]) == {"field", "S1"}


OWN = OwnBond("own", (OwnCell("stretcher", ("0", "0")),), ("P", "0"), ("1/2 P", "G"))


class TestDigest:
    def test_is_a_sha256(self, b1):
        name, _, figures = b1["digest"].partition(":")
        assert name == "sha256"
        assert len(bytes.fromhex(figures)) == 32

    def test_is_the_same_however_a_length_was_typed(self):
        said = json.loads(json.dumps(SOUND))
        said["walls"][0]["panels"][0]["thickness"] = "184.15 mm"
        said["walls"][0]["panels"][0]["base"] = 0
        assert digest(read_project(said)) == digest(read_project(SOUND))

    def test_rests_on_nothing_but_the_panel_and_what_it_shares(self):
        project = read_project(SOUND)
        wall = project.walls[0]
        others = replace(wall, panels=(wall.panels[0],), mark="South")
        assert digest(replace(project, name="Another", walls=(others,))) == digest(project)

    @pytest.mark.parametrize(
        "change",
        [
            lambda project: replace(project, order=Order(overage_percent=6)),
            lambda project: replace(project, liner=replace(project.liner, columns=7)),
            lambda project: replace(project, day=replace(project.day, bed_high=106)),
            lambda project: replace(project, length_unit="mm"),
            lambda project: replace(project, sizes=(replace(project.sizes[0], courses=4),)),
            lambda project: with_panel(project, thickness=Length(1)),
            lambda project: with_panel(project, released=True),
            lambda project: with_panel(project, fit=Fit(matter=Matter(heads="free"))),
            lambda project: with_panel(project, accepted=(Accepted("missed-head", "W1 head", "A. Mason", "Hidden."),)),
            lambda project: replace(with_panel(project, field=Brickwork("modular", "own")), bonds=(OWN,)),
            lambda project: with_panel(project, openings=project.walls[0].panels[0].openings[:1]),
        ],
    )
    def test_changes_with_every_input(self, change):
        project = read_project(SOUND)
        assert digest(change(project)) != digest(project)

    def test_asks_neither_for_questions_nor_for_bonds_that_the_panel_does_not_use(self):
        project = read_project(SOUND)
        asked = with_panel(project, questions=(Question("Q1", "Why?"),))
        assert digest(replace(asked, bonds=(OWN,))) == digest(project)

    def test_changes_with_a_bond_that_the_panel_uses(self):
        using = with_panel(read_project(SOUND), field=Brickwork("modular", "own"))
        one, other = replace(using, bonds=(OWN,)), replace(using, bonds=(replace(OWN, turn=90.0),))
        assert digest(one) != digest(other)


def with_panel(project: Project, **change: Any) -> Project:
    wall = project.walls[0]
    return replace(project, walls=(replace(wall, panels=(replace(wall.panels[0], **change),)),))


def digest(project: Project) -> str:
    return panel_digest(project, project.walls[0], project.walls[0].panels[0])


def test_sheets_say_out_of_whose_unpacked_sheet_each_is_cut(b1):
    sheets = b1["sheets"]
    listed = {sheet["mark"]: sheet for sheet in sheets["list"]}
    assert sheets["used"] == sum(sheet["from"] is None for sheet in sheets["list"])
    assert sheets["area_bound"] <= sheets["bound"] <= sheets["used"] < sheets["placed"] == sheets["naive"]
    assert sheets["proven"] == (sheets["used"] == sheets["bound"])
    for cut in sheets["cut_sheets"]:
        owner, *others = [taken["mark"] for taken in cut["taken"]]
        assert owner == cut["owner"]
        assert others
        assert {listed[mark]["from"] for mark in others} == {owner}
        assert [listed[taken["mark"]]["steps"] for taken in cut["taken"]] == [taken["steps"] for taken in cut["taken"]]
    shared = {taken["mark"] for cut in sheets["cut_sheets"] for taken in cut["taken"]}
    assert shared >= {mark for mark, sheet in listed.items() if sheet["from"] is not None}


def test_a_trim_in_its_unpacked_sheet_is_as_large_as_on_the_bed_in_the_projects_unit(b1):
    in_mm = result_of(replace(project_of("b1"), length_unit="mm"))["sheets"]
    for cut, metric in zip(b1["sheets"]["cut_sheets"], in_mm["cut_sheets"], strict=True):
        for taken, same in zip(cut["taken"], metric["taken"], strict=True):
            drawn = sum_of_rings(taken["rings"])
            laid = next(sheet for sheet in b1["sheets"]["list"] if sheet["mark"] == taken["mark"])
            assert drawn == pytest.approx(sum_of_rings([*laid["trim"], *laid["holes"]]), rel=1e-4)
            assert sum_of_rings(same["rings"]) == pytest.approx(drawn * IN_MM**2, rel=1e-4)


def sum_of_rings(rings: list[list[list[float]]]) -> float:
    area = shapely.Polygon()
    for ring in rings:
        area = area.symmetric_difference(shapely.Polygon(ring))
    return area.area
