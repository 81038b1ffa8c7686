"""The files of packs, as the browser shows or saves them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.requests import Request
from starlette.responses import FileResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from itembank.errors import NotFound

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk

KINDS = {".pdf": "application/pdf", ".html": "text/html"}


def show(request: Request) -> Response:
    """Send a file of a pack; nothing else that lies in its folder."""
    desk: Desk = request.app.state.desk
    folder, name = request.path_params["folder"], request.path_params["file"]
    path = desk.inside(folder, name)
    kind = KINDS.get(path.suffix)
    if kind is None or not path.is_file():
        raise NotFound("There is no such file. Make the pack again.")
    # A page that marks itself runs its own script, and may reach nothing else.
    own = {"content-security-policy": "sandbox allow-scripts"} if kind == "text/html" else {}
    headers = {"cache-control": "no-cache", **own}
    return FileResponse(path, media_type=kind, headers=headers, content_disposition_type="inline")


def overview(request: Request) -> Response:
    """Send the week on one page."""
    desk: Desk = request.app.state.desk
    path = desk.inside(request.path_params["file"])
    if path.suffix != ".pdf" or not path.is_file():
        raise NotFound("There is no such file. Plan the week again.")
    return FileResponse(path, media_type="application/pdf", content_disposition_type="inline")


def _typefaces() -> Mount:
    from itembank.pages import typefaces

    folder = typefaces.__path__[0]
    return Mount("/typefaces", StaticFiles(directory=folder), name="typefaces")


ROUTES = [
    Route("/packs/{folder}/{file}", show),
    Route("/overview/{file}", overview),
    _typefaces(),
]
