"""A picture of a question as somebody types it: lines of TOML, and the line that a fault is in."""

from __future__ import annotations

import re
from typing import Any

from itembank.bank.read.item_checks import CANNOT_BE_USED, figure_faults
from itembank.errors import ItembankError

EXAMPLE = ('kind = "number line"', "first = 0", "last = 1", "steps = 4", "points = { A = 3 }")
"""A whole picture, a line each."""


def figure_fields(typed: str) -> dict[str, Any]:
    r"""Return the keys of a picture; what they say is looked at with the rest of the question.

    Raises:
        ItembankError: it is no TOML; says in which line.

    >>> figure_fields('kind = "number line"\nfirst = 0')
    {'kind': 'number line', 'first': 0}
    """
    import tomllib

    try:
        return tomllib.loads(typed)
    except RecursionError:
        raise ItembankError("Picture: its brackets go too deep.", field="figure") from None
    except tomllib.TOMLDecodeError as error:
        said = str(error)
        at = re.search(r" \(at line (\d+), column \d+\)\Z", said)
        twice = re.search(r"\ACannot (?:overwrite|declare)", said)
        line = int(at[1]) if at else len(typed.rstrip().splitlines())
        why = (
            "says something a second time"
            if twice
            else "is no key with its value, such as first = 0"
        )
        raise ItembankError(f"Picture: line {line} {why}.", field="figure") from None


def checked_figure(typed: str) -> dict[str, Any]:
    """Return the keys of a picture that can be drawn.

    Raises:
        ItembankError: it cannot; says why, and in which line where that is known.
    """
    found = figure_fields(typed)
    for fault in figure_faults(found):
        raise ItembankError(at_line(typed, fault.field, fault.message), field="figure")
    return found


def at_line(typed: str, field: tuple[str | int, ...], message: str) -> str:
    r"""Return what is wrong with a picture, with the line and the key that it stands in.

    What the line says already, that it is the picture and which key, is not said again.

    >>> said = "The figure cannot be used: steps: it is to be a whole number, not ‘x’."
    >>> at_line('kind = "number line"\nsteps = "x"', ("figure", "steps"), said)
    'Line 2, ‘steps’: it is to be a whole number, not ‘x’.'
    >>> at_line("steps = 4", ("figure",), "The figure cannot be used: ‘first’ is missing.")
    'The figure cannot be used: ‘first’ is missing.'
    """
    key = str(field[1]) if len(field) > 1 else ""
    begins = re.compile(rf"\s*\[*\s*[\"']?{re.escape(key)}[\"']?\s*[\].=]")
    for number, line in enumerate(typed.splitlines(), start=1):
        if key and begins.match(line):
            what = message.removeprefix(CANNOT_BE_USED).removeprefix(f"{key}: ")
            return f"Line {number}, ‘{key}’: {what}"
    return message
