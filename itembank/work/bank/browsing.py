"""Goes through a bank a page at a time: topics with counts, and one page of questions.

Only what the page shows is read. Proofs that are not known are not worked out here, so that a
page of a large bank is there at once; :func:`prove_some` works them out beside it.
"""

from __future__ import annotations

import json
import time
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.bank.index.item_standing import outcomes, outcomes_kept
from itembank.bank.index.kept_signoffs import sign_states, signoff_sheet
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.kept_entry import KeptEntry
from itembank.bank.index.rows_wanted import entries_of, facts_missing
from itembank.data_class import dataclass
from itembank.work.bank.looking import Pieces
from itembank.work.bank.wanted import Condition, Wanted, condition, refuse_unknown, with_states

if TYPE_CHECKING:
    from itembank.bank.proof.signoff import SignState
    from itembank.proof.outcome import Outcome

A_PAGE = 50
"""How many questions stand on a page."""
AT_ONCE = 10
"""How many keys are proved between two looks at the clock."""


@dataclass(frozen=True, slots=True)
class TopicCount:
    """A topic of a bank, and how many questions it has there, retired ones among them."""

    id: str
    title: str
    questions: int


@dataclass(frozen=True, slots=True)
class Browsed:
    """A question on a page: what it asks, and what is known of it."""

    id: str
    topic: str
    tier: str
    asked: Pieces
    key: str
    """As its author wrote it, in line notation."""
    sign: SignState
    outcome: Outcome | None
    """None where nobody has looked at its key yet."""
    retired: bool


@dataclass(frozen=True, slots=True)
class BankPage:
    """One page of the questions that are wanted of a bank."""

    name: str
    title: str
    topics: tuple[TopicCount, ...]
    holds: int
    """How many questions the bank has in all."""
    wanted: int
    """How many of them are wanted."""
    number: int
    """Which page this is, from 1."""
    lines: tuple[Browsed, ...]
    unknown: int
    """Of how many questions it would have to be known first whether they are proved."""

    @property
    def pages(self) -> int:
        """Return how many pages there are, one at least."""
        return max(1, -(-self.wanted // A_PAGE))

    @property
    def titles(self) -> Mapping[str, str]:
        """Return the titles of the topics, by their ids."""
        return {topic.id: topic.title for topic in self.topics}


def browse(folder: Path, wanted: Wanted, number: int = 1) -> BankPage:
    """Return a page of the questions of a bank that are wanted; the last where it has fewer.

    Raises:
        ItembankError: the bank has faults, or has no such topic or author.
    """
    return with_bank(folder, lambda bank: _page(bank, wanted, number))


def _page(bank: KeptBank, wanted: Wanted, number: int) -> BankPage:
    refuse_unknown(bank, wanted.topics, wanted.author)
    before = condition(bank, wanted)
    unknown = 0
    if wanted.needs_proofs:
        in_use = f"({before[0]}) AND fact.retired = 0"
        unknown = len(facts_missing(bank, "proof", in_use, before[1]))
    where = with_states(before, wanted.states, signoff_sheet(bank)) if wanted.states else before
    count = bank.count(*where)
    number = min(max(number, 1), max(1, -(-count // A_PAGE)))
    entries = _some(bank, where, (number - 1) * A_PAGE)
    known = outcomes_kept(bank, entries)
    lines = tuple(
        Browsed(
            entry.id,
            entry.topic,
            entry.kept.tier,
            json.loads(entry.kept.asked),
            str(entry.kept.fields()["key"]),
            sign,
            known.get(entry.kept.fact),
            entry.kept.retired,
        )
        for entry, sign in zip(entries, sign_states(bank, entries), strict=True)
    )
    topics = _topics(bank)
    return BankPage(bank.name, bank.title, topics, bank.count(), count, number, lines, unknown)


def _some(bank: KeptBank, where: Condition, skip: int) -> list[KeptEntry]:
    """Return the entries of a page, whose rows alone are read in full."""
    condition_, values = where
    chosen = (
        "(place.sheet, place.at) IN (SELECT place.sheet, place.at FROM temp.now "
        "JOIN place USING (sheet) JOIN fact ON fact.id = place.fact "
        f"WHERE {condition_} ORDER BY now.at, place.at LIMIT ? OFFSET ?)"
    )
    return list(bank.chosen(chosen, [*values, A_PAGE, skip]))


def _topics(bank: KeptBank) -> tuple[TopicCount, ...]:
    query = "SELECT sheet, COUNT(*) FROM temp.now JOIN place USING (sheet) GROUP BY sheet"
    counts = dict(bank.store.rows(query))
    found: dict[str, TopicCount] = {}
    for topic in bank.kept_topics:
        count = counts.get(topic.sheet.number, 0)
        found[topic.id] = TopicCount(topic.id, topic.title, count)
    return tuple(found.values())


def prove_some(folder: Path, wanted: Wanted, number: int = 1, seconds: float = 5.0) -> int:
    """Prove keys of a bank of which nothing is known, for a while; return how many are left.

    Those of the page come first; of the others only where the page asks what is proved.

    Raises:
        ItembankError: as :func:`browse`.
    """

    def some(bank: KeptBank) -> int:
        until = time.monotonic() + seconds
        before, values = condition(bank, wanted)
        where = f"({before}) AND fact.retired = 0"
        if not wanted.needs_proofs:
            states = with_states((before, values), wanted.states, signoff_sheet(bank))
            entries = _some(bank, states, (number - 1) * A_PAGE)
            known = outcomes_kept(bank, entries)
            missing = [entry.kept.fact for entry in entries if entry.kept.fact not in known]
        else:
            missing = facts_missing(bank, "proof", where, values)
        left = len(missing)
        while left and time.monotonic() < until:
            part = missing[-left:][:AT_ONCE]  # of the last `left` nothing is known yet
            outcomes(bank, entries_of(bank, part))
            left -= len(part)
        return left

    return with_bank(folder, some)
