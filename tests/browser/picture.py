"""Reads back what the editor's drawing shows, to be compared with the API's layout."""

import re
from typing import Any

import numpy as np
from playwright.sync_api import Page

TOKEN = re.compile(r"([MmLlHhVvZz])|(-?\d*\.?\d+(?:e-?\d+)?)")

READ = """() => ({
  height: Number(document.getElementById("drawing").dataset.height),
  trims: [...document.querySelectorAll("#layer-cuts path")].map((path) => path.getAttribute("d")),
  sheets: [...document.querySelectorAll("#layer-sheet_numbers text")].map((text) => text.textContent),
  checkpoints: [...document.querySelectorAll("#checkpoints tbody th")].map((cell) => cell.textContent),
  counts: [...document.querySelectorAll("#counts dd")].map((cell) => Number(cell.textContent.replaceAll(",", ""))),
  revision: Number(document.getElementById("revision").dataset.revision),
  spaces: [...document.querySelectorAll("#drawing g")].map((group) => group.namespaceURI),
})"""


def boxes(paths: list[str], height: float) -> np.ndarray:
    """Bounding boxes of the closed rings in path data, face frame, sorted: x, y, width, height."""
    found = [_box(ring) for path in paths for ring in _rings(path)]
    return in_order(np.array([(x0, height - y1, x1 - x0, y1 - y0) for x0, y0, x1, y1 in found]).reshape(-1, 4))


def in_order(rows: np.ndarray) -> np.ndarray:
    """Rows sorted by their values to a hundredth of an inch, so that noise does not change the order."""
    return rows[np.lexsort(np.round(rows, 2).T[::-1])]


def trims_of(layout: dict[str, Any]) -> np.ndarray:
    """Bounding boxes of the trimmed pieces that the API gives."""
    units = layout["units"]
    rows = zip(units["x"], units["y"], units["width"], units["height"], units["state"], strict=True)
    return in_order(np.array([row[:4] for row in rows if row[4] == "trimmed"]).reshape(-1, 4))


def shown(page: Page) -> dict[str, Any]:
    """What stands in the page now."""
    found: dict[str, Any] = page.evaluate(READ)
    return found


def assert_shows(page: Page, layout: dict[str, Any]) -> None:
    """The drawing, the counts and the checkpoints on the page are those of the API's layout."""
    found = shown(page)
    assert set(found["spaces"]) == {"http://www.w3.org/2000/svg"}
    np.testing.assert_allclose(boxes(found["trims"], found["height"]), trims_of(layout), atol=2e-3)
    counts, sheets = layout["counts"], layout["sheets"]
    assert found["counts"][:4] == [counts["whole"], counts["trimmed"], counts["small"], sheets["placed"]]
    if page.get_by_label("Liner sheets").is_checked():
        assert sorted(found["sheets"]) == sorted(sheet["mark"] for sheet in sheets["list"])
    assert found["checkpoints"] == [point["mark"] for point in layout["drift"]["checkpoints"]]


def _box(ring: list[tuple[float, float]]) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    return min(xs), min(ys), max(xs), max(ys)


def _rings(path: str) -> list[list[tuple[float, float]]]:
    rings: list[list[tuple[float, float]]] = []
    x = y = 0.0
    command, numbers = "", []
    for letter, number in [*TOKEN.findall(path), ("Z", "")]:
        if number:
            numbers.append(float(number))
            needed = {"H": 1, "V": 1}.get(command.upper(), 2)
            if len(numbers) == needed:
                x, y = _stepped(command, numbers, x, y)
                if command.upper() == "M":
                    rings.append([])
                rings[-1].append((x, y))
                numbers = []
            continue
        if letter.upper() == "Z" and rings:
            x, y = rings[-1][0]
        command = letter
    return rings


def _stepped(command: str, numbers: list[float], x: float, y: float) -> tuple[float, float]:
    base_x, base_y = (x, y) if command.islower() else (0.0, 0.0)
    match command.upper():
        case "H":
            return base_x + numbers[0], y
        case "V":
            return x, base_y + numbers[0]
    return base_x + numbers[0], base_y + numbers[1]
