"""What the checks find, and what they say."""

from shapes import rectangle

from app.brickwork.checks import findings
from app.brickwork.layout import lay_out


def zone(mark: str, **region: object) -> dict[str, object]:
    return {"mark": mark, "size": "modular", "bond": "stack", **region}


def test_a_zone_without_brick_is_found() -> None:
    zones = [
        zone("Far", band={"course": 5000, "courses": 3}),
        zone("Under", rect=[8, 8, 16, 8]),
        zone("Over", rect=[0, 0, 32, 24]),
    ]
    found = findings(lay_out(rectangle(48, 48, zones=zones)))
    assert [finding.text.split()[1] for finding in found if finding.code == "empty-zone"] == ["Far", "Under"]


def test_a_small_piece_is_measured_by_its_own_zones_brick() -> None:
    """Half bat of norman brick: (11-5/8 + 3/8)/2 - 3/8 = 5-5/8, arithmetic on BIA TN 10B sizes."""
    norman = {"mark": "Z", "rect": [0, 0, 17, 24], "size": "norman", "bond": "stack"}
    texts = [
        finding.text
        for finding in findings(lay_out(rectangle(48, 24, zones=[norman])))
        if finding.code == "small-piece"
    ]
    in_zone = [text for text in texts if "of zone Z" in text]
    assert all('the least is 5 5/8".' in text for text in in_zone)
    assert all('the least is 3 5/8".' in text for text in texts if text not in in_zone)


def test_lengths_in_words_follow_the_projects_unit() -> None:
    found = findings(lay_out(rectangle(42, 24)), "mm")
    assert found
    assert all("mm" in finding.text for finding in found)
