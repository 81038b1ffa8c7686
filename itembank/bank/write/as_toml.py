"""Writes an item, a topic's head and a bank's facts as TOML, in one fixed order and style."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable, Mapping
from typing import Any

from itembank.bank.model.fields import BankItem

FIELDS = (
    "id",
    "tier",
    "task",
    "prompt",
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
_BARE = re.compile(r"[A-Za-z0-9_-]+\Z")
_ESCAPES = {
    "\\": "\\\\",
    '"': '\\"',
    "\b": "\\b",
    "\t": "\\t",
    "\n": "\\n",
    "\f": "\\f",
    "\r": "\\r",
}
_LONG = 88


def toml_string(text: str) -> str:
    r"""Return text in quotation marks, as TOML writes it.

    >>> print(toml_string('the "long" way'))
    "the \"long\" way"
    """
    return '"' + "".join(_escaped(char) for char in text) + '"'


def _escaped(char: str) -> str:
    if char in _ESCAPES:
        return _ESCAPES[char]
    if char < " " or char == "\x7f":
        return f"\\u{ord(char):04X}"
    return char


def toml_value(value: Any) -> str:
    """Return a value as TOML; a list of lists takes a line for each.

    >>> toml_value(("a + b = 60", "a : b = 2 : 3"))
    '["a + b = 60", "a : b = 2 : 3"]'
    >>> print(toml_value([("Add", "1 + 1 = 2"), ("Look", "")]))
    [
        ["Add", "1 + 1 = 2"],
        ["Look"],
    ]
    """
    if isinstance(value, str):
        return toml_string(value)
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int):
        return str(value)
    if isinstance(value, datetime.date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{_key(k)} = {toml_value(v)}" for k, v in value.items()) + " }"
    parts = list(value)
    if parts and all(isinstance(part, list | tuple) for part in parts):
        rows = [toml_value(_without_blank(part)) for part in parts]
        return "[\n" + "".join(f"    {row},\n" for row in rows) + "]"
    row = "[" + ", ".join(toml_value(part) for part in parts) + "]"
    if len(row) > _LONG and len(parts) > 1:
        return "[\n" + "".join(f"    {toml_value(part)},\n" for part in parts) + "]"
    return row


def _without_blank(line: Iterable[Any]) -> list[Any]:
    say, *maths = line
    return [say, *(part for part in maths if part != "")]


def _key(name: str) -> str:
    return name if _BARE.match(name) else toml_string(name)


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
            rows.append(f"{name} = {toml_value(value)}\n")
    for slip in item.misconceptions:
        rows.append("\n[[items.misconceptions]]\n")
        rows.extend(f"{name} = {toml_value(text)}\n" for name, text in slip.model_dump().items())
    return "".join(rows)


def topic_toml(topic: str, title: str | None = None, prerequisites: Iterable[str] = ()) -> str:
    """Return the head of a new topic file.

    >>> print(topic_toml("ratio.share"), end="")
    topic = "ratio.share"
    """
    rows = [f"topic = {toml_string(topic)}\n"]
    if title is not None:
        rows.append(f"title = {toml_string(title)}\n")
    needed = list(prerequisites)
    if needed:
        rows.append(f"prerequisites = {toml_value(needed)}\n")
    return "".join(rows)


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
    rows = [f"name = {toml_string(name)}\n", f"title = {toml_string(title)}\n"]
    if licence is not None:
        rows.append(f"licence = {toml_string(licence)}\n")
    if licensor is not None:
        rows.append(f"licensor = {toml_string(licensor)}\n")
    rows.append("\n[authors]\n")
    rows.extend(f"{_key(code)} = {toml_string(role)}\n" for code, role in (authors or {}).items())
    return "".join(rows)
