"""The questions of a bank, a page at a time: found by words, topic, tier, kind and state."""

from __future__ import annotations

import contextlib
import threading
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

from starlette.background import BackgroundTask
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from itembank.data_class import dataclass
from itembank.desk.replying.forms import action, text
from itembank.desk.replying.replies import onward, page, url
from itembank.errors import ItembankError, NotFound

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.bank.banks_at_hand import BankAtHand
    from itembank.work.bank.browsing import Browsed
    from itembank.work.bank.starting import Started
    from itembank.work.bank.wanted import Wanted

MOST_WORDS = 6
PROVING = threading.Lock()
"""Held while keys are proved beside a page: two at once would only wait for each other."""
STATES = (
    ("proved", "Key proved"),
    ("needs-a-person", "Key needs a person"),
    ("disproved", "Key wrong"),
    ("signed", "Signed"),
    ("stale", "Signed, but edited since"),
    ("unsigned", "Not signed"),
    ("retired", "Retired"),
)
"""What can be asked of a question's state, as a teacher says it."""


@dataclass(frozen=True, slots=True)
class AtBank:
    """The bank that an address of the desk names, beside the others at hand."""

    desk: Desk
    banks: tuple[BankAtHand, ...]
    bank: BankAtHand

    def url(self, *parts: object) -> str:
        """Return the address of a page of this bank."""
        return url("questions", self.bank.name, *parts)

    @property
    def shared(self) -> dict[str, Any]:
        """Return what every page of a bank shows."""
        return {"at": self, "bank": self.bank, "banks": self.banks}


def banks_of_desk(desk: Desk) -> tuple[BankAtHand, ...]:
    """Return the banks at hand; a fault in the department's files hides none of the others."""
    from itembank.work.bank.banks_at_hand import banks_at_hand

    try:
        department = desk.department
    except ItembankError:
        department = None
    return banks_at_hand(department, desk.home)


def at_bank(request: Request, *, to_change: bool = False) -> AtBank:
    """Return the bank that an address of the desk names.

    Raises:
        ItembankError: there is none, or it is `to_change` and is not the department's own.
    """
    from itembank.work.bank.banks_at_hand import the_bank

    desk: Desk = request.app.state.desk
    banks = banks_of_desk(desk)
    bank = the_bank(banks, request.path_params["bank"])
    if to_change and not bank.own:
        raise ItembankError(
            f"The bank {bank.name} came with the tool and stays as it is. Copy a question of it "
            "into your own bank to change it."
        )
    return AtBank(desk, banks, bank)


def first(request: Request) -> Response:
    """Send to the department's own bank, or to the first that is there."""
    banks = banks_of_desk(request.app.state.desk)
    if not banks:
        raise NotFound("There is no bank of questions here.")
    return RedirectResponse(url("questions", banks[0].name), 303)


def show(request: Request) -> Response:
    """Show a page of a bank's questions; keys nobody has looked at yet are proved beside it."""
    from itembank.work.bank.browsing import browse
    from itembank.work.bank.taking_back import changes_of
    from itembank.work.bank.wanted import KINDS

    at = at_bank(request)
    asked = request.query_params
    wanted = _wanted(request)
    number = _page_number(asked.get("page", ""))
    found = browse(at.bank.folder, wanted, number)
    waiting = found.unknown or any(
        line.outcome is None and not line.retired for line in found.lines
    )
    answer = page(
        request,
        "questions",
        **at.shared,
        found=found,
        lines=[(line, *_printed(line)) for line in found.lines],
        asked={name: asked.get(name, "") for name in ("words", "topic", "tier", "kind", "state")},
        states=STATES,
        narrowed=wanted.topics or wanted.words or wanted.tier or wanted.kind or wanted.states,
        kinds=[(kind, kind.replace("-", " ").capitalize()) for kind in KINDS],
        waiting=waiting,
        last=next(iter(changes_of(at.bank.folder)), None) if at.bank.own else None,
        query=lambda **change: _query(at, request, **change),
    )
    if waiting:
        answer.background = BackgroundTask(_prove, at.bank, wanted, found.number)
    return answer


def _wanted(request: Request) -> Wanted:
    """Return what an address asks for.

    Raises:
        ItembankError: there is no such tier or state.
    """
    from itembank.work.bank.wanted import Wanted, known_kind, known_states, known_tier

    asked = request.query_params
    words = asked.get("words", "").split()
    if len(words) > MOST_WORDS:
        raise ItembankError(f"Look for {MOST_WORDS} words at most.")
    return Wanted(
        topics=(asked["topic"],) if asked.get("topic") else (),
        tier=known_tier(asked.get("tier") or None),
        words=tuple(words),
        states=known_states([asked["state"]] if asked.get("state") else []),
        kind=known_kind(asked.get("kind") or None),
    )


def _page_number(typed: str) -> int:
    from itembank.text.whole_number import whole_number

    return whole_number(typed) or 1


def _query(at: AtBank, request: Request, **change: Any) -> str:
    """Return the address of this page with some of what it asks for changed."""
    asked = {
        name: value for name, value in request.query_params.items() if value and name != "said"
    }
    asked |= {name: str(value) for name, value in change.items()}
    return at.url() + "?" + urlencode({name: value for name, value in asked.items() if value})


def _printed(line: Browsed) -> tuple[Any, Any]:
    from itembank.work.bank.line_maths import runs_of

    prompt, (key,) = runs_of(line.asked, [line.key])
    return prompt, key


def _prove(bank: BankAtHand, wanted: Wanted, number: int) -> None:
    """Prove some keys after the page is sent, unless that is going on already."""
    from itembank.work.bank.browsing import prove_some

    if not PROVING.acquire(blocking=False):
        return
    try:
        with contextlib.suppress(ItembankError):  # the page itself tells of faults
            prove_some(bank.folder, wanted, number)
    finally:
        PROVING.release()


def undo(request: Request, form: FormData) -> Response:
    """Take back the last change of a bank, if it still is the one that the page named."""
    from itembank.work.bank.taking_back import changes_of, take_back

    at = at_bank(request, to_change=True)
    named = text(form, "words")
    last = next(iter(changes_of(at.bank.folder)), None)
    if last is not None and named and named != last.words:
        raise ItembankError(
            f"Since you looked, something else was done: {last.words}. Look at the bank again."
        )
    taken = take_back(at.bank.folder, at.desk.home)
    return onward(at.url(), f"Taken back: {taken.words}.")


def start(request: Request, form: FormData) -> Response:
    """Start the department's own bank, in its folder, with the code of whoever starts it."""
    desk: Desk = request.app.state.desk
    code, role = text(form, "code"), text(form, "role")
    if not code or not role:
        raise ItembankError("Write a code, such as your initials, and a role.")
    started = start_own(desk, text(form, "name"), {code.upper(): role})
    return onward(
        url("questions", started.name),
        "Your bank is there. Plans draw on it once one of its questions is asked in a starter.",
    )


def start_own(desk: Desk, name: str = "", authors: Mapping[str, str] | None = None) -> Started:
    """Start the department's own bank, in its folder, with those who write and check in it.

    Raises:
        ItembankError: it has one, a code cannot be one, or it cannot be written.
    """
    from itembank.work.bank.starting import start_bank

    if any(bank.own for bank in banks_of_desk(desk)):
        raise ItembankError("There is a bank of your own already.")
    title = f"Questions of {desk.department.school}"
    return start_bank(desk.home / "questions", name or "ours", title, authors=authors)


def add_code(request: Request, form: FormData) -> Response:
    """Add the code of somebody who writes or checks questions."""
    from itembank.work.bank.reviewers import add_reviewer

    at = at_bank(request, to_change=True)
    code = add_reviewer(at.bank.folder, text(form, "code"), text(form, "role"))
    id = text(form, "id")
    return onward(at.url("of", id) if id else at.url(), f"{code} can sign now.")


ROUTES = [
    Route("/questions", first),
    Route("/questions", action(start), methods=["POST"]),
    Route("/questions/{bank}/codes", action(add_code), methods=["POST"]),
    Route("/questions/{bank}", show),
    Route("/questions/{bank}/undo", action(undo), methods=["POST"]),
]
