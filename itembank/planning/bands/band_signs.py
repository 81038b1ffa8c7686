"""The signs of bands: a name, a letter, a shape and a colour each, no two alike."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, get_args

from itembank.data_class import dataclass
from itembank.files.faults import join_words
from itembank.planning.bands.next_tasks import DEEPEN, EXTEND, PRACTISE, REBUILD, SECURE, NextTask

ShapeName = Literal[
    "house",
    "ring",
    "arch",
    "book",
    "leaf",
    "triangle",
    "circle",
    "square",
    "diamond",
    "pentagon",
]
SHAPES: tuple[ShapeName, ...] = get_args(ShapeName)
OWN_SHAPES: tuple[ShapeName, ...] = ("house", "ring", "arch", "book", "leaf")
NOT_TOGETHER = frozenset({"triangle", "diamond", "circle", "square"})
"""Shapes that are not one set of signs: these four together are in use elsewhere."""
ALIKE = frozenset({"ring", "circle"})
"""Shapes that cannot be told apart when they are small."""


@dataclass(frozen=True, slots=True)
class Sign:
    """How a band is shown, and what it leads to: everything but its scores."""

    name: str
    letter: str
    shape: ShapeName
    colour: str
    colour_name: str
    task: NextTask


# Colours: M. Okabe and K. Ito, "Color Universal Design", 2008, a palette whose
# colours stay apart for people with the common kinds of colour blindness (from memory). Only
# its five that stand out from white by 3 : 1 are used. Their order means nothing: the usual
# three hold neither red nor green, and no set runs from a red to a green, as a verdict would.
_REBUILD = Sign("Rebuild", "R", "house", "#0072B2", "blue", REBUILD)
_PRACTISE = Sign("Practise", "P", "book", "#009E73", "green", PRACTISE)
_SECURE = Sign("Secure", "S", "ring", "#CC79A7", "pink", SECURE)
_EXTEND = Sign("Extend", "E", "arch", "#000000", "black", EXTEND)
_DEEPEN = Sign("Deepen", "D", "leaf", "#D55E00", "vermilion", DEEPEN)

DEFAULT_SIGNS: dict[int, tuple[Sign, ...]] = {
    2: (_REBUILD, _SECURE),
    3: (_REBUILD, _SECURE, _EXTEND),
    4: (_REBUILD, _PRACTISE, _SECURE, _EXTEND),
    5: (_REBUILD, _PRACTISE, _SECURE, _EXTEND, _DEEPEN),
}


def signs_fault(signs: Sequence[Sign]) -> str:
    """Return why signs could not be told apart, and what to do; empty where they can.

    >>> signs_fault(DEFAULT_SIGNS[3])
    ''
    """
    for what in ("name", "letter", "shape", "colour"):
        shown = [str(getattr(sign, what)).casefold() for sign in signs]
        for index, value in enumerate(shown):
            if value in shown[:index]:
                return (
                    f"Two bands have the {what} {getattr(signs[index], what)}. "
                    f"Give each band a {what} of its own."
                )
    shapes = {sign.shape for sign in signs}
    if shapes >= NOT_TOGETHER:
        return (
            "A triangle, a diamond, a circle and a square cannot all be signs of one class. "
            f"Take another shape for one of them: {join_words(OWN_SHAPES, 'or')}."
        )
    if shapes >= ALIKE:
        others = [shape for shape in OWN_SHAPES if shape not in ALIKE]
        return (
            "A ring and a circle look alike from the back of a room. Take another shape for "
            f"one of them: {join_words(others, 'or')}."
        )
    return ""
