"""Reads path data back: the subset M m h v l H V L z that our drawings may hold, by the grammar of SVG 2, chapter 9."""

import re
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
_PART = re.compile(r"([MmLlHhVvz])([^MmLlHhVvz]*)")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")

Ring = list[tuple[float, float]]


def rings(data: str) -> list[Ring]:
    """Every subpath as its corners, y down as written."""
    found: list[Ring] = []
    x = y = 0.0
    for command, text in _PART.findall(data):
        numbers = [float(number) for number in _NUMBER.findall(text)]
        if command == "z":
            x, y = found[-1][0]
            continue
        x, y = _moved(command, numbers, x, y)
        if command in "Mm":
            found.append([])
        found[-1].append((x, y))
    return found


def _moved(command: str, numbers: list[float], x: float, y: float) -> tuple[float, float]:
    match command:
        case "M" | "L":
            return numbers[0], numbers[1]
        case "m" | "l":
            return x + numbers[0], y + numbers[1]
        case "h":
            return x + numbers[0], y
        case "v":
            return x, y + numbers[0]
        case "H":
            return numbers[0], y
    return x, numbers[0]


def paths_of(markup: str, style: str) -> list[str]:
    """Path data of every path of that class in a layer's markup."""
    tree = ElementTree.fromstring(f'<svg xmlns="http://www.w3.org/2000/svg">{markup}</svg>')
    return [path.attrib["d"] for path in tree.iter(f"{SVG}path") if path.attrib["class"] == style]


def rings_of(markup: str, style: str) -> list[Ring]:
    """All subpaths of all paths of that class."""
    return [ring for data in paths_of(markup, style) for ring in rings(data)]


def bounds(ring: Ring) -> tuple[float, float, float, float]:
    """Left, top, width, height."""
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    return min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)
