"""What the files of a bank must say together: names, topics, ids and authors."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from itembank.bank.read.item_checks import address_fault, is_generated, set_fault
from itembank.bank.read.topic_text import TopicText
from itembank.files.faults import Fault, nearest
from itembank.items.topics.registry import topic_ids


def bank_faults(files: Sequence[TopicText], authors: Mapping[str, str] | None) -> Iterator[Fault]:
    """Yield every fault that no file of a bank has by itself.

    `authors` are the bank's codes with their roles, or None where they could not be read.
    """
    own = {file.head.topic for file in files if file.head is not None}
    for file in files:
        yield from _file_faults(file, own)
    yield from _repeated_ids(files)
    yield from _repeated_topics(files)
    if authors is not None:
        yield from _unknown_authors(files, authors)


def _file_faults(file: TopicText, own: set[str]) -> Iterator[Fault]:
    """Hold a file to its name, to the topics there are and to the generators."""
    head, path = file.head, str(file.path)
    if head is None:
        return
    if file.path.stem != head.topic:
        yield Fault(
            path,
            file.topic_line,
            f"The topic is ‘{head.topic}’, so the file has to be called {head.topic}.toml.",
        )
    if head.title is None and not is_generated(head.topic):
        yield Fault(
            path,
            file.topic_line,
            f"There is no topic ‘{head.topic}’. {_near(head.topic, topic_ids())}A topic of your "
            "own has a title: add a line title = “…”.",
        )
    for topic in head.prerequisites:
        if topic not in own and not is_generated(topic):
            yield Fault(
                path,
                file.prerequisites_line,
                f"There is no topic ‘{topic}’ to come before this one. "
                f"{_near(topic, {*own, *topic_ids()})}".strip(),
            )
    for made, line in file.generated:
        if fault := set_fault(made, head.topic):
            yield Fault(path, line, fault)
    for pin, line in file.pinned:
        if fault := address_fault(pin.address):
            yield Fault(path, line, fault)


def _near(word: str, known: Sequence[str] | set[str]) -> str:
    near = nearest(word, sorted(known))
    return f"Did you mean {' or '.join(near)}? " if near else ""


def _repeated_ids(files: Sequence[TopicText]) -> Iterator[Fault]:
    """Tell of every id that is used twice, with both places."""
    first: dict[str, tuple[Path, int]] = {}
    for file in files:
        for placed in file.items:
            here = (file.path, placed.id_line)
            there = first.setdefault(placed.item.id, here)
            if there != here:
                yield Fault(
                    str(file.path),
                    placed.id_line,
                    f"The id ‘{placed.item.id}’ is taken already, in {there[0].name}, "
                    f"line {there[1]}. Give one of the two another id.",
                )


def _repeated_topics(files: Sequence[TopicText]) -> Iterator[Fault]:
    topics: dict[str, TopicText] = {}
    for file in files:
        if file.head is None:
            continue
        earlier = topics.setdefault(file.head.topic, file)
        if earlier is not file:
            yield Fault(
                str(file.path),
                file.topic_line,
                f"{earlier.path.name} is on the topic ‘{file.head.topic}’ already.",
            )


def _unknown_authors(files: Sequence[TopicText], authors: Mapping[str, str]) -> Iterator[Fault]:
    for file in files:
        for placed in file.items:
            author = placed.item.author
            if author is None or author in authors:
                continue
            yield Fault(
                str(file.path),
                placed.author_line,
                f"There is no author ‘{author}’ in bank.toml. {_near(author, set(authors))}"
                "Add the code with a role under [authors] there.",
            )
