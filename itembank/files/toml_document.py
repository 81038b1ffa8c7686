"""A whole TOML file from data: values first, then tables, each under its header."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from itembank.files.toml_write import toml_key, toml_pairs


def toml_document(data: Mapping[str, Any]) -> str:
    r"""Return TOML text that says `data`; lists of tables are written under headers.

    Raises:
        TypeError: TOML has no such value.

    >>> print(toml_document({"school": "Larkhythe", "classes": [{"name": "8K"}]}), end="")
    school = "Larkhythe"
    <BLANKLINE>
    [[classes]]
    name = "8K"
    """
    return "\n\n".join(_parts(data, ())) + "\n"


def toml_block(name: str, value: Any) -> str:
    """Return one table, or one table of a list of them where `value` is a list of one."""
    return toml_document({name: value})


def is_tables(value: Any) -> bool:
    """Whether a value is a list of tables, which has a header for each."""
    return (
        isinstance(value, list) and bool(value) and all(isinstance(row, Mapping) for row in value)
    )


def _parts(data: Mapping[str, Any], path: tuple[str, ...]) -> list[str]:
    plain = {
        name: value
        for name, value in data.items()
        if not isinstance(value, Mapping) and not is_tables(value)
    }
    found = ["\n".join(toml_pairs(plain))] if plain else []
    for name, value in data.items():
        here = (*path, name)
        head = ".".join(map(toml_key, here))
        if is_tables(value):
            for row in value:
                first, *rest = _parts(row, here) or [""]
                if first.startswith("["):
                    first, rest = "", [first, *rest]
                found += [f"[[{head}]]\n{first}".rstrip("\n"), *rest]
        elif isinstance(value, Mapping):
            first, *rest = _parts(value, here) or [""]
            if first.startswith("["):
                found += [f"[{head}]", first, *rest]
            else:
                found += [f"[{head}]\n{first}".rstrip("\n"), *rest]
    return found
