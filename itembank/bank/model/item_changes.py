"""What differs between two versions of an item, field by field, as a person would say it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from itembank.data_class import dataclass

EMPTY: tuple[Any, ...] = (None, [], {}, ())


@dataclass(frozen=True, slots=True)
class Change:
    """One field that differs; a text is empty where that version has nothing there."""

    field: str
    was: str
    now: str

    def __str__(self) -> str:
        """Return the change as a phrase.

        >>> str(Change("key", "11/12", "4/10")), str(Change("form", "", "mixed"))
        ('key: was ‘11/12’, is now ‘4/10’', 'form: added ‘mixed’')
        """
        if not self.was:
            return f"{self.field}: added ‘{self.now}’"
        if not self.now:
            return f"{self.field}: taken out, was ‘{self.was}’"
        was, now = _parted(self.was, self.now)
        return f"{self.field}: was ‘{was}’, is now ‘{now}’"


LONG = 50
"""Of longer texts only the words that differ are shown, between a few that stand about them."""
ABOUT = 3


def _parted(was: str, now: str) -> tuple[str, str]:
    """Return two texts without most of the words that both begin and end with.

    >>> _parted("Each of the 9 coaches has 5 seats", "Each of the 9 coaches has 5 seats")[0][:4]
    'Each'
    >>> _parted("A depot has {12} buses and each bus has {5} spare wheels and a jack.",
    ...         "A depot has {12} buses and every bus has {5} spare wheels and a jack.")
    ('… {12} buses and each bus has {5} …', '… {12} buses and every bus has {5} …')
    """
    if max(len(was), len(now)) <= LONG or was == now:
        return was, now
    texts = was.split(" "), now.split(" ")
    short = min(map(len, texts))
    first = next((i for i in range(short) if texts[0][i] != texts[1][i]), short)
    last = next((i for i in range(short - first) if texts[0][~i] != texts[1][~i]), short - first)
    before, after = max(first - ABOUT, 0), max(last - ABOUT, 0)
    parted = []
    for words in texts:
        middle = words[before : len(words) - after]
        parted.append(" ".join(["…"] * (before > 0) + middle + ["…"] * (after > 0)))
    return parted[0], parted[1]


def changes(was: Mapping[str, Any], now: Mapping[str, Any]) -> tuple[Change, ...]:
    """Return every field in which plain data differs; lists and tables are told part by part.

    >>> old = {"key": "11/12", "working": [["Add", "9/12 + 2/12"], ["So", "11/12"]]}
    >>> [str(c) for c in changes(old, {"key": "11/12", "working": [["Add", "9/12 + 2/12"]]})]
    ['working, line 2: taken out, was ‘So: 11/12’']
    """
    return tuple(
        change
        for name in dict.fromkeys((*now, *was))
        for change in _field(name, was.get(name), now.get(name))
    )


def _field(name: str, was: Any, now: Any) -> Iterator[Change]:
    was, now = (None if value in EMPTY else value for value in (was, now))
    if was == now:
        return
    found: list[Change] = []
    if name == "misconceptions":
        found += _misconceptions(_by_id(was), _by_id(now))
    elif isinstance(was or now, dict):
        found += _table(name, was or {}, now or {})
    elif isinstance(was or now, list | tuple):
        found += _lines(name, was or [], now or [])
    # What differs only in its order, say, is still told.
    yield from found or [Change(name, _words(was), _words(now))]


def _table(name: str, was: dict[str, Any], now: dict[str, Any]) -> Iterator[Change]:
    for key in dict.fromkeys((*now, *was)):
        if was.get(key) != now.get(key):
            yield Change(f"{name}, {key}", _words(was.get(key)), _words(now.get(key)))


def _lines(name: str, was: Sequence[Any], now: Sequence[Any]) -> Iterator[Change]:
    for place in range(max(len(was), len(now))):
        before, after = (
            _words(sequence[place]) if place < len(sequence) else "" for sequence in (was, now)
        )
        if before != after:
            yield Change(f"{name}, line {place + 1}", before, after)


def _by_id(found: Any) -> dict[str, dict[str, Any]]:
    return {str(entry.get("id", place)): dict(entry) for place, entry in enumerate(found or ())}


def _misconceptions(
    was: dict[str, dict[str, Any]], now: dict[str, dict[str, Any]]
) -> Iterator[Change]:
    for key in dict.fromkeys((*now, *was)):
        before, after = was.get(key, {}), now.get(key, {})
        if not (before and after):
            names = (
                str(mistake.get("name", key)) if mistake else "" for mistake in (before, after)
            )
            yield Change(f"misconception {key}", *names)
            continue
        for name in dict.fromkeys((*after, *before)):
            if before.get(name) != after.get(name):
                yield Change(
                    f"misconception {key}, {name}",
                    _words(before.get(name)),
                    _words(after.get(name)),
                )


def _words(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, list | tuple):
        return ": ".join(filter(None, map(_words, value)))
    return str(value)
