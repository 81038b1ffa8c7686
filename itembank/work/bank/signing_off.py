"""Signs questions off: those that are named, those of a topic, those with a proved key."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.bank.index.item_standing import outcomes, prove_missing
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.kept_entry import KeptEntry
from itembank.bank.index.rows.refresh import Progress
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.work.bank.bank_facts import as_known
from itembank.work.bank.wanted import Wanted, condition, refuse_unknown, with_states

if TYPE_CHECKING:
    from itembank.bank.proof.signing import Signed
    from itembank.proof.outcome import Outcome


@dataclass(frozen=True, slots=True)
class SignRequest:
    """Who has checked which questions, and when: some by their ids, or all that are like that.

    `topic` may be a strand. Retired questions are not meant where none is named.
    """

    by: str | None = None
    ids: tuple[str, ...] = ()
    topic: str | None = None
    all_proved: bool = False
    on: datetime.date | None = None
    """Today if it is left out."""


def sign_questions(
    folder: Path, request: SignRequest, report: Progress | None = None
) -> tuple[Signed, ...]:
    """Record that a reviewer has checked questions, and return what became of each.

    A question whose key cannot be proved can be signed; one whose key is disproved cannot.
    What a proof came to is looked up where it is known of the very same question.

    Raises:
        CheckFailed: the key of one is disproved; nothing is signed.
        ItembankError: there is no such author or question, or one is retired, or none is like
            that; nothing is signed.
    """
    from itembank.bank.index.kept_signoffs import signoffs_on
    from itembank.bank.proof.signing import record_signoffs
    from itembank.today import today

    if request.ids and (request.topic or request.all_proved):
        raise ItembankError(
            "Questions are named, and all of a kind are asked for too.", matter="ids alone"
        )
    entries, found, by = with_bank(folder, lambda bank: _judged(bank, request, report), report)
    return record_signoffs(
        folder,
        entries,
        found,
        by,
        request.on or today(),
        lambda: with_bank(folder, lambda bank: signoffs_on(bank, [entry.id for entry in entries])),
    )


def sign_as_seen(folder: Path, id: str, version: str, by: str) -> Signed:
    """Record that a reviewer has checked a question as it was looked at; nobody edits it meanwhile.

    `version` is that of :class:`~itembank.work.bank.looking.InFull`.

    Raises:
        CheckFailed: its key is disproved.
        ItembankError: it has been changed since; or as :func:`sign_questions`.
    """
    from itembank.bank.saving.bank_lock import locked

    with locked(folder):
        if with_bank(folder, lambda bank: bank.find(id).version) != version:
            raise ItembankError(
                f"{id} has been changed since you looked at it. Look at it again first."
            )
        (signed,) = sign_questions(folder, SignRequest(by, (id,)))
    return signed


Judged = tuple[Sequence[KeptEntry], Sequence["Outcome"], str]


def _judged(bank: KeptBank, request: SignRequest, report: Progress | None) -> Judged:
    from itembank.bank.proof.signing import judged, wanted

    if request.by is None:
        example = next(iter(bank.authors), "HT")
        raise ItembankError("Who has checked them?", matter="reviewer needed", example=example)
    refusals: list[str] = []
    if request.ids:
        entries, refusals = wanted(bank.find, request.ids)
    else:
        entries = _like_that(bank, request, report)
    if not entries and not refusals:
        where = f" on {request.topic}" if request.topic else ""
        raise ItembankError(f"{bank.name} has no question{where} that could be signed.")
    by = as_known(bank.authors, request.by) or request.by
    found = judged(bank, entries, refusals, by, lambda some: outcomes(bank, some, report))
    return entries, found, by


def _like_that(bank: KeptBank, request: SignRequest, report: Progress | None) -> list[KeptEntry]:
    """Return the questions in use on a topic, or those with a proved key."""
    if request.topic is None and not request.all_proved:
        raise ItembankError("Which questions?", matter="questions to sign")
    topics = () if request.topic is None else (request.topic,)
    refuse_unknown(bank, topics)
    where, values = condition(bank, Wanted(topics))
    where = f"({where}) AND fact.retired = 0"
    if request.all_proved:
        prove_missing(bank, where, values, report)
        where, values = with_states((where, values), ["proved"], None)
    return list(bank.chosen(where, values))
