"""Little pictures of bonds: where a page finds them, and the routes that send them, to be kept for good."""

from functools import lru_cache
from hashlib import sha256
from urllib.parse import quote

from fastapi import APIRouter
from starlette.responses import Response

from app.brickwork.bond import Bond
from app.brickwork.bonds import BONDS
from app.brickwork.own_bonds import known_bonds
from app.drawing.swatch import swatch
from app.panel.project import Project
from app.storage import reading
from app.web.assets import FOREVER, MEDIA_TYPES
from app.web.database import Database
from app.web.editor_cards import Option
from app.web.problems import failure
from app.workflow.loading import load_project

router = APIRouter(include_in_schema=False)

PALETTES = ("paper", "night")


@router.get("/bonds/{digest}/{palette}/{name}.svg")
def bond_picture(digest: str, palette: str, name: str) -> Response:
    """One of the usual bonds."""
    return _sent(BONDS.get(name), digest, palette)


@router.get("/projects/{project_id}/bonds/{digest}/{palette}/{name:path}.svg")
def own_bond_picture(project_id: str, digest: str, palette: str, name: str, database: Database) -> Response:
    """One of a project's own bonds."""
    with reading(database) as session:
        project = load_project(session, project_id).project
    return _sent(known_bonds(project).get(name), digest, palette)


def bond_options(project: Project, project_id: str) -> tuple[Option, ...]:
    """Every bond that the project may use, the usual ones first, with the addresses of its two pictures."""
    return tuple(_option(bond, project_id) for bond in known_bonds(project).values())


def _option(bond: Bond, project_id: str) -> Option:
    under = "" if BONDS.get(bond.name) == bond else f"/projects/{project_id}"
    day, night = (f"{under}/bonds/{_digest(bond)}/{name}/{quote(bond.name, safe='')}.svg" for name in PALETTES)
    return Option(bond.name, bond.words, day, night)


def _sent(bond: Bond | None, digest: str, palette: str) -> Response:
    if bond is None or palette not in PALETTES or digest != _digest(bond):
        raise failure("not-found", "No picture of a bond has this address.")
    return Response(swatch(bond, palette), media_type=MEDIA_TYPES[".svg"], headers={"cache-control": FOREVER})


@lru_cache(maxsize=128)
def _digest(bond: Bond) -> str:
    """Changes with what the pictures show, so that they may be kept."""
    return sha256("".join(swatch(bond, palette) for palette in PALETTES).encode()).hexdigest()[:16]
