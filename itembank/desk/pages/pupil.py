"""The seats of a class, those to look at first, and the page of one pupil; also as a PDF."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.replies import page, url

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.report.pupil_page import PupilPage


def seats(request: Request) -> Response:
    """Show the seats of a class, each with a link to its page."""
    from itembank.work.report.seat_list import seat_list

    desk: Desk = request.app.state.desk
    group = desk.group(request.path_params["name"])
    return page(request, "seats", group=group, found=seat_list(desk.department, group.name))


def show(request: Request) -> Response:
    """Show what is kept of one seat."""
    from itembank.work.report.pupil_page import (
        FOR_A_TALK,
        FOR_PARENTS,
        NOT_KEPT,
        outcome,
        starter_result,
        starter_title,
    )

    made = _page(request)
    found = made.found
    return page(
        request,
        "pupil",
        made=made,
        found=found,
        where=url("class", found.class_name, "seat", found.seat),
        for_a_talk=FOR_A_TALK,
        for_parents=FOR_PARENTS,
        not_kept=NOT_KEPT,
        outcome=outcome,
        starter_title=starter_title,
        starter_result=starter_result,
    )


def paper(request: Request) -> Response:
    """Send the page of a seat as a PDF; no copy of it stays."""
    from itembank.work.report.pupil_page import pupil_pdf

    made = _page(request)
    name = f"{made.found.class_name}-{made.found.seat}"
    name = "".join(c if c.isascii() and c.isalnum() else "-" for c in name)
    headers = {
        "cache-control": "no-store",
        "content-disposition": f'inline; filename="{name}.pdf"',
    }
    return Response(pupil_pdf(made), media_type="application/pdf", headers=headers)


def _page(request: Request) -> PupilPage:
    from itembank.work.report.pupil_page import pupil_page

    desk: Desk = request.app.state.desk
    group = desk.group(request.path_params["name"])
    return pupil_page(desk.department, group.name, request.path_params["seat"])


ROUTES = [
    Route("/class/{name}/seats", seats),
    Route("/class/{name}/seat/{seat}.pdf", paper),
    Route("/class/{name}/seat/{seat}", show),
]
