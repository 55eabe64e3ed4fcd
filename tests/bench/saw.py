"""The saw list of the twelve demo panels and of B1: time, bricks, proven bound, and first-fit decreasing beside."""

from collections.abc import Iterator, Sequence

from bench import cases
from bench.timing import median_ms, report

from app.brickwork.layout import lay_out
from app.documents.project_file import read_project, read_text
from app.order.rules import Rules
from app.order.saw import saw_list
from app.order.saw_values import SawList
from app.order.work import FaceWork
from app.panel.project import Liner, Order
from app.workflow.compute import compute

DEMO = cases.CASES.parents[1] / "demo_data" / "casting_yard.json"


def twelve() -> tuple[Rules, list[FaceWork]]:
    """The order's rules and the twelve panels, in the colours of their blend."""
    project = read_project(read_text(DEMO.read_bytes()))
    panels = [compute(project, wall, panel).face for wall in project.walls for panel in wall.panels]
    return Rules.of(project), panels


def proven(name: str, saw: SawList) -> None:
    """Raise unless the bricks are the proven optimum and no more than first-fit decreasing takes."""
    if not saw.bricks == saw.bound <= saw.first_fit:
        raise AssertionError(f"{name}: {saw.bricks} bricks, bound {saw.bound}, first fit {saw.first_fit}")


def figures(name: str, saw: SawList) -> Iterator[tuple[str, float]]:
    yield f"{name} bricks, x", saw.bricks
    yield f"{name} bound, x", saw.bound
    yield f"{name} first-fit decreasing, x", saw.first_fit
    yield f"{name} a brick a piece, x", saw.flat_pieces
    yield f"{name} proven, x", saw.is_proven


def each(rules: Rules, faces: Sequence[FaceWork]) -> list[SawList]:
    return [saw_list([face], rules) for face in faces]


def measure() -> dict[str, float]:
    """Medians in ms, then counts; raises where an optimum is not proven."""
    rules, faces = twelve()
    plain, b1 = Rules(Order(), Liner()), FaceWork(lay_out(cases.b1()))
    together, alone = saw_list(faces, rules), saw_list([b1], plain)
    for name, saw in (
        ("12 panels", together),
        ("B1", alone),
        *((f"panel {k}", s) for k, s in enumerate(each(rules, faces))),
    ):
        proven(name, saw)
    times = median_ms(
        {
            "12 panels as one, at most 2000 ms": (lambda: saw_list(faces, rules), 7),
            "12 panels, each alone": (lambda: each(rules, faces), 7),
            "B1": (lambda: saw_list([b1], plain), 15),
        }
    )
    return times | dict(figures("12 panels", together)) | dict(figures("B1", alone))


def main() -> None:
    report("saw", measure())
