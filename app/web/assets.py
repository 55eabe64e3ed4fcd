"""Style sheets, scripts and fonts under an address that changes with their contents, so that they may be kept."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from importlib.resources import files
from pathlib import Path, PurePosixPath

from fastapi import APIRouter
from starlette.responses import Response

from app.drawing.style_sheet import style_sheet
from app.web.fonts import subset_font
from app.web.problems import failure

STATIC = Path(__file__).parents[2] / "static"
FROM_WHEELS = {
    "htmx.js": ("js_lib_htmx", "static/htmx/htmx.min.js"),
    "source-sans-regular.ttf": ("font_source_sans_pro", "files/SourceSansPro-Regular.ttf"),
    "source-sans-semibold.ttf": ("font_source_sans_pro", "files/SourceSansPro-Semibold.ttf"),
}
MEDIA_TYPES = {
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".svg": "image/svg+xml",
    ".ttf": "font/ttf",
    ".webmanifest": "application/manifest+json",
    ".png": "image/png",
}
FOREVER = "public, max-age=31536000, immutable"

router = APIRouter(include_in_schema=False)


@dataclass(frozen=True)
class Assets:
    """What is in each file by the name that pages call it by, and the digest of them all."""

    digest: str
    contents: dict[str, bytes]

    def url(self, name: str) -> str:
        """The address of one file; raises KeyError for a name that is not there, so that no page links to nothing."""
        if name not in self.contents:
            raise KeyError(name)
        return f"/static/{self.digest}/{name}"


@cache
def assets() -> Assets:
    """Everything there is, read once."""
    found = dict(_found())
    contents = {name: found[name] for name in sorted(found)}
    digest = sha256()
    for name, content in contents.items():
        digest.update(b"%d %s\n" % (len(content), name.encode()))
        digest.update(content)
    return Assets(digest.hexdigest()[:16], contents)


def asset_url(name: str) -> str:
    return assets().url(name)


@router.get("/static/{digest}/{name:path}")
def send(digest: str, name: str) -> Response:
    """One file, if the address belongs to what it holds now."""
    found = assets()
    if digest != found.digest or name not in found.contents:
        raise failure("not-found", "No file of this program has this address.")
    media_type = MEDIA_TYPES[PurePosixPath(name).suffix]
    return Response(found.contents[name], media_type=media_type, headers={"cache-control": FOREVER})


@router.get("/favicon.ico")
def mark() -> Response:
    """The mark where a browser looks for it by itself, beside a drawing that is no page."""
    return Response(assets().contents["mark.svg"], media_type=MEDIA_TYPES[".svg"])


def drawing_styles() -> str:
    """Live drawings in the colours of paper drawings: by day, at night, on the bed page, in print."""
    night = style_sheet("night", ":root:not([data-theme=paper]) .drawing:not(.bed)")
    return "\n".join(
        (
            style_sheet("paper", ".drawing"),
            f"@media (prefers-color-scheme: dark) {{\n{night}}}",
            style_sheet("night", ":root[data-theme=night] .drawing:not(.bed)"),
            style_sheet("bed", ":root .drawing.bed"),
            f"@media print {{\n{style_sheet('print', ':root .drawing.drawing')}}}",
        )
    )


def _found() -> Iterator[tuple[str, bytes]]:
    for path in STATIC.rglob("*"):
        if path.suffix in MEDIA_TYPES:
            yield path.relative_to(STATIC).as_posix(), path.read_bytes()
    yield "drawing.css", drawing_styles().encode() + (STATIC / "drawing.css").read_bytes()
    for name, (package, inside) in FROM_WHEELS.items():
        content = files(package).joinpath(inside).read_bytes()
        yield name, subset_font(content) if name.endswith(".ttf") else content
