"""Questions of a bank in a table (CSV): added from one, and written to one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import field
from pathlib import Path

from itembank.bank.index.item_standing import states
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.refresh import Progress
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.work.bank.wanted import is_on, refuse_unknown


@dataclass(slots=True)
class Imported:
    """Questions that were added from a table, and how many of them are in which state."""

    ids: tuple[str, ...]
    topics: tuple[str, ...]
    proofs: Counter[str] = field(default_factory=Counter)
    signs: Counter[str] = field(default_factory=Counter)
    retired: int = 0


@dataclass(frozen=True, slots=True)
class Exported:
    """A table of questions: its text, and how many there are."""

    text: str
    questions: int


def count_importable(folder: Path, file: Path, report: Progress | None = None) -> int:
    """Return how many questions of a table could be added to a bank. Nothing is written.

    Raises:
        FileFaults: the bank or the table has faults; every fault is told.
    """
    from itembank.bank.table.item_table import read_table

    return len(read_table(file, with_bank(folder, lambda bank: set(bank.ids()), report)))


def import_questions(folder: Path, file: Path, report: Progress | None = None) -> Imported:
    """Add the questions of a table to a bank, all of them or none.

    Raises:
        FileFaults: the bank or the table has faults; every fault is told.
        ItembankError: a file cannot be saved.
    """
    from itembank.bank.table.item_table import import_table

    rows = import_table(folder, file)
    found = Imported(
        tuple(row.item.id for row in rows), tuple(dict.fromkeys(row.topic for row in rows))
    )
    if rows:
        with_bank(folder, lambda bank: _count(bank, found, report), report)
    return found


def _count(bank: KeptBank, found: Imported, report: Progress | None) -> None:
    """Count the states of what was added, as far as it is still there."""
    found.proofs, found.signs, found.retired = Counter(), Counter(), 0
    added = set(found.ids)
    entries = [entry for entry in bank.chosen() if entry.id in added]
    for state in states(bank, entries, report):
        if state.retired is not None:
            found.retired += 1
            continue
        found.proofs[state.outcome.state.value] += 1
        found.signs[state.sign.state.value] += 1


def export_questions(
    folder: Path,
    file: Path | None = None,
    topics: Sequence[str] = (),
    replace: bool = False,
    report: Progress | None = None,
) -> Exported:
    """Return a bank's own questions as a table, and write it to a file where one is named.

    Parameters
    ----------
    folder
        The bank's folder.
    file
        The file to write.
    topics
        Only these topics, or strands; all of them if it is empty.
    replace
        Whether a file that is there may be written over.
    report
        See :mod:`itembank.work.bank`.

    Raises
    ------
    ItembankError
        The bank has faults, or nothing on one of the topics; or the file is there already, or
        cannot be written.
    """
    from itembank.files.together import write_whole

    if file is not None and file.exists() and not replace:
        raise ItembankError(f"There is a file {file} already.", matter="table there")
    found = with_bank(folder, lambda bank: _table(bank, topics), report)
    if file is not None:
        # With a mark of UTF-8 at its start, a spreadsheet shows £ and ½ as they are.
        write_whole(file, found.text.encode("utf-8-sig"))
    return found


def _table(bank: KeptBank, topics: Sequence[str]) -> Exported:
    from itembank.bank.read.item_checks import is_generated
    from itembank.bank.table.item_table import table_text

    refuse_unknown(bank, topics)
    wanted = [
        topic
        for topic in bank.kept_topics
        if not topics or any(is_on(topic.id, named) for named in topics)
    ]
    entries = [entry for topic in wanted for entry in topic.kept_entries()]
    titles = {topic.id: topic.title for topic in wanted if not is_generated(topic.id)}
    return Exported(table_text(entries, titles, bank.terms), len(entries))
