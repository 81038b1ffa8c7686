"""Asking for a letter that is printed on a figure: an angle x, a length y."""

from __future__ import annotations

import re
from typing import Any

from itembank.figures.figure import Asked, Figure, FigureError, Wording, kind_of, printed_on
from itembank.notation import tree as t


def letter_asked(figure: Figure, found: re.Match[str]) -> Asked:
    """Return the question for the letter that a wording names, which is printed on the figure."""
    name = found["name"]
    noun = (found.groupdict().get("noun") or "").casefold().strip()
    if noun and {"side": "length"}.get(noun, noun) not in _sorts(figure, name):
        raise FigureError(f"no {noun} of it is called {name}")
    shown = {s for node in printed_on(figure) for s in t.symbols(node)}
    for letter in (name, name.lower()):
        if letter in shown:
            return Asked(t.Sym(letter))
    raise FigureError(f"no {name} is printed on it")


def _sorts(figure: Any, name: str) -> set[str]:
    """Return whether a letter stands on an angle, on a length, or on both."""
    if kind_of(figure).name == "angles":
        labels = [("angle", label) for _, label in getattr(figure, "labels", ())]
        return {sort for sort, label in labels if _is_called(label, name)}
    given = getattr(figure, "given", ())
    angles = [*getattr(figure, "angles", ()), *(at for at in given if at[0].startswith("angle "))]
    lengths = [*getattr(figure, "sides", ()), *(at for at in given if at[0][:6] != "angle ")]
    height: Any = getattr(figure, "height", None)
    labels = [("length", label) for _, label in lengths] + [("angle", label) for _, label in angles]
    if getattr(height, "label", None) is not None:
        labels.append(("length", height.label))
    return {sort for sort, label in labels if _is_called(label, name)}


def _is_called(label: t.Node, name: str) -> bool:
    """Tell whether a label is a letter, with its unit or without: 3x is not called x."""
    bare = label.amount if isinstance(label, t.Quantity) else label
    return bare in (t.Sym(name), t.Sym(name.lower()))


FIND = r"(?:work out|find|calculate|what is|write down)"
LETTER = Wording(
    rf"(?:{FIND} (?:the (?:value|size) of )?(?:the )?(?P<noun>angle |side |length )?|solve for )"
    r"\{?(?P<name>[a-z])\}?",
    letter_asked,
)
"""How a letter that is printed on a figure is asked for; capital letters name corners."""
