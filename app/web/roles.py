"""Which role may use which route: one table, and what is not in it is for nobody."""

from collections.abc import Iterable, Mapping

from app.storage.accounts import Role

Roles = frozenset[Role]

OWNER: Roles = frozenset({"owner"})
DRAWING: Roles = OWNER | {"detailer"}
ORDERING: Roles = OWNER | {"manager"}
RELEASING: Roles = DRAWING | ORDERING
FIELD: Roles = RELEASING | {"foreman"}
ALL: Roles = FIELD | {"viewer"}
NOBODY: Roles = frozenset()

OPEN = frozenset(
    {
        "GET /static/{digest}/{name:path}",
        "GET /favicon.ico",
        "GET /healthz",
        "GET /problems",
        "GET /sign-in",
        "POST /sign-in",
        "GET /s/{token}",
        "HEAD /s/{token}",
        "GET /terms/{digest}/sentences.json",
        "GET /terms/{digest}/{palette}/{slug}.svg",
        "GET /bed/worker.js",
        "GET /bed/manifest.webmanifest",
        "POST /bed/leave",
    }
)
"""Without signing in: files, the way in, and what a share link needs before it is opened."""

BY_LINK = frozenset(
    {
        "GET /bed",
        "GET /bed/{panel_id}",
        "GET /bed/{panel_id}/now",
        "GET /bed/{panel_id}/readings",
        "POST /api/field/records",
        "POST /api/field/known",
        "PUT /api/field/records/{record_id}/photo",
        "GET /api/field/records/{record_id}/photo",
    }
)
"""Also for who has opened a share link; what the link opens is asked where it is looked up."""

_READ = """
/ /openapi.json /account /projects/{project_id} /projects/{project_id}/reading /projects/{project_id}/walls/{wall_id}
/projects/{project_id}/walls/{wall_id}/schedule /projects/{project_id}/settings
/projects/{project_id}/bonds/{digest}/{palette}/{name:path}.svg /bonds/{digest}/{palette}/{name}.svg /lengths
/panels/{panel_id} /panels/{panel_id}/card /panels/{panel_id}/checkpoints /panels/{panel_id}/layers
/panels/{panel_id}/findings/now /panels/{panel_id}/findings /panels/{panel_id}/advice /panels/{panel_id}/history
/panels/{panel_id}/compare /panels/{panel_id}/snap /panels/{panel_id}/table /panels/{panel_id}/table/copy
/panels/{panel_id}/events /panels/{panel_id}/events/now /panels/{panel_id}/since /panels/{panel_id}/liner
/panels/{panel_id}/drift /panels/{panel_id}/drift/now /panels/{panel_id}/drift/tape /panels/{panel_id}/drift/reading
/panels/{panel_id}/same /panels/{panel_id}/releases /panels/{panel_id}/releases/{release_id}
/panels/{panel_id}/releases/{release_id}/{name} /panels/{panel_id}/at-bed
/projects/{project_id}/releases /projects/{project_id}/releases/{job_id} /projects/{project_id}/releases/{job_id}/now
/projects/{project_id}/at-bed /projects/{project_id}/at-bed/now /projects/{project_id}/saw
/projects/{project_id}/saw/sheet-{number}.svg /projects/{project_id}/order /projects/{project_id}/submittal
/projects/{project_id}/submittal/{job_id} /projects/{project_id}/submittal/{job_id}/now
/projects/{project_id}/submittal/{job_id}/file.pdf
/bed /bed/{panel_id} /bed/{panel_id}/now /bed/{panel_id}/readings
/api/projects /api/projects/{project_id} /api/projects/{project_id}/file /api/projects/{project_id}/settings
/api/panels/{panel_id} /api/panels/{panel_id}/layout /api/panels/{panel_id}/{view}.svg
/api/projects/{project_id}/takeoff.json /api/projects/{project_id}/takeoff /api/projects/{project_id}/takeoff.csv
/api/projects/{project_id}/takeoff.xlsx /api/projects/{project_id}/submittal.pdf /api/panels/{panel_id}/releases
/api/field/records/{record_id}/photo
"""

_WRITE: Mapping[str, Roles] = {
    "POST /sign-out": ALL,
    "POST /account/password": ALL,
    "POST /account/sessions/{session_id}/end": ALL,
    "GET /accounts": OWNER,
    "POST /person": NOBODY,
    "POST /projects": DRAWING,
    "POST /projects/file": DRAWING,
    "POST /projects/demo": DRAWING,
    "POST /projects/{project_id}/shares": RELEASING,
    "POST /projects/{project_id}/shares/{share_id}/revoke": RELEASING,
    "POST /projects/{project_id}/walls": DRAWING,
    "POST /projects/{project_id}/walls/{wall_id}/settings": DRAWING,
    "POST /projects/{project_id}/walls/{wall_id}/panels": DRAWING,
    "POST /projects/{project_id}/panels/{panel_id}/mark": DRAWING,
    "POST /projects/{project_id}/panels/{panel_id}/casting": RELEASING,
    "POST /projects/{project_id}/panels/{panel_id}/remove": DRAWING,
    "POST /projects/{project_id}/panels/{panel_id}/put-back": DRAWING,
    "POST /projects/{project_id}/settings/deliveries": ORDERING,
    "POST /projects/{project_id}/settings/deliveries/{place}/take-back": ORDERING,
    "POST /projects/{project_id}/settings/{group}": RELEASING,
    "POST /panels/{panel_id}/edits": DRAWING,
    "POST /panels/{panel_id}/undo": DRAWING,
    "POST /panels/{panel_id}/redo": DRAWING,
    "POST /panels/{panel_id}/preview": ALL,
    "POST /panels/{panel_id}/table/look": ALL,
    "POST /panels/{panel_id}/liner": DRAWING,
    "POST /projects/{project_id}/releases": RELEASING,
    "POST /panels/{panel_id}/releases": RELEASING,
    "POST /panels/{panel_id}/releases/{release_id}/notice": FIELD,
    "POST /panels/{panel_id}/same": DRAWING,
    "POST /panels/{panel_id}/same/copy": DRAWING,
    "POST /projects/{project_id}/submittal": ALL,
    "POST /api/projects": DRAWING,
    "POST /api/projects/{project_id}/walls": DRAWING,
    "POST /api/projects/{project_id}/walls/{wall_id}/panels": DRAWING,
    "PATCH /api/projects/{project_id}/settings": DRAWING,
    "PATCH /api/panels/{panel_id}": DRAWING,
    "POST /api/panels/{panel_id}/undo": DRAWING,
    "POST /api/panels/{panel_id}/redo": DRAWING,
    "DELETE /api/panels/{panel_id}": DRAWING,
    "POST /api/panels/{panel_id}/releases": RELEASING,
    "POST /api/field/records": FIELD,
    "POST /api/field/known": FIELD,
    "PUT /api/field/records/{record_id}/photo": FIELD,
}

RIGHTS: Mapping[str, Roles] = {**{f"GET {path}": ALL for path in _READ.split()}, **_WRITE}
"""By method and path as the route is written: who may use it."""


def roles_of(methods: Iterable[str], path: str) -> Roles:
    """Who may use a route; nobody where it is not in the table. HEAD goes with GET."""
    named = "GET" if set(methods) & {"GET", "HEAD"} else next(iter(methods), "")
    return RIGHTS.get(f"{named} {path}", NOBODY)
