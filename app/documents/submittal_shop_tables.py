"""Shop tables of a panel: cuts of its liner sheets, growth with its checkpoints, and its tape tables, as words."""

from typing import Any

from app.documents.panel_results import PanelResults
from app.documents.submittal_parts import CUT_SHEETS, GROWTH, TAPE
from app.documents.submittal_schedules import about_words, checkpoint_rows, drift_words, reading_words
from app.documents.submittal_sheets import sheet_cut_rows
from app.liner.stacks import cut_list
from app.liner.tape_table import TapeRow, TapeTable, tape_tables
from app.panel.project import Project

Document = dict[str, Any]

ALONG = {"x": "Head joints and checkpoints along the panel", "y": "Courses and checkpoints up the panel"}


def shop_tables(results: PanelResults, project: Project, parts: frozenset[str]) -> Document:
    """The tables that the parts ask for, each absent where they do not; lengths in the project's unit."""
    unit, tables = project.length_unit, Document()
    if CUT_SHEETS in parts:
        found = cut_list(results.layout, results.plan, results.cutting, project.liner)
        tables["sheet-cuts"] = sheet_cut_rows(found.stacks, unit)
    if TAPE in parts:
        tables["tapes"] = tape_rows(results, project)
    if GROWTH in parts:
        tables["growth"] = {
            "checkpoints": checkpoint_rows(results.drift, unit),
            "drift-words": drift_words(results.drift, project),
        }
    return tables


def tape_rows(results: PanelResults, project: Project) -> list[Document]:
    """Tape tables at both ends of the day's bed temperature, the steel tape taken to be right; none without brick."""
    day, unit = project.day, project.length_unit
    low, high = (
        tape_tables(results.layout, results.drift, project.liner, temperature)
        for temperature in (day.bed_low, day.bed_high)
    )
    degrees = f"degrees {project.temperature_unit}"
    return [
        _table(cold, warm, unit, f"{day.bed_low:g}", f"{day.bed_high:g} {degrees}")
        for cold, warm in zip(low, high, strict=True)
    ]


def _table(cold: TapeTable, warm: TapeTable, unit: str, low: str, high: str) -> Document:
    other = next(end for end in cold.ends if end != cold.hook)
    return {
        "title": ALONG[cold.axis],
        "words": f"Tape hooked at the bed's {cold.hook}, where laying starts; reading at {low} and at {high} if nothing"
        f" is corrected, right from and to. The last column is the true dimension with the tape hooked at the {other}.",
        "heads": [
            "Mark",
            "Line",
            "True",
            f"Reads at {low}",
            f"At {high.partition(' ')[0]}",
            "Right from",
            "To",
            f"From the {other}",
        ],
        "rows": [_row(cold, one, two, unit) for one, two in zip(cold.rows, warm.rows, strict=True)],
    }


def _row(table: TapeTable, cold: TapeRow, warm: TapeRow, unit: str) -> list[str]:
    is_first = table.hook == table.ends[0]
    near, far = (cold.first, cold.second) if is_first else (cold.second, cold.first)
    then = warm.first if is_first else warm.second
    readings = (near.expected, then.expected, near.low, near.high)
    said = (reading_words(reading, unit) for reading in readings)
    return [cold.mark, cold.what, about_words(near.nominal, unit), *said, about_words(far.nominal, unit)]
