"""The page of somebody who has no department yet: look round at the demo, or make one's own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.forms import action
from itembank.desk.replying.replies import onward, page
from itembank.work.usual_home import demo_home, is_department

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk


def show(request: Request) -> Response:
    """Show both ways to begin."""
    desk: Desk = request.app.state.desk
    return page(request, "welcome", home=desk.home, there=is_department(desk.home))


def demo(request: Request, form: FormData) -> Response:
    """Open the demo school, which is written to the person's own folder for it."""
    desk: Desk = request.app.state.desk
    desk.move_to(demo_home())
    return onward(
        "/", "This is an invented school. Try what you like: nothing here is yours to lose."
    )


ROUTES = [Route("/welcome", show), Route("/welcome/demo", action(demo), methods=["POST"])]
