"""A question of a bank in full, and what is done with it: signed, retired, moved."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING, Any

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.pages.questions import AtBank, at_bank
from itembank.desk.replying.forms import action, text
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError, NotFound

if TYPE_CHECKING:
    from collections.abc import Mapping

    from itembank.bank.index.kept_words import Shown
    from itembank.work.bank.looking import InFull

INITIALS = "itembank-initials"
"""The cookie that remembers who signs at this browser, so that it is asked once."""
A_YEAR = 365 * 24 * 3600


def full(at: AtBank, id: str) -> InFull:
    """Return a question in full.

    Raises:
        ItembankError: the bank has no such question, or has faults.
    """
    from itembank.files.faults import FileFaults
    from itembank.work.bank.looking import show_questions

    try:
        (found,) = show_questions(at.bank.folder, [id])
    except FileFaults:
        raise
    except ItembankError as error:
        raise NotFound(str(error)) from None
    return found


def faces(shown: Shown, more: tuple[str, ...] = ()) -> Mapping[str, Any]:
    """Return what prints of a question, as its template takes it; `more` are further lines."""
    from itembank.work.bank.line_maths import runs_of

    steps, slips = shown.steps, shown.slips
    lines = [shown.key, *(line for _, line in steps), *(wrong for wrong, _, _ in slips), *more]
    prompt, (key, *rest) = runs_of(shown.prompt, lines)
    after = rest[len(steps) :]
    return {
        "prompt": prompt,
        "picture": shown.picture,
        "key": key,
        "form": shown.form,
        "marks": shown.marks,
        "many": shown.many,
        "steps": [
            (say, maths if line else None)
            for (say, line), maths in zip(steps, rest[: len(steps)], strict=True)
        ],
        "slips": [
            (maths, name, ask)
            for (_, name, ask), maths in zip(slips, after[: len(slips)], strict=True)
        ],
        "more": after[len(slips) :],
    }


def show(request: Request) -> Response:
    """Show a question with all that is known of it."""
    from itembank.work.bank.bank_facts import bank_facts
    from itembank.work.bank.taking_back import changes_of

    at = at_bank(request)
    item = full(at, request.path_params["id"])
    facts = bank_facts(at.bank.folder) if at.bank.own else None
    past = [change for change in changes_of(at.bank.folder) if item.id in change.words.split()]
    return page(
        request,
        "bank_question",
        **at.shared,
        item=item,
        face=faces(item.shown),
        where=at.url("of", item.id),
        authors=facts.authors if facts else {},
        topics=topics_for(facts.topics) if facts else (),
        initials=request.cookies.get(INITIALS, ""),
        past=past,
        versions=_versions(at, item),
        created=datetime.date.fromisoformat(str(item.stated.get("created") or "2000-01-01")),
        copy_to=next((bank for bank in at.banks if bank.own), None),
    )


def _versions(at: AtBank, item: InFull) -> list[str]:
    """Return the other versions of a question that a merge left, by their ids."""
    from itembank.work.bank.bank_facts import ids_in

    base, mark, _ = item.id.partition(".")
    return [id for id in ids_in(at.bank.folder, base + mark) if mark and id != item.id]


def topics_for(own: Mapping[str, str]) -> list[tuple[str, str]]:
    """Return all topics that a question can stand on, by their titles: a bank's and the tool's."""
    from itembank.items.topics.registry import listed_topics

    known = {topic.id: topic.title for topic in listed_topics().values()} | dict(own)
    return sorted(known.items(), key=lambda row: row[1])


def sign(request: Request, form: FormData) -> Response:
    """Sign a question off, for what it says as it was looked at."""
    from itembank.work.bank.signing_off import sign_as_seen

    at = at_bank(request, to_change=True)
    item = full(at, request.path_params["id"])
    by = text(form, "by")
    if not by:
        raise ItembankError("Say who has checked it: choose your code.")
    signed = sign_as_seen(at.bank.folder, item.id, text(form, "version"), by)
    more = "" if signed.proved else " You vouch for it: the tool cannot prove its key."
    again = " It was signed already." if not signed.new else ""
    answer = onward(at.url("of", item.id), f"Signed by {signed.signoff.by}.{again}{more}")
    answer.set_cookie(
        INITIALS, signed.signoff.by, max_age=A_YEAR, httponly=True, samesite="strict", path="/"
    )
    return answer


def retire(request: Request, form: FormData) -> Response:
    """Take a question out of use."""
    from itembank.work.bank.moving import retire_question

    at = at_bank(request, to_change=True)
    retired = retire_question(at.bank.folder, request.path_params["id"], text(form, "because"))
    return onward(at.url("of", retired.id), "Retired: no plan uses it from today.")


def move(request: Request, form: FormData) -> Response:
    """Move a question to another topic of its bank."""
    from itembank.work.bank.moving import move_question

    at = at_bank(request, to_change=True)
    moved = move_question(at.bank.folder, request.path_params["id"], text(form, "topic") or None)
    return onward(at.url("of", moved.id), f"Moved to {moved.file.stem}.")


def settle(request: Request, form: FormData) -> Response:
    """Keep one of the versions that a merge left, or all of them."""
    from itembank.work.bank.merging import settle_question

    at = at_bank(request, to_change=True)
    settled = settle_question(
        at.bank.folder, request.path_params["id"], keep_all=text(form, "keep") == "all"
    )
    others = [f"{old} is {new} now" for old, new in settled.renamed]
    said = "; ".join(others) or "the other versions are retired"
    return onward(at.url("of", settled.base), f"Kept as {settled.base}; {said}.")


OF = "/questions/{bank}/of/{id}"
ROUTES = [
    Route(OF, show),
    Route(OF + "/sign", action(sign), methods=["POST"]),
    Route(OF + "/retire", action(retire), methods=["POST"]),
    Route(OF + "/settle", action(settle), methods=["POST"]),
    Route(OF + "/move", action(move), methods=["POST"]),
]
