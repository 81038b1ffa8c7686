"""The titles of topics and the names of mistakes, for reports that people read.

Generated topics have theirs in the registry, a bank's own topics in its files. Only the heads
of those files are read, and only where a topic is met that is not generated: a report is not
the place to check a bank. What is known nowhere any more goes by its id.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.planning.department.department import Department


class Titles:
    """Looks up titles by the ids of topics.

    >>> Titles(()).of("ratio.share"), Titles(()).of("ratio.gone")
    ('Sharing an amount in a given ratio', 'ratio.gone')
    """

    def __init__(self, banks: Iterable[Path]) -> None:
        self.banks = tuple(dict.fromkeys(banks))

    def of(self, topic: str) -> str:
        """Return the title of a topic, or its id where it has none."""
        return self._generated.get(topic) or str(self._bank_file(topic).get("title") or topic)

    def mistake(self, topic: str, name: str) -> str:
        """Return what a misconception is called, or its id where that is not known.

        Where one answer comes from several mistakes, its id names them all.

        >>> Titles(()).mistake("ratio.share", "no-such")
        'no-such'
        >>> Titles(()).mistake("equations.brackets", "equations.stops-early+.no-such")
        'stops with a step still to do, or equations.no-such'
        """
        from itembank.items.wrong_answers import causes, said_together

        return said_together(self._one_mistake(topic, cause) for cause in causes(name))

    def _one_mistake(self, topic: str, name: str) -> str:
        known = self._mistakes.get(name)
        if known is not None:
            return known
        rows = [
            row
            for item in _tables(self._bank_file(topic).get("items"))
            for row in _tables(item.get("misconceptions"))
        ]
        found = next((row.get("name") for row in rows if row.get("id") == name), None)
        return found if isinstance(found, str) else name

    def find(self, text: str, asked: Collection[str]) -> str | None:
        """Return which of the topics `asked` is meant by an id, a title or a part of one.

        Raises:
            ItembankError: it is a part of several titles.

        >>> Titles(()).find("in a given", ["ratio.share", "ratio.scale"])
        'ratio.share'
        """
        wanted = " ".join(text.casefold().split())
        titles = {topic: self.of(topic).casefold() for topic in sorted(asked)}
        for topic, title in titles.items():
            if wanted in (topic.casefold(), title):
                return topic
        found = [topic for topic, title in titles.items() if wanted and wanted in title]
        if len(found) > 1:
            names = ", ".join(f"{self.of(topic)} ({topic})" for topic in found)
            raise ItembankError(f"‘{text}’ may be several topics: {names}. Write one of the ids.")
        return found[0] if found else None

    def known(self) -> set[str]:
        """Return the ids of all topics that have a title."""
        return {*self._generated, *(topic for files in self._bank_files for topic in files)}

    @cached_property
    def _generated(self) -> Mapping[str, str]:
        from itembank.items.topics.registry import listed_topics

        return {topic.id: topic.title for topic in listed_topics().values()}

    @cached_property
    def _mistakes(self) -> Mapping[str, str]:
        from itembank.items.topics.registry import listed_topics

        told = (topic.misconceptions for topic in listed_topics().values())
        return {slip: name for names in told for slip, name in names.items()}

    def _bank_file(self, topic: str) -> Mapping[str, Any]:
        for files in self._bank_files:
            if topic in files:
                return files[topic]
        return {}

    @cached_property
    def _bank_files(self) -> list[dict[str, Mapping[str, Any]]]:
        import tomllib

        found = []
        for bank in self.banks:
            files: dict[str, Mapping[str, Any]] = {}
            for path in sorted(bank.glob("*.toml")):
                try:
                    data = tomllib.loads(path.read_text(encoding="utf-8-sig"))
                except (OSError, ValueError, RecursionError):
                    continue
                if isinstance(data.get("topic"), str):
                    files[data["topic"]] = data
            found.append(files)
        return found


def _tables(value: object) -> list[Mapping[str, Any]]:
    """Return the tables of an array of tables; nothing where it is something else."""
    return [table for table in value if isinstance(table, dict)] if isinstance(value, list) else []


def titles_of(department: Department) -> Titles:
    """Return the titles that the classes of a department may meet."""
    return Titles(bank for group in department.classes for bank in group.stated_sources.banks or ())
