"""What is wrong with labels of a figure that are to be lengths."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.figures.written_as import measures, unit_of
from itembank.notation import tree as t
from itembank.notation.tree.written import shown_line
from itembank.notation.value import exact


def lengths_fault(labels: Sequence[t.Node], called: str) -> str:
    """Return what keeps labels from being lengths in one unit, all more than 0, or ``""``.

    `called` names them in the sentence. A number without a unit is a length too.

    >>> from itembank.notation.parse import parse
    >>> lengths_fault([parse("3 cm"), parse("4 cm")], "its edges")
    ''
    >>> lengths_fault([parse("3 cm"), parse("4 kg")], "its edges")
    '4 kg is no length'
    >>> lengths_fault([parse("3 cm"), parse("4 m")], "its edges")
    'its edges are to be in one unit'
    """
    try:
        values = [exact(label) for label in labels]
    except t.NotationError:
        return f"{called} are to be lengths"
    for label, value in zip(labels, values, strict=True):
        if measures(label) not in ("", "length"):
            return f"{shown_line(label)} is no length"
        if value <= 0:
            return f"{called} are to be more than 0"
    if len({unit_of(label) for label in labels}) > 1:
        return f"{called} are to be in one unit"
    return ""
