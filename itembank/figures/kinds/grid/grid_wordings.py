"""The ways to ask about points and lines of a coordinate grid."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    Reading,
    Said,
    Wording,
    asks_reading,
    read,
)
from itembank.notation import tree as t
from itembank.notation.value import exact

THE = r"(?:what (?:is|are)|write down|write|find|work out|give)"
_LINE = r"(?:the |this )?(?:straight )?line(?: (?P<name>[a-z]))?"
_Y = r"\{?y\}?"
_AB = r"(?:the )?(?:line |line segment |segment )?(?P<a>[a-z])(?P<b>[a-z])"
_LINES = r"(?:the )?(?:straight )?lines (?P<a>[a-z]) and (?P<b>[a-z])"
_EQUATION = r"\{(?P<equation>[^{}]*=[^{}]*)\}"
_LINE_OF = rf"(?:straight )?line (?:with (?:the )?equation )?{_EQUATION}"
_AT = r"\{(?P<at>\([^{}]*\))\}"


def _of_name(what: str) -> Said:
    def asks(figure: Figure, found: re.Match[str]) -> Asked:
        return Asked(t.Sym("r"), (("r", Reading(what, (found["name"] or "",))),))

    return asks


def _fourth(figure: Figure, found: re.Match[str]) -> Asked:
    """Return the corner that three others and the name of a shape settle."""
    corners, wanted = found["corners"].upper(), found["wanted"].upper()
    if len({*corners}) != 4 or wanted not in corners:
        raise FigureError(f"{corners} names no shape with a corner {wanted}")
    place = corners.index(wanted) + 1
    others = tuple(corners[place:] + corners[: place - 1])
    (a, b), (c, d), (e, f) = [_spot(figure, name) for name in others]
    first, second = (c - a, d - b), (e - c, f - d)
    shape = found["shape"].casefold()
    if shape != "parallelogram" and first[0] * second[0] + first[1] * second[1]:
        raise FigureError(f"its points are no corners of a {shape}")
    if shape == "square" and first[0] ** 2 + first[1] ** 2 != second[0] ** 2 + second[1] ** 2:
        raise FigureError("its points are no corners of a square")
    return Asked(t.Sym("r"), (("r", Reading("fourth corner", others)),))


def _spot(figure: Figure, name: str) -> tuple[Fraction, Fraction]:
    x, y = t.children(read(figure, Reading("coordinates", (name,))))
    return exact(x), exact(y)


def _x_where(figure: Figure, found: re.Match[str]) -> Asked:
    """Return the x at which a line has a height: the line that is named is the one to be solved."""
    equation, drawn = found["equation"], found["drawn"]
    if drawn is not None and drawn != f"y = {equation.partition(' = ')[0]}":
        raise FigureError(f"{equation} is not about the line {drawn}")
    return asks_reading("x where", "equation")(figure, found)


GRID_WORDINGS = (
    Wording(
        rf"{THE} the coordinates of (?:the )?(?:point )?(?P<a>[a-z])",
        asks_reading("coordinates", "a"),
    ),
    Wording(
        rf"{THE} the \{{?x\}}?-coordinate of (?:the )?(?:point )?(?P<a>[a-z])",
        asks_reading("x-coordinate", "a"),
    ),
    Wording(
        rf"{THE} the {_Y}-coordinate of (?:the )?(?:point )?(?P<a>[a-z])",
        asks_reading("y-coordinate", "a"),
    ),
    Wording(
        r"(?:which (?:letter|point) (?:is at|has (?:the )?coordinates)|what letter is at) "
        r"\{(?P<at>[^}]*)\}",
        asks_reading("letter", "at"),
    ),
    Wording(
        rf"{THE} (?:the coordinates of )?the (?:midpoint|mid-point) of {_AB}",
        asks_reading("midpoint", "a", "b"),
    ),
    Wording(
        rf"(?:how long is|{THE} the length of) {_AB}(?:, in units| in units)?",
        asks_reading("length", "a", "b"),
    ),
    Wording(
        rf"{THE} the coordinates of (?:the )?(?:point )?(?P<wanted>[a-z]),? (?:so|such) that "
        r"(?P<corners>[a-z]{4}) is a (?P<shape>parallelogram|rectangle|square)",
        _fourth,
    ),
    Wording(rf"{THE} the (?:gradient|slope) of {_LINE}", _of_name("gradient")),
    Wording(
        rf"{THE} the (?:gradient|slope) of {_AB}",
        asks_reading("gradient between", "a", "b"),
    ),
    Wording(rf"{THE} the {_Y}-intercept of {_LINE}", _of_name("y-intercept")),
    Wording(
        rf"(?:at what|at which|for which) value of {_Y} does {_LINE} cross the {_Y}-axis",
        _of_name("y-intercept"),
    ),
    Wording(
        rf"{THE} the equation of {_LINE}(?:,? in the form \{{?y = mx \+ c\}}?)?",
        _of_name("equation"),
    ),
    Wording(rf"which point (?:lies|is) on {_LINE}", _of_name("point on the line")),
    Wording(
        rf"which point (?:lies|is) on the {_LINE_OF}",
        asks_reading("point with equation", "equation"),
    ),
    Wording(
        rf"which line has (?:the )?equation {_EQUATION}",
        asks_reading("line with equation", "equation"),
    ),
    Wording(
        rf"which line (?:passes|goes) through (?:the point )?{_AT}",
        asks_reading("line through", "at"),
    ),
    Wording(
        rf"which line is parallel to the {_LINE_OF}",
        asks_reading("line parallel", "equation"),
    ),
    Wording(
        r"which (?:other )?line is parallel to (?:the )?(?:straight )?line (?P<name>[a-z])",
        asks_reading("line parallel", "name"),
    ),
    Wording(
        rf"{THE} the equation of the (?:straight )?line (?:through|that passes through) "
        rf"(?:the point )?{_AT} (?:that is |and is |and )?parallel to (?:the )?(?:straight )?"
        r"line (?P<name>[a-z])",
        asks_reading("parallel", "name", "at"),
    ),
    Wording(
        rf"{THE} the coordinates of the point where {_LINES} (?:cross|meet|intersect)|"
        r"(?:at which point|where) do (?:the )?(?:straight )?lines (?P<c>[a-z]) and (?P<d>[a-z]) "
        r"(?:cross|meet|intersect)",
        lambda figure, found: asks_reading("crossing", *("ab" if found["a"] else "cd"))(
            figure, found
        ),
    ),
    Wording(
        r"use the graphs? to solve (?:the simultaneous equations |the equations )?"
        rf"{_EQUATION} and \{{(?P<other>[^{{}}]*=[^{{}}]*)\}}",
        asks_reading("solution", "equation", "other"),
    ),
    Wording(
        r"use the graph (?:of (?:the line )?\{(?P<drawn>y = [^{}]*)\} )?to solve "
        rf"(?:the equation )?{_EQUATION}",
        _x_where,
    ),
)
