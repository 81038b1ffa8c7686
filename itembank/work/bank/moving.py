"""Moves a question to another topic or bank, gives it another id, or takes it out of use."""

from __future__ import annotations

import datetime
from pathlib import Path

from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.kept_entry import KeptEntry
from itembank.bank.index.rows.refresh import Progress
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.text.in_words import day_month_year
from itembank.work.bank.bank_facts import (
    BankFacts,
    facts_of,
    ids_in,
    refuse_taken,
    the_author,
    the_topic,
)


@dataclass(frozen=True, slots=True)
class Moved:
    """A question that is in another file now."""

    id: str
    path: Path
    """Where it was."""
    file: Path
    """Where it is."""


@dataclass(frozen=True, slots=True)
class Retired:
    """A question that is not used any more, from a day on."""

    id: str
    path: Path
    on: datetime.date


def move_question(
    folder: Path,
    id: str,
    topic: str | None = None,
    to: Path | None = None,
    title: str | None = None,
    report: Progress | None = None,
) -> Moved:
    """Move a question, with the comments beside it.

    Parameters
    ----------
    folder
        Its bank's folder.
    id
        Its id, or its address.
    topic
        Where it is to go; its own topic if left out.
    to
        The folder of another bank, if it is to go there.
    title
        The title of a new topic of one's own.
    report
        See :mod:`itembank.work.bank`.

    Raises
    ------
    ItembankError
        There is no such question, topic or author, its id is taken there, it is there already,
        or a bank has faults or cannot be saved.
    """
    from itembank.bank.model.item_records import carried_licence
    from itembank.bank.read.item_checks import is_generated
    from itembank.bank.write.edit import move_item

    if topic is None and to is None:
        raise ItembankError("Where to?", matter="where to move")
    entry, here = with_bank(folder, lambda bank: (bank.find(id), facts_of(bank)), report)
    there = here if to is None else with_bank(to, lambda bank: _taking(bank, entry), report)
    usual = title or here.topics[entry.topic] if topic is None else title
    chosen, its_title = the_topic(there, topic or entry.topic, usual)
    file = move_item(
        entry.path,
        entry.id,
        chosen,
        title=None if is_generated(chosen) else its_title,
        folder="" if to is None else to,
        licence=carried_licence(entry.kept.fields().get("licence"), here.terms, there.terms),
        ids=None if to is None else lambda beginning: ids_in(to, beginning),
    )
    return Moved(entry.id, entry.path, file)


def _taking(bank: KeptBank, entry: KeptEntry) -> BankFacts:
    """Return what a bank says of itself, if it can take a question of another."""
    facts = facts_of(bank)
    refuse_taken(bank, entry.id)
    the_author(facts, entry.kept.author)
    return facts


def rename_question(
    folder: Path, old: str, new: str, on: datetime.date | None = None
) -> tuple[str, str]:
    """Give a question another id, with its sign-offs; return the old one and the new.

    Raises:
        ItembankError: there is no such question, the new id is taken or is none, or the bank
            has faults or cannot be saved.
    """
    from itembank.bank.merge.merge_files import prepare_rename
    from itembank.bank.saving.bank_lock import locked
    from itembank.today import today

    with locked(folder):  # so that nobody takes the id in between
        prepared = prepare_rename(folder, old, new, on or today())
        prepared.save()
    ((before, after),) = prepared.report.renamed
    return before, after


def retire_question(
    folder: Path,
    id: str,
    because: str,
    on: datetime.date | None = None,
    report: Progress | None = None,
) -> Retired:
    """Take a question out of use. It stays in its file, with its history and its sign-offs.

    Raises:
        ItembankError: there is no such question, it is retired already, no reason is given, or
            the bank has faults or cannot be saved.
    """
    from itembank.bank.write.edit import retire_item
    from itembank.today import today

    if not because.strip():
        raise ItembankError("Say why, for whoever asks later.", matter="reason to retire")
    day = on or today()
    entry = with_bank(folder, lambda bank: bank.find(id), report)
    item = entry.item
    if item.retired is not None:
        raise ItembankError(
            f"{item.id} is retired already, since {day_month_year(item.retired)}: "
            f"{item.retired_because}"
        )
    retire_item(entry.path, item.id, day, because.strip(), item)
    return Retired(entry.id, entry.path, day)
