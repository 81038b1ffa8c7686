"""All results: how classes and topics of the department stand, and how its questions do."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.forms import day_in
from itembank.desk.replying.replies import page
from itembank.desk.replying.share_plot import share_plot
from itembank.errors import ItembankError
from itembank.work.report.figures import figure, share_words

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.report.reports import Report

MOST_QUESTIONS = 100
"""Questions that stand on one page; with a topic or days chosen there are fewer to show."""


def show(request: Request) -> Response:
    """Show the results of all classes, by class and by topic."""
    from itembank.work.report.department_lines import class_shares, topic_shares

    made, shared = _report(request, items=False)
    found: Any = None if made is None else made.found
    titles = None if made is None else made.titles
    return page(
        request,
        "results",
        **shared,
        titles=titles,
        classes=class_shares(found) if found is not None else (),
        topics=topic_shares(found) if found is not None else (),
    )


def questions(request: Request) -> Response:
    """Show how the questions did: by topic and tier, one by one, and against their tier."""
    made, shared = _report(request, items=True)
    found: Any = None if made is None else made.found
    titles = None if made is None else made.titles
    lines = sorted(found.report.items, key=lambda line: -line.out_of) if found is not None else []
    return page(
        request,
        "results_questions",
        **shared,
        titles=titles,
        report=None if found is None else found.report,
        lines=lines[:MOST_QUESTIONS],
        more=max(0, len(lines) - MOST_QUESTIONS),
        figure=figure,
    )


def _report(request: Request, *, items: bool) -> tuple[Report | None, dict[str, Any]]:
    """Return a report, None where there is none, and what both pages show of how it was asked."""
    from itembank.work.report.reports import ReportRequest, report

    desk: Desk = request.app.state.desk
    names = ("since", "until", "class", "topic") if items else ("since", "until")
    typed = {name: request.query_params.get(name, "").strip() for name in names}
    made, fault = None, ""
    try:
        made = report(
            desk.department,
            ReportRequest(
                typed.get("class") or None,
                day_in(request.query_params, "since"),
                day_in(request.query_params, "until"),
                topic=typed.get("topic") or None,
                items=items,
            ),
        )
    except ItembankError as error:
        fault = str(error)
    shared = {
        "typed": typed,
        "fault": fault,
        "status": 400 if fault and any(typed.values()) else 200,
        "share_plot": share_plot,
        "share_words": share_words,
    }
    return made, shared


ROUTES = [Route("/results", show), Route("/results/questions", questions)]
