"""The board: a starter before the class, its answers one by one, the bands, the next tasks."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.lesson_at import LESSON, find
from itembank.desk.replying.replies import page
from itembank.errors import NotFound
from itembank.planning.bands.caution import FOR_PUPILS

STAGES = ("questions", "answers", "next")
USUAL_MINUTES = 6
MOST_MINUTES = 60
"""What the clock of the board is set to, and the most that it can be."""


def show(request: Request) -> Response:
    """Show the board of a lesson, at the stage that the address names."""
    found = find(request)
    pack = found.pack()
    if pack is None:
        raise NotFound("This lesson has no pack to show. Plan its week first.")
    versions: list[dict[str, Any]] = pack["versions"]
    wanted = request.query_params.get("version", versions[0]["letter"])
    version = next((version for version in versions if version["letter"] == wanted), versions[0])
    stage = request.query_params.get("stage", STAGES[0])
    return page(
        request,
        "board",
        group=found.planner.school_class,
        lesson=found.lesson,
        where=found.where,
        pack=pack,
        version=version,
        stage=stage if stage in STAGES else STAGES[0],
        minutes=_minutes(request.query_params.get("minutes", "")),
        for_pupils=FOR_PUPILS,
    )


def _minutes(typed: str) -> int:
    from itembank.text.whole_number import whole_number

    found = whole_number(typed)
    return USUAL_MINUTES if found is None or not 1 <= found <= MOST_MINUTES else found


ROUTES = [Route(LESSON + "/board", show)]
