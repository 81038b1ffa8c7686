"""The forms of the desk as they stand, each by itself: empty, filled, and with all put wrong.

They are not on the page of all parts, where the same field would stand twice. No page links here.
"""

from __future__ import annotations

from types import SimpleNamespace as Some
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.answering.answer_steps import SPARE
from itembank.desk.replying.replies import page
from itembank.errors import NotFound
from itembank.planning.bands.bands import MOST as MOST_BANDS

STEPS = ("school", "year", "classes", "topics", "bands")
STATES = ("empty", "filled", "wrong", "at odds")
"""*At odds* is where each field is right, and the whole is not."""
_FILLED = {
    "school": "Larkhythe School",
    "term-0-name": "Autumn",
    "two_week": "yes",
    "class-0-was": "8K",
    "class-0-name": "8K",
    "class-0-out": "yes",
    "class-1-was": "9S",
    "topic-0-name": "Adding fractions",
    "own": "yes",
    "leave_out": "yes",
}
_FAULTS = {
    "school": "Write the school’s name.",
    "term-0-first": "‘soon’ is no day.\nWrite it as in 3 Sep 2026.",
    "off-0-first": "‘later’ is no day.",
    "class-0-year": "‘K’ is no year group.",
    "topic-0-name": "There is no topic called ‘sums’.",
    "band-1-low": "‘half’ is no score.",
    "pasted": "Row 3: ‘Monday’ has no period.",
}
_QUESTION_FIELDS = (
    *("", "topic", "tier", "prompt", "key", "task", "form", "model", "find", "constants"),
    *("not_needed", "figure", "options", "choose", "working", "misconceptions", "accept"),
    *("marks", "from_year", "author", "source", "licence", "created", "id"),
)


def show(request: Request) -> Response:
    """Show one form in one of its states.

    Raises:
        NotFound: there is no such form, or no such state.
    """
    what, state = request.path_params["what"], request.path_params["state"]
    if state not in STATES or what not in (*STEPS, "question"):
        raise NotFound("There is no such form to show.")
    return page(
        request,
        "shown_forms",
        what=what,
        state=state,
        **(_question(state) if what == "question" else _step(what, state)),
    )


def _step(what: str, state: str) -> dict[str, Any]:
    faults = _FAULTS if state == "wrong" else {}
    general = ["Two terms overlap."] if state in ("wrong", "at odds") else []
    return {
        "step": Some(part=what, scheme=Some(year=8)),
        "fields": {} if state == "empty" else _FILLED,
        "rows": {kind: spare + 1 for kind, spare in SPARE.items()} | {"band": MOST_BANDS},
        "reading": Some(faults=faults, general=general, sound=not (faults or general)),
        "titles": ("Adding fractions", "Ratio"),
    }


def _question(state: str) -> dict[str, Any]:
    from itembank.bank.model.field_types import TASKS
    from itembank.desk.replying.question_form import Typed, typed_of
    from itembank.items.forms.form_rules import FORMS
    from itembank.marking.form.policy import ACCEPT

    stated: dict[str, Any] = {
        "tier": "support",
        "prompt": "Bag A is {4} for £{5}. For {3 days}, which is the best value?",
        "key": "Bag A",
        "task": "choose",
        "choose": "least",
        "form": "name",
        "options": {"Bag A": "£4/5"},
        "model": ("a = 2",),
        "figure": {"kind": "number line"},
        "working": (("Look", ""),),
        "misconceptions": ({"id": "m", "name": "guesses", "wrong": "Bag B", "ask": "Why?"},),
        "accept": ("no-unit", "within 0.1", "decimal"),
        "author": "XY",
    }
    typed = Typed() if state == "empty" else typed_of("fractions.add-unlike", stated)
    if state == "wrong":
        typed.own_topic = "garden.beds"
        typed.plain["author"] = "HT"
    faults = {name: ["This is not right."] for name in _QUESTION_FIELDS}
    faults["key"] = ["The key cannot be read.", "It has no unit."]
    if state == "at odds":
        faults = {"": ["Its key is not proved."]}
    return {
        "typed": typed,
        "item": Some(id="garden-1") if state == "filled" else None,
        "looked": Some(faults={} if state in ("empty", "filled") else faults),
        "topics": [("fractions.add-unlike", "Adding fractions")],
        "authors": {"HT": "head of mathematics"},
        "tasks": [(task, task.replace("-", " ").capitalize()) for task in TASKS],
        "forms": [(name, rule[0]) for name, rule in FORMS.items()],
        "ways": ACCEPT,
    }


ROUTES = [Route("/shown-parts/{what}/{state}", show)]
