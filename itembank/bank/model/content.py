"""What an item says, as plain data with a hash: what a sign-off is tied to."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from itembank.bank.model.bank import Entry
    from itembank.bank.model.fields import BankItem

_HISTORY = frozenset({"retired", "retired_because"})
# An item without a licence has its bank's, so that a merge may have to write it out: that says
# nothing new, and a reviewer checks a key, not a licence.
_UNSIGNED = ("id", "created", "licence", *sorted(_HISTORY))


def printed(item: BankItem) -> dict[str, Any]:
    """Return everything that prints of an item or decides what does, but its topic.

    That is every field but the id, the date of creation, the licence and retirement. Fields
    left at their default are there too, so that two versions can be compared key by key.

    >>> from itembank.bank.model.fields import BankItem
    >>> item = BankItem(id="bus-1", tier="core", prompt="Work out {3 × 4}.", key="12")
    >>> printed(item)["key"], printed(item)["marks"]
    ('12', 1)
    """
    data = item.model_dump(mode="json")
    for key in _UNSIGNED:
        data.pop(key)
    # Without marks an item once was worth one, and what was signed then stands: how the tool
    # counts lines of working is not what a reviewer checked.
    data["marks"] = item.marks or 1
    return data


def content_hash(entry: Entry) -> str:
    """Return the SHA-256 of everything that prints of an entry, its topic among it."""
    return content_hash_of(entry.item, entry.topic)


def content_hash_of(item: BankItem, topic: str) -> str:
    """Return the SHA-256 of what :func:`printed` gives, with the topic.

    >>> from itembank.bank.model.fields import BankItem
    >>> item = BankItem(id="bus-1", tier="core", prompt="Work out {3 × 4}.", key="12")
    >>> other = item.model_copy(update={"id": "bus-2"})
    >>> content_hash_of(item, "a.b") == content_hash_of(other, "a.b")
    True
    >>> content_hash_of(item, "a.b") == content_hash_of(item, "a.c")
    False
    """
    return data_hash(printed_on(item, topic))


def printed_on(item: BankItem, topic: str) -> dict[str, Any]:
    """Return what prints with its topic, without what is empty: what a sign-off remembers.

    >>> from itembank.bank.model.fields import BankItem
    >>> item = BankItem(id="bus-1", tier="core", prompt="Work out {3 × 4}.", key="12")
    >>> printed_on(item, "a.b")
    {'topic': 'a.b', 'tier': 'core', 'prompt': 'Work out {3 × 4}.', 'key': '12', 'marks': 1}
    """
    return {"topic": topic, **{k: v for k, v in printed(item).items() if v not in (None, [], {})}}


def record_hash_of(item: BankItem, topic: str) -> str:
    """Return the SHA-256 of all of an item but its retirement; its base id stands for its id.

    >>> from itembank.bank.model.fields import BankItem
    >>> item = BankItem(id="bus-1", tier="core", prompt="Work out {3 × 4}.", key="12")
    >>> kept = item.model_copy(update={"id": "bus-1.3f2a"})
    >>> record_hash_of(item, "a.b") == record_hash_of(kept, "a.b")
    True
    """
    data = item.model_dump(mode="json")
    for key in _HISTORY:
        data.pop(key)
    data["marks"] = item.marks or 1
    return data_hash({**data, "id": item.base, "topic": topic})


def data_hash(data: Mapping[str, Any]) -> str:
    """Return the SHA-256 of plain data, in which keys have no order and empty ones do not count.

    >>> data_hash({"key": "12", "marks": 1}) == data_hash({"marks": 1, "key": "12", "form": None})
    True
    """
    # What an item leaves out does not count, so that a field that a later version of the tool
    # knows of does not make every sign-off stale.
    data = {key: value for key, value in data.items() if value not in (None, [], {})}
    canonical = json.dumps(data, sort_keys=True, ensure_ascii=False, separators=(",", ":"))
    return hashlib.sha256(canonical.encode("utf-8")).hexdigest()
