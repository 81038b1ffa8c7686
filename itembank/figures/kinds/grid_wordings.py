"""The ways to ask about a coordinate grid."""

from __future__ import annotations

import re

from itembank.figures.figure import Asked, Figure, Reading, Said, Wording, asks_reading
from itembank.notation import tree as t

_THE = r"(?:what (?:is|are)|write down|find|work out|give)"
_LINE = r"(?:the |this )?(?:straight )?line(?: (?P<name>[a-z]))?"
_Y = r"\{?y\}?"
_AB = r"(?:the )?(?:line |line segment |segment )?(?P<a>[a-z])(?P<b>[a-z])"


def _of_name(what: str) -> Said:
    def asks(figure: Figure, found: re.Match[str]) -> Asked:
        return Asked(t.Sym("r"), (("r", Reading(what, (found["name"] or "",))),))

    return asks


GRID_WORDINGS = (
    Wording(
        rf"{_THE} the coordinates of (?:the )?(?:point )?(?P<a>[a-z])",
        asks_reading("coordinates", "a"),
    ),
    Wording(
        rf"{_THE} the \{{?x\}}?-coordinate of (?:the )?(?:point )?(?P<a>[a-z])",
        asks_reading("x-coordinate", "a"),
    ),
    Wording(
        rf"{_THE} the {_Y}-coordinate of (?:the )?(?:point )?(?P<a>[a-z])",
        asks_reading("y-coordinate", "a"),
    ),
    Wording(
        r"(?:which (?:letter|point) (?:is at|has (?:the )?coordinates)|what letter is at) "
        r"\{(?P<at>[^}]*)\}",
        asks_reading("letter", "at"),
    ),
    Wording(
        rf"{_THE} (?:the coordinates of )?the (?:midpoint|mid-point) of {_AB}",
        asks_reading("midpoint", "a", "b"),
    ),
    Wording(
        rf"(?:how long is|{_THE} the length of) {_AB}(?:, in units| in units)?",
        asks_reading("length", "a", "b"),
    ),
    Wording(rf"{_THE} the (?:gradient|slope) of {_LINE}", _of_name("gradient")),
    Wording(rf"{_THE} the {_Y}-intercept of {_LINE}", _of_name("y-intercept")),
    Wording(
        rf"(?:at what|at which|for which) value of {_Y} does {_LINE} cross the {_Y}-axis",
        _of_name("y-intercept"),
    ),
    Wording(rf"which point (?:lies|is) on {_LINE}", _of_name("point on the line")),
)
