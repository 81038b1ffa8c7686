"""Asking for a letter that is printed on a figure: an angle x, a length y."""

from __future__ import annotations

import re

from itembank.figures.figure import Asked, Figure, FigureError, Wording, printed_on
from itembank.notation import tree as t


def letter_asked(figure: Figure, found: re.Match[str]) -> Asked:
    """Return the question for the letter that a wording names, which is printed on the figure."""
    name = found["name"]
    shown = {s for node in printed_on(figure) for s in t.symbols(node)}
    for letter in (name, name.lower()):
        if letter in shown:
            return Asked(t.Sym(letter))
    raise FigureError(f"no {name} is printed on it")


FIND = r"(?:work out|find|calculate|what is|write down)"
LETTER = Wording(
    rf"(?:{FIND} (?:the (?:value|size) of )?(?:the )?(?:angle |side |length )?|solve for )"
    r"\{?(?P<name>[a-z])\}?",
    letter_asked,
)
"""How a letter that is printed on a figure is asked for; capital letters name corners."""
