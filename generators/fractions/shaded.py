"""Fractions of shapes: what part is shaded, from equal parts that are drawn.

The programme of study for key stages 1 to 3 (England, 2013) asks for fractions to be recognised
and shown "using diagrams" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._drawn import to_draw
from generators.fractions._answers import finish, mixed
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

PART_TO_PART = Misconception(
    "fractions.shaded-part-to-part",
    "compares the shaded parts with the parts that are not shaded",
    "How many parts are there in the whole shape?",
)
OTHER_PART = Misconception(
    "fractions.shaded-other-part",
    "gives the part that is not shaded",
    "Which part of the shape does the question ask about?",
)
UPSIDE_DOWN = Misconception(
    "fractions.shaded-upside-down",
    "writes the whole over the part",
    "Is the shaded part more or less than one whole?",
)

PARTS_OF_ALL = Misconception(
    "fractions.shaded-parts-of-all",
    "takes all the shapes together as one whole",
    "Which shape is 1? How many of them are shaded whole?",
)

SIMPLEST = " Give your answer in its simplest form."
MIXED_ONLY = " Give your answer in its simplest form."

# Rows and columns of rectangles, and slices of circles (no rows).
_SHAPES = (
    *((0, slices) for slices in (3, 4, 5, 6, 8, 9, 10, 12)),
    *((1, parts) for parts in (3, 4, 5, 6, 7, 8, 9, 10)),
    *((2, columns) for columns in (2, 3, 4, 5, 6)),
    *((3, columns) for columns in (3, 4, 5, 6)),
    (4, 5),
)


def _parts(shape: int) -> int:
    rows, columns = _SHAPES[shape]
    return max(rows, 1) * columns


def _as_drawn(shape: int, count: int, way: int) -> bool:
    """Keep what is neither a half nor one part less than all, in lowest terms as it is drawn."""
    total = _parts(shape)
    apart = 0 < count < total and gcd(count, total) == 1
    return apart and _looks_new(count, total, way)


def _to_cancel(shape: int, count: int, way: int, other: int) -> bool:
    """Keep what has to be cancelled, and is no half: there the other part is as large."""
    total = _parts(shape)
    apart = 1 < count < total - 1 and gcd(count, total) > 1 and 2 * count != total
    return apart and _looks_new(count, total, way)


def _several(shape: int, count: int, wholes: int) -> bool:
    """Keep a mixed number with a proper fraction in it, drawn in as few wholes as hold it."""
    total = _parts(shape)
    return (
        total <= 10
        and total * (wholes - 1) < count < total * wholes
        and total * wholes <= MOST_DRAWN
    )


MOST_DRAWN = 24
"""The most parts of several wholes: more are tedious to count."""


def _shaded(count: int, total: int, way: int) -> tuple[int, ...]:
    """Return which parts are shaded: the first ones, or parts here and there."""
    if way == 0:
        return tuple(range(count))
    # A step without a factor in common with the whole comes to every part once.
    step = next(k for k in range(way + 1, way + total + 2) if gcd(k, total) == 1)
    return tuple(sorted((way + step * k) % total for k in range(count)))


def _looks_new(count: int, total: int, way: int) -> bool:
    """Tell whether a way to shade looks other than the ways before it."""
    seen = {_shaded(count, total, before) for before in range(way)}
    return _shaded(count, total, way) not in seen


def _figure(shape: int, shaded: tuple[int, ...], wholes: int = 1) -> ShadedShape:
    rows, columns = _SHAPES[shape]
    if rows == 0:
        return ShadedShape("circle", 1, columns, shaded, wholes)
    return ShadedShape("rectangle", rows, columns, shaded, wholes)


def _name(shape: int) -> str:
    return "circle" if _SHAPES[shape][0] == 0 else "rectangle"


def _unit_drawn(shape: int, top: int, bottom: int) -> bool:
    """Keep a fraction in lowest terms of a shape that is cut in as many parts, or in a multiple."""
    total = _parts(shape)
    return 0 < top < bottom == total and gcd(top, bottom) == 1 and 2 * top != bottom


def _several_drawn(shape: int, top: int, bottom: int) -> bool:
    total = _parts(shape)
    apart = 0 < top < bottom < total and gcd(top, bottom) == 1
    return apart and total % bottom == 0


def _to_shade(topic: Topic, tier: Tier, shape: int, top: int, bottom: int) -> Draft:
    """Return a shape of which a fraction is to be shaded: as it is cut, or several parts each."""
    total = _parts(shape)
    count = total * top // bottom
    text = prompt(f"Shade {{f}} of the {_name(shape)}.", f=t.frac(top, bottom))
    each = total // bottom
    steps: tuple[Step, ...] = (
        Step(
            f"Cut the {total} parts into {bottom} equal groups.",
            t.equals(t.divide(t.Int(total), t.Int(bottom)), t.Int(each)),
        ),
        Step(
            f"Count the parts of {top} of the groups.",
            t.equals(t.times(t.Int(top), t.Int(each)), t.Int(count)),
        ),
        Step("Shade so many parts: which ones does not matter."),
    )
    if each == 1:
        steps = (Step(f"There are {total} equal parts: shade {count}."),)
    shown = _figure(shape, tuple(range(count)))
    return to_draw(text, _figure(shape, ()), shown, steps, ("to shade", shape, top, bottom))


@register
class Shaded(Topic):
    """What fraction is shaded: as it is drawn, to be cancelled, and of several wholes."""

    id = "fractions.shaded"
    title = "Fractions of shapes"
    statements = ("number.operators", "ratio.fraction")
    misconceptions = (PART_TO_PART, OTHER_PART, UPSIDE_DOWN, PARTS_OF_ALL)
    prerequisites = ()
    spaces = {
        Tier.SUPPORT: Space(
            _as_drawn, shape=range(len(_SHAPES)), count=range(1, 20), way=range(3)
        ).also(
            _to_shade,
            _unit_drawn,
            shape=range(len(_SHAPES)),
            top=range(1, 12),
            bottom=range(3, 13),
        ),
        Tier.CORE: Space(
            _to_cancel,
            shape=range(len(_SHAPES)),
            count=range(2, 19),
            way=range(3),
            other=(False, True),
        ).also(
            _to_shade,
            _several_drawn,
            shape=range(len(_SHAPES)),
            top=range(1, 10),
            bottom=range(2, 11),
        ),
        Tier.CHALLENGE: Space(
            _several, shape=range(len(_SHAPES)), count=range(4, MOST_DRAWN), wholes=(2, 3, 4)
        ),
    }
    spare = "A mixed number is drawn in at most 24 parts: more are tedious to count."

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._mixed(*values)
        shape, count, way, *rest = values
        return self._one(shape, count, way, bool(rest and rest[0]), tier is Tier.CORE)

    def _one(self, shape: int, count: int, way: int, other: bool, cancel: bool) -> Draft:
        total = _parts(shape)
        figure = _figure(shape, _shaded(count, total, way))
        wanted = total - count if other else count
        asks = "is not shaded" if other else "is shaded"
        text = (f"What fraction of the {_name(shape)} {asks}?" + (SIMPLEST if cancel else ""),)
        value = Fraction(wanted, total)
        which = "not shaded" if other else "shaded"
        told = (
            f"{total} equal parts; {wanted} are {which}."
            if wanted > 1
            else (f"{total} equal parts; 1 is {which}.")
        )
        steps = (Step(told, t.frac(wanted, total)), *finish(wanted, total))
        wrong = slips(
            (PART_TO_PART, simplest(wanted, total - wanted)),
            (OTHER_PART, simplest(total - wanted, total)),
            (UPSIDE_DOWN, simplest(total, wanted)),
        )
        return Draft(
            text,
            of_figure(figure, text),
            number_node(value),
            "simplest" if cancel else "fraction",
            steps,
            wrong,
            (shape, count, way, other),
            figure=figure,
        )

    def _mixed(self, shape: int, count: int, wholes: int) -> Draft:
        each = _parts(shape)
        figure = _figure(shape, tuple(range(count)), wholes)
        name = _name(shape)
        text = (f"What mixed number is shaded, if each {name} is 1?" + MIXED_ONLY,)
        whole, rest = divmod(count, each)
        value = Fraction(count, each)
        first = "1 whole" if whole == 1 else f"{whole} wholes"
        steps = (
            Step(f"{first} and {rest} of {each} equal parts.", mixed(whole, rest, each)),
            *(
                (
                    Step(
                        "Write the fraction in its simplest form.",
                        t.equals(mixed(whole, rest, each), simplest_node(value)),
                    ),
                )
                if gcd(rest, each) > 1
                else ()
            ),
        )
        wrong = slips(
            (PARTS_OF_ALL, simplest(count, each * wholes)),
            (UPSIDE_DOWN, simplest(each, count)),
            (OTHER_PART, simplest(each * wholes - count, each)),
        )
        return Draft(
            text,
            of_figure(figure, text),
            simplest_node(value),
            "mixed",
            steps,
            wrong,
            (shape, count, wholes),
            figure=figure,
        )


def simplest(top: int, bottom: int) -> t.Node:
    """Return a fraction as it is usually written: cancelled, over one as it stands."""
    return number_node(Fraction(top, bottom))
