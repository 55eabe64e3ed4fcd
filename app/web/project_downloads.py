"""What can be taken along from a project: one line a file."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Download:
    name: str
    address: str
    words: str
    file_name: str


SHOP_WORDS = "PDF for those who cut and lay: sheets to cut, growth, tape tables, saw station"


def downloads(project_id: str, name: str) -> tuple[Download, ...]:
    """Every file of a project that can be taken along."""
    api = f"/api/projects/{project_id}"
    words = "PDF for approval: drawings, schedules, checkpoints, order"
    return (
        Download("Submittal", f"{api}/submittal.pdf", words, f"{name}, submittal.pdf"),
        Download("Shop sheets", f"{api}/submittal.pdf?parts=shop", SHOP_WORDS, f"{name}, shop sheets.pdf"),
        Download("Order as a workbook", f"{api}/takeoff.xlsx", "for a spreadsheet", f"{name}, order.xlsx"),
        Download("Order as a list", f"{api}/takeoff.csv", "comma-separated text", f"{name}, order.csv"),
        Download("Project file", f"{api}/file", "everything in this project, to keep or pass on", f"{name}.json"),
    )
