"""Proves the keys of a bank, on several processes, and says what is known about every item."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from itembank.bank.proof.signoff import Signing, SignState, by_item, read_signoffs, sign_state
from itembank.bank.proof.state import EntryState
from itembank.bank.question.as_item import read_with_model
from itembank.bank.question.generated_sets import made_addresses
from itembank.items.topics.registry import find_item, topic_ids
from itembank.notation import tree as t
from itembank.processes.workers import Progress, judge_all
from itembank.proof.judge import judge
from itembank.proof.outcome import Outcome, State

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank, Entry
    from itembank.bank.model.signed import SignOff

UNSIGNED = SignState(Signing.UNSIGNED)


def judge_entry(entry: Entry) -> Outcome:
    """Return what both roads make of a hand-written item; raises nothing.

    An item without mathematics to prove it from needs a person.
    """
    try:
        item, modelled = read_with_model(entry.item, entry.address, entry.topic)
    except t.NotationError as error:  # it needs a person; a line that cannot be read among them
        return Outcome(State.NEEDS_PERSON, str(error))
    return replace(judge(item), modelled=modelled)


def _judge(one: Entry | str) -> Outcome:
    return judge(find_item(one)) if isinstance(one, str) else judge_entry(one)


def prove_entries(
    entries: Sequence[Entry], report: Progress | None = None, processes: int | None = None
) -> list[Outcome]:
    """Return the outcome of each entry, in their order; see :func:`prove_bank`."""
    return judge_all(entries, judge_entry, report, processes)


def prove_made(
    addresses: Sequence[str], report: Progress | None = None, processes: int | None = None
) -> list[Outcome]:
    """Return the outcome of each generated item, in their order; see :func:`prove_bank`."""
    topic_ids()  # read once, before the processes part
    return judge_all(addresses, _judge, report, processes)


def prove_bank(
    bank: Bank,
    report: Progress | None = None,
    processes: int | None = None,
    *,
    signoffs: Iterable[SignOff] | None = None,
    generated: bool = False,
    retired: bool = True,
) -> tuple[EntryState, ...]:
    """Return the state of every item of a bank, in the order of its files.

    Parameters
    ----------
    bank
        The bank.
    report
        Called with (items judged, items in all) as outcomes come in.
    processes
        How many to use; default, one for each core.
    signoffs
        The bank's sign-offs; default, those in its folder.
    generated
        Prove the generated items of its sets too, each once, after those of its topic.
    retired
        Prove retired items too.

    Raises
    ------
    FileFaults
        The sign-offs cannot be read.
    """
    signed = by_item(read_signoffs(bank.folder) if signoffs is None else signoffs)
    work: list[tuple[str, Entry | str]] = []
    seen: set[str] = set()
    for topic in bank.topics:
        work += [(topic.id, one) for one in topic.entries if retired or one.item.retired is None]
        made = made_addresses(topic) if generated else ()
        work += [(topic.id, address) for address in made if address not in seen]
        seen.update(made)
    if seen:
        topic_ids()  # read once, before the processes part
    outcomes = judge_all([one for _, one in work], _judge, report, processes)
    return tuple(
        _made_state(topic, one, outcome)
        if isinstance(one, str)
        else entry_state(one, outcome, signed.get(one.item.id, ()))
        for (topic, one), outcome in zip(work, outcomes, strict=True)
    )


def entry_state(entry: Entry, outcome: Outcome, signoffs: Iterable[SignOff]) -> EntryState:
    """Return the state of a hand-written item from the outcome of its proof."""
    item = entry.item
    retired = (item.retired, item.retired_because or "") if item.retired else None
    sign = sign_state(entry, signoffs)
    return EntryState(entry.address, entry.topic, entry, outcome, sign, retired)


def _made_state(topic: str, address: str, outcome: Outcome) -> EntryState:
    return EntryState(address, topic, None, outcome, UNSIGNED)
