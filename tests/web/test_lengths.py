"""What a typed length is understood as; the exact numbers by hand."""

import httpx
import pytest

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize(
    ("text", "unit", "inches", "words"),
    [
        ("5'-0 1/2\"", "in", 60.5, "5'-0 1/2\""),
        ("60 1/2", "in", 60.5, "5'-0 1/2\""),
        ("-3/8", "in", -0.375, '-3/8"'),
        ("1537", "mm", 1537 / 25.4, "1537 mm"),
        ("2 in", "mm", 2.0, "≈ 51 mm"),
    ],
)
async def test_a_length_is_said_back(
    client: httpx.AsyncClient, text: str, unit: str, inches: float, words: str
) -> None:
    answer = await client.get("/lengths", params={"text": text, "unit": unit})
    assert answer.status_code == 200
    assert answer.json()["inches"] == pytest.approx(inches, abs=1e-9)
    assert answer.json()["words"] == words


async def test_what_is_no_length_is_told(client: httpx.AsyncClient) -> None:
    answer = await client.get("/lengths", params={"text": "5'-14\"", "unit": "in"})
    assert answer.status_code == 200
    assert answer.json()["fault"].startswith("Found ")
    assert "expected" in answer.json()["fault"]
