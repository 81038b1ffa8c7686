"""The field of a question's figure: its data as text, as a bank's file has it, and back."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from itembank.errors import ItembankError

NAME = "figure"


def written_figure(data: Mapping[str, Any]) -> str:
    r"""Return a figure's data as it is typed, a key a line; nothing for no figure.

    >>> written_figure({"kind": "number line", "first": 0, "points": {"A": 3}})
    'kind = "number line"\nfirst = 0\npoints = { A = 3 }'
    """
    from itembank.files.toml_write import toml_key, toml_value

    return "\n".join(f"{toml_key(key)} = {toml_value(value)}" for key, value in data.items())


def typed_figure(typed: str) -> dict[str, Any] | None:
    r"""Return the data of a figure that is typed, None for none.

    A line as it is copied out of a bank's file, with the name of the field, will do too.

    Raises:
        ItembankError: it is no TOML; the line is named.

    >>> typed_figure('figure = { kind = "number line", first = 0 }')
    {'kind': 'number line', 'first': 0}
    """
    from itembank.files.toml_read import read_toml

    if not typed.strip():
        return None
    read = read_toml(typed, NAME)
    if read.faults:
        fault = read.faults[0]
        where = f"Line {fault.line}: " if fault.line else ""
        raise ItembankError(f"{where}{fault.message}", field=NAME)
    data = dict(read.data or {})
    inner = data.get(NAME)
    return inner if set(data) == {NAME} and isinstance(inner, dict) else data


def place_said(typed: str, key: str) -> str:
    r"""Return in words which line of a typed figure a key stands on; nothing if it is on none.

    >>> place_said('kind = "number line"\nfirst = 0', "first")
    'Line 2: '
    """
    from itembank.files.toml_read import Locator

    found = Locator(typed)
    line = found.line((key,)) or found.line((NAME, key))
    return f"Line {line}: " if line else ""
