"""How questions about a construction are asked."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from itembank.figures.figure import Asked, FigureError, Reading, Said, Wording
from itembank.figures.kinds.construction.construction_facts import LETTERS
from itembank.figures.kinds.unknown_asked import FIND, LETTER
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.construction.construction import Construction


def _asks(reading: Reading) -> Asked:
    return Asked(t.Sym("r"), (("r", reading),))


def _part(name: str) -> Said:
    def asks(figure: Any, found: re.Match[str]) -> Asked:
        return _asks(Reading(name, (found["of"].upper(),)))

    return asks


def _which(figure: Construction, found: re.Match[str]) -> Asked:
    offered = tuple(re.split(r", | or ", found["names"].casefold()))
    if strange := [name for name in offered if name not in LETTERS]:
        # Another name may fit as well: a perpendicular bisector is a line of symmetry too.
        raise FigureError(f"‘{strange[0]}’ is none of the constructions that are told apart")
    if figure.shape not in offered or len({*offered}) != len(offered):
        raise FigureError("one of the names is to be that of the construction")
    return _asks(Reading("construction", offered))


def _every_point(figure: Construction, found: re.Match[str]) -> Asked:
    """Return what is asked of all points of the line that is drawn, which is named by two."""
    line, letters = found["line"].upper(), figure.letters
    drawn = letters[2:4] if figure.shape == "perpendicular bisector" else letters[1] + letters[3:4]
    if line not in (drawn, drawn[::-1]):
        raise FigureError(f"{line} is not the line that is drawn")
    of = found["of"].upper()
    if (len(of) == 1) != (found["what"].casefold() == "point"):
        raise FigureError("it asks for something else than it names")
    return _asks(Reading("as far", (of,)))


def _shortest(figure: Construction, found: re.Match[str]) -> Asked:
    letters, line = figure.letters, found["line"].upper()
    ends = letters[:2]
    if found["point"].upper() != letters[2:3] or line not in (ends, ends[::-1]):
        raise FigureError("it names another point, or another line")
    offered = tuple(re.split(r", | OR ", found["names"].upper()))
    if len({*offered}) != len(offered):
        raise FigureError("a length is offered twice")
    return _asks(Reading("shortest", offered))


_NAMES = "|".join(sorted(LETTERS, key=len, reverse=True))

WORDINGS = (
    LETTER,
    Wording(rf"{FIND} the length of (?P<of>[a-z]{{2}})", _part("length")),
    Wording(rf"{FIND} (?:the size of )?angle (?P<of>[a-z]{{3}})", _part("angle")),
    Wording(
        rf"which construction is shown: (?P<names>(?:{_NAMES})(?:, (?:{_NAMES}))* or (?:{_NAMES}))",
        _which,
    ),
    Wording(
        r"every point (?:of|on) (?:the )?line (?P<line>[a-z]{2}) is as far from (?:line )?"
        r"(?P<of>[a-z]{1,2}) as from which (?P<what>point|line)",
        _every_point,
    ),
    Wording(
        r"which (?:length )?is the shortest distance from (?:point )?(?P<point>[a-z]) to (?:the )?"
        r"line (?P<line>[a-z]{2}): (?P<names>[a-z]{2}(?:, [a-z]{2})* or [a-z]{2})",
        _shortest,
    ),
)
