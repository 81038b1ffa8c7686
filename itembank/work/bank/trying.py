"""Tries a question before it is saved: how it prints, whether it proves, what it is a twin of.

Trying writes nothing. What was tried can then be saved, if it still is what was looked at:
where somebody has changed the question meanwhile, or taken its id, nothing is written.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from itembank.bank.index.kept_words import Shown, ask_missing
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.kept_entry import KeptEntry
from itembank.bank.index.rows.refresh import Progress
from itembank.bank.index.rows_wanted import facts_missing
from itembank.bank.model.bank import Entry
from itembank.data_class import dataclass
from itembank.errors import CheckFailed, ItembankError
from itembank.proof.outcome import State
from itembank.work.bank.bank_facts import (
    facts_of,
    free_id_on,
    ids_in,
    refuse_taken,
    the_author,
    the_topic,
)
from itembank.work.bank.question_fields import ORDER, Fields, checked_item, in_order

if TYPE_CHECKING:
    from itembank.bank.model.fields import BankItem
    from itembank.bank.model.item_changes import Change
    from itembank.proof.outcome import Outcome

NEEDED = ("topic", "tier", "prompt", "key")


@dataclass(frozen=True, slots=True)
class NewQuestion:
    """A question that is to be added: its topic, and its fields as they will stand in a file.

    Without an id it has the next that is free. A new topic of one's own takes a `title`.
    """

    topic: str = ""
    fields: Mapping[str, Any] = field(default_factory=dict)
    title: str | None = None

    @property
    def missing(self) -> tuple[str, ...]:
        """Return what has to be known of a question and is not."""
        there = {**self.fields, "topic": self.topic}
        return tuple(name for name in NEEDED if not there.get(name))


@dataclass(frozen=True, slots=True)
class Trial:
    """A question as it was tried, and what came of it."""

    folder: Path
    topic: str
    title: str
    item: BankItem
    shown: Shown
    """What will print."""
    outcome: Outcome
    """What both roads make of its key."""
    twins: tuple[str, ...]
    """The ids of other questions of the bank, in use, that ask the same in disguise."""
    numbered: bool = False
    """Whether its id is the next that was free, so that another would do."""
    was: KeptEntry | None = None
    """The question as it stands in the bank; None for a new one."""
    fields: Mapping[str, Any] = field(default_factory=dict)
    """What is to change in it; None takes a field out."""
    changes: tuple[Change, ...] = ()
    """What that changes, field by field."""

    @property
    def sound(self) -> bool:
        """Whether its key is not disproved."""
        return self.outcome.state is not State.DISPROVED


@dataclass(frozen=True, slots=True)
class Saved:
    """A question that was saved, and the file it is in."""

    id: str
    path: Path


def try_new(
    folder: Path,
    new: NewQuestion,
    report: Progress | None = None,
    most_read: int | None = None,
) -> Trial:
    """Return what comes of adding a question to the bank in a folder. Nothing is written.

    Twins are looked for among the questions whose words are read already, where more than
    `most_read` would have to be read for it.

    Raises:
        ItemFaults: something is wrong with the question; every fault is told.
        ItembankError: the bank has faults, no such topic or author, or the id is taken.
    """
    from itembank.today import today

    if new.missing:
        raise ItembankError(
            f"A question needs {', '.join(NEEDED)}. This one lacks {', '.join(new.missing)}.",
            matter="question not whole",
            fields=list(new.missing),
        )

    def use(bank: KeptBank) -> Trial:
        facts = facts_of(bank)
        topic, title = the_topic(facts, new.topic, new.title)
        fields: Fields = {"created": today(), **new.fields}
        if numbered := not fields.get("id"):
            fields["id"] = free_id_on(bank, topic)
        refuse_taken(bank, fields["id"])
        fields["author"] = the_author(facts, fields.get("author"))
        item = checked_item(in_order(fields))
        return Trial(
            folder, topic, title, item, *_tried(bank, item, topic, report, most_read), numbered
        )

    return with_bank(folder, use, report)


def try_change(
    folder: Path,
    id: str,
    fields: Mapping[str, Any],
    as_of: str | None = None,
    report: Progress | None = None,
    most_read: int | None = None,
) -> Trial:
    """Return what comes of changing fields of a question. Nothing is written.

    Parameters
    ----------
    folder
        The bank's folder.
    id
        The question's id, or its address.
    fields
        What they are to be; None takes one out.
    as_of
        The `version` of the question (:class:`~itembank.work.bank.looking.InFull`) that the
        changes were made up for; any if left out.
    report
        See :mod:`itembank.work.bank`.
    most_read
        As for :func:`try_new`.

    Raises
    ------
    ItemFaults
        Something is wrong with the question as it would be; every fault is told.
    ItembankError
        There is no such question, field or author, or it has changed since; or the bank has
        faults.
    """
    refuse_unknown_fields(fields)

    def use(bank: KeptBank) -> Trial:
        from itembank.bank.model.item_changes import changes

        entry = bank.find(id)
        if as_of not in (None, entry.version):
            raise ItembankError(
                f"{entry.address} has been changed since you looked at it. Look again before you "
                "change it.",
                matter="changed since",
                id=entry.id,
            )
        wanted = dict(fields)
        if wanted.get("author") is not None:
            wanted["author"] = the_author(facts_of(bank), wanted["author"])
        before = entry.item.model_dump(exclude_defaults=True)
        after = {name: value for name, value in {**before, **wanted}.items() if value is not None}
        item = checked_item(after)
        title = next(topic.title for topic in bank.topics if topic.id == entry.topic)
        tried = _tried(bank, item, entry.topic, report, most_read)
        now = item.model_dump(mode="json", exclude_defaults=True)
        differs = changes(entry.item.model_dump(mode="json", exclude_defaults=True), now)
        return Trial(
            folder, entry.topic, title, item, *tried, was=entry, fields=wanted, changes=differs
        )

    return with_bank(folder, use, report)


def refuse_unknown_fields(names: Mapping[str, Any]) -> None:
    """Say so where something is none of the parts of a question that can be changed.

    Raises:
        ItembankError: it is not.
    """
    from itembank.files.faults import join_words, nearest

    for name in names:
        if name not in ORDER or name == "id":
            near = nearest(name, ORDER, 1)
            advice = f"Did you mean {near[0]}?" if near else f"It is {join_words(ORDER[1:], 'or')}."
            raise ItembankError(f"A question has no part ‘{name}’. {advice}")


def save_trial(trial: Trial, anyway: bool = False) -> Saved:
    """Save a question as it was tried.

    Raises:
        CheckFailed: its key is disproved, and it is not to be saved `anyway`.
        ChangedSince: somebody has changed the question since it was tried.
        ItembankError: its id is taken by now, or the bank cannot be saved.
    """
    from itembank.bank.read.item_checks import is_generated
    from itembank.bank.write.edit import add_item, change_item

    if not trial.sound and not anyway:
        raise CheckFailed(
            "It was not saved, because its key is wrong. Mend it.", matter="key is wrong"
        )
    if trial.was is not None:
        item = change_item(trial.was.path, trial.item.id, trial.fields, trial.was.item)
        return Saved(item.id, trial.was.path)
    path, item = add_item(
        trial.folder,
        trial.topic,
        trial.item,
        title=None if is_generated(trial.topic) else trial.title,
        numbered=trial.numbered,
        ids=lambda beginning: ids_in(trial.folder, beginning),
    )
    return Saved(item.id, path)


def _tried(
    bank: KeptBank, item: BankItem, topic: str, report: Progress | None, most_read: int | None
) -> tuple[Shown, Outcome, tuple[str, ...]]:
    """Return what prints of a question, what its key's proof comes to, and its twins."""
    from itembank.bank.index.rows.question_rows import question_of_record
    from itembank.bank.index.rows.topic_rows import record_of
    from itembank.bank.proof.prove import judge_entry

    row = question_of_record(topic, record_of(item))
    entry = Entry(item, topic, bank.name, bank.folder / f"{topic}.toml", 0)
    if most_read is None or len(facts_missing(bank, "question")) <= most_read:
        ask_missing(bank, None, report)
    query = (
        "SELECT place.id FROM question JOIN place ON place.fact = question.fact "
        "JOIN temp.now USING (sheet) JOIN fact ON fact.id = place.fact "
        "WHERE question.twin = ? AND fact.retired = 0 AND place.id != ? "
        "ORDER BY now.at, place.at"
    )
    twins = tuple(id for (id,) in bank.store.rows(query, [row.twin, item.id]))
    return Shown(**json.loads(row.shown)), judge_entry(entry), twins
