"""Reads a bank: a folder with ``bank.toml`` and one file a topic. All faults are told at once."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from pydantic import ValidationError

from itembank.bank.model.bank import BANK_FILE, Bank, BankTopic, Entry, topic_files
from itembank.bank.model.fields import BankFile, BankItem
from itembank.bank.model.model_faults import sentences
from itembank.bank.question.given.maths import FieldFault
from itembank.bank.read.bank_checks import bank_faults
from itembank.bank.read.topic_text import TopicText, check_items, read_topic
from itembank.bank.saving.bank_lock import finish_saving
from itembank.files.faults import Fault, FileFaults, decode_text, nearest
from itembank.files.toml_read import read_toml
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.processes.machine import cores
from itembank.processes.work_place import ThisMachine, all_of

MANY_BYTES = 200_000
"""From this much text on, a bank is read on several processes."""
CHUNK = 250

Found = list[tuple[int, FieldFault]]


def read_bank(folder: Path | str, *, processes: int | None = None) -> Bank:
    """Return the bank in `folder`. A large bank is read on as many processes as there are cores.

    Raises:
        FileFaults: anything is wrong with any of its files; every fault is told.
    """
    folder = Path(folder)
    if not folder.is_dir():
        raise no_bank(folder)
    finish_saving(folder)
    faults: list[Fault] = []
    facts = _read_facts(folder / BANK_FILE, faults)
    texts = _texts(topic_files(folder), faults)
    size = sum(len(text) for _, text in texts)
    workers = processes or (cores() if size >= MANY_BYTES else 1)
    files = _read_files(texts, workers)
    for file in files:
        faults.extend(file.faults)
    faults.extend(bank_faults(files, None if facts is None else facts.authors))
    if faults or facts is None:
        raise FileFaults(faults, most=None)
    topics = tuple(_topic(file, facts.name) for file in files)
    return Bank(folder, facts.name, facts.title, facts.terms, dict(facts.authors), topics)


def no_bank(folder: Path) -> FileFaults:
    """Return the fault of a bank's folder that is none."""
    what = "This is a file; a bank is a folder." if folder.exists() else _no_folder(folder)
    return FileFaults([Fault(str(folder), 0, what)])


def _no_folder(folder: Path) -> str:
    near = nearest(folder.name, _folders(folder.parent))
    advice = f" Did you mean {' or '.join(near)}?" if near else ""
    return f"There is no such folder.{advice}"


def _folders(parent: Path) -> list[str]:
    try:
        return [path.name for path in parent.iterdir() if path.is_dir()]
    except OSError:
        return []


def _read_facts(path: Path, faults: list[Fault]) -> BankFile | None:
    if not path.exists():
        faults.append(no_bank_file(path))
        return None
    try:
        text = decode_text(path)
    except FileFaults as error:
        faults.extend(error.faults)
        return None
    return read_bank_file(text, path, faults)


def no_bank_file(path: Path) -> Fault:
    """Return the fault of a folder without a ``bank.toml``."""
    what = "There is no such file, so this folder is not a bank."
    return Fault(str(path), 0, what, matter="not a bank")


def read_bank_file(text: str, path: Path, faults: list[Fault]) -> BankFile | None:
    """Return what a ``bank.toml`` says, or None, and note what is wrong with it in `faults`."""
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
    topic_ids()  # loaded once, here, so that a copy of this process has it already
    place = ThisMachine(workers)
    files = all_of(place, _read_pair, texts)
    large = [file for file in files if file.is_large()]  # their items are checked in parts
    parts: list[list[tuple[int, BankItem]]] = []
    of: list[TopicText] = []
    for file in large:
        items = [(placed.index, placed.item) for placed in file.items]
        parts += [items[at : at + CHUNK] for at in range(0, len(items), CHUNK)]
        of += [file] * (len(parts) - len(of))
    for file, found in zip(of, all_of(place, check_items, parts), strict=True):
        file.note_fields(found)
    return files


def _read_pair(pair: tuple[Path, str]) -> TopicText:
    path, text = pair
    file = read_topic(text, path)
    if not file.is_large():
        file.note_fields(check_items([(placed.index, placed.item) for placed in file.items]))
    return file


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
