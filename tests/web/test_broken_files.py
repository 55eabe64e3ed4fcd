"""Every broken project file is refused with its faults, and nothing of it is stored."""

import httpx
import pytest
from broken_files import Broken, broken_files

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize("case", broken_files(), ids=str)
async def test_a_broken_file_is_refused_and_leaves_nothing(client: httpx.AsyncClient, case: Broken) -> None:
    headers = {"content-type": "application/json"}
    answer = await client.post("/api/projects", content=case.text, headers=headers)
    assert answer.status_code in (413, 422), answer.text[:300]
    assert answer.headers["content-type"] == "application/problem+json"
    if answer.status_code == 422:
        faults = answer.json()["faults"]
        assert faults
        assert all(fault["found"] and fault["expected"] for fault in faults)
    assert "No projects yet." in (await client.get("/")).text
