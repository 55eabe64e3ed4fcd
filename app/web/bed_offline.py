"""What lets bed pages open with no signal: the worker that looks after them, and the manifest for a home screen."""

from fastapi import APIRouter
from starlette.responses import JSONResponse, Response

from app.web.assets import asset_url, assets

router = APIRouter(prefix="/bed", include_in_schema=False)

ICON_SIZES = ("192x192", "512x512", "any")


@router.get("/worker.js")
def worker() -> Response:
    """At an address of its own, and never kept, so that it looks after every page under it and can be replaced."""
    headers = {"cache-control": "no-cache", "service-worker-allowed": "/bed"}
    return Response(assets().contents["bed/worker.js"], media_type="text/javascript", headers=headers)


@router.get("/manifest.webmanifest")
def manifest() -> Response:
    """W3C Web Application Manifest: name, start page, icon."""
    icon = {"src": asset_url("mark.svg"), "type": "image/svg+xml"}
    said = {
        "name": "Castcourse at the bed",
        "short_name": "Castcourse",
        "start_url": "/bed",
        "scope": "/bed",
        "display": "standalone",
        "background_color": "#ffffff",
        "theme_color": "#ffffff",
        "icons": [icon | {"sizes": sizes} for sizes in ICON_SIZES],
    }
    return JSONResponse(said, media_type="application/manifest+json")
