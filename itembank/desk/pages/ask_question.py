"""A question of a bank put into the starter of a lesson that is planned."""

from __future__ import annotations

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.pages.bank_question import OF, faces, full
from itembank.desk.pages.questions import at_bank
from itembank.desk.pages.week import lesson_url
from itembank.desk.replying.forms import action
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import DAY, monday
from itembank.today import today


def show(request: Request) -> Response:
    """Show the planned lessons of this week and the next that the question could go into."""
    from itembank.work.week.standing import week_standing

    at = at_bank(request)
    item = full(at, request.path_params["id"])
    first = monday(today())
    found, faults = [], []
    for group in at.desk.department.classes:
        try:
            planner = at.desk.planner(group.name)
            weeks = [week_standing(planner, at.desk.packs, first + 7 * n * DAY) for n in (0, 1)]
        except ItembankError as error:  # one class's plan at fault hides none of the others
            faults.append(f"{group.name}: {error}")
            continue
        lessons = [
            (lesson, lesson_url(group.name, lesson.date, lesson.period, "change"))
            for week in weeks
            for lesson in week.lessons
            if lesson.planned and not lesson.closed and lesson.date >= today()
        ]
        if lessons:
            found.append((group.name, lessons))
    return page(
        request,
        "ask_question",
        **at.shared,
        item=item,
        face=faces(item.shown),
        address=f"{item.bank}:{item.id}",
        where=at.url("of", item.id),
        found=found,
        faults=faults,
    )


def draw(request: Request, form: FormData) -> Response:
    """Have the plans of all classes draw on the bank from now on."""
    from itembank.work.department.drawing_on import draw_on
    from itembank.work.department.made import read_kept

    at = at_bank(request, to_change=True)
    draw_on(read_kept(at.desk.home), at.bank.folder)
    return onward(request.url.path, f"Plans draw on {at.bank.title} from now on.")


ROUTES = [Route(OF + "/ask", show), Route(OF + "/ask", action(draw), methods=["POST"])]
