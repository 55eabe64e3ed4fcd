"""The catalogue of brick sizes; each row of `catalogue.csv` names its source."""

import csv
from pathlib import Path

from app.lengths import Length, parse
from app.panel.size import BrickSize


def _length(text: str, unit: str) -> Length:
    return parse(text, unit)


def _size(row: dict[str, str]) -> BrickSize:
    unit = row["unit"]
    return BrickSize(
        name=row["name"],
        length=_length(row["length"], unit),
        height=_length(row["height"], unit),
        thickness=_length(row["thickness"], unit),
        head_joint=_length(row["head_joint"], unit),
        courses=int(row["courses"]),
        per=_length(row["per"], unit),
        source=row["source"],
    )


def _catalogue() -> dict[str, BrickSize]:
    with Path(__file__).with_name("catalogue.csv").open(newline="", encoding="utf-8") as file:
        return {row["name"]: _size(row) for row in csv.DictReader(file)}


CATALOGUE = _catalogue()
