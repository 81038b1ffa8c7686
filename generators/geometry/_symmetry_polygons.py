"""The symmetry of polygons, regular and shaded, and of shapes on a grid."""

from __future__ import annotations

from generators._scatter import scattered
from generators.geometry._symmetric_shapes import SHAPES
from generators.geometry._symmetry_asked import LINES_ASKED, ORDER_ASKED, Core, place_of
from generators.geometry._symmetry_mistakes import (
    CORNERS_ALONE,
    DIAGONALS,
    FULL_TURN_LEFT_OUT,
    HALF_TURNS_ALONE,
    LINES_FOR_ORDER,
    ORDER_FOR_LINES,
    SIDES,
    TWICE,
    UPRIGHT_ALONE,
)
from generators.transformations._shapes import Spot, outline, picture, placed
from itembank.figures.kinds.symmetry.cut_polygon import NAMES, CutPolygon
from itembank.figures.kinds.symmetry.symmetry_found import Symmetry, of_turn
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Run, Step
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted


def cut_triangles(sides: int, seed: int) -> tuple[int, ...]:
    """Return triangles of a polygon that repeat round it, as far as its sides allow."""
    steps = [k for k in range(2, sides + 1) if sides % k == 0]
    step = steps[seed % len(steps)]
    row = scattered(seed, step, 0, 1)
    return tuple(k for k in range(sides) if row[k % step])


def turns_of(sides: int, seed: int) -> Symmetry:
    """Return the symmetry of a regular polygon some of whose triangles are shaded."""
    dark = cut_triangles(sides, seed)
    return of_turn([k in dark for k in range(sides)])


def regular_polygon(sides: int) -> Draft:
    """Return the question how many lines of symmetry a regular polygon has."""
    figure = CutPolygon(sides)
    text = (f"How many lines of symmetry does the {NAMES[sides]} have?",)
    told = (
        "Half of them go through two corners, half through the middles of two sides."
        if sides % 2 == 0
        else "Each goes through a corner and the middle of the side opposite."
    )
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(sides),
        "integer",
        (Step(f"A regular polygon has as many as it has sides. {told}", t.Int(sides)),),
        slips(
            (TWICE, 2 * sides),
            (CORNERS_ALONE, None if sides % 2 else sides // 2),
            (UPRIGHT_ALONE, 1),
        ),
        ("polygon", sides),
        figure=figure,
    )


def cut_polygon(kind: int, sides: int, seed: int) -> Draft:
    """Return the question for the symmetry of a regular polygon that is shaded in part."""
    figure, found = CutPolygon(sides, cut_triangles(sides, seed)), turns_of(sides, seed)
    # The upright line goes through the corner at the top, and through a square's middle.
    turn = 3 if sides == 4 else sides
    upright = all(((turn - 1 - k) % sides in figure.shaded) for k in figure.shaded)
    text = LINES_ASKED if kind == Core.CUT_LINES else ORDER_ASKED
    if kind == Core.CUT_LINES:
        key = found.lines
        works = (
            "On none of them does shading fall on shading."
            if not key
            else f"On {counted(key, 'line')} of them shading falls on shading."
        )
        steps = [
            Step(f"Try each line of symmetry of the polygon: there are {sides}."),
            Step(works, t.Int(key)),
        ]
        wrong: list[tuple[Misconception, int | None]] = [
            (SIDES, sides),
            (TWICE, 2 * key),
            (ORDER_FOR_LINES, found.order),
            (UPRIGHT_ALONE, int(upright)),
        ]
    else:
        key = found.order
        each = sides // key
        steps = [
            Step(f"The shading repeats every {counted(each, 'triangle')}."),
            Step(
                f"How often does that fit into {sides}?",
                t.equals(t.divide(t.Int(sides), t.Int(each)), t.Int(key)),
            ),
        ]
        wrong = [
            (SIDES, sides),
            (FULL_TURN_LEFT_OUT, key - 1),
            (LINES_FOR_ORDER, found.lines),
        ]
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(key),
        "integer",
        tuple(steps),
        slips(*wrong, key=t.Int(key)),
        (kind, sides, *figure.shaded),
        figure=figure,
    )


def _upright(corners: tuple[Spot, ...]) -> int:
    """Return 1 where the corners have an upright line of symmetry, else 0."""
    ends = min(x for x, _ in corners) + max(x for x, _ in corners)
    return int({(ends - x, y) for x, y in corners} == {*corners})


def shape_on_grid(kind: int, which: int, seed: int) -> Draft:
    """Return the question for the symmetry of a shape that is drawn on a grid."""
    shape = SHAPES[which]
    corners = placed(shape.corners, place_of(seed))
    figure = picture((outline(corners, "P"),))
    lines, order = shape.symmetry
    if kind == Core.SHAPE_LINES:
        text: tuple[Run, ...] = ("How many lines of symmetry does shape P have?",)
        key, why = lines, shape.why
        wrong: list[tuple[Misconception, int | None]] = [
            (ORDER_FOR_LINES, order),
            (TWICE, 2 * lines),
            (DIAGONALS, 2 if len(corners) == 4 and not lines else None),
            (DIAGONALS, 4 if "rectangle" in shape.name else None),
            (SIDES, len(corners)),
            (UPRIGHT_ALONE, _upright(corners)),
        ]
    else:
        text = ("What is the order of rotational symmetry of shape P?",)
        key, why = order, shape.turn
        wrong = [
            (LINES_FOR_ORDER, lines),
            (FULL_TURN_LEFT_OUT, order - 1),
            (SIDES, len(corners)),
            (HALF_TURNS_ALONE, 2),
        ]
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(key),
        "integer",
        (Step(f"P is {shape.name}."), Step(why, t.Int(key))),
        slips(*wrong, key=t.Int(key)),
        (kind, corners),
        figure=figure,
    )
