"""Edits the text of a topic file: only the lines of the item that is meant are touched.

An item's *block* runs from its ``[[items]]`` to its last line; blank lines and comments that
stand before the next block belong to that one. Within the block tomlkit keeps the comments,
the order and the spaces of every field that does not change.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from typing import Any

from itembank.bank.model.fields import BankItem
from itembank.bank.write.as_toml import FIELDS, field_toml, item_toml
from itembank.errors import ItembankError
from itembank.files.toml_read import Locator


def with_item(text: str, item: BankItem) -> str:
    """Return a file's text with an item added at its end."""
    return with_block(text, item_toml(item))


def with_block(text: str, block: str) -> str:
    """Return a file's text with a block added at its end, after an empty line."""
    if text and not text.endswith("\n"):
        text += "\n"
    gap = "" if not text or text.endswith("\n\n") else "\n"
    return f"{text}{gap}{block}" if block.endswith("\n") else f"{text}{gap}{block}\n"


def block_of(text: str, id: str) -> str:
    """Return the lines of an item's block.

    Raises:
        ItembankError: there is no such item, or it is not written under its own ``[[items]]``.
    """
    start, end = _span(text, id)
    return _lines(text, start, end)


def without_item(text: str, id: str) -> str:
    """Return a file's text without an item's block and the empty lines after it.

    Raises: as :func:`block_of`.
    """
    start, end = _span(text, id)
    lines = text.split("\n")
    while end < len(lines) and not lines[end].strip() and start:
        end += 1
    rest = lines[:start] + lines[end:]
    if end == len(lines):  # it was the last block: the empty lines before it go instead
        while rest and not rest[-1].strip():
            rest.pop()
        rest.append("")
    return "\n".join(rest)


def with_fields(text: str, id: str, fields: Mapping[str, Any]) -> str:
    r"""Return a file's text with fields of one item changed, added, or (None) taken out.

    Raises: as :func:`block_of`.

    >>> text = '[[items]]\nid = "a-1"  # first\nkey = "11/12" # in twelfths\n'
    >>> print(with_fields(text, "a-1", {"key": "10/12", "marks": 2}), end="")
    [[items]]
    id = "a-1"  # first
    key = "10/12" # in twelfths
    marks = 2
    """
    start, end = _span(text, id)
    block = _lines(text, start, end)
    for name, value in fields.items():
        if value is None or value in ((), [], {}):
            block = _without_field(block, name)
        elif name == "misconceptions":
            block = _with_misconceptions(block, value)
        else:
            block = _with_field(block, name, value)
    lines = text.split("\n")
    return "\n".join(lines[:start] + block.rstrip("\n").split("\n") + lines[end:])


def _without_field(block: str, name: str) -> str:
    import tomlkit

    document: Any = tomlkit.parse(block)
    if name in document["items"][0]:
        document["items"][0].remove(name)
    return tomlkit.dumps(document)


def _with_field(block: str, name: str, value: Any) -> str:
    import tomlkit

    document: Any = tomlkit.parse(block)
    item = document["items"][0]
    if name in item:
        item[name] = tomlkit.parse(f"x = {field_toml(value)}\n")["x"]
        return tomlkit.dumps(document)
    # A new field goes after the last one that comes before it in the order of writing.
    lines = block.split("\n")
    locator = Locator(block)
    places = [locator.line(("items", 0, field)) for field in FIELDS[: _rank(name)] if field in item]
    after = max(_value_end(lines, place) for place in places) if places else 1
    return "\n".join([*lines[:after], f"{name} = {field_toml(value)}", *lines[after:]])


def _rank(name: str) -> int:
    return FIELDS.index(name) if name in FIELDS else len(FIELDS)


def _value_end(lines: list[str], start: int) -> int:
    """Return the last line of the value that begins on line `start` (counted from 1)."""
    for end in range(start, len(lines) + 1):
        try:
            tomllib.loads("\n".join(lines[start - 1 : end]))
        except tomllib.TOMLDecodeError:
            continue
        return end
    return start


def _with_misconceptions(block: str, value: Any) -> str:
    import tomlkit

    document: Any = tomlkit.parse(block)
    old = document["items"][0].get("misconceptions", [])
    if len(old) == len(value):  # each in its place, so that its comments stay
        for there, new in zip(old, value, strict=True):
            for name, text in new.items():
                if there.get(name) != text:
                    there[name] = text
        return tomlkit.dumps(document)
    block = _without_field(block, "misconceptions").rstrip("\n") + "\n"
    for slip in value:
        rows = "".join(f"{name} = {field_toml(text)}\n" for name, text in slip.items())
        block += f"\n[[items.misconceptions]]\n{rows}"
    return block


def _lines(text: str, start: int, end: int) -> str:
    return "\n".join(text.split("\n")[start:end]) + "\n"


def _span(text: str, id: str) -> tuple[int, int]:
    """Return the slice of an item's lines."""
    data = tomllib.loads(text)
    items = data.get("items", [])
    index = next((at for at, item in enumerate(items) if item.get("id") == id), None)
    if index is None:
        raise ItembankError(f"There is no item ‘{id}’ in this file.")
    locator = Locator(text)
    start = locator.line(("items", index))
    lines = text.split("\n")
    end = next((line for line in locator.starts if line > start), len(lines) + 1) - 1
    while end > start and (not lines[end - 1].strip() or lines[end - 1].lstrip()[:1] == "#"):
        end -= 1
    block = "\n".join(lines[start - 1 : end])
    try:
        alone = block.lstrip()[:2] == "[[" and tomllib.loads(block) == {"items": [items[index]]}
    except tomllib.TOMLDecodeError:
        alone = False
    if not alone:
        raise ItembankError(
            f"The item ‘{id}’ is not written in one place under [[items]]: change it by hand."
        )
    return start - 1, end
