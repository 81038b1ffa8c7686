"""Reads the words typed after an option: as they come, as a whole number, or as a path.

Typer builds a validator for each option and loads pydantic to do so, which took a fifth of the
time of a short command. Our options need no more than this.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import typer

READ_AS: dict[Any, tuple[Any, bool]] = {
    str: (str, False),
    bool: (bool, False),
    int: (int, False),
    Path: (Path, False),
    list[str]: (str, True),
    list[int]: (int, True),
    list[Path]: (Path, True),
}
"""Kinds of value: what one is read with, and whether the option may be given several times."""


class Plainly:
    """Reads one option's values, in the place of typer's reader for it.

    >>> Plainly(int, False).coerce("3", None, None)
    3
    >>> Plainly(str, True).coerce(["a", "b"], None, None)
    ['a', 'b']
    """

    def __init__(self, read: Any, several: bool) -> None:
        self.read, self.several = read, several

    def coerce(self, value: Any, param: Any, ctx: Any) -> Any:
        """Return the value of an option that was typed or left out.

        Raises:
            typer.BadParameter: a whole number is wanted, and this is none.
        """
        if value is None:
            return () if self.several else None
        try:
            return [self.read(one) for one in value] if self.several else self.read(value)
        except ValueError:
            raise typer.BadParameter(f"{value!r} is not a whole number.", ctx, param) from None


def read_plainly(params: list[Any]) -> list[Any]:
    """Let options and arguments be read without pydantic where their kind is one of ours."""
    for one in params:
        kind = READ_AS.get(getattr(getattr(one, "type_descriptor", None), "annotation", None))
        if kind is not None:
            reader = Plainly(*kind)
            setattr(one, "get_runtime_param", lambda reader=reader: reader)  # noqa: B010 - a method
    return params
