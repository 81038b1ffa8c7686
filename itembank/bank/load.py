"""Reads a bank: a folder with ``bank.toml`` and one file a topic. All faults are told at once."""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Iterable, Iterator, Mapping
from concurrent.futures import Future, ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from itembank.bank.checks import address_fault, is_generated, set_fault
from itembank.bank.maths import FieldFault
from itembank.bank.model import BankFile, BankItem, GeneratedSet, PinnedItem
from itembank.bank.modelfaults import sentences
from itembank.bank.topictext import TopicText, check_items, read_topic
from itembank.errors import ItembankError
from itembank.faults import Fault, FileFaults, decode_text, nearest
from itembank.items.registry import find_topic, topic_ids
from itembank.toml_file import read_toml

BANK_FILE = "bank.toml"
SIGNOFF_FILE = "signoffs.toml"
MANY_BYTES = 200_000
"""From this much text on, a bank is read on several processes."""
CHUNK = 250

Found = list[tuple[int, FieldFault]]


@dataclass(frozen=True, slots=True)
class Entry:
    """A hand-written item with its place in a bank."""

    item: BankItem
    topic: str
    bank: str
    path: Path
    line: int

    @property
    def address(self) -> str:
        """Return the address that names the item everywhere: ``fernhill:garden-12``."""
        return f"{self.bank}:{self.item.id}"


@dataclass(frozen=True, slots=True)
class BankTopic:
    """One topic of a bank: what its file holds."""

    id: str
    title: str
    path: Path
    entries: tuple[Entry, ...]
    generated: tuple[GeneratedSet, ...]
    pinned: tuple[PinnedItem, ...]
    prerequisites: tuple[str, ...] = ()


@dataclass(frozen=True)
class Bank:
    """A bank as it stands in its folder."""

    folder: Path
    name: str
    title: str
    licence: str | None
    authors: dict[str, str]
    topics: tuple[BankTopic, ...]

    def entries(self) -> Iterator[Entry]:
        """Yield every hand-written item, topic by topic, in the order of the files."""
        for topic in self.topics:
            yield from topic.entries

    def find(self, id: str) -> Entry:
        """Return the item called `id`, or by its address ``BANK:ID``.

        Raises:
            ItembankError: there is none; the message names the nearest.
        """
        wanted = id.removeprefix(f"{self.name}:")
        for entry in self.entries():
            if entry.item.id == wanted:
                return entry
        near = nearest(wanted, (entry.item.id for entry in self.entries()))
        advice = f" Did you mean {' or '.join(near)}?" if near else ""
        raise ItembankError(f"There is no item ‘{wanted}’ in the bank {self.name}.{advice}")


def topic_files(folder: Path) -> list[Path]:
    """Return the topic files of a bank's folder, sorted by name."""
    return sorted(
        path
        for path in folder.glob("*.toml")
        if path.name not in (BANK_FILE, SIGNOFF_FILE) and not path.name.startswith(".")
    )


def read_bank(folder: Path | str, *, processes: int | None = None) -> Bank:
    """Return the bank in `folder`. A large bank is read on as many processes as there are cores.

    Raises:
        FileFaults: anything is wrong with any of its files; every fault is told.
    """
    folder = Path(folder)
    if not folder.is_dir():
        what = "This is a file; a bank is a folder." if folder.exists() else _no_folder(folder)
        raise FileFaults([Fault(str(folder), 0, what)])
    faults: list[Fault] = []
    facts = _read_facts(folder / BANK_FILE, faults)
    texts = _texts(topic_files(folder), faults)
    size = sum(len(text) for _, text in texts)
    workers = processes or (_cores() if size >= MANY_BYTES else 1)
    files = _read_files(texts, workers)
    for file in files:
        _check_file(file, faults)
        faults.extend(file.faults)
    _check_ids(files, faults)
    if facts is not None:
        _check_authors(files, facts.authors, faults)
    if faults or facts is None:
        raise FileFaults(faults, most=None)
    topics = tuple(_topic(file, facts.name) for file in files)
    return Bank(folder, facts.name, facts.title, facts.licence, dict(facts.authors), topics)


def _no_folder(folder: Path) -> str:
    near = nearest(folder.name, _folders(folder.parent))
    advice = f" Did you mean {' or '.join(near)}?" if near else ""
    return f"There is no such folder.{advice}"


def _folders(parent: Path) -> list[str]:
    try:
        return [path.name for path in parent.iterdir() if path.is_dir()]
    except OSError:
        return []


def _cores() -> int:
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:  # not every system can say which cores a process may use
        return os.cpu_count() or 1


def _read_facts(path: Path, faults: list[Fault]) -> BankFile | None:
    if not path.exists():
        faults.append(
            Fault(
                str(path),
                0,
                "There is no such file, so this folder is not a bank. "
                "‘itembank bank new’ makes a bank.",
            )
        )
        return None
    try:
        text = decode_text(path)
    except FileFaults as error:
        faults.extend(error.faults)
        return None
    toml = read_toml(text, path)
    faults.extend(toml.faults)
    if toml.data is None:
        return None
    try:
        return BankFile.model_validate(toml.data)
    except ValidationError as error:
        for where, message in sentences(error, BankFile):
            if not (toml.head_damaged and "missing" in message):
                faults.append(Fault(str(path), toml.locator.line(where), message))
    return None


def _texts(paths: Iterable[Path], faults: list[Fault]) -> list[tuple[Path, str]]:
    texts = []
    for path in paths:
        try:
            texts.append((path, decode_text(path)))
        except FileFaults as error:
            faults.extend(error.faults)
    return texts


def _read_files(texts: list[tuple[Path, str]], workers: int) -> list[TopicText]:
    """Read every file and check every item, on several processes where that pays."""
    if workers == 1:
        files = [read_topic(text, path) for path, text in texts]
        for file in files:
            file.note_fields(check_items([(p.index, p.item) for p in file.items]))
        return files
    # The registry is loaded once, here, so that a forked process has it already.
    topic_ids()
    with ProcessPoolExecutor(workers, mp_context=_context()) as pool:
        files = []
        checks: list[tuple[TopicText, Future[Found]]] = []
        # A file's items go out to be checked while the next file is read.
        for file in pool.map(_read_pair, texts):
            files.append(file)
            items = [(placed.index, placed.item) for placed in file.items]
            for at in range(0, len(items), CHUNK):
                checks.append((file, pool.submit(check_items, items[at : at + CHUNK])))
        for file, check in checks:
            file.note_fields(check.result())
    return files


def _read_pair(pair: tuple[Path, str]) -> TopicText:
    path, text = pair
    return read_topic(text, path)


def _context() -> Any:
    methods = multiprocessing.get_all_start_methods()
    return multiprocessing.get_context("fork" if "fork" in methods else None)


def _check_file(file: TopicText, faults: list[Fault]) -> None:
    """Hold a file to its name, to the topics there are and to the generators."""
    head, path = file.head, str(file.path)
    if head is None:
        return
    if file.path.stem != head.topic:
        faults.append(
            Fault(
                path,
                file.topic_line,
                f"The topic is ‘{head.topic}’, so the file has to be called {head.topic}.toml.",
            )
        )
    if head.title is None and not is_generated(head.topic):
        near = nearest(head.topic, topic_ids())
        advice = f"Did you mean {' or '.join(near)}? " if near else ""
        faults.append(
            Fault(
                path,
                file.topic_line,
                f"There is no topic ‘{head.topic}’. {advice}A topic of your own has a title: "
                "add a line title = “…”.",
            )
        )
    for made, line in file.generated:
        if fault := set_fault(made, head.topic):
            faults.append(Fault(path, line, fault))
    for pin, line in file.pinned:
        if fault := address_fault(pin.address):
            faults.append(Fault(path, line, fault))


def _check_ids(files: list[TopicText], faults: list[Fault]) -> None:
    """Tell of every id that is used twice, with both places."""
    first: dict[str, tuple[Path, int]] = {}
    for file in files:
        for placed in file.items:
            there = first.setdefault(placed.item.id, (file.path, placed.id_line))
            if there != (file.path, placed.id_line):
                faults.append(
                    Fault(
                        str(file.path),
                        placed.id_line,
                        f"The id ‘{placed.item.id}’ is taken already, in {there[0].name}, "
                        f"line {there[1]}. Give one of the two another id.",
                    )
                )
    topics: dict[str, TopicText] = {}
    for file in files:
        if file.head is not None:
            other = topics.setdefault(file.head.topic, file)
            if other is not file:
                faults.append(
                    Fault(
                        str(file.path),
                        file.topic_line,
                        f"{other.path.name} is on the topic ‘{file.head.topic}’ already.",
                    )
                )


def _check_authors(files: list[TopicText], authors: Mapping[str, str], faults: list[Fault]) -> None:
    for file in files:
        for placed in file.items:
            author = placed.item.author
            if author is None or author in authors:
                continue
            near = nearest(author, authors, 1)
            advice = f" Did you mean {near[0]}?" if near else ""
            faults.append(
                Fault(
                    str(file.path),
                    placed.author_line,
                    f"There is no author ‘{author}’ in {BANK_FILE}.{advice} "
                    "Add the code with a role under [authors] there.",
                )
            )


def _topic(file: TopicText, bank: str) -> BankTopic:
    head = file.head
    assert head is not None  # a file without a head has faults
    entries = tuple(
        Entry(placed.item, head.topic, bank, file.path, placed.line) for placed in file.items
    )
    title = head.title or find_topic(head.topic).title
    return BankTopic(
        head.topic,
        title,
        file.path,
        entries,
        tuple(made for made, _ in file.generated),
        tuple(pin for pin, _ in file.pinned),
        head.prerequisites,
    )
