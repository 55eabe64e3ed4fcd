"""Help on terms: a mark on their labels, their sentences, their pictures to be kept for good."""

from functools import cache
from hashlib import sha256

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import JSONResponse, Response

from app.drawing.terms import term_of, term_picture, terms
from app.web.assets import FOREVER, MEDIA_TYPES
from app.web.problems import failure

PALETTES = ("paper", "night")

router = APIRouter(prefix="/terms/{digest}", include_in_schema=False)


@router.get("/sentences.json")
def sentences(digest: str) -> JSONResponse:
    """The sentence of every term."""
    _check(digest)
    found = {slug: {"name": term.name, "sentence": term.sentence} for slug, term in terms().items()}
    return JSONResponse(found, headers={"cache-control": FOREVER})


@router.get("/{palette}/{slug}.svg")
def picture(digest: str, palette: str, slug: str) -> Response:
    _check(digest)
    if palette not in PALETTES or slug not in terms():
        raise failure("not-found", "No picture of a term has this address.")
    return Response(term_picture(slug, palette), media_type=MEDIA_TYPES[".svg"], headers={"cache-control": FOREVER})


def helped(label: str, is_stop: bool = False) -> Markup | str:
    """The label, marked where there is help on it; a stop of its own where it labels no field that is one."""
    term = term_of(label)
    if term is None:
        return label
    stop = Markup(' tabindex="0"') if is_stop else ""
    return Markup('<span class="term" data-term="{}"{}>{}</span>').format(term.slug, stop, label)


@cache
def terms_digest() -> str:
    """Changes with what is said and drawn, so that all of it may be kept."""
    said = "".join(f"{term}{term_picture(slug)}" for slug, term in terms().items())
    return sha256(said.encode()).hexdigest()[:16]


def _check(digest: str) -> None:
    if digest != terms_digest():
        raise failure("not-found", "Help on terms has another address by now.")
