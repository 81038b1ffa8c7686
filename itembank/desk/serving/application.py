"""The desk as an ASGI application: its pages, its files, its guards."""

from __future__ import annotations

from collections.abc import Callable, Collection
from pathlib import Path
from typing import Any

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Mount
from starlette.staticfiles import StaticFiles

from itembank.data_class import dataclass
from itembank.desk.pages import all_routes
from itembank.desk.replying.desk import Desk
from itembank.desk.replying.replies import page, url
from itembank.desk.serving.guards import TOO_LONG, Guards, TooLong
from itembank.desk.serving.visitors import Password, Visitors
from itembank.errors import CheckFailed, ItembankError, NotFound

STATIC = Path(__file__).parents[1] / "static"


@dataclass(frozen=True, slots=True)
class Network:
    """That a desk is open to the network it is in: at which port, and for whom."""

    port: int
    password: Password


def nothing() -> None:
    """Do nothing."""


def application(
    desk: Desk,
    hosts: Collection[str],
    after_first: Callable[[], object] = nothing,
    network: Network | None = None,
) -> Starlette:
    """Return the desk's application; it answers to the names in `hosts`, port and all.

    `after_first` is called once, when the first answer has been sent. With a `network` it also
    answers to this computer's bare addresses, and asks everybody for the password.
    """
    port = None if network is None else network.port
    guards = Middleware(Guards, hosts=hosts, after_first=after_first, port_on_network=port)
    asking = [Middleware(Visitors, password=network.password)] if network is not None else []
    app = Starlette(
        routes=[*all_routes(), Mount("/static", StaticFiles(directory=STATIC), name="static")],
        middleware=[guards, *asking],
        exception_handlers={
            ItembankError: _fault,
            HTTPException: _missing,
            TooLong: _too_long,
            Exception: _own_fault,
        },
    )
    app.state.desk = desk
    app.state.password = None if network is None else network.password
    return app


def _fault(request: Request, error: Any) -> Response:
    """Say what is wrong, as the terminal would."""
    status = 404 if isinstance(error, NotFound) else 409 if isinstance(error, CheckFailed) else 400
    words = str(error).splitlines()
    return page(
        request,
        "fault",
        status=status,
        words=words,
        missing=status == 404,
        lesson_page=_lesson_page(request),
    )


def _lesson_page(request: Request) -> str:
    """Return the address of the lesson that a form was about; empty where it was about none."""
    at = request.path_params
    if request.method != "POST" or not {"name", "date", "period"} <= at.keys():
        return ""
    return url("class", at["name"], "lesson", at["date"], at["period"])


def _missing(request: Request, error: Any) -> Response:
    words = ["There is no such page at this desk."] if error.status_code == 404 else [error.detail]
    status = error.status_code
    return page(request, "fault", status=status, words=words, missing=status == 404)


def _too_long(request: Request, error: Any) -> Response:
    return PlainTextResponse(TOO_LONG, 413)


def _own_fault(request: Request, error: Any) -> Response:
    """Say that the fault is ours; what it was goes to the terminal, not to the page."""
    words = ["The desk has a fault of its own. Nothing was half-written. Its window says more."]
    return page(request, "fault", status=500, words=words, missing=False)
