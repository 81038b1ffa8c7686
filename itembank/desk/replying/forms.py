"""Forms as they are sent: read whole, then dealt with off the loop that answers everybody."""

from __future__ import annotations

import datetime
from collections.abc import Awaitable, Callable, Mapping

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import Response

from itembank.errors import ItembankError, NotFound

Work = Callable[[Request, FormData], Response]
MOST_FIELDS = 2_000
"""A sheet of 35 seats by 20 questions is 700 fields."""
FIRST_YEAR, LAST_YEAR = 1900, 2999
"""Years whose days have pages."""


def action(work: Work) -> Callable[[Request], Awaitable[Response]]:
    """Return an endpoint that reads the form it was sent and has `work` done in a thread."""

    async def endpoint(request: Request) -> Response:
        async with request.form(max_fields=MOST_FIELDS, max_files=4) as form:
            return await run_in_threadpool(work, request, form)

    endpoint.__doc__ = work.__doc__
    return endpoint


def text(form: FormData, name: str) -> str:
    """Return a field as text without spaces around it; empty where it was not sent."""
    value = form.get(name, "")
    return "" if isinstance(value, UploadFile) else value.strip()


def fields_typed(form: FormData) -> dict[str, str]:
    """Return all fields that hold text, as they were typed: what a form is shown again with."""
    return {name: value for name, value in form.items() if isinstance(value, str)}


def number(form: FormData, name: str, called: str) -> int | None:
    """Return a field as a whole number, None where it is empty.

    Raises:
        ItembankError: it is no whole number; the message has what the page calls the field.
    """
    from itembank.text.whole_number import whole_number

    typed = text(form, name)
    if not typed:
        return None
    found = whole_number(typed)
    if found is None:
        raise ItembankError(f"{called}: write a whole number, not ‘{typed[:40]}’.", field=name)
    return found


def day_in(fields: Mapping[str, object], name: str) -> datetime.date | None:
    """Return the day in a field of a form, or of what stands behind an address; None if empty.

    Raises:
        ItembankError: it is no day.
    """
    typed = fields.get(name, "")
    try:
        return day(typed.strip()) if isinstance(typed, str) and typed.strip() else None
    except NotFound as error:
        raise ItembankError(f"{error} Write it like 2026-11-30.", field=name) from None


def day(typed: str) -> datetime.date:
    """Return the day in an address of the desk.

    Raises:
        NotFound: it is none, or one of a year that has no pages.
    """
    try:
        found = datetime.date.fromisoformat(typed)
    except ValueError:
        found = datetime.date.min
    # At either end of the calendar there is no week before or after.
    if not FIRST_YEAR <= found.year <= LAST_YEAR:
        raise NotFound(f"‘{typed[:40]}’ is no day.")
    return found
