"""The server, put together: `create_app(settings)`."""

import gc
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

from fastapi import FastAPI
from starlette.middleware.gzip import GZipMiddleware

from app.settings import Settings
from app.web import (
    api_field,
    api_panels,
    api_projects,
    api_releases,
    api_results,
    api_settings,
    assets,
    at_bed,
    bed,
    bed_offline,
    drift,
    editor,
    editor_advice,
    editor_bonds,
    editor_history,
    editor_preview,
    editor_snap,
    editor_table,
    editor_together,
    health,
    lengths,
    liner,
    order,
    person,
    problem_list,
    project,
    projects,
    reading_check,
    releases,
    same,
    saw,
    settings_page,
    shares,
    sign_in,
    submittal,
    term_help,
)
from app.web.body import BodyLimit
from app.web.failures import add_failures
from app.web.field_limits import FieldLimits
from app.web.gate import Gate, routes_of
from app.web.hints import Hints, closed_by_signals
from app.web.logs import hide_tokens
from app.web.security import KnownHosts, SameSite, SecurityHeaders
from app.web.sign_in import Tries
from app.workflow.opening import open_data

ROUTERS = (
    assets.router,
    health.router,
    problem_list.router,
    projects.router,
    person.router,
    shares.router,
    sign_in.router,
    project.router,
    settings_page.router,
    editor.router,
    editor_advice.router,
    editor_bonds.router,
    editor_history.router,
    editor_preview.router,
    editor_snap.router,
    editor_table.router,
    editor_together.router,
    lengths.router,
    liner.router,
    reading_check.router,
    releases.router,
    same.router,
    saw.router,
    order.router,
    submittal.router,
    term_help.router,
    drift.router,
    at_bed.router,
    bed_offline.router,
    bed.router,
    api_projects.router,
    api_settings.router,
    api_panels.router,
    api_results.router,
    api_releases.router,
    api_field.router,
)

GARBAGE = (100_000, 20, 50)
"""Objects more before a collection, and how often the older ones are gone through: an edit leaves some 10,000."""


def create_app(settings: Settings) -> FastAPI:
    """The server on one data folder; raises AddressRefused for an address that other machines can reach."""
    settings.checked()
    app = FastAPI(
        title="Castcourse", version="0.1.0", docs_url=None, redoc_url=None, lifespan=_lifespan, max_body_size=None
    )
    app.state.settings = settings
    app.state.hints = Hints()
    app.state.field_limits = FieldLimits()
    app.state.tries = Tries()
    if settings.needs_sign_in:
        app.add_middleware(Gate, routes=routes_of(ROUTERS, app.routes))
    app.add_middleware(BodyLimit, largest=settings.largest_body)
    app.add_middleware(SameSite)
    app.add_middleware(KnownHosts, hosts=settings.known_hosts)
    app.add_middleware(GZipMiddleware, compresslevel=5)
    app.add_middleware(SecurityHeaders)
    add_failures(app)
    for router in ROUTERS:
        app.include_router(router)
    return app


@asynccontextmanager
async def _lifespan(app: FastAPI) -> AsyncIterator[None]:
    """Opens the database and brings it up to date before the first request; lets go of it after the last."""
    settings: Settings = app.state.settings
    app.state.engine = open_data(settings.database)
    hide_tokens()
    # Fonts are cut down once, before anybody waits for a page.
    assets.assets()
    # What is loaded by now stays for good: the collector need not look through it again while somebody drags.
    gc.collect()
    gc.freeze()
    gc.set_threshold(*GARBAGE)
    with closed_by_signals(app.state.hints):
        yield
    gc.unfreeze()
    app.state.engine.dispose()
