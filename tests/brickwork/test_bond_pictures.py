"""Every bond as a picture that a mason can check: `tests/golden/<bond>.txt`, drawn from where the engine puts units.

Definitions the pictures were looked at against. Flemish and English bond: bond definitions in a pocket guide of a US
masonry institute, 2012 (headers and stretchers by turns, the header centred on the stretcher below; courses of
headers and of stretchers by turns, headers centred on stretchers and on the joints between them). Faces of soldier,
sailor, rowlock, shiner: US Navy training manual 14069, fig. 7-53. Running, stack, third, quarter, common, monk, garden
wall, English cross, header bond, basket weave and herringbone: common practice.

One column is 1/3 in., one row half a gauge of modular brick. Lines stand at the cells' edges. Herringbone at 45 degrees
is drawn unturned. To write a picture anew after a change that is meant: `python tests/brickwork/test_bond_pictures.py`.
"""

from pathlib import Path

import pytest

from app.brickwork.bond import Bond
from app.brickwork.bonds import BONDS
from app.brickwork.lattice import grid, lattice
from app.brickwork.sizes import CATALOGUE

GOLDEN = Path(__file__).parents[1] / "golden"
MODULAR = CATALOGUE["modular"]
LETTERS = {"stretcher": "S", "header": "H", "soldier": "O", "sailor": "A", "rowlock": "R", "shiner": "N"}
COLUMNS, ROWS = 96, 16
"""Four head modules by eight courses."""

Box = tuple[int, int, int, int]


def _column(inches: float) -> int:
    return int((inches * COLUMNS / (4 * MODULAR.head_module) + 0.5 + 1e-6) // 1)


def _row(inches: float) -> int:
    return int((inches * ROWS / (8 * MODULAR.gauge) + 0.5 + 1e-6) // 1)


def _cells(bond: Bond) -> list[tuple[str, Box]]:
    """Letter and edges (left, bottom, right, top, in columns and rows) of every cell over the picture."""
    lat = lattice(bond, MODULAR, (0.0, 0.0))
    laid = grid(lat, (-8.0, -8.0, 40.0, 30.0))
    boxes = []
    for cell, x, y in zip(laid.cell.tolist(), laid.x0.tolist(), laid.y0.tolist(), strict=True):
        motif = bond.cells[cell]
        right, top = x + motif.width.inches(MODULAR), y + motif.height.inches(MODULAR)
        boxes.append((LETTERS[motif.kind], (_column(x), _row(y), _column(right), _row(top))))
    return boxes


class _Paper:
    def __init__(self) -> None:
        self.signs = [[" "] * (COLUMNS + 1) for _ in range(ROWS + 1)]

    def put(self, column: int, row: int, sign: str) -> None:
        if 0 <= column <= COLUMNS and 0 <= row <= ROWS:
            crossed = {self.signs[row][column], sign} == {"-", "|"} or self.signs[row][column] == "+"
            self.signs[row][column] = "+" if crossed else sign

    def outline(self, box: Box) -> None:
        left, bottom, right, top = box
        for row in (bottom, top):
            for column in range(left + 1, right):
                self.put(column, row, "-")
        for column in (left, right):
            for row in range(bottom + 1, top):
                self.put(column, row, "|")
        for column, row in ((left, bottom), (right, bottom), (left, top), (right, top)):
            self.put(column, row, "+")

    def text(self) -> str:
        return "\n".join("".join(row).rstrip() for row in reversed(self.signs))


def picture(bond: Bond) -> str:
    """The bond in words, its letters, and eight courses of it, four head modules long, modular brick."""
    cells, paper = _cells(bond), _Paper()
    for _, box in cells:
        paper.outline(box)
    for letter, (left, bottom, right, top) in cells:
        paper.put((left + right) // 2, (bottom + top) // 2, letter)
    kinds = dict.fromkeys(cell.kind for cell in bond.cells)
    key = ", ".join(f"{LETTERS[kind]} {kind}" for kind in kinds)
    turn = f" Turned {bond.turn:g} degrees on the face." if bond.turn else ""
    return f"{bond.words}. {key}.{turn}\n\n{paper.text()}\n"


@pytest.mark.parametrize("bond", BONDS)
def test_the_bond_looks_as_its_picture(bond: str) -> None:
    assert picture(BONDS[bond]) == (GOLDEN / f"{bond}.txt").read_text(encoding="utf-8")


def test_every_picture_is_of_a_bond() -> None:
    assert {path.stem for path in GOLDEN.glob("*.txt")} == set(BONDS)


if __name__ == "__main__":
    for drawn in BONDS.values():
        (GOLDEN / f"{drawn.name}.txt").write_text(picture(drawn), encoding="utf-8")
