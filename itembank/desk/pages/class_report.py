"""What a class knows: its topics, its lessons, own views, what was unclear; also as a PDF."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.band_plot import band_bar, band_patterns, pattern_patch
from itembank.desk.replying.forms import day_in
from itembank.desk.replying.replies import page, url
from itembank.desk.replying.share_plot import share_plot
from itembank.errors import ItembankError
from itembank.work.report.class_words import TOPICS_UNKNOWN
from itembank.work.report.figures import percent, share_words

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.report.band_weeks import BandCount, BandWeek
    from itembank.work.report.reports import ReportRequest


def show(request: Request) -> Response:
    """Show the report of a class; where there is none, why, with the days to change."""
    from itembank.records.reports.class_report import monday
    from itembank.work.report.band_weeks import band_weeks
    from itembank.work.report.reports import report

    desk: Desk = request.app.state.desk
    group = desk.group(request.path_params["name"])
    typed = {name: request.query_params.get(name, "").strip() for name in ("since", "until")}
    found: Any = None
    titles, fault = None, ""
    try:
        made = report(desk.department, _wanted(request, group.name))
        found, titles = made.found, made.titles
    except ItembankError as error:
        fault = str(error)
    weeks = band_weeks(found.lessons) if found is not None else ()
    colours = {band.letter: band.colour for band in group.bands.signs}
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
        weeks=weeks,
        bands=_bands(weeks, tuple(colours)),
        band_bar=band_bar,
        band_patterns=lambda letters: band_patterns(letters, colours),
        pattern_patch=pattern_patch,
        share_plot=share_plot,
        share_words=share_words,
        topics_unknown=TOPICS_UNKNOWN,
        percent=percent,
        monday=monday,
    )


def _bands(weeks: Sequence[BandWeek], order: Sequence[str]) -> list[BandCount]:
    """Return each band that was met, the class's own in their order first."""
    met = {band.letter: band for week in weeks for band in week.bands}
    return [met[letter] for letter in dict.fromkeys((*order, *met)) if letter in met]


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

    asked = request.query_params
    return ReportRequest(class_name, day_in(asked, "since"), day_in(asked, "until"))


ROUTES = [Route("/class/{name}/report", show), Route("/class/{name}/report.pdf", paper)]
