"""Proves the keys of a bank, on several processes, and says what is known about every item."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from itembank.bank.proof.judging import judge_all
from itembank.bank.proof.signoff import Signing, SignState, by_item, read_signoffs, sign_state
from itembank.bank.proof.state import EntryState
from itembank.bank.question.as_item import read_with_model
from itembank.bank.question.generated_sets import made_addresses
from itembank.items.topics.registry import find_item, topic_ids
from itembank.notation import tree as t
from itembank.processes.work_place import Place, Progress
from itembank.proof.judge import judge
from itembank.proof.outcome import Outcome, State

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank, Entry
    from itembank.bank.model.fields import BankItem
    from itembank.bank.model.signed import SignOff

UNSIGNED = SignState(Signing.UNSIGNED)


class Question:
    """A hand-written question as it is judged.

    To another machine it goes as its address, its topic and what it states: where its file
    stands is nobody else's business.
    """

    __slots__ = ("_entry",)

    def __init__(self, entry: Entry) -> None:
        self._entry = entry

    def judged(self) -> Outcome:
        """Return what both roads make of it."""
        return judge_entry(self._entry)

    def __reduce__(self) -> tuple[Any, ...]:
        entry = self._entry
        return Travelled, (entry.address, entry.topic, entry.record)


class Travelled:
    """A hand-written question that has come from another process."""

    __slots__ = ("_address", "_record", "_topic")

    def __init__(self, address: str, topic: str, record: str) -> None:
        self._address, self._topic, self._record = address, topic, record

    def judged(self) -> Outcome:
        """Return what both roads make of it."""
        from itembank.bank.model.fields import BankItem

        item = BankItem.model_validate_json(self._record)
        return _judged(item, self._address, self._topic)


def judge_entry(entry: Entry) -> Outcome:
    """Return what both roads make of a hand-written item; raises nothing.

    An item without mathematics to prove it from needs a person.
    """
    return _judged(entry.item, entry.address, entry.topic)


def _judged(item: BankItem, address: str, topic: str) -> Outcome:
    try:
        read, modelled = read_with_model(item, address, topic)
    except t.NotationError as error:  # it needs a person; a line that cannot be read among them
        return Outcome(State.NEEDS_PERSON, str(error))
    return replace(judge(read), modelled=modelled)


def judge_question(question: Question | Travelled | str) -> Outcome:
    """Return what both roads make of a written question, or a generated one by its address."""
    if isinstance(question, str):
        return judge(find_item(question))
    return question.judged()


def prove_entries(
    entries: Sequence[Entry], report: Progress | None = None, place: Place | None = None
) -> list[Outcome]:
    """Return the outcome of each entry, in their order; see :func:`prove_bank`."""
    return judge_all([Question(entry) for entry in entries], judge_question, report, place)


def prove_made(
    addresses: Sequence[str], report: Progress | None = None, place: Place | None = None
) -> list[Outcome]:
    """Return the outcome of each generated item, in their order; see :func:`prove_bank`."""
    topic_ids()  # read once, before the processes part
    return judge_all(addresses, judge_question, report, place)


def prove_bank(
    bank: Bank,
    report: Progress | None = None,
    place: Place | None = None,
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
    place
        Where they are judged; default, on as many processes of this machine as it has cores.
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
        work += [
            (topic.id, entry) for entry in topic.entries if retired or entry.item.retired is None
        ]
        made = made_addresses(topic) if generated else ()
        work += [(topic.id, address) for address in made if address not in seen]
        seen.update(made)
    if seen:
        topic_ids()  # read once, before the processes part
    questions = [asked if isinstance(asked, str) else Question(asked) for _, asked in work]
    outcomes = judge_all(questions, judge_question, report, place)
    return tuple(
        _made_state(topic, asked, outcome)
        if isinstance(asked, str)
        else entry_state(asked, outcome, signed.get(asked.item.id, ()))
        for (topic, asked), outcome in zip(work, outcomes, strict=True)
    )


def entry_state(entry: Entry, outcome: Outcome, signoffs: Iterable[SignOff]) -> EntryState:
    """Return the state of a hand-written item from the outcome of its proof."""
    item = entry.item
    retired = (item.retired, item.retired_because or "") if item.retired else None
    sign = sign_state(entry, signoffs)
    return EntryState(entry.address, entry.topic, entry, outcome, sign, retired)


def _made_state(topic: str, address: str, outcome: Outcome) -> EntryState:
    return EntryState(address, topic, None, outcome, UNSIGNED)
