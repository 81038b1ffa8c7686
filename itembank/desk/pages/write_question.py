"""A question written or changed: how it prints and whether its key proves, while it is typed."""

from __future__ import annotations

import contextlib
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.pages.bank_question import OF, faces, full, topics_for
from itembank.desk.pages.questions import AtBank, at_bank
from itembank.desk.replying.forms import action, text
from itembank.desk.replying.question_form import Typed, differing, fields_of, typed_in, typed_of
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError, NotFound

if TYPE_CHECKING:
    from collections.abc import Mapping

    from itembank.work.bank.looking import InFull
    from itembank.work.bank.trying import Trial

MOST_READ = 300
"""Questions whose words are read for the sake of twins while somebody types."""
CALLED = {"topic": "a topic", "tier": "a tier", "prompt": "its words", "key": "an answer"}
BESIDE = {"working": None, "misconceptions": None}
"""What a question can be looked at without, while that is half-written."""


@dataclass
class Looked:
    """What came of looking at what was typed."""

    trial: Trial | None = None
    face: Mapping[str, Any] | None = None
    faults: dict[str, list[str]] = field(default_factory=dict)
    """By the field they stand beside; those of the whole under an empty name."""
    missing: tuple[str, ...] = ()
    """What a question needs and has not yet."""
    prompt: list[dict[str, str]] | None = None
    """The words as they print, where there is no more than them."""

    @property
    def sound(self) -> bool:
        """Whether it can be saved."""
        return self.trial is not None and self.trial.sound and not self.faults

    def fault(self, name: str, words: str) -> None:
        """Note a fault beside a field, once."""
        there = self.faults.setdefault(name, [])
        there += [] if words in there else [words]


def look(folder: Path, typed: Typed, item: InFull | None, version: str | None) -> Looked:
    """Return what comes of a question as it is typed for the bank in a folder; nothing is written.

    `item` is the question that it changes, and `version` how that was when it was looked at.
    """
    from itembank.notation.tree import NotationError
    from itembank.work.bank.figure_typed import at_line
    from itembank.work.bank.line_maths import prompt_runs
    from itembank.work.bank.question_fields import ItemFaults

    looked = Looked()
    try:
        fields = fields_of(typed)
        _look(folder, typed, fields, item, version, looked)
    except ItemFaults as error:
        for fault in error.faults:
            name = str(fault.field[0]) if fault.field else ""
            figure = name == "figure"
            said = at_line(typed.figure, fault.field, fault.message) if figure else fault.message
            looked.fault(name, said)
        if set(looked.faults) <= {*BESIDE}:  # the question itself can be looked at all the same
            with contextlib.suppress(ItembankError):
                _look(folder, typed, {**fields, **BESIDE}, item, version, looked)
    except ItembankError as error:
        looked.fault(_field(error), str(error))
    if looked.trial is None and looked.prompt is None and typed.get("prompt"):
        with contextlib.suppress(ItembankError, NotationError):  # it is told beside its field
            looked.prompt = prompt_runs(typed.get("prompt"))
    return looked


def _look(
    folder: Path,
    typed: Typed,
    fields: Mapping[str, Any],
    item: InFull | None,
    version: str | None,
    looked: Looked,
) -> None:
    """Try a question with some fields, and note what comes of it.

    Raises:
        ItembankError: it cannot be tried.
    """
    from itembank.work.bank.question_fields import check_so_far
    from itembank.work.bank.trying import NewQuestion, try_change, try_new

    there = {name: value for name, value in fields.items() if value is not None}
    topic = item.topic if item else typed.own_topic or typed.topic
    if item is None:
        there |= {"id": typed.id} if typed.id else {}
    new = NewQuestion(topic, there, typed.own_title or None)
    looked.missing = new.missing
    if looked.missing:
        check_so_far({name: value for name, value in there.items() if name != "author"})
        return
    if item is None:
        trial = try_new(folder, new, most_read=MOST_READ)
    else:
        changed = differing(fields, item.stated)
        trial = try_change(folder, item.id, changed, version, most_read=MOST_READ)
    looked.trial, looked.face = trial, faces(trial.shown)


def _field(error: ItembankError) -> str:
    if error.matter in ("no such topic", "topic without title"):
        return "topic"
    return error.field


def write(request: Request) -> Response:
    """Show an empty form, or one filled with a question of another bank or of this one."""
    at = at_bank(request, to_change=True)
    typed = Typed(topic=request.query_params.get("topic", ""))
    source = request.query_params.get("from", "")
    if source:
        typed = _copied(at, source)
    return _form(
        request,
        at,
        typed,
        None,
        Looked() if not source else look(at.bank.folder, typed, None, None),
    )


def _copied(at: AtBank, source: str) -> Typed:
    from itembank.work.bank.bank_facts import bank_facts

    origin, item = _original(at, source)
    typed = typed_of(item.topic, item.stated)
    known = dict(topics_for(bank_facts(at.bank.folder).topics))
    if item.topic not in known:
        typed.topic, typed.own_topic, typed.own_title = "", item.topic, item.title
    # A code names somebody in its own bank alone.
    typed.plain["author"] = ""
    typed.plain["source"] = typed.plain["source"] or f"{origin.bank.title}, {item.id}"
    typed.plain["licence"] = typed.plain["licence"] or _licence_of(at, item) or ""
    return typed


def _licence_of(at: AtBank, item: InFull) -> str | None:
    """Return the licence that a copy of a question states, so that it keeps the one it has."""
    from itembank.bank.model.item_records import carried_licence
    from itembank.work.bank.bank_facts import bank_facts

    return carried_licence(None, item.terms, bank_facts(at.bank.folder).terms)


def _original(at: AtBank, source: str) -> tuple[AtBank, InFull]:
    from itembank.work.bank.banks_at_hand import the_bank

    name, _, id = source.partition(":")
    target = AtBank(at.desk, at.banks, the_bank(at.banks, name))
    return target, full(target, id)


def edit(request: Request) -> Response:
    """Show the form of a question that is there."""
    at = at_bank(request, to_change=True)
    item = _in_use(full(at, request.path_params["id"]))
    typed = typed_of(item.topic, item.stated)
    return _form(request, at, typed, item, look(at.bank.folder, typed, item, item.version))


def _in_use(item: InFull) -> InFull:
    if item.state.retired is not None:
        raise NotFound(f"{item.id} is retired, so it stays as it is.")
    return item


def save(request: Request, form: FormData) -> Response:
    """Save a question, unless its key is wrong; or show what would come of it."""
    from itembank.work.bank.trying import save_trial

    at = at_bank(request, to_change=True)
    id = request.path_params.get("id")
    item = _in_use(full(at, id)) if id else None
    typed = typed_in(form)
    version = text(form, "version") or None
    looked = look(at.bank.folder, typed, item, version)
    if text(form, "do") == "try":
        return _form(request, at, typed, item, looked, version)
    whole(looked)
    if looked.trial is None or not looked.sound:
        return _form(request, at, typed, item, looked, version, status=400)
    if item is not None and not looked.trial.fields:
        return onward(at.url("of", item.id), "Nothing was changed.", "note")
    try:
        saved = save_trial(looked.trial)
    except ItembankError as error:  # somebody was quicker
        looked.fault("", str(error))
        return _form(request, at, typed, item, looked, version, status=409)
    proved = looked.trial.outcome.state == "proved"
    more = "Its key is proved." if proved else "Its key needs a person to check it."
    return onward(at.url("of", saved.id), f"Saved as {saved.id}. {more}")


def whole(looked: Looked) -> None:
    """Note beside its field whatever a question needs and has not."""
    for name in looked.missing:
        looked.fault(name, f"It needs {CALLED[name]}.")


def preview(request: Request, form: FormData) -> Response:
    """Answer with a part of a page: what comes of what is typed so far."""
    at = at_bank(request, to_change=True)
    id = text(form, "id")
    item = full(at, id) if id else None
    looked = look(at.bank.folder, typed_in(form), item, text(form, "version") or None)
    return page(request, "write_question_tried", **at.shared, looked=looked)


def _form(
    request: Request,
    at: AtBank,
    typed: Typed,
    item: InFull | None,
    looked: Looked,
    version: str | None = None,
    status: int = 200,
) -> Response:
    return page(
        request,
        "write_question",
        status=status,
        **at.shared,
        **shown_in_form(at.bank.folder),
        typed=typed,
        item=item,
        version=version or (item.version if item else ""),
        looked=looked,
        here=at.url("of", item.id, "edit") if item else at.url("new"),
    )


def shown_in_form(folder: Path) -> dict[str, Any]:
    """Return what the fields of a question of the bank in a folder offer to choose from."""
    from itembank.bank.model.field_types import TASKS
    from itembank.items.forms.form_rules import FORMS
    from itembank.marking.form.policy import ACCEPT
    from itembank.work.bank.bank_facts import bank_facts

    facts = bank_facts(folder)
    return {
        "topics": topics_for(facts.topics),
        "authors": facts.authors,
        "tasks": [(task, task.replace("-", " ").capitalize()) for task in TASKS],
        "forms": [(name, rule[0]) for name, rule in FORMS.items()],
        "ways": ACCEPT,
    }


ROUTES = [
    Route("/questions/{bank}/new", write),
    Route("/questions/{bank}/new", action(save), methods=["POST"]),
    Route("/questions/{bank}/try", action(preview), methods=["POST"]),
    Route(OF + "/edit", edit),
    Route(OF + "/edit", action(save), methods=["POST"]),
]
