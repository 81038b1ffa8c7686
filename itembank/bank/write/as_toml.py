"""Writes an item, a topic's head and a bank's facts as TOML, in one fixed order and style."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from itembank.bank.model.fields import BankItem
from itembank.files.toml_write import toml_pairs, toml_value

FIELDS = (
    "id",
    "tier",
    "task",
    "prompt",
    "figure",
    "key",
    "form",
    "marks",
    "model",
    "find",
    "constants",
    "not_needed",
    "options",
    "choose",
    "accept",
    "working",
    "from_year",
    "author",
    "licence",
    "source",
    "created",
    "retired",
    "retired_because",
)
"""The order in which an item's fields are written; misconceptions come last."""


def field_toml(value: Any) -> str:
    """Return the value of an item's field as TOML; a line of working may be words alone.

    >>> print(field_toml([("Add", "1 + 1 = 2"), ("Look", "")]))
    [
        ["Add", "1 + 1 = 2"],
        ["Look"],
    ]
    """
    if isinstance(value, list | tuple):
        value = [_without_blank(part) if isinstance(part, list | tuple) else part for part in value]
    return toml_value(value)


def _without_blank(line: Sequence[Any]) -> list[Any]:
    say, *maths = line
    return [say, *(part for part in maths if part != "")]


def item_toml(item: BankItem) -> str:
    """Return an item as a block of a topic file; what is left at its default is not written.

    >>> item = BankItem(id="bus-1", tier="core", prompt="Work out {3 × 4}.", key="12")
    >>> print(item_toml(item), end="")
    [[items]]
    id = "bus-1"
    tier = "core"
    prompt = "Work out {3 × 4}."
    key = "12"
    """
    rows = ["[[items]]\n"]
    for name in FIELDS:
        value = getattr(item, name)
        if value != BankItem.model_fields[name].get_default() and value is not None:
            rows.append(f"{name} = {field_toml(value)}\n")
    for slip in item.misconceptions:
        rows.append("\n[[items.misconceptions]]\n")
        rows.extend(f"{row}\n" for row in toml_pairs(slip.model_dump()))
    return "".join(rows)


def topic_toml(topic: str, title: str | None = None, prerequisites: Iterable[str] = ()) -> str:
    """Return the head of a new topic file.

    >>> print(topic_toml("ratio.share"), end="")
    topic = "ratio.share"
    """
    stated = {"topic": topic, "title": title, "prerequisites": list(prerequisites) or None}
    return _head(stated)


def _head(stated: Mapping[str, Any]) -> str:
    given = {name: value for name, value in stated.items() if value is not None}
    return "".join(f"{row}\n" for row in toml_pairs(given))


def bank_toml(
    name: str,
    title: str,
    licence: str | None = None,
    authors: Mapping[str, str] | None = None,
    licensor: str | None = None,
) -> str:
    """Return the facts of a bank, as ``bank.toml`` holds them.

    >>> print(bank_toml("larkhythe", "Our own", authors={"HT": "head of mathematics"}), end="")
    name = "larkhythe"
    title = "Our own"
    <BLANKLINE>
    [authors]
    HT = "head of mathematics"
    """
    stated = {"name": name, "title": title, "licence": licence, "licensor": licensor}
    return f"{_head(stated)}\n[authors]\n{_head(authors or {})}"
