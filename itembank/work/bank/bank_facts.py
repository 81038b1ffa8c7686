"""What is asked of a bank before something is written to it: topics, authors, ids in use."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.refresh import Progress
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest

_AFTER_ALL = "\U0010ffff"


@dataclass(frozen=True, slots=True)
class BankFacts:
    """What a bank says of itself."""

    folder: Path
    name: str
    title: str
    terms: str | None
    """The licence of its questions, with who grants it."""
    authors: Mapping[str, str]
    """Codes with their roles."""
    topics: Mapping[str, str]
    """The titles of its topics, by their ids."""


def bank_facts(folder: Path, report: Progress | None = None) -> BankFacts:
    """Return what the bank in a folder says of itself.

    Raises:
        FileFaults: anything is wrong with any of its files; every fault is told.
    """
    return with_bank(folder, facts_of, report)


def facts_of(bank: KeptBank) -> BankFacts:
    """Return what an open bank says of itself."""
    titles = {topic.id: topic.title for topic in bank.topics}
    return BankFacts(bank.folder, bank.name, bank.title, bank.terms, dict(bank.authors), titles)


def the_topic(bank: BankFacts, typed: str, title: str | None = None) -> tuple[str, str]:
    """Return the id and title of the topic that is meant, one of the bank's or the tool's.

    A topic of the department's own is new where it has a title.

    Raises:
        ItembankError: there is no such topic; the nearest are named.
    """
    from itembank.items.topics.near_topics import near_topics
    from itembank.items.topics.registry import find_topic, topic_ids

    wanted = typed.strip().lower()
    if wanted in bank.topics:
        return wanted, bank.topics[wanted]
    if wanted in topic_ids():
        return wanted, find_topic(wanted).title
    if title:
        _check_topic_id(wanted)
        return wanted, title
    near = near_topics(wanted, [*bank.topics, *topic_ids()])
    advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
    if "." not in wanted:
        raise ItembankError(
            f"There is no topic ‘{typed}’.{advice} One is written as strand.topic, as in "
            "ratio.share.",
            matter="no such topic",
        )
    raise ItembankError(
        f"There is no topic ‘{typed}’.{advice} A topic of your own takes a title.",
        matter="topic without title",
    )


def _check_topic_id(topic: str) -> None:
    from itembank.bank.model.field_types import TOPIC_ID

    if not TOPIC_ID.match(topic):
        raise ItembankError(
            f"A topic is written as strand.topic, as in ratio.share, not ‘{topic}’."
        )


def the_author(bank: BankFacts, typed: str | None) -> str | None:
    """Return the author's code that is meant, in capitals or not; None where none is.

    Raises:
        ItembankError: it is none of the bank's.
    """
    meant = as_known(bank.authors, typed)
    if meant is None or meant in bank.authors:
        return meant
    near = nearest(meant.upper(), bank.authors) or list(bank.authors)
    advice = f"Did you mean {join_words(near, 'or')}?" if near else "It has none yet."
    raise ItembankError(
        f"There is no author ‘{typed}’ in {bank.name}. {advice} "
        "Codes stand under [authors] in bank.toml.",
        field="author",
    )


def as_known(authors: Mapping[str, str], typed: str | None) -> str | None:
    """Return a code as a bank writes it, or as it was typed where there is none such.

    >>> as_known({"HT": "head"}, "ht"), as_known({"HT": "head"}, "xx")
    ('HT', 'xx')
    """
    same = [code for code in authors if typed and code.lower() == typed.strip().lower()]
    return typed if typed in authors or len(same) != 1 else same[0]


def ids_like(bank: KeptBank, beginning: str) -> dict[str, Path]:
    """Return the ids of a bank that begin with some letters, each with its file."""
    query = (
        "SELECT place.id, place.sheet FROM temp.now JOIN place USING (sheet) "
        "WHERE place.id >= ? AND place.id < ? ORDER BY now.at, place.at"
    )
    files = {topic.sheet.number: topic.path for topic in bank.kept_topics}
    rows = bank.store.rows(query, [beginning, beginning + _AFTER_ALL])
    return {id: files[sheet] for id, sheet in rows}


def ids_in(folder: Path, beginning: str) -> dict[str, Path]:
    """Return the same of the bank in a folder, as its files are now.

    Raises:
        FileFaults: anything is wrong with any of its files.
    """
    return with_bank(folder, lambda bank: ids_like(bank, beginning))


def next_id(folder: Path, topic: str) -> str:
    """Return a free id for a question on a topic: ``share-1`` for one on ``ratio.share``."""
    return with_bank(folder, lambda bank: free_id_on(bank, topic))


def free_id_on(bank: KeptBank, topic: str) -> str:
    """Return the same of an open bank."""
    from itembank.bank.write.free_ids import free_id

    stem = topic.rpartition(".")[2]
    return free_id(stem, ids_like(bank, stem))


def refuse_taken(bank: KeptBank, id: str) -> None:
    """Say where a question has an id already.

    Raises:
        ItembankError: one has.
    """
    for entry in bank.chosen("place.id = ?", [id]):
        raise ItembankError(
            f"The id ‘{id}’ is taken, in {entry.path.name}, line {entry.line}. Write another.",
            field="id",
        )
