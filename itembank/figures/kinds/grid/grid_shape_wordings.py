"""The ways to ask about a shape on a coordinate grid by itself."""

from __future__ import annotations

import re

from itembank.figures.figure import Asked, Figure, FigureError, Reading, Wording, asks_reading
from itembank.figures.kinds.grid.names_of_shapes import OF_FOUR, SAYS_LESS
from itembank.figures.kinds.symmetry.symmetry_asked import LINES, ORDER
from itembank.notation import tree as t

_SHAPE = r"(?:the )?shape (?P<name>[a-z])"

_NAME = "|".join(sorted(SAYS_LESS, key=len, reverse=True))


def _best(figure: Figure, found: re.Match[str]) -> Asked:
    """Return which of some names is asked for: all of one sort, each once."""
    offered = tuple(re.split(", | or ", found["names"].casefold()))
    of_four = [name in OF_FOUR for name in offered]
    if len({*offered}) != len(offered) or len({*of_four}) > 1:
        raise FigureError("its names are not of one sort, or come twice")
    noun = found["noun"].casefold()
    if noun != "shape" and (noun == "quadrilateral") != of_four[0]:
        raise FigureError(f"a {noun} has no such names")
    return Asked(t.Sym("r"), (("r", Reading("best name", (found["shape"].upper(), *offered))),))


def _makes(figure: Figure, found: re.Match[str]) -> Asked:
    offered = tuple(re.split(", | and ", found["offered"].lower()))
    three = tuple(re.split(", | and ", found["three"].lower()))
    if len({*offered, *three}) != len(offered) + 3:
        raise FigureError("a point is named twice")
    wanted = Reading(
        "corner that makes", (found["made"].casefold(), *map(str.upper, (*three, *offered)))
    )
    return Asked(t.Sym("r"), (("r", wanted),))


_CONDITION = (
    r"(?:nearer to [a-z] than to [a-z]|as far from [a-z] as from [a-z]|"
    r"less than \{\d+\} units from [a-z])"
)


def _condition(text: str) -> str:
    if text.startswith("less"):
        return f"within {text.split()[2].strip('{}')} {text[-1].upper()}"
    letters = [word.upper() for word in text.split() if len(word) == 1]
    return f"{'nearer' if text.startswith('nearer') else 'as far'} {' '.join(letters)}"


def _where(figure: Figure, found: re.Match[str]) -> Asked:
    """Return which of some points meets one condition or two."""
    offered = "".join(re.split(", | and ", found["offered"].lower())).upper()
    conditions = [_condition(found[k].lower()) for k in ("first", "second") if found[k]]
    if len({*offered}) != len(offered):
        raise FigureError("a point is named twice")
    return Asked(t.Sym("r"), (("r", Reading("point where", (offered, *conditions))),))


SHAPE_WORDINGS = (
    Wording(rf"{LINES} {_SHAPE} have", asks_reading("lines of symmetry", "name")),
    Wording(rf"(?:{ORDER}) {_SHAPE}(?: have)?", asks_reading("order of rotation", "name")),
    Wording(
        r"(?:what is|write down|find|give) the equation of the line of symmetry of "
        rf"{_SHAPE}",
        asks_reading("line of symmetry", "name"),
    ),
    Wording(
        rf"which name fits (?P<noun>shape|triangle|quadrilateral) (?P<shape>[a-z]) best: "
        rf"(?P<names>(?:{_NAME})(?:, (?:{_NAME}))* or (?:{_NAME}))",
        _best,
    ),
    Wording(
        r"which of the points (?P<offered>[a-z](?:, [a-z])* and [a-z]) makes "
        rf"(?:an? )(?P<made>{'|'.join(sorted(OF_FOUR, key=len, reverse=True))}) with "
        r"(?P<three>[a-z], [a-z] and [a-z])",
        _makes,
    ),
    Wording(
        rf"which of the points (?P<offered>[a-z](?:, [a-z])* and [a-z]) is (?P<first>{_CONDITION})"
        rf"(?: and (?P<second>{_CONDITION}))?",
        _where,
    ),
)
