"""What is known of a bank's items: whether both roads prove them, worked out once; and in all.

A proof that is kept was made of this very item on this very topic, by this program with these
libraries (:mod:`.code_mark`). It serves lists, counts and choices. What is printed for a class is
proved anew in the command that prints it, whatever stands here.
"""

from __future__ import annotations

import datetime
import sqlite3
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from itembank.bank.index.kept_signoffs import sign_states
from itembank.bank.index.rows.refresh import Progress
from itembank.bank.index.rows_wanted import entries_of, facts_missing, in_parts, window
from itembank.bank.index.store.index_remark import shown
from itembank.bank.index.store.index_tables import IndexFailed, seal
from itembank.bank.model.signed import Retirement
from itembank.bank.proof.state import EntryState
from itembank.proof.outcome import Outcome, State

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.index.rows.kept_entry import KeptEntry
    from itembank.processes.work_place import Place


def outcomes(
    bank: KeptBank,
    entries: Sequence[KeptEntry],
    report: Progress | None = None,
    place: Place | None = None,
) -> list[Outcome]:
    """Return what both roads make of each item: as it is kept, or else proved now, and kept."""
    known = outcomes_kept(bank, entries)
    new = list(
        {entry.kept.fact: entry for entry in entries if entry.kept.fact not in known}.values()
    )
    if new:
        from itembank.bank.proof.judging import was_cut_off
        from itembank.bank.proof.prove import prove_entries

        with shown(report, len(new)) as bar:
            found = prove_entries(new, bar, place)
        known |= {entry.kept.fact: outcome for entry, outcome in zip(new, found, strict=True)}
        pairs = list(zip(new, found, strict=True))
        lasting = [pair for pair in pairs if not was_cut_off(pair[1])]
        passing = [pair for pair in pairs if was_cut_off(pair[1])]
        bank.store.write(lambda db: _keep(db, "proof", lasting))
        bank.store.write(lambda db: _keep(db, "temp.passing", passing))
    return [known[entry.kept.fact] for entry in entries]


def _keep(db: sqlite3.Connection, table: str, found: Iterable[tuple[KeptEntry, Outcome]]) -> None:
    rows = []
    for entry, judged in found:
        row = (judged.state.value, judged.says, judged.first, judged.second, int(judged.modelled))
        rows.append((entry.kept.fact, *row, seal(entry.kept.own, *row)))
    if table == "proof":
        db.executemany("INSERT OR REPLACE INTO proof VALUES (?, ?, ?, ?, ?, ?, ?)", rows)
    else:
        short = [row[:-1] for row in rows]
        db.executemany(f"INSERT OR REPLACE INTO {table} VALUES (?, ?, ?, ?, ?, ?)", short)


def outcomes_kept(bank: KeptBank, entries: Sequence[KeptEntry]) -> dict[int, Outcome]:
    """Return the outcomes that are kept of items, by their facts; nothing is proved."""
    owns = {entry.kept.fact: entry.kept.own for entry in entries}
    found = {}
    query = "SELECT * FROM {} WHERE fact IN ({})"
    for part in in_parts(list(owns)):
        marks = ", ".join("?" * len(part))
        for fact, *row, sealed in bank.store.rows(query.format("proof", marks), part):
            if seal(owns[fact], *row) != sealed:
                raise IndexFailed("a row is damaged")
            found[fact] = _outcome(row)
        for fact, *row in bank.store.rows(query.format("temp.passing", marks), part):
            found[fact] = _outcome(row)
    return found


def _outcome(row: Sequence[object]) -> Outcome:
    state, says, first, second, modelled = row
    return Outcome(State(str(state)), str(says), str(first), str(second), bool(modelled))


def prove_missing(
    bank: KeptBank,
    where: str,
    values: Sequence[object],
    report: Progress | None = None,
    place: Place | None = None,
) -> None:
    """Prove every item for which a condition holds and of which no outcome is kept."""
    missing = facts_missing(bank, "proof", where, values)
    done, most = 0, window(place)
    while part := missing[done : done + most]:
        entries = entries_of(bank, part)

        def tell(count: int, _: int, before: int = done) -> None:
            if report:
                report(before + count, len(missing))

        outcomes(bank, entries, tell, place)
        done += len(part)


def made_outcomes(
    bank: KeptBank,
    addresses: Sequence[str],
    report: Progress | None = None,
    place: Place | None = None,
) -> list[Outcome]:
    """Return what both roads make of generated items; as :func:`outcomes`."""
    known = {}
    for part in in_parts(addresses):
        marks = ", ".join("?" * len(part))
        query = f"SELECT * FROM made WHERE address IN ({marks})"
        for address, *row, sealed in bank.store.rows(query, part):
            if seal(address, *row) != sealed:
                raise IndexFailed("a row is damaged")
            known[address] = _outcome(row)
    new = [address for address in addresses if address not in known]
    if new:
        from itembank.bank.proof.judging import was_cut_off
        from itembank.bank.proof.prove import prove_made

        found = dict(zip(new, prove_made(new, report, place), strict=True))
        known |= found
        rows = []
        for address, seen in found.items():
            row = (seen.state.value, seen.says, seen.first, seen.second, int(seen.modelled))
            if not was_cut_off(seen):
                rows.append((address, *row, seal(address, *row)))
        bank.store.write(
            lambda db: db.executemany("INSERT OR REPLACE INTO made VALUES (?,?,?,?,?,?,?)", rows)
        )
    return [known[address] for address in addresses]


def states(
    bank: KeptBank,
    entries: Sequence[KeptEntry],
    report: Progress | None = None,
    place: Place | None = None,
) -> list[EntryState]:
    """Return everything known of each item: its proof, its sign-offs, its retirement."""
    signs = sign_states(bank, entries)
    found = outcomes(bank, entries, report, place)
    return [
        EntryState(entry.address, entry.topic, entry, outcome, sign, _retirement(entry))
        for entry, outcome, sign in zip(entries, found, signs, strict=True)
    ]


def _retirement(entry: KeptEntry) -> Retirement | None:
    if not entry.kept.retired:
        return None
    fields = entry.kept.fields()
    return datetime.date.fromisoformat(fields["retired"]), fields.get("retired_because", "")
