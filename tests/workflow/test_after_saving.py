"""What an edit's answer is made from is what anybody loads after it."""

import json
from pathlib import Path
from random import Random
from uuid import uuid4

from app.storage import reading, writing
from app.workflow.loading import after_saving, load_panel
from app.workflow.panel_edits import AskedEdit, edit_panel
from app.workflow.projects import create_project

B1 = json.loads((Path(__file__).parents[1] / "cases" / "b1.json").read_text())


def test_the_panel_after_each_edit_is_the_panel_that_is_stored(engine, now):
    chance = Random(4)
    with writing(engine) as session:
        panel_id = create_project(session, B1, now).walls[0].panels[0]
    for turn in range(18):
        moved = {"opening": f"W{chance.randint(1, 12)}", "dx": f'{chance.randint(-5, 5)} 1/16"', "dy": '1/8"'}
        name, values = ("set_margin", {"margin": '1/2"'}) if turn % 9 == 8 else ("move_opening", moved)
        command = uuid4().hex
        with writing(engine) as session:
            before = load_panel(session, panel_id)
            asked = AskedEdit(name, values, before.revision, command, "mason")
            after = after_saving(session, before, edit_panel(session, before, asked, now))
        with reading(engine) as session:
            assert load_panel(session, panel_id) == after
        with writing(engine) as session:
            again = after_saving(session, after, edit_panel(session, before, asked, now))
        assert again == after
