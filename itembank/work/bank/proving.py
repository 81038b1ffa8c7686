"""Proves every key of a bank: those that are new, since the others are known."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import field
from pathlib import Path

from itembank.bank.index.item_standing import made_outcomes, outcomes, prove_missing
from itembank.bank.index.kept_signoffs import signoff_sheet
from itembank.bank.index.opened import KeptBank, KeptTopic, with_bank
from itembank.bank.index.rows.refresh import Progress
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest
from itembank.processes.work_place import Place
from itembank.proof.outcome import State
from itembank.work.bank.wanted import with_states

Pieces = Sequence[str | Sequence[str]]


@dataclass(frozen=True, slots=True)
class Unproved:
    """A question whose key is not proved: where it stands, what it asks, and why."""

    address: str
    id: str
    says: str
    path: Path | None = None
    """None for a generated question, which stands in no file."""
    line: int = 0
    asked: Pieces = ()


@dataclass(slots=True)
class Proved:
    """What became of a bank's keys."""

    bank: str
    keys: int = 0
    counts: Counter[State] = field(default_factory=Counter)
    modelled: int = 0
    """How many of those proved rest on their author's model of the words."""
    unproved: dict[State, list[Unproved]] = field(default_factory=dict)
    unsigned: bool = False
    """Whether there are questions that people wrote, and nobody has signed any."""


def prove_bank(
    folder: Path,
    topics: Sequence[str] = (),
    place: Place | None = None,
    report: Progress | None = None,
) -> Proved:
    """Return what both roads make of the keys of a bank, retired questions left out.

    Parameters
    ----------
    folder
        The bank's folder.
    topics
        Only these topics; all of them if it is empty.
    place
        Where they are judged; default, on as many processes of this machine as it has cores.
    report
        See :mod:`itembank.work.bank`.

    Raises
    ------
    ItembankError
        The bank has faults, or nothing on one of the topics.
    """

    def prove(bank: KeptBank) -> Proved:
        chosen = _chosen(bank, topics)
        sheets = [topic.sheet.number for topic in chosen]
        marks = ", ".join("?" * len(sheets))
        where = f"fact.retired = 0 AND place.sheet IN ({marks})"
        signoffs = signoff_sheet(bank)
        prove_missing(bank, where, sheets, report, place)
        found = Proved(bank.name, unproved={state: [] for state in State})
        _count(bank, where, sheets, found)
        signed = with_states((where, [*sheets]), ["unsigned"], signoffs)
        # Generated questions are not counted yet: nobody signs those.
        found.unsigned = 0 < found.keys == bank.count(*signed)
        seen: set[str] = set()
        for topic in chosen:
            _note(bank, topic, found)
            made = [made for made in topic.made() if made not in seen]
            seen.update(made)
            for address, outcome in zip(
                made, made_outcomes(bank, made, report, place), strict=True
            ):
                found.keys += 1
                found.counts[outcome.state] += 1
                if outcome.state is not State.PROVED:
                    about = Unproved(address, address, outcome.says)
                    found.unproved[outcome.state].append(about)
        return found

    return with_bank(folder, prove, report)


def _chosen(bank: KeptBank, wanted: Sequence[str]) -> list[KeptTopic]:
    if not wanted:
        return list(bank.kept_topics)
    known = {topic.id: topic for topic in bank.kept_topics}
    for named in wanted:
        if named.lower() not in known:
            near = nearest(named.lower(), known)
            advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
            raise ItembankError(f"{bank.name} has nothing on ‘{named}’.{advice}")
    return [known[named.lower()] for named in dict.fromkeys(wanted)]


def _count(bank: KeptBank, where: str, values: Sequence[object], found: Proved) -> None:
    """Count the outcomes of the questions that people wrote, without reading them."""
    for table in ("proof", "temp.passing"):
        query = (
            "SELECT outcome.state, outcome.modelled, COUNT(*) FROM temp.now "
            "JOIN place USING (sheet) JOIN fact ON fact.id = place.fact "
            f"JOIN {table} AS outcome ON outcome.fact = fact.id WHERE {where} GROUP BY 1, 2"
        )
        for state, modelled, count in bank.store.rows(query, values):
            found.keys += count
            found.counts[State(state)] += count
            found.modelled += count if modelled and State(state) is State.PROVED else 0


def _note(bank: KeptBank, topic: KeptTopic, found: Proved) -> None:
    """Note the questions of a topic that are not proved, in the order of the file."""
    proved, values = with_states(("1", []), ["proved"], None)
    where = f"place.sheet = ? AND fact.retired = 0 AND NOT ({proved})"
    entries = list(bank.chosen(where, [topic.sheet.number, *values]))
    for entry, outcome in zip(entries, outcomes(bank, entries), strict=True):
        about = (entry.address, entry.id, outcome.says, entry.path, entry.line)
        found.unproved[outcome.state].append(Unproved(*about, json.loads(entry.kept.asked)))
