"""Pages: one frozen value in, one template, one answer."""

from dataclasses import dataclass
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.responses import HTMLResponse

from app.web.assets import asset_url
from app.web.form_token import VISITOR, with_form_token
from app.web.term_help import helped, terms_digest

TEMPLATES = Path(__file__).parents[2] / "templates"

templates = Environment(
    loader=FileSystemLoader(TEMPLATES),
    undefined=StrictUndefined,
    autoescape=True,
    trim_blocks=True,
    lstrip_blocks=True,
)
templates.globals["asset"] = asset_url
templates.globals["terms_address"] = lambda: f"/terms/{terms_digest()}"
templates.globals["visitor"] = VISITOR.get
templates.filters["helped"] = helped


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the path at the top of a page; the last one has no address."""

    name: str
    address: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """What every page shows: its title in the browser and the path that leads to it."""

    title: str
    path: tuple[Step, ...] = ()


def html(template: str, view: object) -> str:
    """A template filled with one value; raises jinja2.UndefinedError for a field that the value has not."""
    return with_form_token(templates.get_template(template).render(view=view))


def show(template: str, view: object, status: int = 200, headers: dict[str, str] | None = None) -> HTMLResponse:
    """A page or a part of one; never kept by a browser, so that going back shows what is saved now."""
    return HTMLResponse(html(template, view), status, {"cache-control": "no-store", **(headers or {})})
