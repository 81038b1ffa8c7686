"""A lesson before, during and after: its questions as they print, its files, what came of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.forms import day
from itembank.desk.replying.replies import page
from itembank.today import today

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk

FILES = (
    ("starter.pdf", "Starter"),
    ("answers.pdf", "Answers"),
    ("next-tasks.pdf", "Next tasks"),
    ("support.pdf", "Support sheet"),
    ("core.pdf", "Core sheet"),
    ("challenge.pdf", "Challenge sheet"),
    ("follow-up-answers.pdf", "Answers to the sheets"),
    ("teacher-notes.pdf", "Teacher notes"),
    ("slips.pdf", "Slips"),
    ("starter-large.pdf", "Starter, large print"),
    ("support-large.pdf", "Support sheet, large print"),
    ("core-large.pdf", "Core sheet, large print"),
    ("challenge-large.pdf", "Challenge sheet, large print"),
    ("follow-up-answers-large.pdf", "Answers to the sheets, large print"),
    ("self-mark.html", "Self-marking page"),
)
"""The files of a pack that a teacher opens, and what each is."""


def show(request: Request) -> Response:
    """Show a lesson."""
    from itembank.packs.data.pack_place import read_pack_data
    from itembank.work.week.standing import week_standing

    desk: Desk = request.app.state.desk
    planner = desk.planner(request.path_params["name"])
    date = day(request.path_params["date"])
    week = week_standing(planner, desk.packs, date)
    lesson = week.lesson(date, request.path_params["period"])
    pack: dict[str, Any] | None = None
    files: list[tuple[str, str]] = []
    if lesson.folder is not None:
        _, pack = read_pack_data(lesson.folder)
        files = [(name, what) for name, what in FILES if (lesson.folder / name).is_file()]
    return page(
        request,
        "lesson",
        group=planner.school_class,
        week=week,
        lesson=lesson,
        pack=pack,
        files=files,
        title_of=planner.title,
        now=today(),
    )


ROUTES = [Route("/class/{name}/lesson/{date}/{period}", show)]
