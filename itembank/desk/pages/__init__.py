"""The pages of the desk: one module and one template of the same name for each."""

from __future__ import annotations

from starlette.routing import BaseRoute

from itembank.desk.pages import (
    ask_question,
    bank_question,
    begin,
    board,
    class_report,
    enter,
    files,
    lesson,
    merge,
    moving,
    others,
    otherwise,
    own_question,
    pupil,
    questions,
    record,
    results,
    set_up,
    set_up_bands,
    set_up_part,
    set_up_settings,
    shown_forms,
    shown_parts,
    today,
    week,
    welcome,
    write_question,
)

PAGES = (
    enter,
    today,
    welcome,
    begin,
    set_up,
    # Bands before the settings, whose addresses take any name of a group.
    set_up_bands,
    set_up_settings,
    set_up_part,
    week,
    lesson,
    others,
    otherwise,
    own_question,
    board,
    record,
    class_report,
    moving,
    pupil,
    results,
    questions,
    write_question,
    merge,
    ask_question,
    bank_question,
    files,
    shown_forms,
    shown_parts,
)


def all_routes() -> list[BaseRoute]:
    """Return the routes of all pages."""
    return [route for page in PAGES for route in page.ROUTES]
