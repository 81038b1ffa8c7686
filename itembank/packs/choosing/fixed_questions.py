"""Questions that a starter must ask, found by their addresses in the sources of its topics."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.data.source import Source, TopicSources, size, sources
from itembank.packs.sources.bank_source import BankSource
from itembank.packs.sources.within_year import WithinYear
from itembank.text.whole_number import whole_number


def held_items(
    topics: Sequence[TopicSources], addresses: Sequence[str], pool: Pool
) -> list[Candidate]:
    """Return the questions at some addresses, in order, taken from the sources of the topics.

    Raises:
        ItembankError: an address is given twice, is on none of the topics, or names nothing
            that these sources hold.

    >>> from itembank.items.topics.registry import find_topic
    >>> [kept.item.tier.value for kept in held_items(
    ...     [find_topic("ratio.share")], ["ratio.share/core/12"], Pool())]
    ['core']
    """
    found = []
    for place, address in enumerate(addresses):
        if address in addresses[:place]:
            raise ItembankError(f"{address} is to be asked twice. Name it once.")
        candidate = find_held(topics, address, pool)
        if candidate is None:
            raise ItembankError(
                f"{address} cannot be asked: no topic of this starter has such a question, or it "
                "may not be used.",
                matter="question not to be asked",
            )
        found.append(candidate)
    return found


def bar_items(topics: Sequence[TopicSources], addresses: Iterable[str], pool: Pool) -> None:
    """Keep the questions at some addresses, and their twins, out of a pack."""
    for address in addresses:
        candidate = _at(topics, address, pool)
        if candidate is not None:
            pool.take(candidate)


def find_held(topics: Sequence[TopicSources], address: str, pool: Pool) -> Candidate | None:
    """Return the question at an address, or None where no topic's sources offer it."""
    found = _at(topics, address, pool)
    return None if found is None or pool.refuses(found) else found


def _at(topics: Sequence[TopicSources], address: str, pool: Pool) -> Candidate | None:
    """Return the question at an address, if it can be read, whether or not it may be used."""
    found = next(filter(None, (_find(topic, address, pool) for topic in topics)), None)
    return None if found is None or not found.can_be_looked_at else found


def _find(topic: TopicSources, address: str, pool: Pool) -> Candidate | None:
    for source in sources(topic):
        # A bank also holds generated questions, which it names by their addresses.
        if isinstance(source, BankSource):
            found = _in_bank(source, address, pool)
        else:
            found = _by_number(source, address, pool)
        if found is not None:
            return found
    return None


def _by_number(source: Source, address: str, pool: Pool) -> Candidate | None:
    """Return a generated question by its address."""
    name, tier, index = ([*address.split("/"), "", ""])[:3]
    # Whatever is written there is looked at first: a tier or a number may be anything.
    known = name == source.id and tier in {level.value for level in Tier}
    number = whole_number(index) if known else None
    if isinstance(source, WithinYear) and number is not None:
        number = source.place(Tier(tier), number)
    if number is None or number >= size(source, Tier(tier)):
        return None
    return pool.at(source, Tier(tier), number)


def _in_bank(source: BankSource, address: str, pool: Pool) -> Candidate | None:
    """Return a bank's question by its address."""
    place = source.place(address)
    return None if place is None else pool.at(source, *place)
