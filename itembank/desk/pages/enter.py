"""The page that asks for the password, where the desk is open to a network."""

from __future__ import annotations

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from itembank.desk.replying.forms import action, text
from itembank.desk.replying.replies import page
from itembank.errors import ItembankError, NotFound

COOKIE = "itembank-desk"
"""Holds the token of whoever gave the password."""


def show(request: Request) -> Response:
    """Ask for the password."""
    if request.app.state.password is None:
        raise NotFound("This desk asks for no password: it answers this computer alone.")
    return page(request, "enter", fault="")


def enter(request: Request, form: FormData) -> Response:
    """Let in whoever gives the password."""
    password = request.app.state.password
    if password is None:
        raise NotFound("This desk asks for no password: it answers this computer alone.")
    try:
        token = password.token_for(text(form, "password"))
    except ItembankError as error:
        return page(request, "enter", status=403, fault=str(error))
    answer = RedirectResponse("/", 303)
    answer.set_cookie(COOKIE, token, httponly=True, samesite="strict", path="/")
    return answer


ROUTES = [Route("/enter", show), Route("/enter", action(enter), methods=["POST"])]
