"""What is known of a bank's items beyond their text: proofs, sign-offs, twins; worked out once.

A proof that is kept was made of this very item on this very topic, by this program with these
libraries (:mod:`.code`). It serves lists, counts and choices. What is printed for a class is
proved anew in the command that prints it, whatever stands here.
"""

from __future__ import annotations

import datetime
import json
import sqlite3
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from itembank.bank.index.index_store import Changed, IndexFailed, seal
from itembank.bank.index.refresh import File, look_at
from itembank.bank.model.bank import SIGNOFF_FILE
from itembank.bank.model.content import printed_on
from itembank.bank.model.signed import Retirement, SignOff
from itembank.bank.proof.signoff import SignState, state_by
from itembank.bank.proof.state import EntryState
from itembank.proof.outcome import Outcome, State

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank, KeptEntry
    from itembank.processes.work_place import Place

Progress = Callable[[int, int], None]
AT_A_TIME = 4_000
"""So many items are read in full at a time, so that a large bank does not fill the memory."""
TOGETHER = 500
"""Values in one query: SQLite takes 999 at least."""
T = TypeVar("T")


class Shown(NamedTuple):
    """What prints of an item, as text; in the prompt mathematics is a list of one line."""

    prompt: list[str | list[str]]
    key: str
    form: str
    marks: int
    steps: list[tuple[str, str]]
    slips: list[tuple[str, str, str]]
    many: bool = False
    """Whether many answers are right, so that the key is an example."""


def outcomes(
    bank: KeptBank,
    entries: Sequence[KeptEntry],
    report: Progress | None = None,
    place: Place | None = None,
) -> list[Outcome]:
    """Return what both roads make of each item: as it is kept, or else proved now, and kept."""
    known = _kept_outcomes(bank, entries)
    new = list(
        {entry.kept.fact: entry for entry in entries if entry.kept.fact not in known}.values()
    )
    if new:
        from itembank.bank.proof.judging import was_cut_off
        from itembank.bank.proof.prove import prove_entries

        found = prove_entries(new, report, place)
        known |= {one.kept.fact: outcome for one, outcome in zip(new, found, strict=True)}
        pairs = list(zip(new, found, strict=True))
        lasting = [pair for pair in pairs if not was_cut_off(pair[1])]
        passing = [pair for pair in pairs if was_cut_off(pair[1])]
        bank.store.write(lambda db: _keep(db, "proof", lasting))
        bank.store.write(lambda db: _keep(db, "temp.passing", passing))
    return [known[entry.kept.fact] for entry in entries]


def _keep(db: sqlite3.Connection, table: str, found: Iterable[tuple[KeptEntry, Outcome]]) -> None:
    rows = []
    for entry, one in found:
        row = (one.state.value, one.says, one.first, one.second, int(one.modelled))
        rows.append((entry.kept.fact, *row, seal(entry.kept.own, *row)))
    if table == "proof":
        db.executemany("INSERT OR REPLACE INTO proof VALUES (?, ?, ?, ?, ?, ?, ?)", rows)
    else:
        short = [row[:-1] for row in rows]
        db.executemany(f"INSERT OR REPLACE INTO {table} VALUES (?, ?, ?, ?, ?, ?)", short)


def _kept_outcomes(bank: KeptBank, entries: Sequence[KeptEntry]) -> dict[int, Outcome]:
    owns = {entry.kept.fact: entry.kept.own for entry in entries}
    found = {}
    query = "SELECT * FROM {} WHERE fact IN ({})"
    for part in _parts(list(owns)):
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


def _parts(values: Sequence[T]) -> Iterator[Sequence[T]]:
    for at in range(0, len(values), TOGETHER):
        yield values[at : at + TOGETHER]


def prove_missing(
    bank: KeptBank,
    where: str,
    values: Sequence[object],
    report: Progress | None = None,
    place: Place | None = None,
) -> None:
    """Prove every item for which a condition holds and of which no outcome is kept."""
    missing = _missing(bank, "proof", where, values)
    done = 0
    while part := missing[done : done + AT_A_TIME]:
        entries = entries_of(bank, part)

        def tell(count: int, _: int, before: int = done) -> None:
            if report:
                report(before + count, len(missing))

        outcomes(bank, entries, tell, place)
        done += len(part)


def _missing(
    bank: KeptBank, table: str, where: str = "", values: Sequence[object] = ()
) -> list[int]:
    """Return the facts for which a condition holds and that a table does not have yet."""
    query = (
        "SELECT DISTINCT place.fact FROM temp.now JOIN place USING (sheet) "
        f"JOIN fact ON fact.id = place.fact LEFT JOIN {table} ON {table}.fact = fact.id "
        f"LEFT JOIN temp.passing ON passing.fact = fact.id "
        f"WHERE {table}.fact IS NULL AND ({where or '1'})"
    )
    if table == "proof":
        query += " AND passing.fact IS NULL"
    return [fact for (fact,) in bank.store.rows(query, values)]


def entries_of(bank: KeptBank, facts: Sequence[int]) -> list[KeptEntry]:
    """Return the items that are some facts, in the order of the files."""
    found = []
    for part in _parts(facts):
        marks = ", ".join("?" * len(part))
        found += list(bank.chosen(f"fact.id IN ({marks})", part))
    return found


def shown_of(
    bank: KeptBank, entries: Sequence[KeptEntry], report: Progress | None = None
) -> list[Shown]:
    """Return what prints of each item."""
    found = _asked(bank, entries, report)
    return [Shown(**json.loads(found[entry.kept.fact][0])) for entry in entries]


def years_of(bank: KeptBank, entries: Sequence[KeptEntry]) -> list[int]:
    """Return the first year group that each item suits."""
    found = _asked(bank, entries)
    return [found[entry.kept.fact][1] for entry in entries]


def twins_kept(bank: KeptBank, entries: Sequence[KeptEntry]) -> list[bytes]:
    """Return the mark of each item's twins."""
    found = _asked(bank, entries)
    return [found[entry.kept.fact][2] for entry in entries]


def _asked(
    bank: KeptBank, entries: Sequence[KeptEntry], report: Progress | None = None
) -> dict[int, tuple[str, int, bytes]]:
    owns = {entry.kept.fact: entry.kept.own for entry in entries}
    ask_missing(bank, list(owns), report)
    found = {}
    for part in _parts(list(owns)):
        marks = ", ".join("?" * len(part))
        query = f"SELECT fact, twin, shown, year, seal FROM question WHERE fact IN ({marks})"
        for fact, twin, text, year, sealed in bank.store.rows(query, part):
            if seal(owns[fact], twin, text, year) != sealed:
                raise IndexFailed("a row is damaged")
            found[fact] = (text, year, twin)
    return found


def ask_missing(
    bank: KeptBank,
    facts: Sequence[int] | None = None,
    report: Progress | None = None,
    place: Place | None = None,
) -> None:
    """Read the words of items that were not read yet: of some facts, or of all of the bank."""
    missing = _missing(bank, "question")
    if facts is not None:
        wanted = set(facts)
        missing = [fact for fact in missing if fact in wanted]
    if not missing:
        return
    from itembank.bank.index.words_read import ask_all

    done = 0
    while part := missing[done : done + AT_A_TIME]:
        entries = entries_of(bank, part)

        def tell(count: int, _: int, before: int = done) -> None:
            if report:
                report(before + count, len(missing))

        work = [
            (entry.kept.fact, entry.kept.own, entry.topic, entry.kept.record) for entry in entries
        ]
        rows = ask_all(work, tell, place)
        bank.store.write(
            lambda db, rows=rows: db.executemany(  # type: ignore[misc]
                "INSERT OR REPLACE INTO question VALUES (?, ?, ?, ?, ?)", rows
            )
        )
        done += len(part)


def sign_states(bank: KeptBank, entries: Sequence[KeptEntry]) -> list[SignState]:
    """Return who has signed each item, and what has changed since.

    Raises:
        FileFaults: the sign-offs cannot be read.
    """
    sheet = signoff_sheet(bank)
    own: dict[str, list[SignOff]] = {}
    for part in _parts([entry.id for entry in entries] if sheet is not None else []):
        marks = ", ".join("?" * len(part))
        query = f"SELECT * FROM signoff WHERE sheet = ? AND item IN ({marks}) ORDER BY at"
        for _, _, *row, sealed in bank.store.rows(query, [sheet, *part]):
            if seal(*row) != sealed:
                raise IndexFailed("a row is damaged")
            item, by, day, content, was = row
            signed = SignOff(item, by, datetime.date.fromisoformat(day), content, json.loads(was))
            own.setdefault(item, []).append(signed)
    return [
        state_by(entry.kept.content, own.get(entry.id, ()), partial(_says, entry))
        for entry in entries
    ]


def _says(entry: KeptEntry) -> dict[str, object]:
    return printed_on(entry.item, entry.topic)


def signoff_sheet(bank: KeptBank) -> int | None:
    """Return which sheet of the index holds the sign-offs as they are now; None for no file.

    Raises:
        FileFaults: they cannot be read.
    """
    path = bank.folder / SIGNOFF_FILE
    if not path.exists():
        return None
    (file,) = look_at([path], bank.store)
    if not file.faults:
        query = "SELECT id FROM sheet WHERE name = ? AND hash = ?"
        for (number,) in bank.store.rows(query, [path.name, file.hash]):
            return int(number)
    from itembank.bank.proof.signoff import read_signoffs

    found = read_signoffs(bank.folder)
    (again,) = look_at([path], bank.store)
    if again.hash != file.hash:
        raise Changed("the sign-offs changed while they were read")
    return bank.store.write(lambda db: _keep_signoffs(db, file, found))


def _keep_signoffs(db: sqlite3.Connection, file: File, found: Iterable[SignOff]) -> int:
    about = (file.path.name, "", "", "", "")
    added = db.execute(
        "INSERT OR REPLACE INTO sheet (name, topic, title, stated, lines, hash, items, last_used, "
        "seal) VALUES (?, ?, ?, ?, ?, ?, 0, ?, ?)",
        (*about, file.hash, time.time(), seal(file.hash, *about)),
    )
    rows = []
    for at, one in enumerate(found):
        was = json.dumps(one.was, ensure_ascii=False)
        row = (one.item, one.by, one.on.isoformat(), one.content, was)
        rows.append((added.lastrowid, at, *row, seal(*row)))
    db.executemany("INSERT INTO signoff VALUES (?, ?, ?, ?, ?, ?, ?, ?)", rows)
    return int(added.lastrowid or 0)


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
        EntryState(one.address, one.topic, one, outcome, sign, _retirement(one))
        for one, outcome, sign in zip(entries, found, signs, strict=True)
    ]


def _retirement(entry: KeptEntry) -> Retirement | None:
    if not entry.kept.retired:
        return None
    fields = entry.kept.fields()
    return datetime.date.fromisoformat(fields["retired"]), fields.get("retired_because", "")


def twins_of(
    bank: KeptBank, entries: Sequence[KeptEntry], report: Progress | None = None
) -> list[list[str]]:
    """Return, of each item, the addresses of the others that ask the same in disguise, sorted.

    Generated items that the bank names are among them.
    """
    ask_missing(bank, None, report)
    made = made_twins(bank)
    found = []
    query = (
        "SELECT place.id FROM question JOIN place ON place.fact = question.fact "
        "JOIN temp.now USING (sheet) "
        "WHERE question.twin = (SELECT twin FROM question WHERE fact = ?)"
    )
    for entry in entries:
        others = [f"{bank.name}:{id}" for (id,) in bank.store.rows(query, [entry.kept.fact])]
        ((twin,),) = bank.store.rows("SELECT twin FROM question WHERE fact = ?", [entry.kept.fact])
        others += made.get(twin, ())
        found.append(sorted({*others} - {entry.address}))
    return found


def made_twins(bank: KeptBank) -> dict[bytes, list[str]]:
    """Return the addresses of the generated items that a bank names, by the mark of their twins."""
    named = list(dict.fromkeys(one for topic in bank.kept_topics for one in topic.made()))
    found: dict[bytes, list[str]] = {}
    if named:
        from itembank.bank.index.words_read import made_mark

        for address in named:
            found.setdefault(made_mark(address), []).append(address)
    return found


def made_outcomes(
    bank: KeptBank,
    addresses: Sequence[str],
    report: Progress | None = None,
    place: Place | None = None,
) -> list[Outcome]:
    """Return what both roads make of generated items; as :func:`outcomes`."""
    known = {}
    for part in _parts(addresses):
        marks = ", ".join("?" * len(part))
        query = f"SELECT * FROM made WHERE address IN ({marks})"
        for address, *row, sealed in bank.store.rows(query, part):
            if seal(address, *row) != sealed:
                raise IndexFailed("a row is damaged")
            known[address] = _outcome(row)
    new = [one for one in addresses if one not in known]
    if new:
        from itembank.bank.proof.judging import was_cut_off
        from itembank.bank.proof.prove import prove_made

        found = dict(zip(new, prove_made(new, report, place), strict=True))
        known |= found
        rows = []
        for address, one in found.items():
            row = (one.state.value, one.says, one.first, one.second, int(one.modelled))
            if not was_cut_off(one):
                rows.append((address, *row, seal(address, *row)))
        bank.store.write(
            lambda db: db.executemany("INSERT OR REPLACE INTO made VALUES (?,?,?,?,?,?,?)", rows)
        )
    return [known[one] for one in addresses]


def twin_groups(
    *banks: KeptBank, report: Progress | None = None, place: Place | None = None
) -> list[tuple[str, ...]]:
    """Return the twins in and across banks, each group sorted, the groups by their first items.

    Each bank is asked once: no item is compared with any other.
    """
    names: dict[bytes, list[str]] = {}
    written = set()
    for bank in banks:
        ask_missing(bank, None, report, place)
        query = (
            "SELECT question.twin, place.id FROM temp.now JOIN place USING (sheet) "
            "JOIN question ON question.fact = place.fact ORDER BY now.at, place.at"
        )
        for twin, id in bank.store.each(query):
            names.setdefault(twin, []).append(f"{bank.name}:{id}")
            written.add(twin)
    for bank in banks:
        for twin, addresses in made_twins(bank).items():
            names.setdefault(twin, []).extend(addresses)
    groups = (sorted(set(group)) for twin, group in names.items() if twin in written)
    return [tuple(group) for group in groups if len(group) > 1]
