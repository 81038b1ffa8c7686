r"""A bank's items as a table (CSV, RFC 4180), out and in again.

One row an item, one column a field, named as in a topic file; ``topic`` and ``title`` name the
topic and, for a topic of one's own, what people call it. Only ``topic``, ``tier``, ``prompt``
and ``key`` are needed. A cell of several entries holds one a line:

* ``model`` and ``accept``: a line each; ``constants``: numbers with spaces or commas between;
* ``working``: ``words | mathematics``, or the words alone;
* ``options``: ``name | mathematics``; ``not_needed``: ``number | why it is not needed``;
* ``misconceptions``: ``id | name | wrong answer | what to ask``.

A ``|`` or ``\`` that belongs to the words is written ``\|`` or ``\\``. Tables with semicolons
or tabs between the cells are read too. A spreadsheet takes ``3/4`` for a day unless the column
is opened as text.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, Protocol

from pydantic import ValidationError

from itembank.bank.index.opened import with_bank
from itembank.bank.model.bank import Entry
from itembank.bank.model.field_types import ITEM_ID
from itembank.bank.model.fields import BankItem
from itembank.bank.model.model_faults import sentences
from itembank.bank.read.item_checks import new_item_faults
from itembank.bank.saving.bank_lock import locked
from itembank.bank.saving.save import Snapshot, save, take
from itembank.bank.table.cells import cell_text, cell_value
from itembank.bank.write.as_toml import FIELDS
from itembank.bank.write.blocks import with_item
from itembank.bank.write.edit import new_topic, topic_path
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.csv_text import CsvWriter, as_meant
from itembank.files.faults import Fault, FileFaults, decode_text, join_words, nearest
from itembank.text.in_words import counted

COLUMNS = ("topic", "title", *FIELDS, "misconceptions")
NEEDED = ("topic", "tier", "prompt", "key")
MOST_ROWS = 20_000


@dataclass(frozen=True, slots=True)
class Row:
    """An item of a table: its topic, the topic's title where it is given, and its line."""

    topic: str
    title: str | None
    item: BankItem
    line: int


def table_text(
    entries: Iterable[Entry], titles: Mapping[str, str] | None = None, terms: str | None = None
) -> str:
    """Return entries as a table; `titles` names the topics that need a title.

    An item that states no licence has its bank's, `terms`, which its row then says: a table
    leaves the bank.
    """
    out = io.StringIO()
    writer = CsvWriter(out, "\r\n")
    writer.writerow(COLUMNS)
    for entry in entries:
        item = entry.item if entry.item.licence else _licensed(entry.item, terms)
        cells = {name: cell_text(name, getattr(item, name)) for name in COLUMNS[2:]}
        title = (titles or {}).get(entry.topic, "")
        writer.writerow([entry.topic, title, *(cells[name] for name in COLUMNS[2:])])
    return out.getvalue()


def _licensed(item: BankItem, terms: str | None) -> BankItem:
    return item.model_copy(update={"licence": terms})


def read_table(path: Path | str, taken: Collection[str] = ()) -> list[Row]:
    """Return the items of a table. An item without an id is given one that is not `taken`.

    Raises:
        FileFaults: anything is wrong with the table; every fault is told with its line.
    """
    return parse_table(decode_text(Path(path)), path, taken)


def parse_table(text: str, path: Path | str, taken: Collection[str] = ()) -> list[Row]:
    r"""Return the items of a table's text; as :func:`read_table`.

    >>> rows = parse_table("topic,tier,prompt,key\r\nratio.share,core,Find {2 + 3}.,5\r\n", "t")
    >>> rows[0].item.id, rows[0].line
    ('share-1', 2)
    """
    faults: list[Fault] = []

    def fault(line: int, message: str, *, matter: str = "") -> None:
        faults.append(Fault(str(path), line, message, matter=matter))

    cells = list(_cells(text, fault))
    rows: list[Row] = []
    used = set(taken)
    if cells and _columns(cells[0][1], fault):
        names = [_folded(name) for name in cells[0][1]]
        body = [(line, row) for line, row in cells[1:] if any(cell.strip() for cell in row)]
        wanted = {row[names.index("id")].strip() for _, row in body if _has(row, names, "id")}
        for line, row in body:
            found = _row(line, row, names, used, wanted, fault)
            if found is not None:
                rows.append(found)
    elif not cells and not faults:
        fault(0, f"This table is empty. Its first row names the columns: {join_words(NEEDED)}.")
    if faults:
        raise FileFaults(faults, most=None)
    return rows


def import_table(folder: Path | str, path: Path | str) -> list[Row]:
    """Add the items of a table to a bank, all of them or none, and return them.

    Raises:
        FileFaults: the bank or the table has faults.
        ItembankError: a file cannot be saved.
    """
    folder = Path(folder)
    with locked(folder):
        return _import_table(folder, Path(path))


def _import_table(folder: Path, path: Path) -> list[Row]:
    """Add the items of a table to a bank that nobody else changes meanwhile."""
    ids, authors, terms = with_bank(
        folder, lambda bank: (set(bank.ids()), dict(bank.authors), bank.terms)
    )
    rows = read_table(path, ids)
    faults: list[Fault] = []
    files: dict[str, Snapshot] = {}
    texts: dict[str, str] = {}
    for row in rows:
        if row.item.author is not None and row.item.author not in authors:
            near = nearest(row.item.author, authors, 1)
            advice = f" Did you mean {near[0]}?" if near else ""
            message = f"The bank has no author ‘{row.item.author}’.{advice}"
            faults.append(Fault(str(path), row.line, message))
        if row.topic not in texts:
            before = files[row.topic] = take(topic_path(folder, row.topic))
            try:
                fresh = before.raw is None
                texts[row.topic] = new_topic(row.topic, row.title) if fresh else before.text
            except ItembankError as error:
                faults.append(Fault(str(path), row.line, str(error)))
                texts[row.topic] = ""
        item = _licensed(row.item, None) if row.item.licence == terms else row.item
        texts[row.topic] = with_item(texts[row.topic], item)
    if faults:
        raise FileFaults(faults, most=None)
    words = f"{counted(len(rows), 'question')} added from a table"
    save(folder, [(files[topic], text) for topic, text in texts.items()], words)
    return rows


class Tell(Protocol):
    """Notes a fault of a line, with the name of what is the matter where more can be said."""

    def __call__(self, line: int, message: str, *, matter: str = "") -> None:
        """Note it."""


def _cells(text: str, fault: Tell) -> Iterator[tuple[int, list[str]]]:
    """Yield each row with the line on which it begins."""
    head = text.partition("\n")[0]
    between = max(",;\t", key=lambda mark: (head.count(mark), mark == ","))
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=between, strict=True)
    line = 1
    try:
        for row in reader:
            yield line, [as_meant(cell) for cell in row]
            line = reader.line_num + 1
            if line > MOST_ROWS * 50:
                fault(line, "This table is too long. Import it in parts.")
                return
    except csv.Error:
        fault(line, "This row cannot be read. Look for a quotation mark that is not closed.")


def _folded(name: str) -> str:
    return name.strip().casefold().replace(" ", "_")


def _columns(head: list[str], fault: Tell) -> bool:
    names = [_folded(name) for name in head]
    right = True
    for name in names:
        if name not in COLUMNS:
            near = nearest(name, COLUMNS, 1)
            advice = f"Did you mean ‘{near[0]}’?" if near else "Take it out or give it a name."
            fault(1, f"There is no column ‘{name}’. {advice}")
            right = False
    for name in sorted({name for name in names if names.count(name) > 1} & set(COLUMNS)):
        fault(1, f"There are two columns ‘{name}’. Take one of them out.")
        right = False
    for name in NEEDED:
        if name not in names:
            fault(1, f"The column ‘{name}’ is missing.")
            right = False
    return right


def _has(row: list[str], names: list[str], name: str) -> bool:
    return name in names and names.index(name) < len(row) and bool(row[names.index(name)].strip())


def _row(
    line: int, row: list[str], names: list[str], used: set[str], wanted: set[str], fault: Tell
) -> Row | None:
    if len(row) > len(names):
        fault(line, f"This row has {len(row)} cells, and there are {len(names)} columns.")
        return None
    told: list[str] = []
    fields: dict[str, Any] = {}
    for name, cell in zip(names, row, strict=False):
        if cell.strip():
            try:
                fields[name] = cell_value(name, cell.replace("\r\n", "\n"))
            except ValueError as error:
                told.append(f"‘{name}’ {error}.")
                fields[name] = None
    bad = {name for name, value in fields.items() if value is None}
    topic, title = fields.pop("topic", ""), fields.pop("title", None)
    if not topic:
        fault(line, "‘topic’ is empty: write the id of one.", matter="no such topic")
    if "id" not in fields:
        fields["id"] = _free_id(topic, used | wanted)
    id = fields["id"]
    if id in used:
        told.append(f"The id ‘{id}’ is taken already. Give this item another.")
    used.add(id)
    item: BankItem | None = None
    try:
        item = BankItem.model_validate({k: v for k, v in fields.items() if k not in bad})
    except ValidationError as error:
        told.extend(
            message
            for where, message in sentences(error, BankItem)
            if not (where and where[0] in bad)
        )
    if item is not None:
        told.extend(found.message for found in new_item_faults(item))
    for message in told:
        fault(line, message)
    return None if told or item is None or not topic else Row(topic, title, item, line)


def _free_id(topic: str, used: Collection[str]) -> str:
    """Return an id after the topic's last word that is not used yet."""
    stem = re.sub(r"[^a-z0-9-]", "", topic.rpartition(".")[2].lower()).strip("-")
    stem = stem if ITEM_ID.match(stem) else "item"
    number = 1
    while f"{stem}-{number}" in used:
        number += 1
    return f"{stem}-{number}"
