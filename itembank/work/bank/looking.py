"""Looks questions of a bank up: a list of them, those with some words, one in full."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import field
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING, Any

from itembank.bank.index.item_standing import prove_missing, states
from itembank.bank.index.kept_signoffs import signoff_sheet
from itembank.bank.index.kept_twins import twins_of
from itembank.bank.index.kept_words import Shown, shown_of
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.kept_entry import KeptEntry
from itembank.bank.index.rows.refresh import Progress
from itembank.bank.index.rows_wanted import AT_A_TIME
from itembank.data_class import dataclass
from itembank.work.bank.wanted import (
    Condition,
    Wanted,
    condition,
    refuse_unknown,
    with_states,
)

if TYPE_CHECKING:
    from itembank.bank.proof.state import EntryState

MOST_READ = 20
"""The words of so many questions are read to see whether they are twins of one that is shown: a
tenth of a second's work."""
Pieces = Sequence[str | Sequence[str]]
"""A prompt: text as it is, mathematics as a line in a list of its own."""


@dataclass(frozen=True, slots=True)
class Line:
    """A question in short: what it asks, and what is known of it."""

    id: str
    topic: str
    tier: str
    asked: Pieces
    state: str = ""
    """In a word or two, as *signed, not proved*; empty where nobody asked."""
    signers: tuple[str, ...] = ()
    """The codes of those whose sign-off stands."""


@dataclass(slots=True)
class Found:
    """Questions of a bank in the order of its files, with how many are in which state."""

    bank: str
    titles: dict[str, str]
    """The titles of the topics."""
    holds: int
    """How many questions the bank has in all."""
    lines: list[Line] = field(default_factory=list)
    proofs: Counter[str] = field(default_factory=Counter)
    signs: Counter[str] = field(default_factory=Counter)
    retired: int = 0


@dataclass(frozen=True, slots=True)
class InFull:
    """A question as it will print, with all that is known of it."""

    id: str
    topic: str
    title: str
    tier: str
    shown: Shown
    stated: dict[str, Any]
    """What its author wrote, field by field; a day is text."""
    state: EntryState
    twins: tuple[str, ...]
    """The addresses of others that ask the same in disguise."""
    could_be_twins: int
    """How many more could be twins by their numbers: they are so many that they were not read."""
    bank: str
    terms: str | None
    path: Path
    line: int
    version: str
    """Stands for all that it states: a change of it may be made only while it is the same."""


def list_questions(
    folder: Path,
    wanted: Wanted,
    report: Progress | None = None,
) -> Found:
    """Return the questions of a bank that are wanted, each with its state.

    Raises:
        ItembankError: the bank has faults, or has no such topic or author.
    """
    return with_bank(folder, lambda bank: _listed(bank, wanted, report), report)


def find_questions(
    folder: Path,
    wanted: Wanted,
    report: Progress | None = None,
) -> Found:
    """Return the questions of a bank that are wanted; only states that are wanted are looked up.

    Raises:
        ItembankError: the bank has faults, or has no such topic or author.
    """

    def find(bank: KeptBank) -> Found:
        found = _begun(bank, wanted)
        for entry in bank.chosen(*_where(bank, wanted, report)):
            found.lines.append(_line(entry))
        return found

    return with_bank(folder, find, report)


def show_questions(
    folder: Path,
    ids: Sequence[str],
    report: Progress | None = None,
) -> list[InFull]:
    """Return questions in full, each once.

    Raises:
        ItembankError: the bank has faults, or has no such question.
    """

    def show(bank: KeptBank) -> list[InFull]:
        entries = list({entry.id: entry for entry in map(bank.find, ids)}.values())
        titles = {topic.id: topic.title for topic in bank.topics}
        known = states(bank, entries, report)
        faces = shown_of(bank, entries, report)
        twins = twins_of(bank, entries, report, MOST_READ)
        return [
            InFull(
                entry.id,
                entry.topic,
                titles[entry.topic],
                entry.kept.tier,
                face,
                entry.kept.fields(),
                state,
                tuple(others.known),
                others.unread,
                bank.name,
                bank.terms,
                entry.path,
                entry.line,
                entry.version,
            )
            for entry, state, face, others in zip(entries, known, faces, twins, strict=True)
        ]

    return with_bank(folder, show, report)


def _begun(bank: KeptBank, wanted: Wanted) -> Found:
    refuse_unknown(bank, wanted.topics, wanted.author)
    return Found(bank.name, {topic.id: topic.title for topic in bank.topics}, bank.count())


def _where(bank: KeptBank, wanted: Wanted, report: Progress | None) -> Condition:
    """Return the condition of all that is wanted; what has to be proved for it is proved."""
    before = condition(bank, wanted)
    if not wanted.states:
        return before
    # What is out of use has a state of its own, whatever its key.
    if wanted.needs_proofs:
        prove_missing(bank, f"({before[0]}) AND fact.retired = 0", before[1], report)
    return with_states(before, wanted.states, signoff_sheet(bank))


def _listed(bank: KeptBank, wanted: Wanted, report: Progress | None) -> Found:
    found = _begun(bank, wanted)
    where, values = _where(bank, wanted, report)
    prove_missing(bank, where, values, report)
    entries = bank.chosen(where, values)
    while part := list(islice(entries, AT_A_TIME)):
        for entry, state in zip(part, states(bank, part), strict=True):
            found.lines.append(_line(entry, state))
            if state.retired is not None:
                found.retired += 1
                continue
            found.proofs[state.outcome.state.value] += 1
            found.signs[state.sign.state.value] += 1
    return found


def _line(entry: KeptEntry, state: EntryState | None = None) -> Line:
    asked = json.loads(entry.kept.asked)
    start = (entry.id, entry.topic, entry.kept.tier, asked)
    if state is None:
        return Line(*start)
    stands = state.signed and state.retired is None
    signers = tuple(signoff.by for signoff in state.sign.signoffs) if stands else ()
    return Line(*start, state.word, signers)
