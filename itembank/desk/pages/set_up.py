"""Set-up: all that is answered about the department, with the ways to change it and back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.answering.answer_steps import Step, steps_of
from itembank.desk.answering.set_up_at import kept_of
from itembank.desk.replying.forms import action
from itembank.desk.replying.replies import onward, page
from itembank.work.usual_home import is_demo

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.department.answered import Answers


def show(request: Request) -> Response:
    """Show all that is set up, each with the way to change it."""
    from itembank.work.department.earlier_set_ups import earlier_set_ups
    from itembank.work.department.outlook import outlook_on
    from itembank.work.department.setting_groups import CALLED, WHOLE

    kept = kept_of(request)
    return page(
        request,
        "set_up",
        steps=_steps(kept.answers),
        outlook=outlook_on(kept.answers),
        groups={name: CALLED[name] for name in WHOLE},
        home=kept.folder,
        classes=[group.name for group in kept.answers.classes],
        demo=is_demo(kept.folder),
        changes=len(earlier_set_ups(kept.folder)),
    )


def _steps(answers: Answers) -> list[Step]:
    return [step for step in steps_of(answers) if step.part != "bands"]


def take_back(request: Request, form: FormData) -> Response:
    """Take the last change of the set-up back."""
    from itembank.work.department.earlier_set_ups import take_back_set_up

    desk: Desk = request.app.state.desk
    take_back_set_up(desk.home)
    return onward("/set-up", "The last change is taken back.")


ROUTES = [
    Route("/set-up", show),
    Route("/set-up/take-back", action(take_back), methods=["POST"]),
]
