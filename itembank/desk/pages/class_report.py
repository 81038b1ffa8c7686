"""What a class knows: its topics, its lessons, own views, what was unclear; also as a PDF."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.forms import day
from itembank.desk.replying.replies import page, url
from itembank.desk.replying.share_plot import share_plot
from itembank.errors import ItembankError, NotFound
from itembank.work.report.figures import percent, share_words

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.report.reports import ReportRequest


def show(request: Request) -> Response:
    """Show the report of a class; where there is none, why, with the days to change."""
    from itembank.records.reports.class_report import monday
    from itembank.work.report.reports import report

    desk: Desk = request.app.state.desk
    group = desk.group(request.path_params["name"])
    typed = {name: request.query_params.get(name, "").strip() for name in ("since", "until")}
    found, titles, fault = None, None, ""
    try:
        made = report(desk.department, _wanted(request, group.name))
        found, titles = made.found, made.titles
    except ItembankError as error:
        fault = str(error)
    return page(
        request,
        "class_report",
        status=400 if fault and any(typed.values()) else 200,
        group=group,
        where=url("class", group.name, "report"),
        typed=typed,
        query=request.url.query,
        report=found,
        titles=titles,
        fault=fault,
        share_plot=share_plot,
        share_words=share_words,
        percent=percent,
        monday=monday,
    )


def paper(request: Request) -> Response:
    """Send the report of a class as a PDF."""
    from itembank.work.report.reports import pages_of, report

    desk: Desk = request.app.state.desk
    group = desk.group(request.path_params["name"])
    made = report(desk.department, _wanted(request, group.name))
    name = "".join(c if c.isascii() and c.isalnum() else "-" for c in group.name)
    headers = {
        "cache-control": "no-store",
        "content-disposition": f'inline; filename="{name}-report.pdf"',
    }
    return Response(pages_of(desk.department, made), media_type="application/pdf", headers=headers)


def _wanted(request: Request, class_name: str) -> ReportRequest:
    from itembank.work.report.reports import ReportRequest

    return ReportRequest(class_name, _day(request, "since"), _day(request, "until"))


def _day(request: Request, name: str) -> datetime.date | None:
    typed = request.query_params.get(name, "").strip()
    try:
        return day(typed) if typed else None
    except NotFound as error:
        raise ItembankError(f"{error} Write it like 2026-11-30.", field=name) from None


ROUTES = [Route("/class/{name}/report", show), Route("/class/{name}/report.pdf", paper)]
