"""What there is to say of every topic without loading one: the list that ships beside them.

A hundred topics take their time to load and to lay out, and most commands need only their names
and what they rest on. ``generators/listing.json`` tells that, with a mark of the very files it
was made from. Where the mark is not theirs, as while a topic is being written, the topics
themselves are asked, so that what is told is always true.

Beside it ships the layout of their spaces (:mod:`itembank.items.topics.layout`), with the same
mark. ``python -m itembank.items.topics.frozen`` writes both; topics that another installed
package registers are never on them.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.items.measures.years import FIRST_YEAR_KS3
from itembank.items.topics import layout

if TYPE_CHECKING:
    from itembank.items.topics.topic import Topic

NAME = "listing.json"


class LaterPart(NamedTuple):
    """How many of a tier's questions are content of a later year, and which content."""

    tier: str
    questions: int
    of: int
    from_year: int
    content: str


class Listed(NamedTuple):
    """What is told of a topic without loading it."""

    id: str
    title: str
    module: str
    prerequisites: tuple[str, ...]
    statements: tuple[str, ...]
    sizes: Mapping[str, int]
    """How many questions each tier can ask."""
    years: tuple[int, ...]
    """The first years that its parts suit, of the whole topic the least."""
    later: tuple[LaterPart, ...]
    """The parts of a later year, where a part of a tier is."""
    misconceptions: Mapping[str, str]
    """The name of each, by its id."""

    @property
    def strand(self) -> str:
        """Return the part of the id before the dot."""
        return self.id.partition(".")[0]


def of_topic(topic: Topic) -> Listed:
    """Return what the list tells of a topic, from the topic itself; its spaces are laid out.

    >>> from itembank.items.topics.registry import find_topic
    >>> told = of_topic(find_topic("ratio.share"))
    >>> told.title, told.prerequisites, told.years
    ('Sharing an amount in a given ratio', ('ratio.simplest-form',), (7,))
    """
    return Listed(
        topic.id,
        topic.title,
        type(topic).__module__,
        tuple(topic.prerequisites),
        tuple(topic.statements),
        {tier.value: len(space) for tier, space in topic.spaces.items()},
        first_years(topic),
        tuple(_later(topic)),
        {misconception.id: misconception.name for misconception in topic.misconceptions},
    )


def first_years(topic: Topic) -> tuple[int, ...]:
    """Return the first years that the parts of a topic suit, of the whole topic the least.

    It is told from what the topic declares, without making its items.
    """
    whole = all(
        any(part.holds is None for part in topic.later.get(tier, ())) for tier in topic.spaces
    )
    later = {part.content.from_year for parts in topic.later.values() for part in parts}
    return tuple(sorted(later if whole else {FIRST_YEAR_KS3, *later}))


def _later(topic: Topic) -> list[LaterPart]:
    found = []
    for tier, parts in topic.later.items():
        space = topic.spaces[tier]
        for part in parts:
            if part.holds is not None:
                count = sum(topic.content(tier, *values) is part.content for values in space)
                content = part.content
                found.append(
                    LaterPart(tier.value, count, len(space), content.from_year, content.name)
                )
    return found


def _folder() -> Path:
    import generators

    return Path(next(iter(generators.__path__)))


def mark(folder: Path) -> str:
    """Return the mark of the files that topics are made from: what they hold, and their names.

    >>> mark(_folder()) == mark(_folder()), mark(_folder()) == mark(_folder() / "ratio")
    (True, False)
    """
    digest = sha256()
    for path in sorted(folder.glob("**/*.py")):
        held = path.read_bytes()
        digest.update(f"{path.relative_to(folder).as_posix()}\0{len(held)}\0".encode())
        digest.update(held)
    return digest.hexdigest()


class Believed(NamedTuple):
    """What ships, where it is of the topics as they stand."""

    mark: str
    topics: Mapping[str, Listed]


@cache
def believed() -> Believed | None:
    """Return the list that ships, or None where it is not of the topics as they stand."""
    folder = _folder()
    try:
        data = json.loads((folder / NAME).read_bytes())
        if data["mark"] != mark(folder):
            return None
        listed = {name: _read(name, row) for name, row in data["topics"].items()}
        return Believed(data["mark"], listed)
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None


def shipped() -> Mapping[str, Listed] | None:
    """Return the list that ships, by id, or None where it is not of the topics as they stand."""
    found = believed()
    return None if found is None else found.topics


@cache
def _layout() -> layout.Layout | None:
    """Return the layout that ships, or None where it is not of the topics as they stand."""
    found = believed()
    return None if found is None else layout.read(_folder(), found.mark)


def numbers_known(name: str) -> Sequence[int] | None:
    """Return what the layout that ships holds under a name, or None where it is not believed.

    >>> len(numbers_known("ratio.share/core/0"))
    520
    """
    found = _layout()
    return None if found is None else found.numbers(name)


def _read(name: str, told: Mapping[str, Any]) -> Listed:
    return Listed(
        name,
        told["title"],
        told["module"],
        tuple(told["prerequisites"]),
        tuple(told["statements"]),
        told["sizes"],
        tuple(told["years"]),
        tuple(LaterPart(*part) for part in told["later"]),
        told["misconceptions"],
    )


def text_of(listed: tuple[Listed, ...], folder: Path) -> str:
    """Return the text of the list, a line a topic so that a change can be read."""
    lines = [
        f"{json.dumps(topic.id)}: "
        + json.dumps({k: v for k, v in topic._asdict().items() if k != "id"}, ensure_ascii=False)
        for topic in listed
    ]
    topics = ",\n".join(lines)
    return f'{{"mark": "{mark(folder)}",\n"topics": {{\n{topics}\n}}}}\n'


def write(topics: tuple[Topic, ...], folder: Path) -> None:
    """Write the list and the layout of the topics into the folder that holds them, each whole."""
    from itembank.files.together import write_whole

    laid_out = layout.text_of(topics, mark(folder))
    listed = text_of(tuple(map(of_topic, topics)), folder)
    for path, text in ((folder / layout.NAME, laid_out), (folder / NAME, listed)):
        if not path.is_file() or path.read_text("utf-8") != text:
            write_whole(path, text.encode())
