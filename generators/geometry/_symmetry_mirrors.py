"""The equation of a line of symmetry."""

from __future__ import annotations

from generators.geometry._symmetric_shapes import SLANTED, UPRIGHT
from generators.geometry._symmetry_asked import Hard, place_of
from generators.geometry._symmetry_mistakes import ALWAYS_Y_X, CHANGED_LETTER, EDGE, GRADIENT_SIGN
from generators.transformations._shapes import Spot, outline, picture, placed
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def shape_on_line(kind: int, which: int, way: int, seed: int) -> tuple[Spot, ...]:
    """Return a shape with one line of symmetry, which `way` turns over."""
    dx, dy = place_of(seed)
    if kind == Hard.STRAIGHT:
        shape = UPRIGHT[which]
        return placed(shape if way == 0 else tuple((y, x) for x, y in shape), (dx, dy))
    shape = SLANTED[which]
    return placed(shape if way == 0 else tuple((-x, y) for x, y in shape), (dx, dy))


def rest_of_line(kind: int, way: int, seed: int) -> int:
    """Return the number in the equation of a line of symmetry: x or y = it, or y = ±x + it."""
    dx, dy = place_of(seed)
    if kind == Hard.STRAIGHT:
        return (dx, dy)[way]
    return dy - dx if way == 0 else dy + dx


def mirror_line(kind: int, which: int, way: int, seed: int) -> Draft:
    """Return the question for the equation of the line of symmetry of a shape."""
    corners = shape_on_line(kind, which, way, seed)
    figure = picture((outline(corners, "P"),))
    text = ("Write down the equation of the line of symmetry of shape P.",)
    rest, x, y = rest_of_line(kind, way, seed), t.Sym("x"), t.Sym("y")
    if kind == Hard.STRAIGHT:
        own, other = (x, y) if way == 0 else (y, x)
        key = t.equals(own, t.num(rest))
        edge = min(corner[way] for corner in corners)
        wrong = slips(
            (CHANGED_LETTER, t.equals(other, t.num(rest))), (EDGE, t.equals(own, t.num(edge)))
        )
        upright = "upright" if way == 0 else "level"
        steps = (
            Step("Fold P so that its halves match: corners fall on corners or stay."),
            Step(f"The fold is {'an' if way == 0 else 'a'} {upright} line."),
            Step(f"The corners that stay have {'xy'[way]} = {rest}.".replace("-", "−"), key),
        )
    else:
        sign = way == 0

        def line(rising: bool, at: int) -> t.Relation:
            first: t.Node = x if rising else t.Neg(x)
            if not at:
                return t.equals(y, first)
            size = t.Int(abs(at))
            return t.equals(y, t.add(first, size) if at > 0 else t.sub(first, size))

        key = line(sign, rest)
        wrong = slips((GRADIENT_SIGN, line(not sign, rest)), (ALWAYS_Y_X, line(sign, 0)))
        steps = (
            Step("Fold P so that its halves match: corners fall on corners or stay."),
            Step(
                "Going along the fold, y grows by 1 when x grows by 1."
                if sign
                else "Going along the fold, y gets less by 1 when x grows by 1."
            ),
            Step(f"It crosses the y-axis at {str(rest).replace('-', '−')}.", key),
        )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "subject",
        steps,
        wrong,
        (kind, way, corners),
        figure=figure,
    )
