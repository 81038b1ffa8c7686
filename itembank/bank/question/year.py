"""The first year group that a question of a bank suits."""

from __future__ import annotations

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import as_item
from itembank.bank.question.asking import NeedsPerson
from itembank.items.item import Item, Tier
from itembank.items.measures.later_content import later_content
from itembank.items.measures.years import FIRST_YEAR_KS3
from itembank.items.topics.registry import find_topic


def first_year(item: Item, entry: Entry | None = None) -> int:
    """Return the first year group that a question suits.

    What its author states (``from_year``) counts; else what its mathematics tells. A question
    without an `entry` was made by a generator, whose topic declares its year.
    """
    if entry is None:
        name, tier, number = item.address.split("/")
        topic = find_topic(name)
        return topic.from_year(Tier(tier), *topic.spaces[Tier(tier)][int(number)])
    return year_of(item, entry.item)


def year_of(item: Item, written: BankItem) -> int:
    """Return the first year group of a question that a person wrote."""
    if written.from_year is not None:
        return written.from_year
    found = later_content(item)
    return FIRST_YEAR_KS3 if found is None else found.from_year


def entry_year(entry: Entry) -> int:
    """Return the first year group of an entry, whether or not its key can be proved."""
    if entry.item.from_year is not None:
        return entry.item.from_year
    try:
        return first_year(as_item(entry), entry)
    except NeedsPerson:
        return FIRST_YEAR_KS3
