"""How pages lead to each other: the path over a page, and the pages of a panel by one name each."""

from dataclasses import dataclass

from app.web.pages import Step
from app.workflow.loading import LoadedPanel

PAGES = (
    ("Panel", "/panels/{id}"),
    ("Liner", "/panels/{id}/liner"),
    ("Drift", "/panels/{id}/drift"),
    ("Releases", "/panels/{id}/releases"),
    ("Bed view", "/bed/{id}"),
    ("At the bed", "/panels/{id}/at-bed"),
)
"""The pages of a panel: what they are called everywhere, and where they are."""


@dataclass(frozen=True, slots=True)
class PageLink:
    """A page: its name, its address, and its whole name for who hears it without what stands around it."""

    name: str
    address: str
    words: str


def panel_links(panel_id: str, mark: str, page: str) -> tuple[PageLink, ...]:
    """The pages of a panel but for `page`, the one that they stand on or that is linked beside them."""
    links = (PageLink(name, address.format(id=panel_id), f"{name} of {mark}") for name, address in PAGES)
    return tuple(link for link in links if link.name != page)


def project_links(address: str, *pages: tuple[str, str]) -> tuple[PageLink, ...]:
    """Pages of a project by their names and what follows its address."""
    return tuple(PageLink(name, f"{address}/{end}", name) for name, end in pages)


def project_path(project_id: str, name: str, *last: str | Step) -> tuple[Step, ...]:
    """The path of a page of a project; the last step has no address."""
    return (Step("Projects", "/"), Step(name, f"/projects/{project_id}"), *map(_step, last))


def panel_path(loaded: LoadedPanel, *last: str | Step) -> tuple[Step, ...]:
    """The path of a page of a panel; the last step has no address."""
    panel = Step(f"{loaded.wall.mark} / {loaded.panel.mark}", f"/panels/{loaded.id}")
    return project_path(loaded.project_id, loaded.project.name, panel, *last)


def _step(step: str | Step) -> Step:
    return Step(step) if isinstance(step, str) else step
