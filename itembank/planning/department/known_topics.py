"""The names a topic may have: those of the generators and those of the banks in use."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from functools import cached_property
from pathlib import Path

from itembank.files.faults import Fault, FileFaults


class KnownTopics(Collection[str]):
    """The ids of topics that may be named.

    The banks are read only when a name is met that no generator has, so that a department
    whose lessons are generated does not wait for them. Where a bank has faults they stand in
    :attr:`faults`, and every name counts as known: what cannot be read cannot be missed.

    >>> known = KnownTopics(["ratio.share"])
    >>> "ratio.share" in known, "ratio.shar" in known, len(known)
    (True, False, 1)
    """

    def __init__(self, generated: Collection[str], banks: tuple[Path, ...] = ()) -> None:
        self.generated, self.banks = generated, banks
        self.faults: list[Fault] = []

    def __contains__(self, name: object) -> bool:
        # The faults last: it is looking into the banks that finds them.
        return name in self.generated or name in self.in_banks or bool(self.faults)

    def __iter__(self) -> Iterator[str]:
        yield from sorted({*self.generated, *self.in_banks})

    def __len__(self) -> int:
        return len({*self.generated, *self.in_banks})

    @cached_property
    def in_banks(self) -> Mapping[str, str]:
        """Return the title of each topic of the banks, by id; the first bank's where several."""
        found: dict[str, str] = {}
        for folder in self.banks:
            try:
                titles = bank_topics(folder)
            except FileFaults as error:
                self.faults += error.faults
            else:
                found = titles | found
        return found


class AnyTopic(frozenset[str]):
    """Holds every name, where nobody knows or asks which topics there are.

    >>> "ratio.shar" in AnyTopic()
    True
    """

    def __contains__(self, name: object) -> bool:
        return True


def bank_topics(folder: Path) -> dict[str, str]:
    """Return the title of each topic of one bank, by id.

    Raises:
        FileFaults: every fault of the bank, each with its file and line.
    """
    from itembank.bank.index.any_address import bank_as_it_stands

    return {topic.id: topic.title for topic in bank_as_it_stands(folder).topics}
