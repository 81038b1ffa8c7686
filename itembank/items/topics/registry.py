"""Finds topics: those in `generators/`, and those that other packages register.

A module of a strand package under ``generators`` registers each of its topics with
:func:`register`. Another installed package names a module of its own under the entry point
group ``itembank.topics``; importing that module registers its topics.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.files.named_by_packages import may_be_named
from itembank.items.tier import Tier
from itembank.items.topics.layout import know
from itembank.items.topics.listing import Listed, numbers_known, of_topic, shipped
from itembank.text.characters import shown
from itembank.text.whole_number import whole_number

if TYPE_CHECKING:
    from itembank.items.item import Item
    from itembank.items.topics.topic import Topic

GROUP = "itembank.topics"
_found: dict[str, Topic] = {}


class UnknownTopic(ItembankError):
    """No topic, tier or item has this name."""


def register(cls: type[Topic]) -> type[Topic]:
    """Add a topic to the registry; use it as a decorator on the class.

    Raises
    ------
    ItembankError
        If another class has taken the id.
    """
    holder = _found.get(cls.id)
    if holder is not None and type(holder).__module__ != cls.__module__:
        raise ItembankError(f"Two topics are called {cls.id}: rename one of them.")
    topic = _found[cls.id] = cls()
    if cls.__module__.startswith("generators."):
        know(topic, numbers_known)
    return cls


@cache
def _load() -> None:
    import generators

    for strand in pkgutil.iter_modules(generators.__path__):
        _load_strand(strand.name)
    _load_others()


@cache
def _load_others() -> None:
    """Load the topics that other packages name."""
    if may_be_named(GROUP):
        from importlib.metadata import entry_points

        for point in entry_points(group=GROUP):
            point.load()


@cache
def _load_strand(name: str) -> None:
    package = importlib.import_module(f"generators.{name}")
    for module in pkgutil.iter_modules(getattr(package, "__path__", [])):
        importlib.import_module(f"generators.{name}.{module.name}")


def _look_up(name: str) -> Topic | None:
    """Return a topic if there is one; all strands are read only when its own has it not."""
    if name in _found:
        return _found[name]
    if (listed := shipped()) is not None and name in listed:
        importlib.import_module(listed[name].module)
        return _found.get(name)
    import generators

    strand = name.partition(".")[0]
    if any(package.name == strand for package in pkgutil.iter_modules(generators.__path__)):
        _load_strand(strand)
    if name not in _found:
        _load()
    return _found.get(name)


def topics() -> tuple[Topic, ...]:
    """Return every topic, by id."""
    _load()
    return tuple(_found[name] for name in sorted(_found))


@cache
def listed_topics() -> Mapping[str, Listed]:
    """Return what is told of every topic without loading it, by id, sorted.

    Topics are loaded where the list that ships is not of them: those of other packages, and all
    of them while one is being written.

    >>> listed_topics()["ratio.share"].title
    'Sharing an amount in a given ratio'
    """
    told = shipped()
    if told is None:
        _load()
    _load_others()
    others = {name: of_topic(topic) for name, topic in _found.items() if name not in (told or ())}
    return dict(sorted({**(told or {}), **others}.items()))


def topic_ids() -> tuple[str, ...]:
    """Return the id of every topic, sorted."""
    return tuple(listed_topics())


def strands() -> tuple[str, ...]:
    """Return the names of the strands, sorted."""
    return tuple(sorted({topic.strand for topic in listed_topics().values()}))


def find_topic(name: str) -> Topic:
    """Return the topic called `name`, in capitals or not.

    Raises
    ------
    UnknownTopic
        If there is none; the message suggests the nearest names.
    """
    if (topic := _look_up(name) or _look_up(name.lower())) is not None:
        return topic
    if name.lower() in strands():
        raise UnknownTopic(
            f"‘{name}’ is a strand, not a topic.", matter="strand", strand=name.lower()
        )
    from itembank.items.topics.near_topics import near_topics

    hint = near_topics(name, topic_ids(), cutoff=0.4)
    listed = " or ".join(filter(None, (", ".join(hint[:-1]), hint[-1]))) if hint else ""
    advice = f" Did you mean {listed}?" if hint else ""
    raise UnknownTopic(f"There is no topic ‘{shown(name)}’.{advice}", matter="no such topic")


def find_item(address: str) -> Item:
    """Return the item at an address, ``topic/tier/index``.

    Raises
    ------
    UnknownTopic
        If the address cannot be read or names no topic.
    ItembankError
        If the topic has no such item.
    """
    topic, tier, index = _place(address)
    return topic.item(tier, index)


def topic_at(address: str) -> str:
    """Return the topic of the item at an address, without making the item.

    It raises what :func:`find_item` raises.

    >>> topic_at("ratio.share/core/12")
    'ratio.share'
    """
    topic, tier, index = _place(address)
    topic.refuse_beyond(tier, index)
    return topic.id


def _place(address: str) -> tuple[Topic, Tier, int]:
    """Return the topic, the tier and the number that an address names."""
    pieces = address.split("/")
    index = whole_number(pieces[2]) if len(pieces) == 3 else None
    if index is None:
        raise UnknownTopic(
            f"‘{shown(address)}’ is not an address. Write it as topic/tier/number: "
            "ratio.share/core/12."
        )
    topic = find_topic(pieces[0])
    if pieces[1] not in {tier.value for tier in Tier}:
        raise UnknownTopic(f"{shown(address)}: the tiers are support, core and challenge.")
    return topic, Tier(pieces[1]), index
