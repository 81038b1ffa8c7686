"""A lesson before, during and after: its questions as they print, its files, what came of it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.pages.questions import banks_of_desk
from itembank.desk.replying.banks_asked import banks_asked
from itembank.desk.replying.forms import action, number, text
from itembank.desk.replying.lesson_at import LESSON, Found, changed, find
from itembank.desk.replying.replies import onward, page, url
from itembank.errors import ItembankError
from itembank.packs.data.pack_place import folder_name
from itembank.planning.week.week_changes import (
    Another,
    Ban,
    Change,
    Instead,
    Length,
    LessonName,
    Pin,
)
from itembank.today import today
from itembank.work.report.lesson_words import asked_line, overall_line

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.lesson.decide import Decided

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
    from itembank.work.lesson.undo import last_of_lesson, seen_as
    from itembank.work.week.kinds_asked import kinds_asked

    found = find(request)
    name, lesson = found.week.class_name, found.lesson
    last = last_of_lesson(found.desk.department, name, lesson.date, lesson.period)
    folder = found.lesson.folder
    files = [(name, what) for name, what in FILES if folder and (folder / name).is_file()]
    titles = found.planner.titles
    pack = found.pack()
    return page(
        request,
        "lesson",
        group=found.planner.school_class,
        week=found.week,
        lesson=found.lesson,
        where=found.where,
        pack=pack,
        in_banks=banks_asked(banks_of_desk(found.desk), pack),
        files=files,
        title_of=found.planner.title,
        topics=sorted(titles.items(), key=lambda row: row[1]),
        undo=_can_undo(found.week.plan),
        decided=_decided(found),
        instead=found.instead(),
        kinds=kinds_asked(lesson.folder),
        last=last,
        seen_as=seen_as,
        overall=overall_line,
        asked_line=asked_line,
        mistakes=_mistakes(found.desk),
        now=today(),
    )


def _decided(found: Found) -> Decided | None:
    """Return what a lesson's results suggest; None where nothing is recorded."""
    if not found.lesson.recorded:
        return None
    from itembank.work.lesson.decide import decide

    return decide(found.desk.department, found.week.class_name, found.lesson.date, found.period)


def _mistakes(desk: Desk) -> Callable[[str, str], str]:
    """Return what names a mistake of a topic for people."""
    from itembank.work.report.titles import titles_of

    return titles_of(desk.department).mistake


def _can_undo(plan: Path | None) -> bool:
    from itembank.work.week.earlier_plans import earlier_plans

    return plan is not None and bool(earlier_plans(plan))


def change(request: Request, form: FormData) -> Response:
    """Change the plan of a lesson as a form says, and make its pack anew."""
    found = find(request)
    wanted = _wanted(found.name, form)
    part = "#" + text(form, "part") if text(form, "part") else ""
    try:
        made = changed(found.desk, found.week, (wanted,))
    except ItembankError as error:
        if "not asked there" not in error.matters:
            raise
        # As where it was changed in another window meanwhile: an address tells a teacher nothing.
        raise ItembankError(
            f"{found.lesson} does not ask that question any more. Look at the lesson again."
        ) from None
    return onward(found.where + part, made)


def _wanted(lesson: LessonName, form: FormData) -> Change:
    """Return the change that a form asks for.

    Raises:
        ItembankError: it asks for none that there is.
    """
    match text(form, "do"):
        case "another":
            return Another(lesson, text(form, "address"), text(form, "new"))
        case "keep":
            return Pin(lesson, text(form, "address"))
        case "never":
            return Ban(text(form, "address"), lesson)
        case "topic-out":
            return Ban(text(form, "topic"), lesson)
        case "topic-instead":
            return Instead(lesson, text(form, "topic"), text(form, "new"))
        case "topic-in":
            how_many = number(form, "questions", "Questions on this topic")
            return Pin(lesson, text(form, "new"), how_many)
        case "length":
            length = number(form, "questions", "Questions in the starter")
            if length is None:
                raise ItembankError("Say how many questions the starter is to have.")
            return Length(length, lesson)
        case other:
            raise ItembankError(f"The desk knows no change called ‘{other[:40]}’.")


def undo(request: Request, form: FormData) -> Response:
    """Take back the last change of the week's plan."""
    found = find(request)
    return onward(found.where, changed(found.desk, found.week, (), undo=True))


def groups(request: Request, form: FormData) -> Response:
    """Put the groups on paper, a page each, and open them."""
    from itembank.work.lesson.decide import check_pdf, write_groups

    found = find(request)
    decided = _decided(found)
    if decided is None:
        raise ItembankError("Nothing is recorded of this lesson, so there are no groups.")
    name = f"groups-{folder_name(found.week.class_name, found.lesson.date, found.lesson.period)}"
    path = found.desk.inside(f"{name}.pdf")
    check_pdf(path)
    write_groups(found.desk.department, decided, path)
    return onward(url("overview", path.name))


ROUTES = [
    Route(LESSON, show),
    Route(LESSON + "/change", action(change), methods=["POST"]),
    Route(LESSON + "/undo", action(undo), methods=["POST"]),
    Route(LESSON + "/groups", action(groups), methods=["POST"]),
]
