"""Questions that could come in the place of one in a starter."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.lesson_at import LESSON, find
from itembank.desk.replying.replies import page
from itembank.errors import NotFound


def show(request: Request) -> Response:
    """Show questions that could come in the place of one."""
    from itembank.planning.week.week_plan import WeekPlan
    from itembank.work.week.like_it import kinds_there, others_like

    found = find(request)
    planned = found.lesson.planned
    if planned is None:
        raise NotFound("This lesson is not planned yet.")
    address = request.query_params.get("address", "")
    lessons = tuple(
        standing.planned for standing in found.week.lessons if standing.planned is not None
    )
    plan = WeekPlan(found.week.class_name, found.week.monday, lessons)
    kind = request.query_params.get("kind", "")
    near = others_like(found.planner, plan, planned, address, kind=kind)
    pack = found.pack() or {"versions": [{"items": []}]}
    now = [item for item in pack["versions"][0]["items"] if item["address"] == address]
    return page(
        request,
        "others",
        group=found.planner.school_class,
        lesson=found.lesson,
        where=found.where,
        address=address,
        place=planned.asked.index(address) + 1,
        now=now,
        near=[item.model_dump() for item in near],
        kind=kind,
        kinds=kinds_there(found.planner, address),
    )


ROUTES = [Route(LESSON + "/others", show)]
