"""A small invented project for tests of the web: one wall with two panels."""

import copy
from typing import Any

import httpx

PROJECT: dict[str, Any] = {
    "format": "castcourse-project/1",
    "name": "Shed by the canal",
    "length_unit": "in",
    "temperature_unit": "F",
    "walls": [
        {
            "mark": "East",
            "datum": 0,
            "joint": 0.75,
            "panels": [
                {
                    "mark": "E1",
                    "thickness": 7.25,
                    "outline": [[0, 0], ["12'-0\"", 0], ["12'-0\"", 96], [0, 96]],
                    "openings": [{"mark": "W1", "use": "window", "rect": [48, 32, 32, 40]}],
                    "field": {"size": "modular", "bond": "running"},
                },
                {
                    "mark": "E2",
                    "thickness": 7.25,
                    "outline": [[0, 0], [96, 0], [96, 96], [0, 96]],
                    "field": {"size": "modular", "bond": "stack"},
                },
            ],
        }
    ],
}


def project() -> dict[str, Any]:
    return copy.deepcopy(PROJECT)


async def stored(client: httpx.AsyncClient, file: dict[str, Any] | None = None) -> dict[str, Any]:
    """The ids of a stored project."""
    answer = await client.post("/api/projects", json=file or project())
    assert answer.status_code == 201, answer.text
    ids: dict[str, Any] = answer.json()
    return ids
