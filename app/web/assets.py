"""Style sheets, scripts and fonts under an address that changes with their contents, so that they may be kept."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from importlib.resources import files
from pathlib import Path

from fastapi import APIRouter
from starlette.responses import FileResponse

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
    """Files by the name that pages call them by, and the digest of them all."""

    digest: str
    paths: dict[str, Path]

    def url(self, name: str) -> str:
        """The address of one file; raises KeyError for a name that is not there, so that no page links to nothing."""
        if name not in self.paths:
            raise KeyError(name)
        return f"/static/{self.digest}/{name}"


@cache
def assets() -> Assets:
    """Everything there is, read once."""
    paths = dict(sorted(_found()))
    digest = sha256()
    for name, path in paths.items():
        digest.update(name.encode())
        digest.update(path.read_bytes())
    return Assets(digest.hexdigest()[:16], paths)


def asset_url(name: str) -> str:
    return assets().url(name)


@router.get("/static/{digest}/{name:path}")
def send(digest: str, name: str) -> FileResponse:
    """One file, if the address belongs to what it holds now."""
    found = assets()
    if digest != found.digest or name not in found.paths:
        raise failure("not-found", "No file of this program has this address.")
    path = found.paths[name]
    return FileResponse(path, media_type=MEDIA_TYPES[path.suffix], headers={"cache-control": FOREVER})


def _found() -> Iterator[tuple[str, Path]]:
    for path in STATIC.rglob("*"):
        if path.suffix in MEDIA_TYPES:
            yield path.relative_to(STATIC).as_posix(), path
    for name, (package, inside) in FROM_WHEELS.items():
        yield name, Path(str(files(package).joinpath(inside)))
